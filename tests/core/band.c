/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/band.h"

#include <math.h>

/* Sizes around the eight columns that are taken together, and bands wider and narrower than that.
 */
static const struct
{
  const char *name;
  guint size, half_width;
} rows[] = {
  { "one", 1, 0 },          { "diagonal", 9, 0 },    { "tridiagonal", 40, 1 },
  { "within-block", 7, 3 }, { "one-block", 8, 7 },   { "band-wider-than-matrix", 11, 20 },
  { "odd-rest", 53, 12 },   { "even-rest", 64, 13 }, { "wide", 301, 74 },
};

/* A symmetric matrix that outweighs its off-diagonals, so positive definite (Gershgorin). */
static double
entry (guint half_width, guint row, guint column)
{
  guint low = MIN (row, column), high = MAX (row, column);

  if (high - low > half_width)
    return 0.0;
  return high == low ? 2.0 * half_width + 1.0 : sin (3.0 * high + 7.0 * low);
}

static void
fill (BsBand *band)
{
  for (guint column = 0; column < band->size; column++)
    for (guint row = column; row < MIN (band->size, column + band->half_width + 1); row++)
      bs_band_add (band, row, column, entry (band->half_width, row, column));
}

/* A x, computed from the matrix itself, must give back b. */
static void
check_solves (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  guint size = rows[i].size, half_width = rows[i].half_width;
  g_autoptr (BsBand) band = bs_band_new (size, half_width);
  g_autofree double *x = g_new (double, size);

  /* Twice, to see that a reset leaves nothing behind. */
  for (guint round = 0; round < 2; round++)
    {
      bs_band_reset (band);
      fill (band);
      g_assert_true (bs_band_factor (band));
      for (guint row = 0; row < size; row++)
        x[row] = cos (row + round);
      bs_band_solve (band, x);
      for (guint row = 0; row < size; row++)
        {
          double sum = 0.0;

          for (guint column = 0; column < size; column++)
            sum += entry (half_width, row, column) * x[column];
          g_assert_cmpfloat_with_epsilon (sum, cos (row + round), 1e-12);
        }
    }
}

/* The second difference with fixed ends: its factor is known, L(k,k)^2 = (k+1)/k for k from 1. */
static void
check_known_factor (void)
{
  g_autoptr (BsBand) band = bs_band_new (30, 1);

  for (guint k = 0; k < 30; k++)
    {
      bs_band_add (band, k, k, 2.0);
      if (k > 0)
        bs_band_add (band, k, k - 1, -1.0);
    }
  g_assert_true (bs_band_factor (band));
  for (guint k = 0; k < 30; k++)
    g_assert_cmpfloat_with_epsilon (band->inverse[k], sqrt ((k + 1.0) / (k + 2.0)), 1e-14);
}

static void
check_refuses_indefinite (void)
{
  g_autoptr (BsBand) band = bs_band_new (12, 2);

  for (guint k = 0; k < 12; k++)
    bs_band_add (band, k, k, k == 10 ? -1.0 : 1.0);
  g_assert_false (bs_band_factor (band));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/band/solves/%s", rows[i].name);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), check_solves);
    }
  g_test_add_func ("/band/known-factor", check_known_factor);
  g_test_add_func ("/band/refuses-indefinite", check_refuses_indefinite);
  return g_test_run ();
}
