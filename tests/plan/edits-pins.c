/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits.h"

#include "core/text.h"
#include "plan/check.h"

/* A plan with laminations a to h, of which a to f lie in the slab. */
static BsPlan *
make_plan (void)
{
  BsPlan *plan = bs_plan_new ();

  for (int id = 'a'; id <= 'h'; id++)
    {
      const char name[] = { (char)id, '\0' };
      BsLamination *lamination = bs_lamination_new (name);

      lamination->length = 1000.0;
      lamination->thickness = 40.0;
      lamination->height = 60.0;
      g_ptr_array_add (plan->laminations, lamination);
      if (id <= 'f')
        bs_plan_insert_placement (plan, id - 'a', name, BS_ORIENTATION_AS_MARKED, 0.0);
    }
  return plan;
}

/* It can be saved and opened again. */
static void
assert_sound (const BsPlan *plan)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (bs_check_plan (plan, &error));
  g_assert_no_error (error);
}

static void
test_set_wishes (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  BsOrderWishes wishes = plan->wishes;
  wishes.looks = BS_ORDER_WISH_OFF;
  wishes.uses_rack = TRUE;

  g_autoptr (BsPlan) edited = bs_edit_set_wishes (plan, &wishes);
  g_autoptr (BsPlan) same = bs_edit_set_wishes (edited, &wishes);
  assert_sound (edited);
  g_assert_cmpint (edited->wishes.looks, ==, BS_ORDER_WISH_OFF);
  g_assert_cmpint (plan->wishes.looks, ==, BS_ORDER_WISH_NORMAL);
  g_assert_true (same == edited);
}

/* "a0 b/c d^ e_": a at place 0, b beside c, the top of d and the underside of e up. */
static char *
describe_pins (const BsPlan *plan)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < plan->pins->len; i++)
    {
      const BsPin *pin = &g_array_index (plan->pins, BsPin, i);

      g_string_append_printf (text, "%s%s", i == 0 ? "" : " ", pin->lamination);
      if (pin->kind == BS_PIN_PLACE)
        g_string_append_printf (text, "%d", pin->place);
      else if (pin->kind == BS_PIN_NEIGHBOURS)
        g_string_append_printf (text, "/%s", pin->other);
      else
        g_string_append_c (text, pin->kind == BS_PIN_TOP_UP ? '^' : '_');
    }
  return g_string_free (text, FALSE);
}

static BsPlan *
add_pin (BsPlan *plan, BsPinKind kind, const char *lamination, int place, const char *other)
{
  BsPin pin = { .kind = kind, .place = place };

  bs_text_set (&pin.lamination, lamination);
  bs_text_set (&pin.other, other);
  BsPlan *edited = bs_edit_add_pin (plan, &pin);
  bs_text_clear (&pin.lamination);
  bs_text_clear (&pin.other);
  return edited;
}

/* On "a0 b/c d^": a pin more, and what is left. */
typedef struct
{
  const char *path;
  BsPinKind kind;
  const char *lamination;
  int place;
  const char *other;
  const char *wanted;
} PinRow;

static const PinRow pin_rows[] = {
  { "another", BS_PIN_PLACE, "e", 3, NULL, "a0 b/c d^ e3" },
  { "other-place", BS_PIN_PLACE, "a", 5, NULL, "b/c d^ a5" },
  { "other-face", BS_PIN_UNDERSIDE_UP, "d", -1, NULL, "a0 b/c d_" },
  { "place-and-face", BS_PIN_TOP_UP, "a", -1, NULL, "a0 b/c d^ a^" },
  { "second-neighbour", BS_PIN_NEIGHBOURS, "b", -1, "e", "a0 b/c d^ b/e" },
  { "in-the-rack", BS_PIN_PLACE, "h", 1, NULL, "a0 b/c d^ h1" },
  { "same-place", BS_PIN_PLACE, "a", 0, NULL, NULL }, /* NULL: nothing changes */
  { "same-neighbours", BS_PIN_NEIGHBOURS, "b", -1, "c", NULL },
  { "neighbours-said-the-other-way", BS_PIN_NEIGHBOURS, "c", -1, "b", NULL },
  { "same-face", BS_PIN_TOP_UP, "d", -1, NULL, NULL },
};

static BsPlan *
make_pinned_plan (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsPlan) one = add_pin (plan, BS_PIN_PLACE, "a", 0, NULL);
  g_autoptr (BsPlan) two = add_pin (one, BS_PIN_NEIGHBOURS, "b", -1, "c");

  return add_pin (two, BS_PIN_TOP_UP, "d", -1, NULL);
}

static void
test_add_pin (gconstpointer data)
{
  const PinRow *row = data;
  g_autoptr (BsPlan) plan = make_pinned_plan ();
  g_autoptr (BsPlan) edited = add_pin (plan, row->kind, row->lamination, row->place, row->other);
  g_autofree char *before = describe_pins (plan);
  g_autofree char *after = describe_pins (edited);

  assert_sound (edited);
  g_assert_cmpstr (before, ==, "a0 b/c d^");
  g_assert_cmpstr (after, ==, row->wanted != NULL ? row->wanted : before);
  g_assert_true ((edited == plan) == (row->wanted == NULL));
}

static void
test_remove_pin (void)
{
  g_autoptr (BsPlan) plan = make_pinned_plan ();
  g_autoptr (BsPlan) edited = bs_edit_remove_pin (plan, 1);
  g_autofree char *pins = describe_pins (edited);

  assert_sound (edited);
  g_assert_cmpstr (pins, ==, "a0 d^");
}

/* A lamination that is removed takes its pins along, whichever end of them it was. */
static void
test_remove_pinned (void)
{
  g_autoptr (BsPlan) plan = make_pinned_plan ();
  g_autoptr (BsPlan) without_a = bs_edit_remove_lamination (plan, "a");
  g_autoptr (BsPlan) without_c = bs_edit_remove_lamination (plan, "c");
  g_autofree char *pins_a = describe_pins (without_a);
  g_autofree char *pins_c = describe_pins (without_c);

  assert_sound (without_a);
  assert_sound (without_c);
  g_assert_cmpstr (pins_a, ==, "b/c d^");
  g_assert_cmpstr (pins_c, ==, "a0 d^");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/edits-pins/set-wishes", test_set_wishes);
  for (guint i = 0; i < G_N_ELEMENTS (pin_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/edits-pins/add/%s", pin_rows[i].path);
      g_test_add_data_func (path, &pin_rows[i], test_add_pin);
    }
  g_test_add_func ("/edits-pins/remove", test_remove_pin);
  g_test_add_func ("/edits-pins/remove-pinned", test_remove_pinned);
  return g_test_run ();
}
