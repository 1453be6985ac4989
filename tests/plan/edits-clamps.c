/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/text.h"
#include "plan/document.h"
#include "plan/edits.h"

#include <string.h>

static void
check_can_be_opened (const BsPlan *plan)
{
  g_autofree char *text = bs_document_write (plan);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) opened = bs_document_parse (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_cmpuint (opened->placed_clamps->len, ==, plan->placed_clamps->len);
}

/* "bar 100 5000 above, pipe 300 ...": the placed clamps. */
static char *
describe_clamps (const BsPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->placed_clamps->len; i++)
    {
      const BsPlacedClamp *clamp = &g_array_index (plan->placed_clamps, BsPlacedClamp, i);

      g_string_append_printf (text, "%s%s %.0f %.0f %s", i > 0 ? ", " : "", clamp->kind, clamp->x,
                              clamp->force_n, clamp->is_above ? "above" : "below");
    }
  return g_string_free (text, FALSE);
}

/* The plan with kinds "bar" and "pipe" and a clamp of each at 100 and 500 mm. */
static BsPlan *
make_clamped_plan (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  static const char *const ids[] = { "bar", "pipe" };

  for (guint i = 0; i < 2; i++)
    {
      BsClampKind *kind = bs_clamp_kind_new (ids[i]);

      *kind = (BsClampKind){ kind->id, NULL, 4, 5000.0, 700.0, 30.0, 30.0, 12.0, 3.0, NULL };
      g_ptr_array_add (plan->shop.clamps, kind);
      bs_plan_place_clamp (plan, ids[i], 100.0 + 400.0 * i, 3000.0, i == 0);
    }
  bs_text_set (&g_array_index (plan->placed_clamps, BsPlacedClamp, 1).unknown, "{\"later\": 1}");
  return g_steal_pointer (&plan);
}

typedef struct
{
  const char *path;
  BsPlan *(*edit) (BsPlan *plan);
  const char *wanted;
} ClampRow;

static BsPlan *
put_clamp (BsPlan *plan)
{
  guint place = 0;
  BsPlan *edited = bs_edit_place_clamp (
      plan, &(BsLayoutClamp){ .kind = 1, .x = 300.0, .force = 1000.0, .is_above = TRUE }, &place);

  g_assert_cmpuint (place, ==, 1);
  return edited;
}

static BsPlan *
move_clamp (BsPlan *plan)
{
  return bs_edit_move_clamp (plan, 0, 450.0, NULL);
}

static BsPlan *
move_clamp_past (BsPlan *plan)
{
  guint moved_to = 0;
  BsPlan *edited = bs_edit_move_clamp (plan, 0, 900.0, &moved_to);

  g_assert_cmpuint (moved_to, ==, 1);
  return edited;
}

static BsPlan *
move_clamp_back_past (BsPlan *plan)
{
  guint moved_to = 7;
  BsPlan *edited = bs_edit_move_clamp (plan, 1, -40.0, &moved_to);

  g_assert_cmpuint (moved_to, ==, 0);
  g_assert_cmpstr (g_array_index (edited->placed_clamps, BsPlacedClamp, 0).unknown, ==,
                   "{\"later\": 1}");
  return edited;
}

static BsPlan *
tighten_clamp (BsPlan *plan)
{
  return bs_edit_tighten_clamp (plan, 1, 4500.0);
}

static BsPlan *
tighten_clamp_too_far (BsPlan *plan)
{
  return bs_edit_tighten_clamp (plan, 1, 1e9);
}

static BsPlan *
turn_clamp (BsPlan *plan)
{
  return bs_edit_turn_clamp (plan, 0, FALSE);
}

static BsPlan *
choose_clamp (BsPlan *plan)
{
  return bs_edit_choose_clamp (plan, 0, "pipe");
}

static BsPlan *
take_off_clamp (BsPlan *plan)
{
  return bs_edit_take_off_clamp (plan, 0);
}

static BsPlan *
set_clamps (BsPlan *plan)
{
  static const BsLayoutClamp clamps[]
      = { { .kind = 1, .x = 700.0, .force = 10.0, .is_above = TRUE },
          { .kind = 0, .x = 200.0, .force = 20.0 } };

  return bs_edit_set_clamps (plan, clamps, G_N_ELEMENTS (clamps));
}

static BsPlan *
set_no_clamps (BsPlan *plan)
{
  return bs_edit_set_clamps (plan, NULL, 0);
}

static BsPlan *
sell_kind (BsPlan *plan)
{
  return bs_edit_remove_clamp (plan, "bar");
}

/* A place typed into the plan itself, out of order. */
static BsPlan *
fit_clamps (BsPlan *plan)
{
  g_autoptr (BsPlan) typed = bs_plan_copy (plan);

  g_array_index (typed->placed_clamps, BsPlacedClamp, 0).x = 800.0;
  return bs_edit_fit (typed);
}

static const ClampRow clamp_rows[] = {
  { "put", put_clamp, "bar 100 3000 above, pipe 300 1000 above, pipe 500 3000 below" },
  { "move", move_clamp, "bar 450 3000 above, pipe 500 3000 below" },
  { "move/past", move_clamp_past, "pipe 500 3000 below, bar 900 3000 above" },
  { "move/off-the-left-end", move_clamp_back_past, "pipe 0 3000 below, bar 100 3000 above" },
  { "tighten", tighten_clamp, "bar 100 3000 above, pipe 500 4500 below" },
  { "tighten/too-far", tighten_clamp_too_far, "bar 100 3000 above, pipe 500 200000 below" },
  { "turn", turn_clamp, "bar 100 3000 below, pipe 500 3000 below" },
  { "choose", choose_clamp, "pipe 100 3000 above, pipe 500 3000 below" },
  { "take-off", take_off_clamp, "pipe 500 3000 below" },
  { "set", set_clamps, "bar 200 20 below, pipe 700 10 above" },
  { "set/none", set_no_clamps, "" },
  { "sell-the-kind", sell_kind, "pipe 500 3000 below" },
  { "fit", fit_clamps, "pipe 500 3000 below, bar 800 3000 above" },
};

static void
test_placed_clamps (gconstpointer data)
{
  const ClampRow *row = data;
  g_autoptr (BsPlan) plan = make_clamped_plan ();
  g_autoptr (BsPlan) edited = row->edit (plan);
  g_autofree char *before = describe_clamps (plan);
  g_autofree char *after = describe_clamps (edited);

  check_can_be_opened (edited);
  g_assert_cmpstr (before, ==, "bar 100 3000 above, pipe 500 3000 below");
  g_assert_cmpstr (after, ==, row->wanted);
}

/* What changes nothing is the same plan. */
static void
test_same_clamps (void)
{
  g_autoptr (BsPlan) plan = make_clamped_plan ();
  static const BsLayoutClamp clamps[]
      = { { .kind = 0, .x = 100.0, .force = 3000.0, .is_above = TRUE },
          { .kind = 1, .x = 500.0, .force = 3000.0 } };
  g_autoptr (BsPlan) moved = bs_edit_move_clamp (plan, 0, 100.0, NULL);
  g_autoptr (BsPlan) tightened = bs_edit_tighten_clamp (plan, 0, 3000.0);
  g_autoptr (BsPlan) turned = bs_edit_turn_clamp (plan, 0, TRUE);
  g_autoptr (BsPlan) chosen = bs_edit_choose_clamp (plan, 1, "pipe");
  g_autoptr (BsPlan) set = bs_edit_set_clamps (plan, clamps, G_N_ELEMENTS (clamps));

  g_assert_true (moved == plan && tightened == plan && turned == plan && chosen == plan);
  g_assert_true (set == plan);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (clamp_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/edits-clamps/", clamp_rows[i].path, NULL);
      g_test_add_data_func (path, &clamp_rows[i], test_placed_clamps);
    }
  g_test_add_func ("/edits-clamps/same", test_same_clamps);
  return g_test_run ();
}
