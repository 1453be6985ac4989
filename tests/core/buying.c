/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/buying.h"

#include "checks/cut-plan.h"

#include <string.h>

static const BsYardLength lengths[] = { { 2438.4, BS_CUT_UNLIMITED }, { 3048.0, 4 } };

/* 8/4 from 6 to 9 in, in 8 and 10 ft. */
static BsYardOffer
eight_quarters (void)
{
  return (BsYardOffer){
    .thickness = 50.8,
    .usable_thickness = 44.45,
    .width_least = 152.4,
    .width_most = 228.6,
    .lengths = lengths,
    .n_lengths = 2,
    .unit = BS_PRICE_BOARD_FOOT,
    .price_minor = 1000,
  };
}

/* 2 in x 6 1/4 in x 8 ft are 8 board feet as tallied, and 2 x 6.25 x 8 x 144 / 1728 in3
 * of 16.387064 cm3 each are 0.019664 m3. */
static void
test_price_units (void)
{
  const struct
  {
    BsPriceUnit unit;
    gint64 price, wanted;
  } rows[] = {
    { BS_PRICE_PIECE, 4500, 4500 },
    { BS_PRICE_BOARD_FOOT, 1000, 8000 },
    { BS_PRICE_CUBIC_METRE, 200000, 3933 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      BsYardOffer offer = eight_quarters ();
      offer.unit = rows[i].unit;
      offer.price_minor = rows[i].price;
      g_assert_cmpint (bs_yard_price (&offer, 6.25 * 25.4, 8.0 * 304.8), ==, rows[i].wanted);
    }
}

/* Not to be picked: the least width, paid as the mean of 7 1/2 in, which the tally takes as 8 in: 8
 * x 8 / 12 is 5 1/3, so 5 square feet and 10 board feet. */
static void
test_width_not_picked (void)
{
  BsYardOffer offer = eight_quarters ();
  g_autoptr (BsYardStock) yard = bs_yard_stock_new (&offer, 1, 25.4, NULL);
  const BsCutStock *stock = &g_array_index (yard->stock, BsCutStock, 0);

  g_assert_cmpuint (yard->stock->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (stock[0].width, 152.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (stock[0].thickness, 44.45, 1e-9);
  g_assert_cmpint (stock[0].price_minor, ==, 10000);
  g_assert_cmpint (stock[0].supply, ==, BS_CUT_UNLIMITED);
  g_assert_cmpint (stock[1].supply, ==, 4);
}

/* Picked in inches: 6, 7, 8, 9 in where the supply is open, the least width where it is not. */
static void
test_width_picked (void)
{
  BsYardOffer offer = eight_quarters ();
  g_autoptr (BsYardStock) yard = NULL;

  offer.may_pick = TRUE;
  yard = bs_yard_stock_new (&offer, 1, 25.4, NULL);
  g_assert_cmpuint (yard->stock->len, ==, 5);
  for (guint i = 0; i < 4; i++)
    {
      const BsCutStock *stock = &g_array_index (yard->stock, BsCutStock, i);
      g_assert_cmpfloat_with_epsilon (stock->width, (6.0 + i) * 25.4, 1e-9);
      g_assert_cmpuint (g_array_index (yard->offers, guint, i), ==, 0);
    }
}

static void
test_one_width (void)
{
  BsYardOffer offer = eight_quarters ();
  g_autoptr (BsYardStock) yard = NULL;

  offer.may_pick = TRUE;
  offer.width_most = offer.width_least;
  yard = bs_yard_stock_new (&offer, 1, 0.0, NULL);
  g_assert_cmpuint (yard->stock->len, ==, 2);
}

static void
test_empty_yard (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsYardStock) yard = bs_yard_stock_new (NULL, 0, 25.4, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (yard->stock->len, ==, 0);
}

/* Laminations of 2,000 x 140 x 40 from 8/4 or 6/4: only 8/4 is thick enough when surfaced, and two
 * boards of 6 in hold two. */
static void
test_order_from_a_yard (void)
{
  BsYardOffer offers[2] = { eight_quarters (), eight_quarters () };
  BsCutPart part = { 2000.0, 140.0, 40.0, 2, 0, 2, 2, FALSE };
  BsCutting cutting = bs_cutting_default ();
  g_autoptr (BsYardStock) yard = NULL;
  g_autoptr (BsCutPlan) plan = NULL;

  offers[0].thickness = 38.1;
  offers[0].usable_thickness = 33.3;
  offers[0].price_minor = 500;
  yard = bs_yard_stock_new (offers, 2, 25.4, NULL);
  cutting.stock = (const BsCutStock *)yard->stock->data;
  cutting.n_stock = yard->stock->len;
  cutting.parts = &part;
  cutting.n_parts = 1;
  plan = bs_cutting_solve (&cutting, NULL, NULL);
  cut_plan_assert_possible (&cutting, plan);
  g_assert_cmpuint (plan->boards->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      guint stock = g_array_index (plan->boards, BsCutBoard, i).stock;
      g_assert_cmpuint (g_array_index (yard->offers, guint, stock), ==, 1);
    }
  g_assert_cmpint (plan->price_minor, ==, 20000);
}

static void
test_refused (void)
{
  for (guint i = 0; i < 4; i++)
    {
      BsYardOffer offers[2] = { eight_quarters (), eight_quarters () };
      g_autoptr (GError) error = NULL;

      if (i == 0)
        offers[1].width_most = 100.0;
      else if (i == 1)
        offers[1].price_minor = -1;
      else if (i == 2)
        offers[1].usable_thickness = 60.0;
      else
        offers[1].thickness = 0.0;
      g_assert_null (bs_yard_stock_new (offers, 2, 25.4, &error));
      g_assert_error (error, BS_CUTTING_ERROR, BS_CUTTING_ERROR_INPUT);
      g_assert_nonnull (strstr (error->message, "Offer 2"));
    }
}

/* By hand: with one of two good, at least 1 good of n has the chance 1 - 0.5^n: 0.5, 0.75, 0.875,
 * 0.9375. All good of n = 3 with 0.9: 0.729; at least 3 of 4: 0.9^4 + 4 x 0.9^3 x 0.1 = 0.9477. */
static void
test_count_for_show (void)
{
  const struct
  {
    int wanted, on_show;
    double share, confidence;
    int n;
  } rows[] = {
    { 1, 1, 0.5, 0.9, 4 },    { 1, 1, 0.5, 0.85, 3 }, { 3, 3, 0.9, 0.7, 3 },
    { 3, 3, 0.9, 0.94, 4 },   { 5, 0, 0.1, 0.99, 5 }, { 7, 7, 1.0, 0.999, 7 },
    { 1, 1, 0.01, 0.99, -1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpint (
        bs_yard_count_for_show (rows[i].wanted, rows[i].on_show, rows[i].share, rows[i].confidence),
        ==, rows[i].n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/buying/price-units", test_price_units);
  g_test_add_func ("/buying/width-not-picked", test_width_not_picked);
  g_test_add_func ("/buying/width-picked", test_width_picked);
  g_test_add_func ("/buying/one-width", test_one_width);
  g_test_add_func ("/buying/empty-yard", test_empty_yard);
  g_test_add_func ("/buying/order-from-a-yard", test_order_from_a_yard);
  g_test_add_func ("/buying/refused", test_refused);
  g_test_add_func ("/buying/count-for-show", test_count_for_show);
  return g_test_run ();
}
