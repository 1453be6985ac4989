/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/wood-stiffness.h"

#include <math.h>

static const BsWoodStiffness wood = { .e_along = 12000.0,
                                      .e_radial = 1000.0,
                                      .e_tangential = 600.0,
                                      .g_lr = 900.0,
                                      .g_lt = 700.0,
                                      .g_rt = 60.0,
                                      .nu_rt = 0.6 };

/* By hand: 1/E at 45 degrees = (1/1000 + 1/600 + 1/60 - 1.2/1000) / 4 = 0.0181333 / 4 = 1/220.59.
 */
static const struct
{
  const char *name;
  double degrees, across, shear;
} rows[] = {
  { "radial", 0.0, 1000.0, 900.0 },
  { "between", 45.0, 220.588, 787.5 },
  { "tangential", 90.0, 600.0, 700.0 },
};

static void
check_turned (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  double angle = rows[i].degrees * G_PI / 180.0;

  g_assert_cmpfloat_with_epsilon (bs_wood_stiffness_across (&wood, angle), rows[i].across, 1e-2);
  g_assert_cmpfloat_with_epsilon (bs_wood_stiffness_shear (&wood, angle), rows[i].shear, 1e-6);
}

/* A pith far away makes the rings straight, so that the section has the stiffness of one angle. */
static void
check_far_pith (void)
{
  static const double degrees[] = { 0.0, 30.0, 45.0, 90.0, 120.0 };

  for (guint i = 0; i < G_N_ELEMENTS (degrees); i++)
    {
      double angle = degrees[i] * G_PI / 180.0, across, shear;

      bs_wood_stiffness_section (&wood, 40.0, 90.0, 1e7 * cos (angle), 1e7 * sin (angle), &across,
                                 &shear);
      g_assert_cmpfloat_with_epsilon (across, bs_wood_stiffness_across (&wood, angle), 0.1);
      g_assert_cmpfloat_with_epsilon (shear, bs_wood_stiffness_shear (&wood, angle), 0.1);
    }
}

/* By hand, pith in the middle of a square: 4 spots at 45 degrees, the middle one taken so too, 2
 * radial, 2 tangential. */
static void
check_boxed_heart (void)
{
  double across, shear;

  bs_wood_stiffness_section (&wood, 60.0, 60.0, 0.0, 0.0, &across, &shear);
  g_assert_cmpfloat_with_epsilon (across, 9.0 / (5.0 / 220.588 + 2.0 / 1000.0 + 2.0 / 600.0), 1e-2);
  g_assert_cmpfloat_with_epsilon (shear, 9.0 / (5.0 / 787.5 + 2.0 / 900.0 + 2.0 / 700.0), 1e-6);
}

static void
check_unknown_pith (void)
{
  double across, shear;

  bs_wood_stiffness_section (&wood, 40.0, 90.0, NAN, NAN, &across, &shear);
  g_assert_cmpfloat_with_epsilon (across, sqrt (1000.0 * 600.0), 1e-9);
  g_assert_cmpfloat_with_epsilon (shear, 787.5, 1e-9);
}

/* Typical figures used in laminating: a hardwood of 11,500 MPa is 900 MPa across and 850 in shear,
 * a softwood of 11,000 is 550 and 650, each within a half (docs/pressing-model.md, Stiffness). */
static void
check_typical (void)
{
  BsWoodStiffness hard = bs_wood_stiffness_typical (11500.0 / 1.1, TRUE);
  BsWoodStiffness soft = bs_wood_stiffness_typical (11000.0 / 1.1, FALSE);
  double across, shear;

  g_assert_cmpfloat_with_epsilon (hard.e_along, 11500.0, 1e-6);
  bs_wood_stiffness_section (&hard, 40.0, 90.0, NAN, NAN, &across, &shear);
  g_assert_cmpfloat_with_epsilon (across, 900.0, 450.0);
  g_assert_cmpfloat_with_epsilon (shear, 850.0, 425.0);
  bs_wood_stiffness_section (&soft, 40.0, 90.0, NAN, NAN, &across, &shear);
  g_assert_cmpfloat_with_epsilon (across, 550.0, 300.0);
  g_assert_cmpfloat_with_epsilon (shear, 650.0, 325.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/wood-stiffness/turned/%s", rows[i].name);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), check_turned);
    }
  g_test_add_func ("/wood-stiffness/far-pith", check_far_pith);
  g_test_add_func ("/wood-stiffness/boxed-heart", check_boxed_heart);
  g_test_add_func ("/wood-stiffness/unknown-pith", check_unknown_pith);
  g_test_add_func ("/wood-stiffness/typical", check_typical);
  return g_test_run ();
}
