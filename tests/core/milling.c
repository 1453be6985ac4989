/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/milling.h"

#include "shops.h"

#include <math.h>

/* Closed forms and worked pieces: tests/published/milling.c. */

static const double steps[] = { -9.0, -3.0, -1.0, -0.2, 0.0, 0.2, 1.0, 3.0, 9.0 };

typedef void (*CheckLoss) (double bow, double cup, double twist, double loss);

static void
check_all (gconstpointer data)
{
  const CheckLoss *check = data;

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    for (guint j = 0; j < G_N_ELEMENTS (steps); j++)
      for (guint k = 0; k < G_N_ELEMENTS (steps); k++)
        (*check) (steps[i], steps[j], steps[k], bs_milling_loss (steps[i], steps[j], steps[k]));
}

/* Turned over, seen from the side, or of the other hand a board loses the same. */
static void
check_symmetric (double bow, double cup, double twist, double loss)
{
  g_assert_cmpfloat_with_epsilon (bs_milling_loss (-bow, -cup, twist), loss, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_milling_loss (cup, bow, twist), loss, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_milling_loss (bow, cup, -twist), loss, 1e-12);
}

/* Never less than the worst of the three alone, never more than bow, cup and half the twist. */
static void
check_bounds (double bow, double cup, double twist, double loss)
{
  double b = fabs (bow), c = fabs (cup), d = fabs (twist);

  g_assert_cmpfloat (loss, >=, fmax (fmax (b, c), d / 2.0) - 1e-12);
  g_assert_cmpfloat (loss, <=, b + c + d / 2.0 + 1e-12);
}

static void
check_monotone (double bow, double cup, double twist, double loss)
{
  double more = bow < 0.0 ? -0.1 : 0.1;

  g_assert_cmpfloat (bs_milling_loss (bow + more, cup, twist), >=, loss - 1e-12);
  g_assert_cmpfloat (bs_milling_loss (bow, cup, fabs (twist) + 0.1), >=, loss - 1e-12);
}

/* Twice as warped loses twice as much. */
static void
check_scale (double bow, double cup, double twist, double loss)
{
  g_assert_cmpfloat_with_epsilon (bs_milling_loss (2 * bow, 2 * cup, 2 * twist), 2 * loss, 1e-12);
}

static const CheckLoss symmetric = check_symmetric, bounds = check_bounds,
                       monotone = check_monotone, in_scale = check_scale;

static const BsRough board = { 2400, 200, 50, .bow = 6, .crook = 4, .cup = -2, .twist = 8 };

/* A piece of a piece is the piece; the whole is the board. */
static void
test_piece_of_a_piece (void)
{
  BsRough whole = bs_milling_piece (&board, 2400, 200);
  BsRough large = bs_milling_piece (&board, 1500, 150);
  BsRough small = bs_milling_piece (&large, 800, 70);
  BsRough direct = bs_milling_piece (&board, 800, 70);

  g_assert_cmpfloat_with_epsilon (whole.twist, board.twist, 1e-12);
  g_assert_cmpfloat_with_epsilon (small.bow, direct.bow, 1e-12);
  g_assert_cmpfloat_with_epsilon (small.crook, direct.crook, 1e-12);
  g_assert_cmpfloat_with_epsilon (small.cup, direct.cup, 1e-12);
  g_assert_cmpfloat_with_epsilon (small.twist, direct.twist, 1e-12);
}

/* Wherever a piece is cut from it loses the same: here from a corner, with the board's own surface
 * and the tilt that takes out its slopes in the middle of the piece. */
static void
test_piece_from_the_corner (void)
{
  const double part = 0.4, centre = part / 2.0 - 0.5;
  const int n = 80;
  BsRough piece = bs_milling_piece (&board, part * board.length, part * board.width);
  double high = -INFINITY, low = INFINITY;

  for (int i = 0; i <= n; i++)
    for (int j = 0; j <= n; j++)
      {
        double x = -0.5 + part * i / n, y = -0.5 + part * j / n;
        double z = board.bow * (1 - 4 * x * x) + board.cup * (1 - 4 * y * y) + board.twist * x * y
                   + (8 * board.bow - board.twist) * centre * x
                   + (8 * board.cup - board.twist) * centre * y;
        high = fmax (high, z);
        low = fmin (low, z);
      }
  g_assert_cmpfloat_with_epsilon (high - low, bs_milling_loss (piece.bow, piece.cup, piece.twist),
                                  0.002);
}

static void
test_nothing_left (void)
{
  BsRough thin = { 2000, 150, 5, .bow = 6 };

  g_assert_cmpfloat_with_epsilon (bs_milling_thickness (&thin, 0.5), 0.0, 1e-12);
}

/* 1000 x 60 finished: a strip of 60 + 0.5 + 2 = 62.5; of 200 - 0.69 (crook of 1000 in 2400) - 1 =
 * 198.3 with kerfs of 3: (198.3 + 3) / 65.5 = 3.07. */
static void
test_count (void)
{
  BsMillingShop shop = bs_milling_shop_default ();
  BsRough piece = bs_milling_piece (&board, 1000, 200);

  g_assert_cmpfloat_with_epsilon (bs_milling_strip (60, 1000, &shop), 62.5, 1e-12);
  g_assert_cmpint (bs_milling_count (&piece, 60, &shop), ==, 3);
  piece.width = 195.0;
  g_assert_cmpint (bs_milling_count (&piece, 60, &shop), ==, 2);
  piece.width = 1.0;
  g_assert_cmpint (bs_milling_count (&piece, 60, &shop), ==, 0);
}

/* Crosscut, then rip, then plane: each cut gains. Two lengths of 1000 out of 2400 - 50, three
 * strips each. */
static void
test_yield (void)
{
  BsMillingShop shop = bs_milling_shop_default ();
  BsMillingYield yield = bs_milling_yield (&board, 1000, 60, &shop);
  BsRough strip = bs_milling_piece (&board, 1000, 62.5);

  g_assert_cmpint (yield.n_lengths, ==, 2);
  g_assert_cmpint (yield.n_strips, ==, 3);
  g_assert_cmpfloat (yield.thickness_whole, <, yield.thickness_crosscut);
  g_assert_cmpfloat (yield.thickness_crosscut, <, yield.thickness);
  g_assert_cmpfloat_with_epsilon (yield.thickness, bs_milling_thickness (&strip, 0.5), 1e-12);
  g_assert_cmpfloat_with_epsilon (yield.yield,
                                  6.0 * yield.thickness * 60 * 1000 / (2400.0 * 200 * 50), 1e-12);
  g_assert_cmpint (bs_milling_yield (&board, 2390, 60, &shop).n_lengths, ==, 0);
  g_assert_cmpfloat_with_epsilon (bs_milling_yield (&board, 1000, 300, &shop).yield, 0.0, 1e-12);
}

/* A board's own crook, 4 mm over 2.4 m, as that of its strips: 4 / 2.4^2 at 1 m. */
static void
test_spring (void)
{
  BsMillingShop shop = bs_milling_shop_default ();

  shop.spring_per_m = bs_milling_spring_of (&board);
  g_assert_cmpfloat_with_epsilon (shop.spring_per_m, 4.0 / 5.76, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_milling_strip (60, 2400, &shop), 60.0 + 4.0 + 2.0, 1e-12);
}

typedef struct
{
  const char *path;
  BsRough piece;
  BsMillingCautions wanted;
} CautionRow;

static const CautionRow caution_rows[] = {
  { "none", { 1000, 100, 30 }, 0 },
  { "jointer", { 1000, 151, 30 }, BS_MILLING_WIDE_FOR_JOINTER },
  { "planer", { 1000, 301, 30 }, BS_MILLING_WIDE_FOR_JOINTER | BS_MILLING_WIDE_FOR_PLANER },
  { "short", { 299, 100, 30 }, BS_MILLING_SHORT },
  { "thin", { 1000, 100, 12.5 }, BS_MILLING_THIN },
  { "crooked", { 1000, 100, 30, .crook = -1.5 }, BS_MILLING_CROOKED },
  { "bowed", { 1000, 100, 30, .bow = 1.5 }, BS_MILLING_ROCKS },
  { "twisted", { 1000, 100, 30, .twist = 3.0 }, BS_MILLING_ROCKS },
};

static void
test_cautions (gconstpointer data)
{
  const CautionRow *row = data;
  BsMillingShop shop = bs_milling_shop_default ();

  g_assert_cmpint (bs_milling_cautions (&row->piece, &shop), ==, row->wanted);
}

static void
test_shop_of_a_plan (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  plan->slab.allowance = 0.8;
  plan->shop.jointer_width = 0.0;
  plan->shop.planer_width = 410.0;
  BsMillingShop shop = bs_milling_shop_of (plan);
  BsRough piece = { 1000, 100, 30 };

  g_assert_cmpfloat_with_epsilon (shop.allowance, 0.8, 1e-12);
  g_assert_cmpfloat_with_epsilon (shop.planer_width, 410.0, 1e-12);
  g_assert_cmpint (bs_milling_cautions (&piece, &shop), ==, BS_MILLING_WIDE_FOR_JOINTER);
}

static void
test_explain (void)
{
  BsWorking why;

  bs_milling_explain (&board, 0.5, &why);
  g_assert_cmpfloat_with_epsilon (
      why.value, why.terms[0].value - why.terms[1].value - 2.0 * why.terms[2].value, 1e-12);
}

static void
test_larger_than_the_board (void)
{
  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*length <= board->length*");
  BsRough piece = bs_milling_piece (&board, 2500, 100);
  g_test_assert_expected_messages ();
  g_assert_cmpfloat_with_epsilon (piece.length, board.length, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/milling/symmetric", &symmetric, check_all);
  g_test_add_data_func ("/milling/bounds", &bounds, check_all);
  g_test_add_data_func ("/milling/monotone", &monotone, check_all);
  g_test_add_data_func ("/milling/scale", &in_scale, check_all);
  g_test_add_func ("/milling/piece-of-a-piece", test_piece_of_a_piece);
  g_test_add_func ("/milling/piece-from-the-corner", test_piece_from_the_corner);
  g_test_add_func ("/milling/nothing-left", test_nothing_left);
  g_test_add_func ("/milling/count", test_count);
  g_test_add_func ("/milling/yield", test_yield);
  g_test_add_func ("/milling/spring", test_spring);
  for (gsize i = 0; i < G_N_ELEMENTS (caution_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/milling/cautions/", caution_rows[i].path, NULL);
      g_test_add_data_func (path, &caution_rows[i], test_cautions);
    }
  g_test_add_func ("/milling/shop-of-a-plan", test_shop_of_a_plan);
  g_test_add_func ("/milling/explain", test_explain);
  g_test_add_func ("/milling/larger-than-the-board", test_larger_than_the_board);
  return g_test_run ();
}
