/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/moisture.h"

/* Values against the handbook: tests/published/moisture.c. Here what must hold without a table. */

static void
test_damper_air_is_damper_wood (void)
{
  for (int t = 0; t <= 40; t += 5)
    for (int h = 1; h <= 100; h++)
      g_assert_cmpfloat (bs_moisture_emc (t, h), >, bs_moisture_emc (t, h - 1));
}

static void
test_dry_air_is_dry_wood (void)
{
  g_assert_cmpfloat_with_epsilon (bs_moisture_emc (20.0, 0.0), 0.0, 1e-12);
}

/* The seasons may be named either way round. */
static void
test_seasons_in_order (void)
{
  BsSlab slab = { .dry_season = { 20.0, 60.0 }, .damp_season = { 20.0, 30.0 } };
  double low;
  double high;

  bs_moisture_seasons (&slab, &low, &high);
  g_assert_cmpfloat_with_epsilon (low, bs_moisture_emc (20.0, 30.0), 1e-12);
  g_assert_cmpfloat_with_epsilon (high, bs_moisture_emc (20.0, 60.0), 1e-12);
}

/* Above fibre saturation the wood swells no more and takes up water only: 10 points more weigh a
 * tenth of its dry mass. */
static void
test_density_above_saturation (void)
{
  double dry_mass = bs_moisture_density (0.60, 30.0) / 1.30;

  g_assert_cmpfloat_with_epsilon (
      bs_moisture_density (0.60, 60.0) - bs_moisture_density (0.60, 50.0), 0.1 * dry_mass, 1e-9);
}

static void
test_wetter_is_heavier (void)
{
  for (int m = 1; m <= 150; m++)
    g_assert_cmpfloat (bs_moisture_density (0.60, m), >, bs_moisture_density (0.60, m - 1));
}

/* Air of 21.1 C and 50 % humidity: 9.2 % (Wood handbook, table 4-2). */
static void
test_explain_shop (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  BsWorking why;

  plan->shop.climate = (BsClimate){ 21.1, 50.0 };
  bs_moisture_explain_shop (&plan->shop, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 9.2, 0.1);
  g_assert_cmpfloat_with_epsilon (why.value, why.terms[2].value, 1e-12);
  g_assert_cmpfloat_with_epsilon (why.terms[0].value, 21.1, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/moisture/damper-air-is-damper-wood", test_damper_air_is_damper_wood);
  g_test_add_func ("/moisture/dry-air-is-dry-wood", test_dry_air_is_dry_wood);
  g_test_add_func ("/moisture/seasons-in-order", test_seasons_in_order);
  g_test_add_func ("/moisture/density-above-saturation", test_density_above_saturation);
  g_test_add_func ("/moisture/wetter-is-heavier", test_wetter_is_heavier);
  g_test_add_func ("/moisture/explain-shop", test_explain_shop);
  return g_test_run ();
}
