/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/order.h"

#include "core/order-plan.h"
#include "core/text.h"
#include "slabs.h"

#define THIN "\u202f"

static BsPin
make_pin (BsPinKind kind, int place, const char *other)
{
  BsPin pin = { .kind = kind, .lamination = g_ref_string_new ("1"), .place = place };

  if (other != NULL)
    pin.other = g_ref_string_new (other);
  return pin;
}

typedef struct
{
  const char *path;
  BsPinKind kind;
  int place;
  const char *other;
  const char *words;
} PinRow;

/* The lamination "1" is labelled "A". */
static const PinRow pin_rows[] = {
  { "place", BS_PIN_PLACE, 2, NULL, "A at place 3" },
  { "neighbours", BS_PIN_NEIGHBOURS, -1, "2", "A beside 2" },
  { "top-up", BS_PIN_TOP_UP, -1, NULL, "A with its top up" },
  { "underside-up", BS_PIN_UNDERSIDE_UP, -1, NULL, "A with its underside up" },
};

static BsPlan *
new_plan (void)
{
  BsPlan *plan = slab_new (4, 1000.0, 40.0, 60.0);

  bs_text_set (&slab_at (plan, 0)->label, "A");
  return plan;
}

static void
test_pin (gconstpointer data)
{
  const PinRow *row = data;
  g_autoptr (BsPlan) plan = new_plan ();
  BsPin pin = make_pin (row->kind, row->place, row->other);
  g_autofree char *words = bs_words_pin (&pin, plan);

  g_assert_cmpstr (words, ==, row->words);
  g_ref_string_release (pin.lamination);
  g_clear_pointer (&pin.other, g_ref_string_release);
}

typedef struct
{
  gint32 cost, bound;
  const char *words;
} QualityRow;

static const QualityRow quality_rows[] = {
  { 10000, 10000, "Proved: no order is better." },
  { 9000, 10000, "Proved: no order is better." },
  { 0, 0, "Proved: no order is better." },
  { 10000, 0, "How much better an order can be is not known yet." },
  { 10000, 9300, "No order can be more than 7" THIN "% better." },
  /* 0.51 % would not be true if it were rounded to 0.5 */
  { 10000, 9949, "No order can be more than 0.6" THIN "% better." },
  { 10000, 9999, "No order can be more than 0.1" THIN "% better." },
};

static void
test_quality (gconstpointer data)
{
  const QualityRow *row = data;
  g_autofree char *words = bs_words_order_quality (row->cost, row->bound);

  g_assert_cmpstr (words, ==, row->words);
}

typedef struct
{
  const char *path;
  BsOrderChange change;
  const char *words;
} ChangeRow;

#define WHY "A stands at place 2 because anything else costs more; the least harmful change is "

static const ChangeRow change_rows[] = {
  { "pinned", { .kind = BS_ORDER_CHANGE_NONE }, "A stays as it is because of its pins." },
  { "move",
    { .kind = BS_ORDER_CHANGE_MOVE, .place = 3, .extra = 3500 },
    WHY "to place 4, which costs 3.5 more." },
  { "turn",
    { .kind = BS_ORDER_CHANGE_TURN, .orientation = BS_ORIENTATION_OVER, .extra = 1000 },
    WHY "to lay it otherwise (turned over), which costs 1 more." },
  { "exchange",
    { .kind = BS_ORDER_CHANGE_EXCHANGE, .candidate = 3, .extra = 250 },
    WHY "to exchange it for 4, which costs 0.25 more." },
  { "free-move", { .kind = BS_ORDER_CHANGE_MOVE, .place = 0 }, "A could as well go to place 1." },
  { "free-turn",
    { .kind = BS_ORDER_CHANGE_TURN, .orientation = BS_ORIENTATION_END_FOR_END },
    "A could as well lie otherwise: end for end." },
  { "free-exchange",
    { .kind = BS_ORDER_CHANGE_EXCHANGE, .candidate = 2 },
    "A could as well be exchanged for 3." },
};

/* A is candidate 0 and stands at the second place. */
static void
test_change (gconstpointer data)
{
  const ChangeRow *row = data;
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsOrderProblem) problem = bs_order_problem_new_for_plan (plan, NULL);
  BsOrderPlace places[] = { { 1, BS_ORIENTATION_AS_MARKED }, { 0, BS_ORIENTATION_AS_MARKED } };
  BsOrderChange changes[] = { { .kind = BS_ORDER_CHANGE_NONE }, row->change };
  BsOrderResult result = { .n_places = 2, .places = places, .changes = changes };
  g_autofree char *words = bs_words_order_change (problem, &result, 1);

  g_assert_cmpstr (words, ==, row->words);
}

/* Orders as places of the laminations 1 to 4; -n is turned over. */
typedef struct
{
  const char *path;
  int before[4], after[4];
  const char *words;
} MovesRow;

static const MovesRow moves_rows[] = {
  { "same", { 1, 2, 3, 4 }, { 1, 2, 3, 4 }, "The slab lies in this order." },
  { "one", { 1, 2, 3, 4 }, { 2, 3, 4, 1 }, "1 lamination goes elsewhere." },
  { "turned", { 1, 2, 3, 4 }, { -1, 2, 3, -4 }, "2 laminations are turned." },
  { "both",
    { 1, 2, 3, 4 },
    { 4, 3, 2, -1 },
    "3 laminations go elsewhere. 1 lamination is turned." },
  { "rack", { 1, 2, 3 }, { 4, 2, 3 }, "4 comes from the rack. A goes to the rack." },
};

static void
lay (BsPlan *plan, const int order[4])
{
  g_array_set_size (plan->order, 0);
  for (int i = 0; i < 4 && order[i] != 0; i++)
    {
      const char id[] = { (char)('0' + ABS (order[i])), '\0' };
      bs_plan_insert_placement (plan, i, id,
                                order[i] < 0 ? BS_ORIENTATION_OVER : BS_ORIENTATION_AS_MARKED, 0.0);
    }
}

static void
test_moves (gconstpointer data)
{
  const MovesRow *row = data;
  g_autoptr (BsPlan) before = new_plan (), after = bs_plan_copy (before);

  lay (before, row->before);
  lay (after, row->after);
  g_autofree char *words = bs_words_order_moves (before, after);
  g_assert_cmpstr (words, ==, row->words);
}

static void
test_listing (void)
{
  g_autoptr (BsPlan) plan = new_plan ();

  lay (plan, (const int[4]){ 2, -1 });
  g_autofree char *words = bs_words_order_listing (plan);
  g_assert_cmpstr (words, ==, "2 as marked, A turned over");
}

#define ADD_ROWS(rows, format, name, test)                                                         \
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)                                                  \
    {                                                                                              \
      g_autofree char *path = g_strdup_printf (format, name);                                      \
      g_test_add_data_func (path, &(rows)[i], test);                                               \
    }

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_ROWS (pin_rows, "/order/pin/%s", pin_rows[i].path, test_pin);
  ADD_ROWS (quality_rows, "/order/quality/%u", i, test_quality);
  ADD_ROWS (change_rows, "/order/change/%s", change_rows[i].path, test_change);
  ADD_ROWS (moves_rows, "/order/moves/%s", moves_rows[i].path, test_moves);
  g_test_add_func ("/order/listing", test_listing);
  return g_test_run ();
}
