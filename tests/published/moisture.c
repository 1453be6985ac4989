/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/moisture.h"

#include <math.h>

/* Equilibrium moisture content against the handbook's table: Forest Products Laboratory 2010, Wood
 * handbook, FPL-GTR-190, table 4-2; from memory. Temperatures are its degrees C, which stand for
 * whole degrees F. The tolerance of 0.1 % is the rounding of both temperature and table; the fit
 * itself is said to depart from tabulated data by under 0.13 % in the mean (Simpson 1973, Wood and
 * Fiber 5(1):41-49). */
static const double humidities[] = { 20, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90 };

#define N_HUMIDITIES G_N_ELEMENTS (humidities)

typedef struct
{
  const char *path;
  double temperature_f;
  double emc[N_HUMIDITIES];
} GridRow;

static const GridRow grid[] = {
  { "30F", 30, { 4.6, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.4, 13.5, 14.9, 16.5, 18.5, 21.0 } },
  { "40F", 40, { 4.6, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.3, 13.5, 14.9, 16.5, 18.5, 21.0 } },
  { "50F", 50, { 4.6, 6.3, 7.1, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.4, 14.8, 16.4, 18.4, 20.9 } },
  { "60F", 60, { 4.6, 6.2, 7.0, 7.8, 8.6, 9.4, 10.2, 11.1, 12.1, 13.3, 14.6, 16.2, 18.2, 20.7 } },
  { "70F", 70, { 4.5, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11.0, 12.0, 13.1, 14.4, 16.0, 17.9, 20.5 } },
  { "80F", 80, { 4.4, 6.1, 6.8, 7.6, 8.3, 9.1, 9.9, 10.8, 11.7, 12.9, 14.2, 15.7, 17.7, 20.2 } },
  { "100F", 100, { 4.2, 5.8, 6.5, 7.2, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.6, 15.1, 17.0, 19.5 } },
};

static void
test_grid (gconstpointer data)
{
  const GridRow *row = data;
  double temperature_c = (row->temperature_f - 32.0) * 5.0 / 9.0;

  for (gsize i = 0; i < N_HUMIDITIES; i++)
    g_assert_cmpfloat_with_epsilon (bs_moisture_emc (temperature_c, humidities[i]), row->emc[i],
                                    0.1);
}

/* An extension specialist's rule of thumb, independent of the fit: 30 % humidity goes with about 6
 * %, 50 % with 9 %, 65 % with 12 %, 80 % with 16 % (Wengert, Univ. of Wisconsin-Madison, answers to
 * readers; read). */
static void
test_rule_of_thumb (void)
{
  g_assert_cmpfloat_with_epsilon (bs_moisture_emc (20.0, 30.0), 6.0, 0.5);
  g_assert_cmpfloat_with_epsilon (bs_moisture_emc (20.0, 50.0), 9.0, 0.5);
  g_assert_cmpfloat_with_epsilon (bs_moisture_emc (20.0, 65.0), 12.0, 0.5);
  g_assert_cmpfloat_with_epsilon (bs_moisture_emc (20.0, 80.0), 16.0, 0.5);
}

/* The Fahrenheit form of the same equation, fitted apart, in the same chapter; from memory. Its
 * coefficients are rounded for themselves: 0.1 % is the most that both differ by between 30 and 100
 * F. */
static double
emc_fahrenheit (double t, double humidity_pct)
{
  double h = humidity_pct / 100.0;
  double w = 330.0 + 0.452 * t + 0.00415 * t * t;
  double k = 0.791 + 0.000463 * t - 0.000000844 * t * t;
  double k1 = 6.34 + 0.000775 * t - 0.0000935 * t * t;
  double k2 = 1.09 + 0.0284 * t - 0.0000904 * t * t;

  return 1800.0 / w
         * (k * h / (1.0 - k * h)
            + (k1 * k * h + 2.0 * k1 * k2 * k * k * h * h)
                  / (1.0 + k1 * k * h + k1 * k2 * k * k * h * h));
}

static void
test_fahrenheit_form (void)
{
  for (int t = 30; t <= 100; t += 10)
    for (int h = 10; h <= 90; h += 10)
      g_assert_cmpfloat_with_epsilon (bs_moisture_emc ((t - 32.0) * 5.0 / 9.0, h),
                                      emc_fahrenheit (t, h), 0.1);
}

/* Density at 12 % is specific gravity x 1120 kg/m3 by its definition (Wood handbook, chapter 4;
 * from memory): red oak of 0.63 weighs 706 kg/m3, and a slab 2.0 x 0.7 x 0.06 m of it 59.3 kg. */
static void
test_density_of_red_oak (void)
{
  g_assert_cmpfloat_with_epsilon (bs_moisture_density (0.63, 12.0), 705.6, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_moisture_density (0.63, 12.0) * 2.0 * 0.7 * 0.06, 59.3, 0.05);
}

/* Northern red oak has 0.56 on the green volume, which comes to 0.615 at 12 % by the handbook's
 * formula; at 30 % the two volumes are one, so that the density is 560 x 1.3. */
static void
test_density_when_green (void)
{
  g_assert_cmpfloat_with_epsilon (bs_moisture_density (0.61478, 30.0), 560.0 * 1.3, 0.1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (grid); i++)
    {
      g_autofree char *path = g_strdup_printf ("/emc/table-4-2/%s", grid[i].path);
      g_test_add_data_func (path, &grid[i], test_grid);
    }
  g_test_add_func ("/emc/rule-of-thumb", test_rule_of_thumb);
  g_test_add_func ("/emc/fahrenheit-form", test_fahrenheit_form);
  g_test_add_func ("/density/red-oak", test_density_of_red_oak);
  g_test_add_func ("/density/green", test_density_when_green);
  return g_test_run ();
}
