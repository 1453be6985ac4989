/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/plan.h"

#include "core/limits.h"
#include "shops.h"

#include <math.h>

static void
assert_within (const BsLimit *limit, double value)
{
  g_assert_cmpfloat (value, >=, limit->least);
  g_assert_cmpfloat (value, <=, limit->most);
}

static void
assert_climate (const BsClimate *climate)
{
  assert_within (&bs_limits.temperature, climate->temperature_c);
  assert_within (&bs_limits.humidity, climate->humidity_pct);
}

static void
test_defaults_within_limits (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  const BsHandTimes *times = &plan->shop.times;
  const BsAdhesive *adhesive = &plan->adhesive;

  assert_within (&bs_limits.slab_length, plan->slab.length);
  assert_within (&bs_limits.slab_width, plan->slab.width);
  assert_within (&bs_limits.slab_thickness, plan->slab.thickness);
  assert_within (&bs_limits.allowance, plan->slab.allowance);
  assert_climate (&plan->slab.dry_season);
  assert_climate (&plan->slab.damp_season);
  assert_climate (&plan->shop.climate);
  assert_within (&bs_limits.people, plan->shop.people);
  assert_within (&bs_limits.planer_width, plan->shop.planer_width);
  assert_within (&bs_limits.jointer_width, plan->shop.jointer_width);
  g_assert_true (isnan (plan->shop.max_lift_kg));
  assert_within (&bs_limits.spread_time, times->spread_s_per_m2);
  assert_within (&bs_limits.hand_time, times->joint_s);
  assert_within (&bs_limits.hand_time, times->place_s);
  assert_within (&bs_limits.hand_time, times->align_s);
  assert_within (&bs_limits.hand_time, times->tighten_s);
  assert_within (&bs_limits.assembly_time, adhesive->open_s);
  assert_within (&bs_limits.assembly_time, adhesive->total_s);
  assert_within (&bs_limits.clamp_time, adhesive->clamp_s);
  assert_within (&bs_limits.adhesive_temperature, adhesive->min_temperature_c);
  assert_within (&bs_limits.spread, adhesive->spread_g_per_m2);
  assert_within (&bs_limits.pressure, adhesive->min_pressure_mpa);
  assert_within (&bs_limits.pressure, adhesive->max_pressure_mpa);
  g_assert_cmpfloat (adhesive->open_s, <=, adhesive->total_s);
  g_assert_cmpfloat (adhesive->min_pressure_mpa, <=, adhesive->max_pressure_mpa);
}

/* Every row of the limits is a range, so that a reader that checks against it can accept something.
 */
static void
test_limits_are_ranges (void)
{
  const BsLimit *limits = (const BsLimit *)&bs_limits;

  for (gsize i = 0; i < sizeof bs_limits / sizeof (BsLimit); i++)
    g_assert_cmpfloat (limits[i].least, <, limits[i].most);
}

static void
test_limits_contain (void)
{
  g_assert_true (bs_limit_contains (&bs_limits.humidity, 0.0));
  g_assert_true (bs_limit_contains (&bs_limits.humidity, 100.0));
  g_assert_false (bs_limit_contains (&bs_limits.humidity, 100.001));
  g_assert_false (bs_limit_contains (&bs_limits.humidity, -0.001));
  g_assert_false (bs_limit_contains (&bs_limits.humidity, NAN));
}

static void
test_copy_is_its_own (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsPack pack = { 0, 2 };

  bs_text_set (&plan->name, "counter");
  g_array_append_val (plan->packs, pack);
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);
  bs_text_set (&copy->name, "tread");
  bs_text_set (&copy->adhesive.name, "another");
  g_ptr_array_set_size (copy->laminations, 1);
  g_array_set_size (copy->order, 1);
  g_array_set_size (copy->packs, 0);
  g_ptr_array_set_size (copy->shop.clamps, 0);

  g_assert_cmpstr (plan->name, ==, "counter");
  g_assert_cmpstr (plan->adhesive.name, !=, "another");
  g_assert_cmpuint (plan->laminations->len, ==, 8);
  g_assert_cmpuint (plan->order->len, ==, 8);
  g_assert_cmpuint (plan->packs->len, ==, 1);
  g_assert_cmpuint (plan->shop.clamps->len, ==, 1);
}

static void
test_copy_shares_parts (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);

  g_assert_true (plan->laminations->pdata[3] == copy->laminations->pdata[3]);
  g_assert_true (plan->woods->pdata[0] == copy->woods->pdata[0]);
  g_assert_true (plan->shop.clamps->pdata[0] == copy->shop.clamps->pdata[0]);
}

/* A copy outlives what it was made from, in another thread too. */
static gpointer
read_and_drop (gpointer data)
{
  BsPlan *plan = data;
  int place = bs_plan_find_place (plan, "5");

  bs_plan_unref (plan);
  return GINT_TO_POINTER (place);
}

static void
test_copy_outlives (void)
{
  BsPlan *plan = shop_new_perfect ();
  BsPlan *copy = bs_plan_copy (plan);

  bs_plan_unref (plan);
  GThread *thread = g_thread_new ("reader", read_and_drop, bs_plan_ref (copy));
  bs_plan_unref (copy);
  g_assert_cmpint (GPOINTER_TO_INT (g_thread_join (thread)), ==, 4);
}

static void
test_find (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();

  g_array_remove_index (plan->order, 0); /* lamination 1 goes to the rack */
  g_assert_cmpint (bs_plan_find_place (plan, "1"), ==, -1);
  g_assert_cmpint (bs_plan_find_place (plan, "2"), ==, 0);
  g_assert_cmpstr (bs_plan_find_lamination (plan, "1")->id, ==, "1");
  g_assert_null (bs_plan_find_lamination (plan, "nobody"));
  g_assert_null (bs_plan_find_lamination (plan, NULL));
  g_assert_cmpstr (bs_plan_find_wood (plan, "wood")->id, ==, "wood");
  g_assert_null (bs_plan_find_wood (plan, NULL));
}

static void
test_insert_placement (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();

  g_array_remove_index (plan->order, 7);
  bs_plan_insert_placement (plan, 2, "8", BS_ORIENTATION_OVER, 5.0);
  const BsPlacement *placement = &g_array_index (plan->order, BsPlacement, 2);
  g_assert_cmpstr (placement->lamination, ==, "8");
  g_assert_cmpint (placement->orientation, ==, BS_ORIENTATION_OVER);
  g_assert_cmpfloat_with_epsilon (placement->start, 5.0, 1e-12);
  g_assert_cmpint (bs_plan_find_place (plan, "3"), ==, 3);
}

static void
test_insert_of_a_stranger (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();

  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*held != NULL*");
  bs_plan_insert_placement (plan, 0, "nobody", BS_ORIENTATION_AS_MARKED, 0.0);
  g_test_assert_expected_messages ();
  g_assert_cmpuint (plan->order->len, ==, 8);
}

/* The parts: new ones know nothing, and a reference keeps them. */
static void
test_parts (void)
{
  g_autoptr (BsWood) wood = bs_wood_new ("w");
  g_autoptr (BsClampKind) clamp = bs_clamp_kind_new ("c");
  g_autoptr (BsCaulKind) caul = bs_caul_kind_new ("k");
  g_autoptr (BsBoard) board = bs_board_new ("b");

  g_assert_true (isnan (wood->sg_12) && isnan (wood->comp_perp_mpa) && isnan (wood->coef_radial));
  g_assert_true (isnan (clamp->screw_lead) && isnan (clamp->screw_mean_diameter));
  g_assert_true (isnan (board->moisture_pct));
  bs_wood_unref (bs_wood_ref (wood));
  bs_clamp_kind_unref (bs_clamp_kind_ref (clamp));
  bs_caul_kind_unref (bs_caul_kind_ref (caul));
  bs_board_unref (bs_board_ref (board));
  g_assert_cmpstr (wood->id, ==, "w");
  g_assert_cmpstr (clamp->id, ==, "c");
  g_assert_cmpstr (caul->id, ==, "k");
  g_assert_cmpstr (board->id, ==, "b");
}

/* An adhesive may be set to what it is already part of: its texts must not be let go first. */
static void
test_adhesive_set_to_itself (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();

  bs_adhesive_set (&plan->adhesive, &plan->adhesive);
  g_assert_cmpstr (plan->adhesive.id, ==, "pva-d3");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/defaults-within-limits", test_defaults_within_limits);
  g_test_add_func ("/plan/limits-are-ranges", test_limits_are_ranges);
  g_test_add_func ("/plan/limits-contain", test_limits_contain);
  g_test_add_func ("/plan/copy-is-its-own", test_copy_is_its_own);
  g_test_add_func ("/plan/copy-shares-parts", test_copy_shares_parts);
  g_test_add_func ("/plan/copy-outlives", test_copy_outlives);
  g_test_add_func ("/plan/find", test_find);
  g_test_add_func ("/plan/insert-placement", test_insert_placement);
  g_test_add_func ("/plan/insert-of-a-stranger", test_insert_of_a_stranger);
  g_test_add_func ("/plan/parts", test_parts);
  g_test_add_func ("/plan/adhesive-set-to-itself", test_adhesive_set_to_itself);
  return g_test_run ();
}
