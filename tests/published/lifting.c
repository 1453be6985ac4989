/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/lifting.h"

/* The revised NIOSH lifting equation: Waters, Putz-Anderson and Garg 1994, DHHS (NIOSH) 94-110,
 * with the factor tables that CCOHS gives (read). */

/* Factors as published, to their two places; the other four factors are 1 here. */
typedef struct
{
  const char *path;
  BsLift lift;
  double factor;
} FactorRow;

#define LIFT(h, v, d, a)                                                                           \
  {                                                                                                \
    .horizontal = (h)*10.0, .vertical = (v)*10.0, .travel = (d)*10.0, .asymmetry_deg = (a),        \
    .coupling = 1.0                                                                                \
  }

static const FactorRow factor_rows[] = {
  { "best", LIFT (25, 75, 25, 0), 1.00 },      { "reach/20", LIFT (20, 75, 25, 0), 1.00 },
  { "reach/30", LIFT (30, 75, 25, 0), 0.83 },  { "reach/40", LIFT (40, 75, 25, 0), 0.63 },
  { "reach/50", LIFT (50, 75, 25, 0), 0.50 },  { "reach/60", LIFT (60, 75, 25, 0), 0.42 },
  { "reach/64", LIFT (64, 75, 25, 0), 0.0 },   { "height/0", LIFT (25, 0, 25, 0), 0.78 },
  { "height/30", LIFT (25, 30, 25, 0), 0.87 }, { "height/176", LIFT (25, 176, 25, 0), 0.0 },
  { "travel/60", LIFT (25, 75, 60, 0), 0.90 }, { "travel/176", LIFT (25, 75, 176, 0), 0.0 },
  { "turn/90", LIFT (25, 75, 25, 90), 0.71 },  { "turn/45", LIFT (25, 75, 25, -45), 0.86 },
  { "turn/136", LIFT (25, 75, 25, 136), 0.0 },
};

static void
test_factor (gconstpointer data)
{
  const FactorRow *row = data;

  /* The tables round; 0.625 at 40 cm is their 0.63. */
  g_assert_cmpfloat_with_epsilon (bs_lift_limit (&row->lift) / 23.0, row->factor, 0.0051);
}

/* Whole limits, computed from the equation: 23 x 25/40 x (1 - 0.003 x 5) = 14.2; 23 x 25/45 x 0.865
 * x (0.82 + 4.5/60) x 0.95 = 9.4. */
static void
test_limit (void)
{
  const BsLift best = LIFT (25, 75, 25, 0), bench = LIFT (40, 70, 25, 0);
  BsLift floor = LIFT (45, 30, 60, 0);

  floor.coupling = 0.95;
  g_assert_cmpfloat_with_epsilon (bs_lift_limit (&best), 23.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_lift_limit (&bench), 14.2, 0.05);
  g_assert_cmpfloat_with_epsilon (bs_lift_limit (&floor), 9.4, 0.05);
}

/* Two people lift 2/3, three and more half of the sum of their single limits: HSE L23, from memory.
 */
static void
test_team (void)
{
  g_assert_cmpfloat_with_epsilon (bs_lift_team (23.0, 1), 23.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_lift_team (23.0, 2), 30.667, 1e-3);
  g_assert_cmpfloat_with_epsilon (bs_lift_team (23.0, 3), 34.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_lift_team (23.0, 6), 69.0, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (factor_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/lifting/factor/", factor_rows[i].path, NULL);
      g_test_add_data_func (path, &factor_rows[i], test_factor);
    }
  g_test_add_func ("/lifting/limit", test_limit);
  g_test_add_func ("/lifting/team", test_team);
  return g_test_run ();
}
