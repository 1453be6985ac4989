/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/results.h"

#include "core/limits.h"
#include "shops.h"

#include <math.h>

static double
between (GRand *random, const BsLimit *limit)
{
  return g_rand_double_range (random, limit->least, limit->most);
}

/* Sizes spread over all of the range, small ones as likely as large ones. */
static double
size_within (GRand *random, const BsLimit *limit)
{
  double least = log (fmax (limit->least, 1e-3));
  return fmin (exp (g_rand_double_range (random, least, log (limit->most))), limit->most);
}

static void
randomise_lamination (GRand *random, BsLamination *self)
{
  bs_text_set (&self->wood, g_rand_int_range (random, 0, 8) > 0 ? "wood" : "nobody");
  self->length = size_within (random, &bs_limits.lamination_length);
  self->thickness = size_within (random, &bs_limits.lamination_thickness);
  self->height = size_within (random, &bs_limits.lamination_height);
  self->bow = between (random, &bs_limits.warp);
  self->crook = between (random, &bs_limits.warp);
  self->cup = between (random, &bs_limits.warp);
  self->twist = between (random, &bs_limits.warp);
  self->taper = fmax (between (random, &bs_limits.warp), -self->height);
  if (g_rand_boolean (random))
    {
      self->pith_y = between (random, &bs_limits.pith);
      self->pith_z = between (random, &bs_limits.pith);
      self->moisture_pct = between (random, &bs_limits.moisture);
    }
  self->run_out_top = g_rand_int_range (random, -1, 2);
  self->run_out_underside = g_rand_int_range (random, -1, 2);
}

/* Any plan whose numbers are accepted, sensible or not. */
static BsPlan *
random_plan (GRand *random)
{
  BsPlan *plan = slab_new ((guint)g_rand_int_range (random, 0, 20), 1000.0, 40.0, 60.0);

  shop_set_wood (plan, between (random, &bs_limits.sg), size_within (random, &bs_limits.comp_perp));
  for (guint i = 0; i < plan->laminations->len; i++)
    {
      BsPlacement *placement = &g_array_index (plan->order, BsPlacement, i);
      randomise_lamination (random, slab_at (plan, i));
      placement->orientation = (BsOrientation)g_rand_int_range (random, 0, BS_N_ORIENTATIONS);
      placement->start = between (random, &bs_limits.start);
    }
  for (int i = g_rand_int_range (random, 0, 4); i > 0; i--)
    shop_add_clamps (
        plan, g_rand_int_range (random, 0, 100), size_within (random, &bs_limits.clamp_force),
        size_within (random, &bs_limits.clamp_reach), size_within (random, &bs_limits.clamp_head));
  for (int i = g_rand_int_range (random, 0, 3); i > 0; i--)
    shop_add_cauls (plan, g_rand_int_range (random, 0, 10),
                    size_within (random, &bs_limits.caul_length),
                    size_within (random, &bs_limits.caul_thickness),
                    size_within (random, &bs_limits.caul_height));
  plan->slab.layup = g_rand_boolean (random) ? BS_LAYUP_ON_EDGE : BS_LAYUP_ON_FLAT;
  plan->slab.alternate_hearts = g_rand_boolean (random);
  plan->shop.climate.temperature_c = between (random, &bs_limits.temperature);
  plan->shop.climate.humidity_pct = between (random, &bs_limits.humidity);
  plan->slab.dry_season.humidity_pct = between (random, &bs_limits.humidity);
  plan->adhesive.is_moisture_curing = g_rand_boolean (random);
  return plan;
}

static void
assert_same (const BsResults *a, const BsResults *b)
{
  g_autofree char *first
      = g_strdup_printf ("%a %a %a %a %a %a %d %d %a", a->flatten.thickness, a->flatten.slope_x,
                         a->flatten.slope_y, a->clamps.force_n, a->mass_kg, a->glue_kg, a->clamps.n,
                         a->clamps.n_fitting, a->assembly.total_s);
  g_autofree char *second
      = g_strdup_printf ("%a %a %a %a %a %a %d %d %a", b->flatten.thickness, b->flatten.slope_x,
                         b->flatten.slope_y, b->clamps.force_n, b->mass_kg, b->glue_kg, b->clamps.n,
                         b->clamps.n_fitting, b->assembly.total_s);

  g_assert_cmpstr (first, ==, second);
  g_assert_cmpuint (a->findings->len, ==, b->findings->len);
  for (guint i = 0; i < a->findings->len; i++)
    {
      const BsFinding *f = &g_array_index (a->findings, BsFinding, i);
      const BsFinding *g = &g_array_index (b->findings, BsFinding, i);
      g_assert_cmpint (f->kind, ==, g->kind);
      g_assert_cmpint (f->severity, ==, g->severity);
      g_assert_cmpint (f->place, ==, g->place);
    }
}

/* 10,000 plans anywhere within the limits: nothing breaks, nothing is infinite or negative, and the
 * same plan gives the same bits. */
static void
test_random_plans (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20);

  for (int i = 0; i < 10000; i++)
    {
      g_autoptr (BsPlan) plan = random_plan (random);
      g_autoptr (BsResults) results = bs_evaluate (plan);
      g_autoptr (BsResults) again = bs_evaluate (plan);

      assert_same (results, again);
      g_assert_false (isinf (results->flatten.thickness) || results->flatten.thickness < 0.0);
      g_assert_false (isinf (results->clamps.force_n) || results->clamps.force_n < 0.0);
      g_assert_false (isinf (results->mass_kg) || results->mass_kg < 0.0);
      g_assert_false (isinf (results->clamps.reached_mpa));
      g_assert_true (results->assembly.total_s >= results->assembly.closed_s);
      g_assert_cmpint (results->clamps.n, >=, 2);
      g_assert_cmpint (results->order.total, ==, bs_order_terms_sum (results->order.terms));
      g_assert_cmpint (results->order.total, >=, 0);
    }
}

/* The plan as it looks to someone who walks round to the other long side. */
static BsPlan *
walk_round (const BsPlan *plan)
{
  BsPlan *round = bs_plan_copy (plan);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  guint n = plan->order->len;

  for (guint i = 0; i < n; i++)
    {
      const BsPlaced *placed = &stack->placed[n - 1 - i];
      BsPlacement *placement = &g_array_index (round->order, BsPlacement, i);
      g_ref_string_release (placement->lamination);
      placement->lamination = g_ref_string_acquire (placed->lamination->id);
      placement->orientation = placed->orientation ^ BS_ORIENTATION_END_FOR_END;
      placement->start = stack->length - placed->x - placed->length;
    }
  round->slab.shows_front = plan->slab.shows_back;
  round->slab.shows_back = plan->slab.shows_front;
  return round;
}

static int
count_kind (const BsResults *results, BsFindingKind kind)
{
  int count = 0;

  for (guint i = 0; i < results->findings->len; i++)
    count += g_array_index (results->findings, BsFinding, i).kind == kind;
  return count;
}

/* No number depends on which side one stands. Run-out is left out: its majority is a matter of
 * direction, and at a tie the other half gives way. */
static void
test_other_side (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (21);

  for (int i = 0; i < 300; i++)
    {
      g_autoptr (BsPlan) plan = random_plan (random);
      /* The lamination that starts at the left end of the slab keeps its length. */
      if (plan->order->len > 0)
        g_array_index (plan->order, BsPlacement, 0).start = 0.0;
      g_autoptr (BsPlan) round = walk_round (plan);
      g_autoptr (BsResults) a = bs_evaluate (plan);
      g_autoptr (BsResults) b = bs_evaluate (round);

      g_assert_cmpfloat_with_epsilon (a->clamps.area, b->clamps.area,
                                      1e-6 * (1.0 + a->clamps.area));
      g_assert_cmpfloat_with_epsilon (a->assembly.total_s, b->assembly.total_s, 1e-6 * 1e5);
      g_assert_cmpfloat_with_epsilon (a->stack->width, b->stack->width, 1e-9 * 1e4);
      if (!isnan (a->flatten.thickness))
        g_assert_cmpfloat_with_epsilon (a->flatten.thickness, b->flatten.thickness, 1e-5);
      for (int kind = 0; kind < BS_N_FINDING_KINDS; kind++)
        if (kind != BS_FINDING_RUN_OUT)
          g_assert_cmpint (count_kind (a, kind), ==, count_kind (b, kind));
    }
}

/* Units are how a plan is shown: they change no number. */
static void
test_units_change_nothing (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsPlan) inches = bs_plan_copy (plan);
  inches->units = BS_UNIT_SYSTEM_INCH;
  g_autoptr (BsResults) a = bs_evaluate (plan);
  g_autoptr (BsResults) b = bs_evaluate (inches);

  assert_same (a, b);
}

/* The results outlive the plan. */
static void
test_keeps_its_plan (void)
{
  BsPlan *plan = shop_new_perfect ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  bs_plan_unref (plan);

  bs_results_unref (bs_results_ref (results));
  g_assert_cmpfloat_with_epsilon (results->stack->plan->slab.width, 320.0, 1e-12);
  g_assert_cmpstr (results->why_time.terms[9].source, ==, results->stack->plan->adhesive.source);
}

/* The perfect plan by hand: straight laminations 45 mm high come out 45 mm thick; tests of the
 * other numbers stand with their files. */
static void
test_perfect (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsResults) results = bs_evaluate (plan);

  g_assert_cmpfloat_with_epsilon (results->flatten.thickness, 45.0, 1e-9);
  g_assert_cmpint (results->clamps.n, ==, 10);
  g_assert_cmpfloat_with_epsilon (results->assembly.total_s, 335.6, 1e-9);
  g_assert_cmpfloat_with_epsilon (results->glue_kg, 0.06804, 1e-9);
  g_assert_cmpfloat_with_epsilon (results->emc_low_pct, 7.72, 0.01);
}

/* Warp that was not measured counts as none: the slab has all its numbers, those of straight wood.
 */
static void
test_unmeasured_warp (void)
{
  g_autoptr (BsPlan) straight = shop_new_pressed (0), unmeasured = shop_new_pressed (0);

  for (guint i = 0; i < unmeasured->laminations->len; i++)
    {
      BsLamination *lamination = slab_at (unmeasured, i);
      lamination->bow = lamination->crook = lamination->cup = lamination->twist = NAN;
      lamination->taper = NAN;
    }
  g_autoptr (BsResults) wanted = bs_evaluate (straight), found = bs_evaluate (unmeasured);
  g_assert_cmpfloat (wanted->flatten.thickness, >, 0.0);
  g_assert_cmpfloat_with_epsilon (found->flatten.thickness, wanted->flatten.thickness, 1e-9);
  g_assert_cmpfloat_with_epsilon (found->clamps.force_n, wanted->clamps.force_n, 1e-9);
  g_assert_cmpfloat_with_epsilon (found->mass_kg, wanted->mass_kg, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/evaluate/perfect", test_perfect);
  g_test_add_func ("/evaluate/random-plans", test_random_plans);
  g_test_add_func ("/evaluate/other-side", test_other_side);
  g_test_add_func ("/evaluate/units-change-nothing", test_units_change_nothing);
  g_test_add_func ("/evaluate/keeps-its-plan", test_keeps_its_plan);
  g_test_add_func ("/evaluate/unmeasured-warp", test_unmeasured_warp);
  return g_test_run ();
}
