/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/buying.h"

#include <math.h>
#include <string.h>

#include "yards.h"

#define THIN "\u202f"

static void
test_class (void)
{
  const struct
  {
    double thickness;
    BsUnitSystem units;
    const char *text;
  } rows[] = {
    { 50.8, BS_UNIT_SYSTEM_INCH, "8/4" },
    { 50.8, BS_UNIT_SYSTEM_METRIC, "50.8" THIN "mm" },
    { 52.0, BS_UNIT_SYSTEM_METRIC, "52" THIN "mm" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = bs_words_class (rows[i].thickness, rows[i].units);
      g_assert_cmpstr (text, ==, rows[i].text);
    }
}

static void
test_board_length (void)
{
  g_autofree char *feet = bs_words_board_length (FEET (8.0), BS_UNIT_SYSTEM_INCH);
  g_autofree char *between = bs_words_board_length (INCHES (97.0), BS_UNIT_SYSTEM_INCH);
  g_autofree char *metric = bs_words_board_length (2500.0, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpstr (feet, ==, "8'");
  g_assert_cmpstr (between, ==, "97" THIN "in");
  g_assert_cmpstr (metric, ==, "2500" THIN "mm");
}

static void
test_want (void)
{
  g_autoptr (BsPlan) plan = yard_plan (15, 1530.0, 40.0, 63.5);

  plan->buying.spare_pct = 10.0;
  yard_part (plan, "leg", 4, 700.0, 90.0, 40.0);
  g_autoptr (GArray) wanted = bs_wanted_new (plan);
  g_autofree char *laminations
      = bs_words_want (&g_array_index (wanted, BsWant, 0), BS_UNIT_SYSTEM_METRIC);
  g_autofree char *legs = bs_words_want (&g_array_index (wanted, BsWant, 1), BS_UNIT_SYSTEM_METRIC);
  g_assert_cmpstr (laminations, ==,
                   "17 laminations of 1530 × 63.5 × 40" THIN "mm, 2 of them spare");
  g_assert_cmpstr (legs, ==, "4 of “leg”, 700 × 90 × 40" THIN "mm");
}

typedef struct
{
  const char *path;
  double length, width, thickness;
  int supply;
  const char *words; /* in what is said of it; NULL: nothing is */
} Row;

/* Three laminations of 2000 x 60 x 30, and what is said when a yard has no board for them. */
static const Row rows[] = {
  { "none", 2500.0, 230.0, 52.0, BS_SUPPLY_OPEN, NULL },
  { "thickness", 2500.0, 230.0, 20.0, BS_SUPPLY_OPEN, "add a thicker offer" },
  { "length", 2030.0, 230.0, 52.0, BS_SUPPLY_OPEN, "is 2050" THIN "mm long: add longer boards" },
  { "width", 2500.0, 60.0, 52.0, BS_SUPPLY_OPEN, "is narrower than" },
  { "supply", 2500.0, 80.0, 52.0, 2, "1 piece is missing of 3 laminations" },
};

static void
check_shortfall (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);
  BsOffer *offer = yard_offer (plan, row->length, row->width, row->thickness, 1000);

  g_array_index (offer->lengths, BsOfferLength, 0).supply = row->supply;
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_autofree char *text = bs_words_shortfall (purchase, 0);
  if (row->words == NULL)
    g_assert_null (text);
  else
    g_assert_nonnull (strstr (text, row->words));
}

static void
check_summary (BsPlan *plan, const char *words)
{
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_autofree char *text = bs_words_purchase (purchase);

  g_assert_cmpstr (text, ==, words);
}

static void
test_summary (void)
{
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);

  check_summary (plan, "The yard is empty: add what is offered, and what to buy follows.");
  yard_offer (plan, 2500.0, 230.0, 52.0, 0);
  check_summary (plan, "1 board to buy for 3 pieces. An offer has no price yet.");
  yard_offer (plan, 2500.0, 20.0, 52.0, 1000);
  g_ptr_array_remove_index (plan->offers, 0);
  check_summary (plan, "Nothing that is wanted can be cut from what is offered.");
  yard_offer (plan, 2500.0, 230.0, 52.0, 12345);
  check_summary (plan, "1 board to buy for 3 pieces: 123.45" THIN "EUR.");
  yard_rack (plan, "plank", 2500.0, 82.0, 52.0);
  g_array_set_size (plan->cuts, 0);
  yard_rack (plan, "wide", 2500.0, 230.0, 52.0);
  check_summary (plan, "Nothing to buy: the boards of the rack are enough.");
  for (guint i = 0; i < 3; i++)
    bs_text_set (&slab_at (plan, i)->board, "wide");
  check_summary (plan, "Nothing to buy: every lamination has its board and every part its cut.");
}

static void
test_bound (void)
{
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);

  yard_offer (plan, 2500.0, 230.0, 52.0, 12345);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_autofree char *best = bs_words_purchase_bound (purchase);
  g_assert_true (g_str_has_prefix (best, "Proven: it cannot be done for less, nor"));
  purchase->cuts->is_waste_least = FALSE;
  g_autofree char *least = bs_words_purchase_bound (purchase);
  g_assert_cmpstr (least, ==, "Proven: it cannot be done for less.");
  purchase->cuts->is_price_least = FALSE;
  purchase->cuts->bound_minor = 9876;
  g_autofree char *open = bs_words_purchase_bound (purchase);
  g_assert_nonnull (strstr (open, "less than 98.76" THIN "EUR"));
  g_assert_nonnull (strstr (open, "at most 20" THIN "%")); /* 1 - 9876 / 12345 */
}

/* Where a price is not known nothing is proven of it. */
static void
test_bound_without_price (void)
{
  g_autoptr (BsPlan) plan = yard_plan (3, 2000.0, 30.0, 60.0);
  BsWorking why;

  yard_offer (plan, 2500.0, 230.0, 52.0, 0);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_assert_cmpint (purchase->n_boards, >, 0);
  g_assert_null (bs_words_purchase_bound (purchase));
  bs_purchase_explain_bound (purchase, &why);
  g_assert_true (isnan (why.value));
}

/* Two layers are spoken of where one is not to be had or dearer, and only there. */
static void
test_layers (void)
{
  g_autoptr (BsPlan) plan = yard_plan (2, 1000.0, 60.0, 60.0);

  yard_offer (plan, 2500.0, 230.0, 40.0, 4000);
  g_autoptr (BsPurchase) thin = bs_purchase_new (plan, 0, NULL);
  g_autofree char *needed = bs_words_purchase_layers (thin, 0);
  g_assert_nonnull (strstr (needed, "No single board is thick enough"));
  g_assert_nonnull (strstr (needed, "price of the glue is not known"));

  yard_offer (plan, 2500.0, 230.0, 80.0, 4000);
  g_autoptr (BsPurchase) both = bs_purchase_new (plan, 0, NULL);
  g_assert_null (bs_words_purchase_layers (both, 0));

  ((BsOffer *)plan->offers->pdata[1])->price_minor = 40000;
  g_autoptr (BsPurchase) dear = bs_purchase_new (plan, 0, NULL);
  g_autofree char *cheaper = bs_words_purchase_layers (dear, 0);
  g_assert_nonnull (strstr (cheaper, "One layer of 80 takes"));
  g_assert_nonnull (strstr (cheaper, "Two thinner laminations side by side"));

  plan->slab.layup = BS_LAYUP_ON_FLAT;
  g_autoptr (BsPurchase) flat = bs_purchase_new (plan, 0, NULL);
  g_autofree char *pressed = bs_words_purchase_layers (flat, 0);
  g_assert_nonnull (strstr (pressed, "a press more"));
}

/* 3000 - 2 x 25 - 2000 - 3: 947 mm are left, enough for a leg of 800 but for no second lamination.
 */
static void
test_offcut (void)
{
  g_autoptr (BsPlan) plan = yard_plan (1, 2000.0, 30.0, 60.0);

  yard_part (plan, "leg", 1, 800.0, 60.0, 30.0);
  yard_offer (plan, 3000.0, 80.0, 52.0, 5000);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  const BsPurchaseOffcut offcuts[]
      = { { 0, 947.0, 80.0, 1 }, { 0, 947.0, 80.0, -1 }, { 0, 947.0, 80.0, 1 } };

  g_array_set_size (purchase->offcuts, 0);
  g_array_append_vals (purchase->offcuts, offcuts, G_N_ELEMENTS (offcuts));
  g_auto (GStrv) lines = bs_words_purchase_offcuts (purchase);
  g_assert_cmpuint (g_strv_length (lines), ==, 2);
  g_assert_cmpstr (lines[0], ==,
                   "2 × 947" THIN "mm long, 80" THIN "mm wide, 52" THIN
                   "mm: enough for another “leg”");
  g_assert_cmpstr (lines[1], ==, "947" THIN "mm long, 80" THIN "mm wide, 52" THIN "mm");
}

/* Of the rack it is told which board it is; what is to be bought has no name yet. A board that
 * gives nothing is not among them. */
static void
test_sawn_boards (void)
{
  g_autoptr (BsPlan) plan = yard_plan (2, 2000.0, 30.0, 60.0);

  yard_rack (plan, "short", 500.0, 80.0, 52.0);
  bs_text_set (&yard_rack (plan, "plank", 2050.0, 80.0, 52.0)->label, "B");
  yard_offer (plan, 3000.0, 80.0, 52.0, 5000);
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, 0, NULL);
  g_autoptr (BsPurchaseSawn) sawn = bs_purchase_sawn_new (purchase);
  g_assert_cmpuint (sawn->boards->len, ==, 2);
  g_autofree char *rack = bs_words_purchase_board (sawn, 0);
  g_autofree char *bought = bs_words_purchase_board (sawn, 1);
  g_assert_cmpstr (rack, ==, "Board B of the rack: 2050" THIN "mm × 80" THIN "mm, 52" THIN "mm");
  g_assert_cmpstr (bought, ==, "3000" THIN "mm × 80" THIN "mm, 52" THIN "mm");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/buying-words/class", test_class);
  g_test_add_func ("/buying-words/board-length", test_board_length);
  g_test_add_func ("/buying-words/sawn-boards", test_sawn_boards);
  g_test_add_func ("/buying-words/want", test_want);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/buying-words/shortfall/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], check_shortfall);
    }
  g_test_add_func ("/buying-words/summary", test_summary);
  g_test_add_func ("/buying-words/bound", test_bound);
  g_test_add_func ("/buying-words/bound-without-price", test_bound_without_price);
  g_test_add_func ("/buying-words/layers", test_layers);
  g_test_add_func ("/buying-words/offcut", test_offcut);
  return g_test_run ();
}
