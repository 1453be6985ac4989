/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-plan.h"

#include <string.h>

/* Three laminations in the slab, turned in different ways, and one in the rack; their pith lies to
 * the right of A and C, to the left of B, and nobody knows where in D. */
static BsPlan *
new_plan (void)
{
  static const char *const ids[] = { "A", "B", "C", "D" };
  static const double pith[] = { 60.0, -60.0, 60.0, 0.0 };
  BsPlan *plan = bs_plan_new ();

  plan->slab.alternate_hearts = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      BsLamination *lamination = bs_lamination_new (ids[i]);
      lamination->length = 2000.0;
      lamination->thickness = 40.0;
      lamination->height = 90.0;
      lamination->bow = 0.5 * i;
      lamination->crook = 1.0 - 0.5 * i;
      lamination->pith_y = pith[i];
      lamination->pith_z = 5.0;
      lamination->lightness = 60.0 + 4.0 * i;
      lamination->moisture_pct = 8.0 + 0.8 * i;
      lamination->run_out_top = i % 2 == 0 ? 1 : -1;
      g_ptr_array_add (plan->laminations, lamination);
    }
  bs_plan_insert_placement (plan, 0, "B", BS_ORIENTATION_AS_MARKED, 0.0);
  bs_plan_insert_placement (plan, 1, "A", BS_ORIENTATION_END_FOR_END, 50.0);
  bs_plan_insert_placement (plan, 2, "C", BS_ORIENTATION_OVER, 0.0);
  return plan;
}

static const char *
id_of (const BsOrderProblem *problem, guint i)
{
  return g_array_index (problem->candidates, BsOrderCandidate, i).id;
}

static void
test_candidates (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsOrderProblem) slab = bs_order_problem_new_for_plan (plan, NULL);
  g_autoptr (BsOrderProblem) rack = NULL;

  g_assert_cmpuint (slab->candidates->len, ==, 3);
  g_assert_cmpuint (slab->n_places, ==, 3);
  g_assert_cmpstr (id_of (slab, 0), ==, "B");
  g_assert_cmpstr (id_of (slab, 2), ==, "C");
  plan->wishes.uses_rack = TRUE;
  rack = bs_order_problem_new_for_plan (plan, NULL);
  g_assert_cmpuint (rack->candidates->len, ==, 4);
  g_assert_cmpuint (rack->n_places, ==, 3);
  g_assert_cmpstr (id_of (rack, 3), ==, "D");
}

/* By hand, from the front: B as marked, its heart to the left; A end for end, its heart to the left
 * as well; C over, its heart to the left. Both joints have hearts alike: 2 x 3. Lightness 64, 60,
 * 68: (4 + 8) x 0.5. Bows 0.5, -0 and -1: (0.5 + 1) x 2. Crooks 0.5, 1, and 0 turned: (0.5 + 1)
 * x 1. Moisture 8.8, 8, 9.6: nothing within 1 %, and 0.6 x 2. Run-out -1 for B, -1 for A (its ends
 * changed), 0 for C (its underside): all towards the left, none against. */
static void
test_present_cost (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  BsOrderCost cost = bs_order_present_cost (plan);

  g_assert_cmpint (cost.terms[BS_ORDER_TERM_HEARTS], ==, 6000);
  g_assert_cmpint (cost.terms[BS_ORDER_TERM_COLOUR], ==, 6000);
  g_assert_cmpint (cost.terms[BS_ORDER_TERM_BOW], ==, 3000);
  g_assert_cmpint (cost.terms[BS_ORDER_TERM_CROOK], ==, 1500);
  g_assert_cmpint (cost.terms[BS_ORDER_TERM_MOISTURE], ==, 1200);
  g_assert_cmpint (cost.terms[BS_ORDER_TERM_PLANING], ==, 0);
  g_assert_cmpint (cost.plane, ==, -1);
  g_assert_cmpint (cost.total, ==, 17700);
}

/* Where a defect lies in the slab, whichever way round, follows from the start and the length: 100
 * from the left end of A, which starts at 50, and then 100 from its right end. */
static void
test_defects (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  BsLamination *a = g_ptr_array_index (plan->laminations, 0);
  BsDefect knot = { BS_DEFECT_KNOT, BS_FACE_TOP, 100.0, 130.0, 5.0, 20.0, 1.0, NULL };
  g_autoptr (BsOrderProblem) problem = NULL;
  const BsOrderCandidate *candidate;
  const BsOrderDefect *defect;

  g_array_append_val (a->defects, knot);
  problem = bs_order_problem_new_for_plan (plan, NULL);
  candidate = &g_array_index (problem->candidates, BsOrderCandidate, 1);
  defect = &g_array_index (candidate->defects, BsOrderDefect, 0);
  g_assert_cmpint (defect->face, ==, BS_FACE_TOP);
  g_assert_cmpfloat_with_epsilon (defect->x_from, 150.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (defect->x_to, 180.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (defect->across, 15.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (2.0 * candidate->start + candidate->length - defect->x_to, 1920.0,
                                  1e-9);
}

static void
add_pin (BsPlan *plan, BsPinKind kind, const char *lamination, int place, const char *other)
{
  BsPin pin = { .kind = kind, .lamination = g_ref_string_new (lamination), .place = place };

  if (other != NULL)
    pin.other = g_ref_string_new (other);
  g_array_append_val (plan->pins, pin);
}

/* There and back: the plan that is put in the order found costs what was told. */
static void
test_there_and_back (void)
{
  g_autoptr (BsPlan) plan = new_plan (), changed = bs_plan_copy (plan);
  g_autoptr (BsOrderProblem) problem = NULL;
  g_autoptr (BsOrderResult) result = NULL;
  g_autofree BsPlacement *placements = NULL;
  BsOrderEffort effort;

  plan->wishes.uses_rack = TRUE;
  add_pin (plan, BS_PIN_PLACE, "D", 1, NULL);
  problem = bs_order_problem_new_for_plan (plan, NULL);
  effort = bs_order_effort_default (problem);
  result = bs_order_solve (problem, &effort, NULL, NULL, NULL, NULL);
  placements = bs_order_get_placements (problem, result);

  g_assert_cmpuint (result->n_places, ==, 3);
  g_assert_cmpstr (placements[1].lamination, ==, "D");
  g_array_set_size (changed->order, 0);
  for (guint k = 0; k < 3; k++)
    bs_plan_insert_placement (changed, (int)k, placements[k].lamination, placements[k].orientation,
                              placements[k].start);
  g_assert_cmpint (bs_order_present_cost (changed).total, ==, result->cost.total);
  for (guint k = 0; k < 3; k++)
    if (g_strcmp0 (placements[k].lamination, "A") == 0)
      g_assert_cmpfloat_with_epsilon (placements[k].start, 50.0, 1e-9);
}

/* Every kind of pin becomes the one of the problem. */
static void
test_pins (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsOrderProblem) problem = NULL;
  const BsOrderPin *pins;

  add_pin (plan, BS_PIN_PLACE, "A", 2, NULL);
  add_pin (plan, BS_PIN_NEIGHBOURS, "C", -1, "B");
  add_pin (plan, BS_PIN_TOP_UP, "B", -1, NULL);
  add_pin (plan, BS_PIN_UNDERSIDE_UP, "C", -1, NULL);
  problem = bs_order_problem_new_for_plan (plan, NULL);
  pins = &g_array_index (problem->pins, BsOrderPin, 0);
  g_assert_cmpint (pins[0].kind, ==, BS_ORDER_PIN_PLACE);
  g_assert_cmpuint (pins[0].candidate, ==, 1);
  g_assert_cmpuint (pins[0].place, ==, 2);
  g_assert_cmpint (pins[1].kind, ==, BS_ORDER_PIN_NEIGHBOURS);
  g_assert_cmpuint (pins[1].other, ==, 0);
  g_assert_cmpint (pins[2].kind, ==, BS_ORDER_PIN_FACE_UP);
  g_assert_cmpint (pins[2].face, ==, BS_FACE_TOP);
  g_assert_cmpint (pins[3].face, ==, BS_FACE_UNDERSIDE);
}

/* D stands in the rack, and the rack is not to be used. */
static void
test_unknown_pin (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (GError) error = NULL;

  add_pin (plan, BS_PIN_PLACE, "D", 1, NULL);
  g_assert_null (bs_order_problem_new_for_plan (plan, &error));
  g_assert_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN);
  g_assert_true (g_str_has_prefix (error->message, "D "));
}

/* What makes another problem of a plan, and what does not. */

static void
change_name (BsPlan *plan)
{
  g_ref_string_release (plan->name);
  plan->name = g_ref_string_new ("Other");
}

static void
change_order (BsPlan *plan)
{
  BsPlacement *placements = &g_array_index (plan->order, BsPlacement, 0), first = placements[0];

  placements[0] = placements[1];
  placements[1] = first;
  placements[2].orientation = BS_ORIENTATION_END_FOR_END;
}

static void
change_start (BsPlan *plan)
{
  g_array_index (plan->order, BsPlacement, 0).start = 20.0;
}

static void
set_aside (BsPlan *plan)
{
  g_array_set_size (plan->order, 2);
}

static void
exchange (BsPlan *plan)
{
  g_array_set_size (plan->order, 2);
  bs_plan_insert_placement (plan, 2, "D", BS_ORIENTATION_AS_MARKED, 0.0);
}

static void
change_wish (BsPlan *plan)
{
  plan->wishes.looks = BS_ORDER_WISH_MUCH;
}

static void
change_pins (BsPlan *plan)
{
  add_pin (plan, BS_PIN_TOP_UP, "A", -1, NULL);
}

static void
change_slab (BsPlan *plan)
{
  plan->slab.shows_back = TRUE;
}

static void
measure_again (BsPlan *plan)
{
  BsLamination *copy = bs_lamination_copy (g_ptr_array_index (plan->laminations, 2));

  copy->bow += 1.0;
  bs_lamination_unref (g_ptr_array_index (plan->laminations, 2));
  g_ptr_array_index (plan->laminations, 2) = copy;
}

typedef struct
{
  const char *path;
  void (*change) (BsPlan *plan);
  gboolean is_same;
} ChangeRow;

static const ChangeRow change_rows[] = {
  { "name", change_name, TRUE },          { "order", change_order, TRUE },
  { "start", change_start, FALSE },       { "set-aside", set_aside, FALSE },
  { "exchange", exchange, FALSE },        { "wish", change_wish, FALSE },
  { "pins", change_pins, FALSE },         { "slab", change_slab, FALSE },
  { "lamination", measure_again, FALSE },
};

static void
test_same_problem (gconstpointer data)
{
  const ChangeRow *row = data;
  g_autoptr (BsPlan) plan = new_plan (), changed = bs_plan_copy (plan);

  g_assert_true (bs_order_is_same_problem (plan, changed));
  row->change (changed);
  g_assert_true (bs_order_is_same_problem (plan, changed) == row->is_same);
  g_assert_true (bs_order_is_same_problem (changed, plan) == row->is_same);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order-plan/candidates", test_candidates);
  g_test_add_func ("/order-plan/present-cost", test_present_cost);
  g_test_add_func ("/order-plan/defects", test_defects);
  g_test_add_func ("/order-plan/there-and-back", test_there_and_back);
  g_test_add_func ("/order-plan/pins", test_pins);
  g_test_add_func ("/order-plan/unknown-pin", test_unknown_pin);
  for (guint i = 0; i < G_N_ELEMENTS (change_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/order-plan/same-problem/", change_rows[i].path, NULL);
      g_test_add_data_func (path, &change_rows[i], test_same_problem);
    }
  return g_test_run ();
}
