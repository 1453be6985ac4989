/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/purchase.h"

#include <math.h>

#include "checks/cut-plan.h"
#include "yards.h"

static const BsPurchaseLine *
get_line (const BsPurchase *purchase, guint i)
{
  return &g_array_index (purchase->lines, BsPurchaseLine, i);
}

static BsLack
get_lack (const BsPurchase *purchase, guint want)
{
  return g_array_index (purchase->shortfalls, BsShortfall, want).lack;
}

/* The trade's cases: common practice, no source. */

/* For 8 ft laminations a 12 ft board leaves a 4 ft piece, less what saw and ends take, that serves
 * other parts; a 10 ft board leaves 2 ft that does not. At one price for the foot, 4 boards of 12
 * ft (48 ft) do for 4 laminations and 4 legs; of 10 ft it takes 4 and, two legs to a board, 2 more
 * (60 ft). */
static void
test_twelve_feet (void)
{
  g_autoptr (BsPlan) plan = yard_plan (4, FEET (8.0), 30.0, INCHES (4.5));

  yard_part (plan, "leg", 4, FEET (3.0), INCHES (4.5), 30.0);
  yard_offer (plan, FEET (10.0), INCHES (6.0), INCHES (2.0), 1000);
  yard_offer (plan, FEET (12.0), INCHES (6.0), INCHES (2.0), 1200);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 10, NULL);
  cut_plan_assert_possible (&purchase->cutting, purchase->cuts);
  g_assert_cmpuint (purchase->lines->len, ==, 1);
  g_assert_cmpuint (get_line (purchase, 0)->offer, ==, 1);
  g_assert_cmpint (get_line (purchase, 0)->count, ==, 4);
  g_assert_cmpfloat_with_epsilon (bs_purchase_get_price (purchase), 4800.0, 1e-9);
  g_assert_true (purchase->cuts->is_price_least);

  g_ptr_array_remove_index (plan->offers, 1);
  g_autoptr (BsPurchase) short_boards = bs_purchase_new (plan, 10, NULL);
  g_assert_cmpint (get_line (short_boards, 0)->count, ==, 6);
}

/* A lamination 4 1/2 in wide needs a board a little over 5 in; two from one board need 9 to 10 and
 * rather 10; one of 7 to 8 in yields only one. */
static void
test_widths (void)
{
  const struct
  {
    double width;
    int n_boards;
  } rows[] = { { 5.0, 0 }, { 5.5, 20 }, { 7.0, 20 }, { 8.0, 20 }, { 9.0, 20 }, { 10.0, 10 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BsPlan) plan = yard_plan (20, FEET (8.0), 30.0, INCHES (4.5));

      yard_offer (plan, FEET (9.0), INCHES (rows[i].width), INCHES (2.0), 1000);
      g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
      g_assert_cmpint (purchase->n_boards, ==, rows[i].n_boards);
      if (rows[i].n_boards == 0)
        g_assert_cmpint (get_lack (purchase, 0), ==, BS_LACK_WIDTH);
    }
}

static BsPlan *
work_table (double length)
{
  BsPlan *plan = yard_plan (16, length, INCHES (1.25), INCHES (4.0));

  plan->units = BS_UNIT_SYSTEM_INCH;
  yard_part (plan, "leg", 8, INCHES (32.0), INCHES (5.0), INCHES (1.5));
  yard_part (plan, "rail", 4, INCHES (60.0), INCHES (5.0), INCHES (1.25));
  yard_part (plan, "foot", 4, INCHES (24.0), INCHES (4.0), INCHES (1.5));
  for (guint feet = 8; feet <= 12; feet += 2)
    {
      BsOffer *offer = yard_offer (plan, FEET (feet), INCHES (6.0), INCHES (2.0), 800);
      offer->width_most = INCHES (10.0);
      offer->may_pick = TRUE;
      offer->price_unit = BS_PRICE_BOARD_FOOT;
    }
  return plan;
}

/* A work table 8 ft by 2 ft with its base, from boards picked between 6 and 10 in: the careful
 * purchase is about a third above the bare need, here taken as 30 to 37 %. Of boards that lose an
 * inch at each end an 8 ft lamination takes one of 10 or 12 ft, and that comes about without spare
 * ones: 4 % of the need for what the saw must leave for the plane, 10 % for offcuts, the rest for
 * ends, crook and kerfs. Laminations of 94 in come out of boards of 8 ft; then 18 % would do, and
 * the third has room for 15 % of spare ones. */
static void
test_third_above (void)
{
  const struct
  {
    double length, spare_pct;
  } rows[] = { { FEET (8.0), 0.0 }, { INCHES (94.0), 15.0 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (BsPlan) plan = work_table (rows[i].length);

      plan->buying.spare_pct = rows[i].spare_pct;
      g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 10, NULL);
      g_assert_true (purchase->cuts->is_price_least);
      g_assert_cmpfloat (bs_purchase_get_extra_pct (purchase), >=, 30.0);
      g_assert_cmpfloat (bs_purchase_get_extra_pct (purchase), <=, 37.0);
    }
}

/* By hand: a 52 mm board of 2500 x 230 at 2000.00 for the m3 costs 2.5 x 0.23 x 0.052 x 2000 =
 * 59.80; its tally is 9 in x 8 ft / 12 = 6 square feet, in 8/4 12 board feet. Its 230 mm hold
 * three strips of 67 mm and the crook, its length one lamination. */
static void
test_by_hand (void)
{
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);
  BsOffer *offer = yard_offer (plan, 2500.0, 230.0, 52.0, 200000);

  offer->price_unit = BS_PRICE_CUBIC_METRE;
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 10, NULL);
  g_assert_cmpint (purchase->n_boards, ==, 1);
  g_assert_cmpfloat_with_epsilon (bs_purchase_get_price (purchase), 5980.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (purchase->board_feet, 12.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (purchase->bought_volume, 2500.0 * 230.0 * 52.0, 1.0);
  g_assert_cmpfloat_with_epsilon (purchase->bare_volume, 3.0 * 2000.0 * 60.0 * 52.0, 1.0);
  /* both ends off, the lamination, a kerf: 447 mm are kept, more than 300 */
  g_assert_cmpuint (purchase->offcuts->len, ==, 1);
  const BsPurchaseOffcut *offcut = &g_array_index (purchase->offcuts, BsPurchaseOffcut, 0);
  g_assert_cmpfloat_with_epsilon (offcut->length, 2500.0 - 50.0 - 2000.0 - 3.0, 0.5);
  g_assert_cmpint (offcut->want, ==, -1);
}

/* What a pile is not picked from counts with its least width and costs as its mean. */
static void
test_pile (void)
{
  g_autoptr (BsPlan) plan = yard_plan (1, 2000.0, 30.0, 60.0);
  BsOffer *offer = yard_offer (plan, 2500.0, 100.0, 52.0, 200000);

  offer->width_most = 200.0;
  offer->price_unit = BS_PRICE_CUBIC_METRE;
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_assert_cmpfloat_with_epsilon (get_line (purchase, 0)->width, 100.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (get_line (purchase, 0)->paid_width, 150.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_purchase_get_price (purchase), 3900.0,
                                  1e-9); /* 2.5 x 0.15 x 0.052 x 2000 */
}

/* A free board of the rack is paid for; one that a lamination names is not free. */
static void
test_rack (void)
{
  for (guint named = 0; named < 2; named++)
    {
      g_autoptr (BsPlan) plan = yard_plan (2, 2000.0, 30.0, 60.0);

      yard_offer (plan, 2500.0, 150.0, 52.0, 1000);
      yard_rack (plan, "plank", 2200.0, 160.0, 52.0);
      if (named)
        bs_text_set (&slab_at (plan, 1)->board, "plank");
      g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
      g_assert_cmpint (purchase->n_boards, ==, named ? 1 : 0);
      g_assert_cmpint (purchase->n_rack, ==, named ? 0 : 1);
      g_assert_true (isnan (bs_purchase_get_price (purchase)) == !named);
      g_assert_true (isnan (bs_purchase_get_extra_pct (purchase)) == !named);
    }
}

/* A lamination's cut, as laid out: a strip along the front edge. */
static void
add_cut (BsPlan *plan, const char *board, const char *piece, double x, double length, double width)
{
  g_autoptr (GRefString) on = g_ref_string_new (board), of = g_ref_string_new (piece);
  const BsCut cut = { .board = on, .piece = of, .x = x, .length = length, .width = width };

  bs_plan_add_cut (plan, &cut);
}

typedef struct
{
  const char *path;
  double length, width; /* of the board */
  double x;             /* where its cut begins */
  int n_boards, n_rack; /* to buy, of the rack */
} RestRow;

/* Three laminations of 2000 x 30 x 60 are sawn as strips of 60 + 2 x (1 + 2 x 0.5) = 64 mm, with 1
 * mm and a spring of 0.5 mm/m for each edge, and one has its cut. With 25 mm off each end, nothing
 * off the edges and kerfs of 3 mm, a strip more beside it takes 64 + 3 + 64 = 131 mm, behind it 25
 * + 2000
 * + 3 + 2000 + 25 = 4053 mm. The boards on offer hold one strip each. */
static const RestRow rest_rows[] = {
  { "beside", 2050.0, 131.0, 25.0, 1, 1 },
  { "two-beside", 2050.0, 198.0, 25.0, 0, 1 },
  { "too-narrow", 2050.0, 130.5, 25.0, 2, 0 },
  { "behind", 4053.0, 64.0, 25.0, 1, 1 },
  { "too-short", 4052.5, 64.0, 25.0, 2, 0 },
  { "cut-to-the-end", 4028.0, 64.0, 2028.0, 1, 1 },
  { "cut-in-the-middle", 4028.0, 64.0, 1000.0, 2, 0 },
  { "over-the-end", 4028.0, 131.0, 2029.0, 2, 0 },
};

/* What is left of a board serves like a board, and what was cut of it is not wanted again. */
static void
check_rest (gconstpointer data)
{
  const RestRow *row = data;
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);

  yard_offer (plan, 2050.0, 80.0, 52.0, 1000);
  yard_rack (plan, "plank", row->length, row->width, 52.0);
  add_cut (plan, "plank", slab_at (plan, 0)->id, row->x, 2000.0, 64.0);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 10, NULL);
  g_assert_cmpfloat_with_epsilon (g_array_index (purchase->wanted, BsWant, 0).sawn_width, 64.0,
                                  1e-9);
  g_assert_cmpint (purchase->n_boards, ==, row->n_boards);
  g_assert_cmpint (purchase->n_rack, ==, row->n_rack);
  g_assert_cmpuint (purchase->n_pieces, ==, 2);
  cut_plan_assert_possible (&purchase->cutting, purchase->cuts);
}

/* By hand: of 2050 x 198 x 52 two strips are sawn beside one that was, and then nothing but kerfs
 * and ends are lost: 2050 x 198 - 3 x 2000 x 64. */
static void
test_rest_waste (void)
{
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);

  yard_rack (plan, "plank", 2050.0, 198.0, 52.0);
  yard_rack (plan, "other", 2050.0, 64.0, 52.0);
  add_cut (plan, "plank", slab_at (plan, 0)->id, 25.0, 2000.0, 64.0);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 10, NULL);
  g_assert_cmpint (purchase->n_rack, ==, 1);
  g_assert_cmpfloat_with_epsilon (purchase->sawn_volume, 2050.0 * 198.0 * 52.0, 1.0);
  g_assert_cmpfloat_with_epsilon (purchase->used_volume, 3.0 * 2000.0 * 64.0 * 52.0, 1.0);
  g_assert_cmpfloat_with_epsilon (purchase->bare_volume, 2.0 * 2000.0 * 60.0 * 52.0, 1.0);
}

/* A board of the rack gives what its defects leave, as where cuts are planned: a hole in its middle
 * leaves no clear strip. */
static void
test_rack_defect (void)
{
  for (guint holed = 0; holed < 2; holed++)
    {
      g_autoptr (BsPlan) plan = yard_plan (1, 2000.0, 30.0, 60.0);
      BsBoard *board = yard_rack (plan, "plank", 2200.0, 90.0, 52.0);
      const BsDefect hole = {
        .kind = BS_DEFECT_HOLE,
        .face = BS_FACE_TOP,
        .x_from = 1000.0,
        .x_to = 1020.0,
        .across_from = 30.0,
        .across_to = 60.0,
        .severity = 1.0,
      };

      yard_offer (plan, 2500.0, 150.0, 52.0, 1000);
      if (holed)
        g_array_append_val (board->defects, hole);
      g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
      g_assert_cmpint (purchase->n_rack, ==, holed ? 0 : 1);
    }
}

/* Of a measured board it is known what planing leaves: 40 mm out of 43 that are straight, and not
 * out of 43 that are 8 mm hollow; of one not measured the need of 80 % of the time is counted on.
 */
static void
test_measured_board (void)
{
  const double bows[] = { 0.0, 8.0, NAN };
  const int n_rack[] = { 1, 0, 0 };

  for (guint i = 0; i < G_N_ELEMENTS (bows); i++)
    {
      g_autoptr (BsPlan) plan = yard_plan (1, 2000.0, 40.0, 60.0);
      BsBoard *board = yard_rack (plan, "plank", 2200.0, 160.0, 43.0);

      yard_offer (plan, 2500.0, 150.0, 65.0, 1000);
      board->bow = bows[i];
      board->crook = 0.0;
      board->cup = 0.0;
      board->twist = 0.0;
      g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
      g_assert_cmpint (purchase->n_rack, ==, n_rack[i]);
    }
}

typedef struct
{
  const char *path;
  const char *wood;
  double length, width, thickness;
  int supply;
  BsLack lack;
  int n_missing;
} LackRow;

/* Three laminations of 2000 x 60 x 30. */
static const LackRow lack_rows[] = {
  { "none", "maple", 2500.0, 230.0, 52.0, BS_SUPPLY_OPEN, BS_LACK_NONE, 0 },
  { "wood", "oak", 2500.0, 230.0, 52.0, BS_SUPPLY_OPEN, BS_LACK_WOOD, 3 },
  { "thickness", "maple", 2500.0, 230.0, 32.0, BS_SUPPLY_OPEN, BS_LACK_THICKNESS, 3 },
  { "length", "maple", 2040.0, 230.0, 52.0, BS_SUPPLY_OPEN, BS_LACK_LENGTH, 3 },
  { "width", "maple", 2500.0, 62.0, 52.0, BS_SUPPLY_OPEN, BS_LACK_WIDTH, 3 },
  { "supply", "maple", 2500.0, 80.0, 52.0, 2, BS_LACK_SUPPLY, 1 },
  { "nothing-left", "maple", 2500.0, 80.0, 52.0, 0, BS_LACK_SUPPLY, 3 },
};

static void
check_lack (gconstpointer data)
{
  const LackRow *row = data;
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);
  BsOffer *offer = yard_offer (plan, row->length, row->width, row->thickness, 1000);

  bs_text_set (&offer->wood, row->wood);
  g_array_index (offer->lengths, BsOfferLength, 0).supply = row->supply;
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  const BsShortfall *shortfall = &g_array_index (purchase->shortfalls, BsShortfall, 0);
  g_assert_cmpint (shortfall->lack, ==, row->lack);
  g_assert_cmpint (shortfall->n_missing, ==, row->n_missing);
  g_assert_null (purchase->problem);
}

static void
test_empty (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);

  g_assert_null (purchase->cuts);
  g_assert_cmpint (get_lack (purchase, 0), ==, BS_LACK_WOOD);
  g_assert_true (isnan (bs_purchase_get_price (purchase)));
  g_assert_true (isnan (bs_purchase_get_waste_pct (purchase)));
}

/* Whatever a plan may hold is solved or answered in words. */
static void
test_absurd (void)
{
  g_autoptr (BsPlan) plan = yard_plan (2, bs_limits.lamination_length.most, 40.0, 60.0);
  BsOffer *offer = yard_offer (plan, bs_limits.board_length.most, bs_limits.board_width.most,
                               bs_limits.board_thickness.most, (gint64)bs_limits.price.most);

  offer->price_unit = BS_PRICE_CUBIC_METRE;
  yard_offer (plan, bs_limits.board_length.least, bs_limits.board_width.least,
              bs_limits.board_thickness.least, 0);
  yard_part (plan, "speck", 1000, bs_limits.lamination_length.least, bs_limits.part_width.least,
             bs_limits.part_thickness.least);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_assert_true (purchase->problem != NULL || purchase->cuts != NULL);
}

static void
count_better (gpointer result, gpointer data)
{
  BsPurchase *purchase = result;
  double *last = data;

  g_assert_cmpfloat (bs_purchase_get_price (purchase), <=, *last);
  *last = bs_purchase_get_price (purchase);
  bs_purchase_free (purchase);
}

/* It gets better while it works, ends with the best it told, and always the same way. */
static void
test_better (void)
{
  g_autoptr (BsPlan) plan = yard_plan (12, 2000.0, 30.0, 60.0);
  double last = G_MAXDOUBLE;
  BsProgress progress = { .better = count_better, .data = &last };

  yard_part (plan, "leg", 6, 800.0, 90.0, 30.0);
  yard_part (plan, "rail", 5, 1300.0, 110.0, 30.0);
  yard_offer (plan, 2500.0, 140.0, 52.0, 3700);
  yard_offer (plan, 3500.0, 190.0, 52.0, 7100);
  yard_offer (plan, 4300.0, 230.0, 52.0, 10400);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 10, &progress);
  g_autoptr (BsPurchase) again = bs_purchase_new (plan, 10, NULL);
  cut_plan_assert_possible (&purchase->cutting, purchase->cuts);
  g_assert_cmpfloat_with_epsilon (last, bs_purchase_get_price (purchase), 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_purchase_get_price (again), last, 1e-9);
  g_assert_cmpuint (again->cuts->pieces->len, ==, 23);
}

/* Each number's working ends in that number. */
static void
test_workings (void)
{
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);
  BsWorking why;

  yard_offer (plan, 2500.0, 230.0, 52.0, 2000);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  bs_purchase_explain_price (purchase, &why);
  g_assert_cmpfloat_with_epsilon (why.value, why.terms[0].value * why.terms[1].value, 1e-9);
  bs_purchase_explain_bound (purchase, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 2000.0, 1e-9);
  bs_purchase_explain_waste (purchase, &why);
  g_assert_cmpfloat_with_epsilon (why.value,
                                  100.0 * (1.0 - why.terms[0].value / why.terms[1].value), 1e-9);
  bs_purchase_explain_extra (purchase, &why);
  g_assert_cmpfloat_with_epsilon (why.value,
                                  100.0 * (why.terms[0].value / why.terms[1].value - 1.0), 1e-9);
  bs_purchase_explain_measure (purchase, &why);
  g_assert_cmpfloat_with_epsilon (why.value, purchase->bought_volume, 1e-9);
  bs_purchase_explain_thickness (purchase, 0, &why);
  g_assert_cmpfloat_with_epsilon (why.value,
                                  g_array_index (purchase->wanted, BsWant, 0).need.thickness, 1e-9);
}

/* Ten laminations and two spare ones: ten of twelve look well with a chance of 80 % when each does
 * with 87 % at least. By the binomial distribution: p = 0.88 gives 0.833, 0.87 gives 0.802, 0.86
 * gives 0.770. */
static void
test_count (void)
{
  g_autoptr (BsPlan) plan = yard_plan (10, 2000.0, 30.0, 60.0);
  BsWorking why;

  plan->buying.spare_pct = 20.0;
  plan->buying.confidence_pct = 80.0;
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  bs_purchase_explain_count (purchase, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 12.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (why.terms[0].value, 10.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (why.terms[2].value, 87.0, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/purchase/trade/twelve-feet", test_twelve_feet);
  g_test_add_func ("/purchase/trade/widths", test_widths);
  g_test_add_func ("/purchase/trade/third-above", test_third_above);
  g_test_add_func ("/purchase/by-hand", test_by_hand);
  g_test_add_func ("/purchase/pile", test_pile);
  g_test_add_func ("/purchase/rack", test_rack);
  for (guint i = 0; i < G_N_ELEMENTS (rest_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/purchase/rest/", rest_rows[i].path, NULL);
      g_test_add_data_func (path, &rest_rows[i], check_rest);
    }
  g_test_add_func ("/purchase/rest/waste", test_rest_waste);
  g_test_add_func ("/purchase/rack/defect", test_rack_defect);
  g_test_add_func ("/purchase/measured-board", test_measured_board);
  for (guint i = 0; i < G_N_ELEMENTS (lack_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/purchase/lack/", lack_rows[i].path, NULL);
      g_test_add_data_func (path, &lack_rows[i], check_lack);
    }
  g_test_add_func ("/purchase/empty", test_empty);
  g_test_add_func ("/purchase/absurd", test_absurd);
  g_test_add_func ("/purchase/better", test_better);
  g_test_add_func ("/purchase/workings", test_workings);
  g_test_add_func ("/purchase/count", test_count);
  return g_test_run ();
}
