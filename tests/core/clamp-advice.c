/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-advice.h"

#include "plan-clamps.h"
#include "shops.h"

#include <math.h>

/* Five clamps, of which the one in the middle stands far from its neighbour. */
static BsPlan *
make_plan (void)
{
  static const double places[] = { 120.0, 420.0, 700.0, 1120.0, 1380.0 };
  BsPlan *plan = shop_new_pressed (0);

  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    bs_plan_place_clamp (plan, "clamp", places[i], 5000.0, i % 2 == 0);
  return plan;
}

/* Each trial, pressed afresh, gives what it promised; and none is worse than what is. */
static void
test_promises (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsClampAdvice) advice = bs_clamp_advice_new (plan, NULL);

  g_assert_cmpuint (advice->trials->len, >=, 3);
  for (guint i = 0; i < 3; i++)
    {
      const BsClampTrial *trial = &g_array_index (advice->trials, BsClampTrial, i);
      g_autoptr (GArray) clamps = bs_clamp_advice_try (advice, trial);
      g_autoptr (BsPlan) changed = plan_with_clamps (plan, clamps);
      g_autoptr (BsPressure) pressure = bs_pressure_new (changed, BS_PRESS_MODEL_SQUEEZE);

      g_assert_cmpfloat_with_epsilon (pressure->layout.least_mpa, trial->change.least_mpa, 1e-6);
      g_assert_cmpfloat_with_epsilon (pressure->below_length, trial->change.less_than_wanted, 0.5);
      g_assert_cmpfloat (pressure->below_length, <=, advice->pressure->below_length + 1.0);
    }
}

/* Where 420 mm gape one more clamp helps most. */
static void
test_best (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  g_autoptr (BsClampAdvice) advice = bs_clamp_advice_new (plan, NULL);
  const BsClampTrial *best = &g_array_index (advice->trials, BsClampTrial, 0);

  g_assert_cmpint (best->change.kind, ==, BS_CLAMP_CHANGE_ADD);
  g_assert_cmpfloat_with_epsilon (best->change.x, 910.0, 1e-9);
  g_autoptr (GArray) clamps = bs_clamp_advice_try (advice, best);
  g_assert_cmpuint (clamps->len, ==, 6);
  g_assert_cmpint (g_array_index (clamps, BsLayoutClamp, 3).is_above, !=,
                   g_array_index (clamps, BsLayoutClamp, 2).is_above);
}

/* With five clamps owned and all at their most, only moving is left. */
static void
test_only_what_is_owned (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);
  g_autoptr (BsClampAdvice) advice = NULL;

  kind->count = 5;
  kind->max_force_n = 5000.0;
  advice = bs_clamp_advice_new (plan, NULL);
  g_assert_cmpuint (advice->trials->len, >, 0);
  for (guint i = 0; i < advice->trials->len; i++)
    g_assert_cmpint (g_array_index (advice->trials, BsClampTrial, i).change.kind, ==,
                     BS_CLAMP_CHANGE_MOVE);
}

/* Straight laminations take no force to close. A bow of 2 mm in one of 40 x 80 x 1500 mm is
 * straightened by 384 E I d / (5 L^3) = 1175 N spread evenly (E 12100, I 80 x 40^3 / 12); the ten
 * share it among themselves and a tenth of a millimetre may stay, so that it takes less or about
 * that, but something. */
static void
test_closing_force (void)
{
  g_autoptr (BsPlan) straight = make_plan ();
  g_autoptr (BsPlan) bowed = make_plan ();
  g_autoptr (BsClampAdvice) none = bs_clamp_advice_new (straight, NULL), some = NULL;
  double alone = 384.0 * 12100.0 * (80.0 * 64000.0 / 12.0) * 2.0 / (5.0 * pow (1500.0, 3.0));

  slab_at (bowed, 5)->bow = 2.0;
  some = bs_clamp_advice_new (bowed, NULL);
  g_assert_cmpfloat_with_epsilon (none->closing_force, 0.0, 1e-9);
  g_assert_cmpfloat (some->closing_force, >, 0.02 * alone);
  g_assert_cmpfloat (some->closing_force, <, 2.0 * alone);
}

static gboolean
stop (double done, gpointer data)
{
  return FALSE;
}

static void
test_stopped (void)
{
  g_autoptr (BsPlan) plan = make_plan ();
  BsProgress progress = { stop, NULL };

  g_assert_null (bs_clamp_advice_new (plan, &progress));
}

static void
test_nothing (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsClampAdvice) advice = bs_clamp_advice_new (plan, NULL);

  g_assert_cmpuint (advice->trials->len, ==, 0);
  g_assert_true (isnan (advice->closing_force));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clamp-advice/promises", test_promises);
  g_test_add_func ("/clamp-advice/best", test_best);
  g_test_add_func ("/clamp-advice/only-what-is-owned", test_only_what_is_owned);
  g_test_add_func ("/clamp-advice/closing-force", test_closing_force);
  g_test_add_func ("/clamp-advice/stopped", test_stopped);
  g_test_add_func ("/clamp-advice/nothing", test_nothing);
  return g_test_run ();
}
