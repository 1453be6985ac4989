/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/torque.h"

/* By hand, thread 12 x 3 (mean diameter 10.5, lead 3), friction 0.15, collar 4 mm:
 * lead angle atan (3 / 32.987) = 5.20 degrees, friction angle atan (0.15 / cos 15) = 8.83 degrees,
 * arm = 5.25 tan 14.03 + 0.15 4 = 1.911 mm; 10 N m gives 5.23 kN; efficiency 3 / (2 pi 1.911) = 25
 * %. */
static void
check_by_hand (void)
{
  BsScrew screw = bs_screw_default (10.5, 3.0);

  g_assert_cmpfloat_with_epsilon (screw.collar_radius, 4.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_screw_torque (&screw, 1.0), 1.911, 1e-3);
  g_assert_cmpfloat_with_epsilon (bs_screw_force (&screw, 10e3), 5230.0, 5.0);
  g_assert_cmpfloat_with_epsilon (bs_screw_efficiency (&screw), 0.25, 1e-3);
  g_assert_true (bs_screw_holds (&screw));
}

/* Without friction the work of a turn is the force times the lead: T = F lead / (2 pi). */
static void
check_no_friction (void)
{
  BsScrew screw = bs_screw_default (10.5, 3.0);

  screw.friction = 0.0;
  screw.collar_friction = 0.0;
  g_assert_cmpfloat_with_epsilon (bs_screw_torque (&screw, 1000.0), 1000.0 * 3.0 / (2.0 * G_PI),
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (bs_screw_efficiency (&screw), 1.0, 1e-12);
  g_assert_false (bs_screw_holds (&screw));
}

/* By hand, grease (0.10): friction angle 5.91 degrees, arm = 5.25 tan 11.11 + 0.10 4 = 1.431 mm, so
 * the force of the same torque grows 1.911 / 1.431 = 1.336 times. */
static void
check_grease (void)
{
  BsScrew dry = bs_screw_default (10.5, 3.0), greased = dry;

  greased.friction = 0.10;
  greased.collar_friction = 0.10;
  g_assert_cmpfloat_with_epsilon (bs_screw_force (&greased, 1.0) / bs_screw_force (&dry, 1.0),
                                  1.336, 1e-3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/torque/by-hand", check_by_hand);
  g_test_add_func ("/torque/no-friction", check_no_friction);
  g_test_add_func ("/torque/grease", check_grease);
  return g_test_run ();
}
