/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/random.h"

/* First numbers of SplitMix64 from the seed 1234567, as they are given with the public C code of
 * the generator; from memory. */
static void
test_known_numbers (void)
{
  static const guint64 wanted[] = {
    G_GUINT64_CONSTANT (6457827717110365317),  G_GUINT64_CONSTANT (3203168211198807973),
    G_GUINT64_CONSTANT (9817491932198370423),  G_GUINT64_CONSTANT (4593380528125082431),
    G_GUINT64_CONSTANT (16408922859458223821),
  };
  BsRandom random = bs_random_init (1234567);

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    g_assert_cmpuint (bs_random_next (&random), ==, wanted[i]);
}

/* Each of 7 numbers 1/7 of the time: of 70 000 draws 10 000, give or take five times the root of
 * 70 000 x 1/7 x 6/7, which is 463. */
static void
test_below_is_even (void)
{
  BsRandom random = bs_random_init (5);
  int counts[7] = { 0 };

  for (guint i = 0; i < 70000; i++)
    counts[bs_random_below (&random, 7)]++;
  for (guint i = 0; i < 7; i++)
    g_assert_cmpint (ABS (counts[i] - 10000), <=, 463);
}

/* Mean 1/2, give or take five times the root of 1/12 / 100 000. */
static void
test_uniform (void)
{
  BsRandom random = bs_random_init (6);
  double sum = 0.0;

  for (guint i = 0; i < 100000; i++)
    {
      double x = bs_random_uniform (&random);
      g_assert_true (x >= 0.0 && x < 1.0);
      sum += x;
    }
  g_assert_cmpfloat_with_epsilon (sum / 100000.0, 0.5, 0.0046);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/random/known-numbers", test_known_numbers);
  g_test_add_func ("/random/below-is-even", test_below_is_even);
  g_test_add_func ("/random/uniform", test_uniform);
  return g_test_run ();
}
