/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/milling-need.h"

#include "core/normal.h"
#include "core/random.h"

#include <math.h>

static BsMillingWish
usual_wish (void)
{
  return (BsMillingWish){ 40.0, 63.0, 2000.0, .count = 1, .strips = 1, .confidence = 0.9 };
}

/* By hand, for a habit of one figure: strip 63 + 2 + 2 = 67. Bow 4 +- 2 at 2 m stays; the rest is
 * nothing. z of 1 - 0.1/2 is 1.64485. Thickness 40 + 1 + 4 + 2 z; width 67 + 1; length + 50. */
static void
test_by_hand (void)
{
  BsMillingWish wish = usual_wish ();
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = { .bow = { 4.0, 2.0 } };
  BsMillingNeed need;

  bs_milling_need (&wish, &habit, &shop, &need);
  g_assert_cmpfloat_with_epsilon (need.deviations, 1.64485, 5e-6);
  g_assert_cmpfloat_with_epsilon (need.thickness, 45.0 + 2.0 * 1.64485, 1e-4);
  g_assert_cmpfloat_with_epsilon (need.width, 68.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (need.length, 2050.0, 1e-9);
}

/* Half the length has a quarter of the bow. */
static void
test_shorter_needs_less (void)
{
  BsMillingWish wish = usual_wish ();
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = { .bow = { 4.0, 2.0 } };
  BsMillingNeed need;

  wish.length = 1000.0;
  bs_milling_need (&wish, &habit, &shop, &need);
  g_assert_cmpfloat_with_epsilon (need.loss, 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (need.loss_deviation, 0.5, 1e-12);
}

/* Surer, more of them, longer, wider: never a thinner or narrower board. */
static void
test_monotone (void)
{
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = bs_warp_habit_default ();
  BsMillingWish usual = usual_wish (), wishes[5];
  BsMillingNeed base, other;

  for (guint i = 0; i < G_N_ELEMENTS (wishes); i++)
    wishes[i] = usual;
  wishes[0].confidence = 0.99;
  wishes[1].count = 20;
  wishes[2].length = 2500.0;
  wishes[3].width = 90.0;
  wishes[4].strips = 3;
  bs_milling_need (&usual, &habit, &shop, &base);
  for (guint i = 0; i < G_N_ELEMENTS (wishes); i++)
    {
      bs_milling_need (&wishes[i], &habit, &shop, &other);
      g_assert_cmpfloat (other.thickness, >=, base.thickness);
      g_assert_cmpfloat (other.width, >=, base.width);
    }
}

static double
draw (BsRandom *random, const BsScatter *scatter)
{
  return scatter->mean
         + scatter->deviation * bs_normal_quantile (fmax (bs_random_uniform (random), 1e-12));
}

static gboolean
mill_by_chance (BsRandom *random, const BsMillingWish *wish, const BsMillingNeed *need)
{
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = bs_warp_habit_default ();
  double thickness = need->thickness - draw (random, &habit.thickness);
  double bow = draw (random, &habit.bow), cup = draw (random, &habit.cup);
  double twist = draw (random, &habit.twist), crook = draw (random, &habit.crook);
  BsRough piece = { 2000.0, 200.0, thickness, .bow = bow, .cup = cup, .twist = twist };
  BsRough edge = { 2000.0, need->width, 1.0, .crook = crook };
  BsRough strip = bs_milling_piece (&piece, 2000.0, bs_milling_strip (63.0, 2000.0, &shop));

  return bs_milling_thickness (&strip, shop.allowance) >= wish->thickness
         && bs_milling_count (&edge, wish->width, &shop) >= 1;
}

/* A second method: boards of the size asked for, drawn by chance and milled by the closed form,
 * give all 20 laminations at least as often as was asked. 5000 rounds: at 90 % the share found has
 * a standard error below 0.5 %. */
static void
test_holds_by_chance (void)
{
  const int rounds = 5000;
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = bs_warp_habit_default ();
  BsMillingWish wish = usual_wish ();
  BsMillingNeed need;
  BsRandom random = bs_random_init (1);
  int good = 0;

  wish.count = 20;
  bs_milling_need (&wish, &habit, &shop, &need);
  for (int i = 0; i < rounds; i++)
    {
      int n = 0;
      while (n < wish.count && mill_by_chance (&random, &wish, &need))
        n++;
      good += n == wish.count ? 1 : 0;
    }
  g_assert_cmpfloat ((double)good / rounds, >=, 0.9);
}

/* Boards of 1 and 3 mm at 2 m have mean 2 and deviation sqrt 2; what is measured on half the length
 * counts four times. */
static void
test_measure (void)
{
  const BsRough boards[] = {
    { 2000, 200, 50, .bow = 1, .crook = -1, .cup = 1, .twist = 1 },
    { 1000, 100, 50, .bow = -0.75, .crook = 0.75, .cup = 0.75, .twist = 0.75 },
  };
  BsWarpHabit habit = bs_warp_habit_default ();

  g_assert_false (bs_warp_habit_measure (&habit, boards, 1));
  g_assert_cmpfloat_with_epsilon (habit.bow.mean, 4.0, 1e-12);
  g_assert_true (bs_warp_habit_measure (&habit, boards, 2));
  g_assert_cmpfloat_with_epsilon (habit.bow.mean, 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (habit.bow.deviation, G_SQRT2, 1e-12);
  g_assert_cmpfloat_with_epsilon (habit.crook.mean, 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (habit.cup.mean, 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (habit.twist.deviation, G_SQRT2, 1e-12);
  g_assert_cmpfloat_with_epsilon (habit.thickness.deviation, 0.5, 1e-12);
}

/* A thick lamination of one layer or of two, of straight boards: 61.5 or 2 x 31.25 mm are needed;
 * of the European sizes 65 and 32 mm. Volumes by hand. */
static void
test_layers (void)
{
  const BsLumberSeries *series = bs_lumber_series (BS_LUMBER_EN_HARDWOOD);
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = { 0 };
  BsMillingWish wish = usual_wish ();

  wish.thickness = 60.5;
  BsLayerWay one = bs_milling_layers (1, &wish, &habit, &shop, series, 0.0);
  BsLayerWay two = bs_milling_layers (2, &wish, &habit, &shop, series, 0.0);
  g_assert_cmpstr (series->rows[one.row].name, ==, "65");
  g_assert_cmpstr (series->rows[two.row].name, ==, "32");
  g_assert_cmpfloat_with_epsilon (one.volume, 65.0 * 68.0 * 2050.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (two.volume, 64.0 * 68.0 * 2050.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (two.glue_area, 63.0 * 2000.0, 1e-9);

  g_assert_cmpfloat_with_epsilon (bs_milling_layers_cost (&one, 200000.0, NAN),
                                  65.0 * 68.0 * 2050.0 * 2e-4, 1e-6);
  g_assert_cmpfloat_with_epsilon (bs_milling_layers_cost (&two, 150000.0, 300.0),
                                  64.0 * 68.0 * 2050.0 * 1.5e-4 + 0.126 * 300.0, 1e-6);
  g_assert_true (isnan (bs_milling_layers_cost (&two, 150000.0, NAN)));
}

/* Sold at 20 % and dried since, the 32 mm size no longer does for 31.5 mm. */
static void
test_layers_dried (void)
{
  const BsLumberSeries *series = bs_lumber_series (BS_LUMBER_EN_HARDWOOD);

  g_assert_cmpstr (series->rows[bs_lumber_least (series, 31.5, 0.0)].name, ==, "32");
  g_assert_cmpstr (series->rows[bs_lumber_least (series, 31.5, -0.025)].name, ==, "40");
  g_assert_cmpint (bs_lumber_least (series, 101.0, 0.0), ==, -1);
}

static void
test_none_thick_enough (void)
{
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = bs_warp_habit_default ();
  BsMillingWish wish = usual_wish ();

  wish.thickness = 140.0;
  BsLayerWay way
      = bs_milling_layers (1, &wish, &habit, &shop, bs_lumber_series (BS_LUMBER_EN_HARDWOOD), 0.0);
  g_assert_cmpint (way.row, ==, -1);
  g_assert_true (isnan (bs_milling_layers_cost (&way, 1.0, 1.0)));
}

static void
test_explain (void)
{
  BsMillingShop shop = bs_milling_shop_default ();
  BsWarpHabit habit = bs_warp_habit_default ();
  BsMillingWish wish = usual_wish ();
  BsMillingNeed need;
  BsWorking why;

  bs_milling_need (&wish, &habit, &shop, &need);
  bs_milling_need_explain (&need, &wish, &shop, &why);
  const BsTerm *terms = why.terms;
  g_assert_cmpfloat_with_epsilon (why.value,
                                  terms[0].value + 2.0 * terms[1].value + terms[2].value
                                      + terms[3].value * terms[4].value,
                                  1e-12);
  g_assert_cmpfloat (why.low, <, why.value);

  /* one strip: its sawn width, the edge, the crook and its scatter */
  bs_milling_need_explain_width (&need, &wish, &shop, &why);
  g_assert_cmpfloat_with_epsilon (why.terms[0].value, 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (
      why.value, terms[2].value + terms[4].value + terms[5].value + terms[7].value * terms[6].value,
      1e-9);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/milling-need/by-hand", test_by_hand);
  g_test_add_func ("/milling-need/shorter-needs-less", test_shorter_needs_less);
  g_test_add_func ("/milling-need/monotone", test_monotone);
  g_test_add_func ("/milling-need/holds-by-chance", test_holds_by_chance);
  g_test_add_func ("/milling-need/measure", test_measure);
  g_test_add_func ("/milling-need/layers", test_layers);
  g_test_add_func ("/milling-need/layers-dried", test_layers_dried);
  g_test_add_func ("/milling-need/none-thick-enough", test_none_thick_enough);
  g_test_add_func ("/milling-need/explain", test_explain);
  return g_test_run ();
}
