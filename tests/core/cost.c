/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cost.h"

#include "core/mass.h"
#include "shops.h"

#include <math.h>

/* Eight laminations 1200 x 40 x 45 mm: 0.01728 m3 rough; flattened to 40 mm 0.01536 m3 net. */
static BsPlan *
new_plan (void)
{
  BsPlan *plan = shop_new_perfect ();
  BsWood *wood = plan->woods->pdata[0];

  wood->price_minor_per_m3 = 200000.0;
  plan->adhesive.price_minor_per_kg = 1500.0;
  return plan;
}

static BsBoard *
add_board (BsPlan *plan, const char *id, gint64 price_minor)
{
  BsBoard *board = bs_board_new (id);

  board->length = 2500.0;
  board->width = 200.0;
  board->thickness = 50.0; /* 0.025 m3 */
  board->price_minor = price_minor;
  bs_text_set (&board->wood, "wood");
  g_ptr_array_add (plan->boards, board);
  return board;
}

static void
test_without_boards (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCost cost;

  bs_cost (stack, 40.0, 0.07, &cost);
  g_assert_cmpfloat_with_epsilon (cost.gross, 0.01728e9, 1e-3);
  g_assert_cmpfloat_with_epsilon (cost.net, 0.01536e9, 1e-3);
  g_assert_cmpfloat_with_epsilon (cost.waste_pct, 100.0 / 9.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (cost.wood_minor, 3456.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (cost.glue_minor, 105.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (cost.total_minor, 3561.0, 1e-6);
  g_assert_cmpuint (cost.n_unpriced, ==, 0);
}

/* Two boards serve all eight: each is counted once, one at its own price, one by its volume. A
 * third that nothing comes from is not counted. */
static void
test_boards (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  add_board (plan, "a", 6400);
  add_board (plan, "b", 0);
  add_board (plan, "c", 99900);
  for (guint i = 0; i < 8; i++)
    bs_text_set (&slab_at (plan, i)->board, i < 4 ? "a" : "b");
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCost cost;

  bs_cost (stack, 40.0, 0.07, &cost);
  g_assert_cmpfloat_with_epsilon (cost.gross, 0.05e9, 1e-3);
  g_assert_cmpfloat_with_epsilon (cost.wood_minor, 6400.0 + 5000.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (cost.waste_pct, 100.0 * (1.0 - 0.01536 / 0.05), 1e-9);
}

/* What stands wider or longer than is wanted is trimmed off. */
static void
test_trimmed (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  plan->slab.length = 1000.0;
  plan->slab.width = 300.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCost cost;

  bs_cost (stack, 40.0, 0.07, &cost);
  g_assert_cmpfloat_with_epsilon (cost.net, 1000.0 * 300.0 * 40.0, 1e-6);
}

static void
test_prices_not_known (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  add_board (plan, "a", 0);
  bs_text_set (&((BsBoard *)plan->boards->pdata[0])->wood, "nobody");
  bs_text_set (&slab_at (plan, 0)->board, "a");
  bs_text_set (&slab_at (plan, 1)->board, "no such board");
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCost cost;
  BsWorking why;

  bs_cost (stack, 40.0, 0.07, &cost);
  bs_cost_explain (&cost, plan, &why);
  g_assert_cmpuint (cost.n_unpriced, ==, 1);
  g_assert_true (isnan (cost.wood_minor));
  g_assert_true (isnan (why.value));
  g_assert_cmpfloat_with_epsilon (cost.glue_minor, 105.0, 1e-9);
}

static void
test_no_slab (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCost cost;

  bs_cost (stack, NAN, 0.0, &cost);
  g_assert_true (isnan (cost.total_minor));
  g_assert_true (isnan (cost.waste_pct));
}

static void
test_explain (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCost cost;
  BsWorking why;

  bs_cost (stack, 40.0, 0.07, &cost);
  bs_cost_explain (&cost, plan, &why);
  g_assert_cmpstr (why.currency, ==, "EUR");
  g_assert_cmpfloat_with_epsilon (
      why.value, why.terms[0].value + why.terms[1].value * why.terms[2].value, 1e-9);
}

/* m = s A with s in g/m2 and A in mm2; w = 1 - V / G. */
static void
test_explain_glue_and_waste (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCost cost;
  BsWorking why;

  bs_cost (stack, 40.0, bs_mass_glue (stack), &cost);
  bs_cost_explain_glue (&cost, plan, &why);
  g_assert_cmpfloat_with_epsilon (why.value, why.terms[0].value * 1e-3 * why.terms[1].value * 1e-6,
                                  1e-12);
  bs_cost_explain_waste (&cost, &why);
  g_assert_cmpfloat_with_epsilon (why.value,
                                  100.0 * (1.0 - why.terms[0].value / why.terms[1].value), 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cost/without-boards", test_without_boards);
  g_test_add_func ("/cost/boards", test_boards);
  g_test_add_func ("/cost/trimmed", test_trimmed);
  g_test_add_func ("/cost/prices-not-known", test_prices_not_known);
  g_test_add_func ("/cost/no-slab", test_no_slab);
  g_test_add_func ("/cost/explain", test_explain);
  g_test_add_func ("/cost/explain/glue-and-waste", test_explain_glue_and_waste);
  return g_test_run ();
}
