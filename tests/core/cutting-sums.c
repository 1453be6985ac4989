/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-sums.h"

/* Boards at 600, 900 and 2000: 600, 900, 1200, 1500, 1800, 2000, 2100, 2400, 2600, 2700, 2900,
 * 3000. */
static void
test_next (void)
{
  const struct
  {
    gint64 amount, next;
  } rows[] = { { -5, 0 },      { 0, 0 },       { 1, 600 },          { 600, 600 },
               { 601, 900 },   { 1801, 2000 }, { 2001, 2100 },      { 2701, 2900 },
               { 2901, 3000 }, { 3000, 3000 }, { 3001, G_MAXINT64 } };
  BsCutBoards stock[] = { { .price = 600 }, { .price = 2000 }, { .price = 900 } };
  BsCutModel model = { .n_stock = 3, .stock = stock };
  BsCutSums sums;

  bs_cut_sums_init (&sums, &model, 3000);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpint (bs_cut_sums_next (&sums, rows[i].amount), ==, rows[i].next);
  bs_cut_sums_clear (&sums);
}

static void
test_nothing_above_most (void)
{
  BsCutBoards stock[] = { { .price = 700 } };
  BsCutModel model = { .n_stock = 1, .stock = stock };
  BsCutSums sums;

  bs_cut_sums_init (&sums, &model, 1000);
  g_assert_cmpint (bs_cut_sums_next (&sums, 700), ==, 700);
  g_assert_cmpint (bs_cut_sums_next (&sums, 701), ==, G_MAXINT64);
  bs_cut_sums_clear (&sums);
}

/* Without prices, and where the table would be too long, every sum is said to be possible. */
static void
test_unknown (void)
{
  BsCutBoards free_stock[] = { { .price = 0 } },
              dear_stock[] = { { .price = 900000001 }, { .price = 900000000 } };
  BsCutModel model = { .n_stock = 1, .stock = free_stock };
  BsCutSums sums;

  bs_cut_sums_init (&sums, &model, 1000);
  g_assert_cmpint (bs_cut_sums_next (&sums, 7), ==, 7);
  bs_cut_sums_clear (&sums);
  model = (BsCutModel){ .n_stock = 2, .stock = dear_stock };
  bs_cut_sums_init (&sums, &model, 2000000000);
  g_assert_cmpint (bs_cut_sums_next (&sums, 7), ==, 7);
  bs_cut_sums_clear (&sums);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cutting-sums/next", test_next);
  g_test_add_func ("/cutting-sums/nothing-above-most", test_nothing_above_most);
  g_test_add_func ("/cutting-sums/unknown", test_unknown);
  return g_test_run ();
}
