/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/milling-need.h"
#include "core/normal.h"

#include <math.h>

#define IN 25.4
#define FT (12.0 * IN)

/* Standard surfaced thicknesses: NHLA, Rules for the measurement and inspection of hardwood and
 * cypress (from memory; 4/4 to 16/4 agree with trade lists that were read). */
typedef struct
{
  const char *name;
  double rough_in, surfaced_in;
} SurfacedRow;

static const SurfacedRow surfaced_rows[] = {
  { "3/8", 0.375, 3.0 / 16 },   { "1/2", 0.5, 5.0 / 16 },  { "5/8", 0.625, 7.0 / 16 },
  { "3/4", 0.75, 9.0 / 16 },    { "4/4", 1.0, 13.0 / 16 }, { "5/4", 1.25, 1 + 1.0 / 16 },
  { "6/4", 1.5, 1 + 5.0 / 16 }, { "7/4", 1.75, 1.5 },      { "8/4", 2.0, 1.75 },
  { "10/4", 2.5, 2.25 },        { "12/4", 3.0, 2.75 },     { "14/4", 3.5, 3.25 },
  { "16/4", 4.0, 3.75 },
};

static void
test_surfaced (void)
{
  const BsLumberSeries *series = bs_lumber_series (BS_LUMBER_QUARTERS);

  g_assert_cmpuint (series->n_rows, ==, G_N_ELEMENTS (surfaced_rows));
  for (guint i = 0; i < series->n_rows; i++)
    {
      g_assert_cmpstr (series->rows[i].name, ==, surfaced_rows[i].name);
      g_assert_cmpfloat_with_epsilon (series->rows[i].sold, surfaced_rows[i].rough_in * IN, 1e-9);
      g_assert_cmpfloat_with_epsilon (series->rows[i].surfaced, surfaced_rows[i].surfaced_in * IN,
                                      1e-9);
    }
}

/* EN 1313-2 (hardwood) and EN 1313-1 (softwood), sizes at 20 % moisture; NIST PS 20-20, dry dressed
 * sizes in inches; all from memory but for the first and fourth of PS 20, read second-hand. */
static void
check_sizes (BsLumberKind kind, const double *sizes, guint n, double unit, double moisture)
{
  const BsLumberSeries *series = bs_lumber_series (kind);

  g_assert_cmpuint (series->n_rows, ==, n);
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat_with_epsilon (series->rows[i].sold, sizes[i] * unit, 1e-9);
  g_assert_cmpfloat_with_epsilon (series->moisture_pct, moisture, 1e-9);
}

static void
test_en_1313 (void)
{
  const double hardwood[] = { 20, 27, 32, 40, 50, 60, 65, 70, 80, 100 };
  const double softwood[] = { 16, 19, 22, 25, 32, 38, 44, 47, 50, 63, 75, 100 };

  check_sizes (BS_LUMBER_EN_HARDWOOD, hardwood, G_N_ELEMENTS (hardwood), 1.0, 20.0);
  check_sizes (BS_LUMBER_EN_SOFTWOOD, softwood, G_N_ELEMENTS (softwood), 1.0, 20.0);
}

static void
test_ps_20 (void)
{
  const double dry[] = { 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 3.5 };

  check_sizes (BS_LUMBER_DRESSED, dry, G_N_ELEMENTS (dry), IN, 19.0);
}

/* Thickness lost by one board. Worked by hand from the closed form of docs/timber-model.md; each
 * row is also found anew by looking. */
typedef struct
{
  const char *path;
  double bow, cup, twist;
  double wanted;
} LossRow;

static const LossRow loss_rows[] = {
  { "straight", 0.0, 0.0, 0.0, 0.0 },
  { "bow", 5.0, 0.0, 0.0, 5.0 },
  { "cup", 0.0, 2.0, 0.0, 2.0 },
  { "twist", 0.0, 0.0, 8.0, 4.0 },
  { "same-way", 6.0, 2.0, 0.0, 8.0 },
  { "opposite-ways", 6.0, -2.0, 0.0, 8.0 },
  { "all-same-way", 6.0, 2.0, 8.0, 10.0 },             /* 8/4 + 6 + 2 */
  { "bow-and-much-twist", 3.0, 0.0, 12.0, 6.75 },      /* 12/4 + 3 + 144/192 */
  { "all-opposite-ways", 3.0, -1.0, 4.0, 13.0 / 3.0 }, /* 3 + 16/192 + 1 + 16/64 */
  { "twist-rules", 0.5, 0.25, 8.0, 4.0 },              /* 8/4 + 8/4 */
};

/* Greatest less least height of the middle surface over a fine grid, at the best of many tilts. */
static double
look_for_loss (double bow, double cup, double twist)
{
  const int n = 100;
  double best = INFINITY;

  for (int tilt = -4; tilt <= 4; tilt++)
    for (int roll = -4; roll <= 4; roll++)
      {
        double high = -INFINITY, low = INFINITY;
        for (int i = 0; i <= n; i++)
          for (int j = 0; j <= n; j++)
            {
              double x = (double)i / n - 0.5, y = (double)j / n - 0.5;
              double z = bow * (1 - 4 * x * x) + cup * (1 - 4 * y * y) + twist * x * y
                         + 0.25 * tilt * x + 0.25 * roll * y;
              high = fmax (high, z);
              low = fmin (low, z);
            }
        best = fmin (best, high - low);
      }
  return best;
}

static void
test_loss (gconstpointer data)
{
  const LossRow *row = data;
  double loss = bs_milling_loss (row->bow, row->cup, row->twist);

  g_assert_cmpfloat_with_epsilon (loss, row->wanted, 1e-12);
  /* A spot of the grid lies within 1/200 of the true one, where the surface is level or an edge
   * falls off: 4 x 6 / 200^2 at most each way. */
  g_assert_cmpfloat_with_epsilon (look_for_loss (row->bow, row->cup, row->twist), loss, 0.002);
}

/* Board 2400 x 200 of 6, 2, 8: the whole loses 10, a piece 1200 x 60 has 1.5, 0.18, 1.2 (halves and
 * squares by hand) and loses 1.2/4 + 1.68. */
static void
test_piece (void)
{
  BsRough board = { 2400, 200, 50, .bow = 6, .crook = 4, .cup = 2, .twist = 8 };
  BsRough piece = bs_milling_piece (&board, 1200, 60);

  g_assert_cmpfloat_with_epsilon (bs_milling_thickness (&board, 0.5), 50 - 10 - 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (piece.bow, 1.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (piece.crook, 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (piece.cup, 0.18, 1e-12);
  g_assert_cmpfloat_with_epsilon (piece.twist, 1.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_milling_thickness (&piece, 0.5), 50 - 1.98 - 1, 1e-12);
}

/* The exact arc of 9 mm in 2440 mm leaves 2.25 mm in half its length: R = 2440^2 / 72 + 4.5, and
 * R - sqrt (R^2 - 610^2). */
static void
test_arc (void)
{
  BsRough board = { 2440, 100, 30, .bow = 9 };
  double radius = 2440.0 * 2440.0 / 72.0 + 4.5;
  double exact = radius - sqrt (radius * radius - 610.0 * 610.0);

  g_assert_cmpfloat_with_epsilon (exact, 2.25, 1e-3);
  g_assert_cmpfloat_with_epsilon (bs_milling_piece (&board, 1220, 100).bow, exact, 1e-3);
}

/* Normal quantiles to five places, as any table of the standard normal distribution has them. */
static void
test_normal (void)
{
  const double table[][2]
      = { { 0.5, 0.0 },       { 0.75, 0.67449 }, { 0.9, 1.28155 },   { 0.95, 1.64485 },
          { 0.975, 1.95996 }, { 0.99, 2.32635 }, { 0.999, 3.09023 }, { 0.9999, 3.71902 } };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      g_assert_cmpfloat_with_epsilon (bs_normal_quantile (table[i][0]), table[i][1], 5e-6);
      g_assert_cmpfloat_with_epsilon (bs_normal_quantile (1.0 - table[i][0]), -table[i][1], 5e-6);
    }
}

/* For laminations 4 1/2 in tall and 8 ft long a board of a little over 5 in gives one, two take 9
 * to 10 in, and 7 to 8 in gives only one. Common practice, no source. */
static void
test_widths_of_the_trade (void)
{
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = bs_warp_habit_default ();
  BsMillingWish wish
      = { 1.75 * IN, 4.5 * IN, 8.0 * FT, .count = 1, .strips = 1, .confidence = 0.9 };
  BsMillingNeed one, two;

  bs_milling_need (&wish, &habit, &shop, &one);
  wish.strips = 2;
  bs_milling_need (&wish, &habit, &shop, &two);
  g_assert_cmpfloat (one.width, >, 4.5 * IN);
  g_assert_cmpfloat (one.width, <, 5.5 * IN);
  g_assert_cmpfloat (two.width, >, 9.0 * IN);
  g_assert_cmpfloat (two.width, <, 10.0 * IN);

  BsRough board = { 8.0 * FT, 8.0 * IN, 2.0 * IN, .crook = 3.0 };
  g_assert_cmpint (bs_milling_count (&board, 4.5 * IN, &shop), ==, 1);
  board.width = 10.0 * IN;
  g_assert_cmpint (bs_milling_count (&board, 4.5 * IN, &shop), ==, 2);
}

/* Two pieces of 8/4 glued stand in for one of 12/4 (common practice, no source): what 12/4 finishes
 * at by the standard, two pieces no thicker than 8/4 give. */
static void
test_layers_of_the_trade (void)
{
  const BsLumberSeries *series = bs_lumber_series (BS_LUMBER_QUARTERS);
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = bs_warp_habit_default ();
  BsMillingWish wish = { 2.75 * IN, 100.0, 1500.0, .count = 1, .strips = 1, .confidence = 0.9 };
  BsLayerWay one = bs_milling_layers (1, &wish, &habit, &shop, series, 0.0);
  BsLayerWay two = bs_milling_layers (2, &wish, &habit, &shop, series, 0.0);

  g_assert_cmpstr (series->rows[one.row].name, ==, "12/4");
  g_assert_cmpfloat (series->rows[two.row].sold, <=, 2.0 * IN);
  g_assert_cmpfloat_with_epsilon (two.glue_area, 150000.0, 1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/milling/surfaced", test_surfaced);
  g_test_add_func ("/milling/en-1313", test_en_1313);
  g_test_add_func ("/milling/ps-20", test_ps_20);
  for (gsize i = 0; i < G_N_ELEMENTS (loss_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/milling/loss/", loss_rows[i].path, NULL);
      g_test_add_data_func (path, &loss_rows[i], test_loss);
    }
  g_test_add_func ("/milling/piece", test_piece);
  g_test_add_func ("/milling/arc", test_arc);
  g_test_add_func ("/milling/normal", test_normal);
  g_test_add_func ("/milling/widths-of-the-trade", test_widths_of_the_trade);
  g_test_add_func ("/milling/layers-of-the-trade", test_layers_of_the_trade);
  return g_test_run ();
}
