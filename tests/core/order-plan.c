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
  BsOrderRequest request = { .wishes = bs_order_wishes_default () };
  g_autoptr (BsOrderProblem) slab = bs_order_problem_new_for_plan (plan, &request, NULL);
  g_autoptr (BsOrderProblem) rack = NULL;

  g_assert_cmpuint (slab->candidates->len, ==, 3);
  g_assert_cmpuint (slab->n_places, ==, 3);
  g_assert_cmpstr (id_of (slab, 0), ==, "B");
  g_assert_cmpstr (id_of (slab, 2), ==, "C");
  request.uses_rack = TRUE;
  request.n_places = 2;
  rack = bs_order_problem_new_for_plan (plan, &request, NULL);
  g_assert_cmpuint (rack->candidates->len, ==, 4);
  g_assert_cmpuint (rack->n_places, ==, 2);
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
  BsOrderRequest request = { .wishes = bs_order_wishes_default () };
  g_autoptr (BsOrderProblem) problem = bs_order_problem_new_for_plan (plan, &request, NULL);
  g_autofree BsOrderPlace *present = bs_order_present (plan);
  BsOrderCost cost = bs_order_cost (problem, present, 3);

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
  BsOrderRequest request = { .wishes = bs_order_wishes_default () };
  g_autoptr (BsOrderProblem) problem = NULL;
  const BsOrderCandidate *candidate;
  const BsOrderDefect *defect;

  g_array_append_val (a->defects, knot);
  problem = bs_order_problem_new_for_plan (plan, &request, NULL);
  candidate = &g_array_index (problem->candidates, BsOrderCandidate, 1);
  defect = &g_array_index (candidate->defects, BsOrderDefect, 0);
  g_assert_cmpint (defect->face, ==, BS_FACE_TOP);
  g_assert_cmpfloat_with_epsilon (defect->x_from, 150.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (defect->x_to, 180.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (defect->across, 15.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (2.0 * candidate->start + candidate->length - defect->x_to, 1920.0,
                                  1e-9);
}

/* There and back: the plan has the order that was found, and its present cost is the cost that was
 * told. */
static void
test_there_and_back (void)
{
  g_autoptr (BsPlan) plan = new_plan (), changed = bs_plan_copy (plan);
  BsOrderPlanPin pin = { .kind = BS_ORDER_PIN_PLACE, .place = 1 };
  BsOrderRequest request
      = { .wishes = bs_order_wishes_default (), .pins = &pin, .n_pins = 1, .uses_rack = TRUE };
  g_autoptr (BsOrderProblem) problem = NULL, again = NULL;
  g_autoptr (BsOrderResult) result = NULL;
  g_autofree BsOrderPlace *present = NULL;
  BsOrderEffort effort;

  pin.lamination = ((BsLamination *)g_ptr_array_index (plan->laminations, 3))->id;
  problem = bs_order_problem_new_for_plan (plan, &request, NULL);
  effort = bs_order_effort_default (problem);
  result = bs_order_solve (problem, &effort, NULL, NULL, NULL, NULL);
  bs_order_place_in_plan (problem, result, changed);

  g_assert_cmpuint (changed->order->len, ==, 3);
  g_assert_cmpint (bs_plan_find_place (changed, "D"), ==, 1);
  again = bs_order_problem_new_for_plan (changed, &request, NULL);
  present = bs_order_present (changed);
  g_assert_cmpint (bs_order_cost (again, present, 3).total, ==, result->cost.total);
  for (guint k = 0; k < 3; k++)
    if (g_strcmp0 (g_array_index (changed->order, BsPlacement, k).lamination, "A") == 0)
      g_assert_cmpfloat_with_epsilon (g_array_index (changed->order, BsPlacement, k).start, 50.0,
                                      1e-9);
}

static void
test_unknown_pin (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  BsOrderPlanPin pin = { .kind = BS_ORDER_PIN_PLACE, .place = 1 };
  BsOrderRequest request = { .wishes = bs_order_wishes_default (), .pins = &pin, .n_pins = 1 };
  g_autoptr (GError) error = NULL;

  /* D stands in the rack, and the rack is not to be used */
  pin.lamination = ((BsLamination *)g_ptr_array_index (plan->laminations, 3))->id;
  g_assert_null (bs_order_problem_new_for_plan (plan, &request, &error));
  g_assert_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order-plan/candidates", test_candidates);
  g_test_add_func ("/order-plan/present-cost", test_present_cost);
  g_test_add_func ("/order-plan/defects", test_defects);
  g_test_add_func ("/order-plan/there-and-back", test_there_and_back);
  g_test_add_func ("/order-plan/unknown-pin", test_unknown_pin);
  return g_test_run ();
}
