/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamping.h"

#include "shops.h"

#include <math.h>

#define EXACT 1e-9

/* The rule of a plan; positions are the caller's. */
static BsClampRule
rule_of (const BsPlan *plan)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsClampRule rule = { .positions = g_array_new (FALSE, FALSE, sizeof (double)) };

  bs_clamping_rule (stack, &rule);
  return rule;
}

/* 1200 x 45 mm at 1.0 MPa: 54 kN, 9 clamps of 6 kN; heads of 50 mm on 40 mm: 130 mm apart, 10
 * clamps. */
static void
test_by_hand (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.area, 54000.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.pressure_mpa, 1.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.force_n, 54000.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.spacing, 130.0, EXACT);
  g_assert_cmpint (rule.n_by_force, ==, 9);
  g_assert_cmpint (rule.n_by_spacing, ==, 10);
  g_assert_cmpint (rule.n, ==, 10);
  g_assert_cmpint (rule.n_fitting, ==, 12);
  g_assert_cmpfloat_with_epsilon (rule.force_fitting_n, 72000.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.reached_mpa, 72000.0 / 54000.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.reach_needed, 320.0, EXACT);
  /* Ten clamps tightened to 5.4 kN on 50 x 45 mm. */
  g_assert_cmpfloat_with_epsilon (rule.head_stress_mpa, 2.4, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.head_strength_mpa, 6.0, EXACT);
}

/* Ten clamps on 1200 mm: 120 mm apart, 60 mm from the ends. */
static void
test_positions (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpuint (positions->len, ==, 10);
  for (guint i = 0; i < positions->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (positions, double, i), 60.0 + 120.0 * i, EXACT);
}

/* Cauls of 20 mm reach farther (50 + 2 (40 + 20) = 170 mm: 8 clamps for coverage, so that 9 for the
 * force rule) and take 40 mm of the clamps' opening. */
static void
test_cauls (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  shop_add_cauls (plan, 2, 1200.0, 20.0, 45.0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.caul_thickness, 20.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.reach_needed, 360.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.spacing, 170.0, EXACT);
  g_assert_cmpint (rule.n_by_spacing, ==, 8);
  g_assert_cmpint (rule.n, ==, 9);
  /* 6 kN spread by the caul over 50 + 2 x 20 = 90 mm. */
  g_assert_cmpfloat_with_epsilon (rule.head_stress_mpa, 6000.0 / (90.0 * 45.0), EXACT);
}

/* Cauls are left out when they do not line both faces, or when a clamp would not reach any more. */
typedef struct
{
  const char *path;
  int count;
  double length, thickness;
  double wanted;
} CaulRow;

static const CaulRow caul_rows[] = {
  { "line-both-faces", 2, 1200.0, 20.0, 20.0 },
  { "in-two-pieces", 4, 700.0, 20.0, 20.0 },
  { "one-face-only", 1, 1200.0, 20.0, 0.0 },
  { "too-short", 2, 1100.0, 20.0, 0.0 },
  { "take-all-the-reach", 2, 1200.0, 140.0, 140.0 }, /* 320 + 280 = 600 mm */
  { "take-more", 2, 1200.0, 140.5, 0.0 },
};

static void
test_choice_of_cauls (gconstpointer data)
{
  const CaulRow *row = data;
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  shop_add_cauls (plan, row->count, row->length, row->thickness, 45.0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.caul_thickness, row->wanted, EXACT);
}

static void
test_thickest_cauls (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  shop_add_cauls (plan, 2, 1200.0, 20.0, 45.0);
  shop_add_cauls (plan, 2, 1200.0, 60.0, 45.0);
  shop_add_cauls (plan, 2, 1200.0, 40.0, 45.0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.caul_thickness, 60.0, EXACT);
}

/* 54 kN of three kinds: 4 x 9 kN, then 3 of 8 x 6 kN, whatever order they are named in; the one
 * that is too short does not count. Narrowest head: 40 mm. */
static void
test_kinds_together (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_ptr_array_set_size (plan->shop.clamps, 0);
  shop_add_clamps (plan, 8, 6000.0, 600.0, 40.0);
  shop_add_clamps (plan, 20, 20000.0, 319.0, 30.0);
  shop_add_clamps (plan, 4, 9000.0, 320.0, 50.0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpint (rule.n_by_force, ==, 7);
  g_assert_cmpint (rule.n_fitting, ==, 12);
  g_assert_cmpfloat_with_epsilon (rule.force_fitting_n, 84000.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.head_width, 40.0, EXACT);
}

/* 12 x 6 kN are not 120 kN: 8 more of the strongest kind. They do cover, so all twelve are placed.
 */
static void
test_too_weak (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  for (guint i = 0; i < 8; i++)
    slab_at (plan, i)->height = 100.0;
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.force_n, 120000.0, EXACT);
  g_assert_cmpint (rule.n, ==, 20);
  g_assert_cmpuint (positions->len, ==, 12);
}

static void
test_no_clamps (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_ptr_array_set_size (plan->shop.clamps, 0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_true (isnan (rule.spacing));
  g_assert_true (isnan (rule.head_stress_mpa));
  g_assert_cmpint (rule.n, ==, 2);
  g_assert_cmpint (rule.n_fitting, ==, 0);
  g_assert_cmpfloat_with_epsilon (rule.force_n, 54000.0, EXACT);
  g_assert_cmpfloat_with_epsilon (rule.reached_mpa, 0.0, EXACT);
}

/* Clamps that are all too short still say how many of their kind it would take. */
static void
test_none_reach (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_ptr_array_set_size (plan->shop.clamps, 0);
  shop_add_clamps (plan, 12, 6000.0, 319.9, 50.0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpint (rule.n_fitting, ==, 0);
  g_assert_cmpint (rule.n, ==, 10);
}

static void
test_unknown_wood (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  for (guint i = 0; i < 8; i++)
    bs_text_set (&slab_at (plan, i)->wood, NULL);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_true (isnan (rule.force_n));
  g_assert_true (isnan (rule.head_strength_mpa));
  g_assert_cmpint (rule.n, ==, 10); /* coverage needs no wood */
}

static void
test_one_lamination (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_array_set_size (plan->order, 1);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.area, 0.0, EXACT);
  g_assert_true (isnan (rule.force_n));
  g_assert_cmpuint (positions->len, ==, 0);
}

/* Pressure: never more than half of what the weakest wood bears, and the densest sets the band. */
static void
test_pressure_of_two_woods (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsWood *soft = bs_wood_new ("soft");
  soft->sg_12 = 0.35;
  soft->comp_perp_mpa = 1.8;
  g_ptr_array_add (plan->woods, soft);
  bs_text_set (&slab_at (plan, 3)->wood, "soft");
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsPressureRange range = bs_clamping_pressure (stack);

  g_assert_cmpfloat_with_epsilon (range.low, 0.9, EXACT);
  g_assert_cmpfloat_with_epsilon (range.high, 0.9, EXACT);
}

/* More or stronger clamps never press less; a longer slab never takes fewer. */
static void
test_monotony (void)
{
  double pressure = 0.0;
  int n = 0;

  for (int i = 0; i < 20; i++)
    {
      g_autoptr (BsPlan) plan = shop_new_perfect ();
      BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);
      kind->count = 2 + i;
      for (guint k = 0; k < 8; k++)
        slab_at (plan, k)->length = 1200.0;
      BsClampRule rule = rule_of (plan);
      g_autoptr (GArray) positions = rule.positions;
      g_assert_cmpfloat (rule.reached_mpa, >, pressure);
      pressure = rule.reached_mpa;
    }
  for (int i = 0; i < 20; i++)
    {
      g_autoptr (BsPlan) plan = shop_new_perfect ();
      for (guint k = 0; k < 8; k++)
        slab_at (plan, k)->length = 600.0 + 100.0 * i;
      BsClampRule rule = rule_of (plan);
      g_autoptr (GArray) positions = rule.positions;
      g_assert_cmpint (rule.n, >=, n);
      n = rule.n;
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clamping/by-hand", test_by_hand);
  g_test_add_func ("/clamping/positions", test_positions);
  g_test_add_func ("/clamping/cauls", test_cauls);
  for (gsize i = 0; i < G_N_ELEMENTS (caul_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/clamping/choice-of-cauls/%s", caul_rows[i].path);
      g_test_add_data_func (path, &caul_rows[i], test_choice_of_cauls);
    }
  g_test_add_func ("/clamping/thickest-cauls", test_thickest_cauls);
  g_test_add_func ("/clamping/kinds-together", test_kinds_together);
  g_test_add_func ("/clamping/too-weak", test_too_weak);
  g_test_add_func ("/clamping/no-clamps", test_no_clamps);
  g_test_add_func ("/clamping/none-reach", test_none_reach);
  g_test_add_func ("/clamping/unknown-wood", test_unknown_wood);
  g_test_add_func ("/clamping/one-lamination", test_one_lamination);
  g_test_add_func ("/clamping/pressure-of-two-woods", test_pressure_of_two_woods);
  g_test_add_func ("/clamping/monotony", test_monotony);
  return g_test_run ();
}
