/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-press.h"

#include "core/press-plan.h"
#include "shops.h"

#include <math.h>

/* n alike laminations of a known wood, with clamps that reach. */
static BsPlan *
plan_new (guint n, double moe_mpa)
{
  BsPlan *plan = slab_new (n, 1000.0, 35.0, 50.0);
  BsWood *wood = shop_set_wood (plan, 0.60, 7.0);

  wood->moe_mpa = moe_mpa;
  wood->is_hardwood = TRUE;
  plan->adhesive.min_pressure_mpa = 0.5;
  shop_add_clamps (plan, 16, 6000.0, 1500.0, 40.0);
  return plan;
}

/* A stage of pieces of `each` laminations. */
static gboolean
press (const BsPlan *plan, int first, int n_pieces, int each, BsStagePressing *pressing)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autofree int *bounds = g_new (int, n_pieces + 1);
  BsStage stage = { .n_pieces = n_pieces, .bounds = bounds };

  for (int i = 0; i <= n_pieces; i++)
    bounds[i] = first + i * each;
  return bs_stage_press (stack, &stage, 0, NULL, pressing);
}

/* Of laminations in the slab alone it is the layout of the slab. */
static void
test_slab (void)
{
  g_autoptr (BsPlan) plan = plan_new (6, 12000.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_auto (BsPressPlan) whole = { 0 };
  g_auto (BsLayout) layout = { 0 };
  BsStagePressing pressing;

  g_assert_true (bs_press_plan_init (&whole, stack, NULL));
  g_assert_true (bs_layout_find (&whole.problem, NULL, &layout, NULL));
  g_assert_true (press (plan, 0, 6, 1, &pressing));
  g_assert_cmpint (pressing.status, ==, layout.status);
  g_assert_cmpint (pressing.n_clamps, ==, (int)layout.n_clamps);
  g_assert_cmpfloat_with_epsilon (pressing.least_mpa, layout.least_mpa, 1e-9);
}

/* Where alike laminations stand in the slab does not matter. */
static void
test_anywhere (void)
{
  g_autoptr (BsPlan) plan = plan_new (7, 12000.0);
  BsStagePressing front, back;

  g_assert_true (press (plan, 0, 4, 1, &front));
  g_assert_true (press (plan, 3, 4, 1, &back));
  g_assert_cmpint (front.n_clamps, ==, back.n_clamps);
  g_assert_cmpfloat_with_epsilon (front.least_mpa, back.least_mpa, 1e-9);
}

/* Thick pieces spread the pressure: never more clamps than for the laminations they are made of. */
static void
test_packs_are_stiff (void)
{
  g_autoptr (BsPlan) plan = plan_new (8, 12000.0);
  BsStagePressing loose, packs;

  g_assert_true (press (plan, 0, 8, 1, &loose));
  g_assert_true (press (plan, 0, 2, 4, &packs));
  g_assert_cmpint (loose.status, ==, BS_LAYOUT_REACHED);
  g_assert_cmpint (packs.status, ==, BS_LAYOUT_REACHED);
  g_assert_cmpint (packs.n_clamps, <=, loose.n_clamps);
}

/* Leaving out the inner pieces of many changes hardly anything: within 3 % of the weakest spot's
 * pressure at most one clamp. */
static void
test_many (void)
{
  g_autoptr (BsPlan) plan = plan_new (14, 12000.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_auto (BsPressPlan) whole = { 0 };
  g_auto (BsLayout) layout = { 0 };
  BsStagePressing pressing;

  g_assert_true (bs_press_plan_init (&whole, stack, NULL));
  g_assert_true (bs_layout_find (&whole.problem, NULL, &layout, NULL));
  g_assert_true (press (plan, 0, 14, 1, &pressing));
  g_assert_cmpint (pressing.status, ==, layout.status);
  g_assert_cmpint (ABS (pressing.n_clamps - (int)layout.n_clamps), <=, 1);
}

static void
test_unknown_wood (void)
{
  g_autoptr (BsPlan) plan = plan_new (4, NAN);
  BsStagePressing pressing;

  g_assert_false (press (plan, 0, 4, 1, &pressing));
}

static void
test_too_few_clamps (void)
{
  g_autoptr (BsPlan) plan = plan_new (4, 12000.0);
  BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);
  BsStagePressing pressing;

  kind->count = 3;
  g_assert_true (press (plan, 0, 4, 1, &pressing));
  g_assert_cmpint (pressing.status, ==, BS_LAYOUT_SHORT);
  kind->count = 1;
  g_assert_true (press (plan, 0, 4, 1, &pressing));
  g_assert_cmpint (pressing.status, ==, BS_LAYOUT_NO_CLAMPS);
  g_assert_cmpint (pressing.n_clamps, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stages-press/slab", test_slab);
  g_test_add_func ("/stages-press/anywhere", test_anywhere);
  g_test_add_func ("/stages-press/packs-are-stiff", test_packs_are_stiff);
  g_test_add_func ("/stages-press/many", test_many);
  g_test_add_func ("/stages-press/unknown-wood", test_unknown_wood);
  g_test_add_func ("/stages-press/too-few-clamps", test_too_few_clamps);
  return g_test_run ();
}
