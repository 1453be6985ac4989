/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/cut-plan.h"
#include "checks/cutting-file.h"

#include <math.h>
#include <string.h>

static BsCutPlan *
solve (const BsCutting *cutting)
{
  g_autoptr (GError) error = NULL;
  BsCutPlan *plan = bs_cutting_solve (cutting, NULL, &error);

  g_assert_no_error (error);
  cut_plan_assert_possible (cutting, plan);
  return plan;
}

static double
sum_squared_offcuts (const BsCutPlan *plan)
{
  double sum = 0.0;

  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsCutBoard *board = &g_array_index (plan->boards, BsCutBoard, i);
      sum += (board->offcut_to - board->offcut_from) * (board->offcut_to - board->offcut_from);
    }
  return sum;
}

/* The values were proven by a two-level arc flow model solved by HiGHS, the prices again by CBC. */
static void
test_known_optimum (gconstpointer data)
{
  g_autoptr (CuttingFile) file = cutting_file_read (data);
  g_autoptr (BsCutPlan) plan = solve (&file->cutting);

  g_assert_cmpint (plan->price_minor, ==, file->price_minor);
  g_assert_cmpfloat_with_epsilon (plan->waste_area, file->waste_area, 1e-3);
  g_assert_cmpfloat_with_epsilon (sum_squared_offcuts (plan), file->score, 1e-3);
  g_assert_cmpint (plan->bound_minor, ==, plan->price_minor);
  g_assert_true (plan->is_price_least && plan->is_waste_least && plan->is_best);
}

/* One board and one or two parts, to be changed by a case. */
typedef struct
{
  BsCutStock stock[2];
  BsCutPart parts[2];
  BsCutDefect defect;
  BsCutPin pins[2];
  BsCutting cutting;
} Small;

static void
small_init (Small *self)
{
  *self = (Small){ 0 };
  for (guint i = 0; i < 2; i++)
    {
      self->stock[i] = (BsCutStock){ 2000.0, 200.0, 50.0, 1000, BS_CUT_UNLIMITED, 0, 0, 0, NULL };
      self->parts[i] = (BsCutPart){ 900.0, 60.0, 50.0, 2, 0, 2, 2, FALSE };
    }
  self->cutting = bs_cutting_default ();
  self->cutting.stock = self->stock;
  self->cutting.n_stock = 1;
  self->cutting.parts = self->parts;
  self->cutting.n_parts = 1;
  self->cutting.pins = self->pins;
}

static void
test_default_passes (void)
{
  BsCutting cutting = bs_cutting_default ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BsCutPlan) plan = NULL;

  g_assert_true (bs_cutting_check (&cutting, &error));
  g_assert_no_error (error);
  plan = solve (&cutting);
  g_assert_cmpuint (plan->boards->len, ==, 0);
  g_assert_cmpint (plan->price_minor, ==, 0);
}

/* Strips of 60 mm from a board of so much, with a kerf of 3.2 mm: 3 x 60 + 2 x 3.2 = 186.4. */
static void
test_kerf_counts_between_pieces (void)
{
  const struct
  {
    double width;
    guint n_boards;
  } rows[] = { { 186.4, 1 }, { 186.3, 2 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Small small;
      g_autoptr (BsCutPlan) plan = NULL;

      small_init (&small);
      small.stock[0].width = rows[i].width;
      small.stock[0].length = 950.0;
      small.parts[0].quantity = 3;
      small.cutting.kerf = 3.2;
      plan = solve (&small.cutting);
      g_assert_cmpuint (plan->boards->len, ==, rows[i].n_boards);
    }
}

/* Fractions of an inch fit exactly: 3 x 2 in + 2 x 1/8 in = 6 1/4 in; 2 x 47 15/16 + 1/8 = 96 in.
 */
static void
test_inches_fit_exactly (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.stock[0].width = 6.25 * 25.4;
  small.stock[0].length = 96.0 * 25.4;
  small.parts[0] = (BsCutPart){ (47.0 + 15.0 / 16.0) * 25.4, 2.0 * 25.4, 50.0, 6, 0, 2, 2, FALSE };
  small.cutting.kerf = 25.4 / 8.0;
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->boards->len, ==, 1);
}

/* A board of 1000 x 150: ripped first it gives one
 * of 1000 x 70 and two of 480 x 70; crosscut first it cannot give a long one and two short ones. */
static void
test_order_of_cuts_matters (void)
{
  Small small;
  g_autoptr (BsCutPlan) crosscut = NULL, rip = NULL, either = NULL;

  small_init (&small);
  small.stock[0].length = 1000.0;
  small.stock[0].width = 150.0;
  small.parts[0] = (BsCutPart){ 1000.0, 70.0, 50.0, 1, 0, 2, 2, FALSE };
  small.parts[1] = (BsCutPart){ 480.0, 70.0, 50.0, 2, 0, 2, 2, FALSE };
  small.cutting.n_parts = 2;
  small.cutting.order = BS_CUT_CROSSCUT_FIRST;
  crosscut = solve (&small.cutting);
  small.cutting.order = BS_CUT_RIP_FIRST;
  rip = solve (&small.cutting);
  small.cutting.order = BS_CUT_EITHER;
  either = solve (&small.cutting);
  g_assert_cmpuint (crosscut->boards->len, ==, 2);
  g_assert_cmpuint (rip->boards->len, ==, 1);
  g_assert_cmpuint (either->boards->len, ==, 1);
}

/* A knot in the middle of a board that is as wide as the part. */
static void
test_defect_is_avoided_or_hidden (void)
{
  const struct
  {
    const char *what;
    BsCutFaces faces;
    int clear_faces, clear_edges;
    guint n_missing;
  } rows[] = {
    { "clear all round", BS_CUT_UPPER_FACE, 2, 2, 1 },
    { "one clear face is enough", BS_CUT_UPPER_FACE, 1, 2, 0 },
    { "the knot goes through", BS_CUT_BOTH_FACES, 1, 2, 1 },
    { "nothing of it shows", BS_CUT_BOTH_FACES, 0, 0, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Small small;
      g_autoptr (BsCutPlan) plan = NULL;

      small_init (&small);
      g_test_message ("%s", rows[i].what);
      small.stock[0] = (BsCutStock){ 1000.0, 100.0, 50.0, 1000, 1, 0, 0, 1, &small.defect };
      small.defect = (BsCutDefect){ 450.0, 500.0, 30.0, 60.0, rows[i].faces };
      small.parts[0]
          = (BsCutPart){ 900.0, 90.0, 50.0, 1, 0, rows[i].clear_faces, rows[i].clear_edges, FALSE };
      plan = solve (&small.cutting);
      g_assert_cmpuint (plan->n_missing, ==, rows[i].n_missing);
    }
}

/* Two boards of the same size and price; the second looks better and the second part is on show. */
static void
test_best_looking_for_show (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  for (guint i = 0; i < 2; i++)
    {
      small.stock[i] = (BsCutStock){ 1000.0, 130.0, 50.0, 1000, 1, 0, (int)i, 0, NULL };
      small.parts[i].is_on_show = i == 1;
    }
  small.cutting.n_stock = 2;
  small.cutting.n_parts = 2;
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->pieces->len, ==, 4);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const BsCutPiece *piece = &g_array_index (plan->pieces, BsCutPiece, i);
      const BsCutBoard *board = &g_array_index (plan->boards, BsCutBoard, piece->board);
      g_assert_cmpuint (board->stock, ==, piece->part);
    }
}

/* Parts come from stock of their own wood that is thick enough. */
static void
test_wood_and_thickness (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.cutting.n_stock = 2;
  small.cutting.n_parts = 2;
  small.stock[1] = (BsCutStock){ 2000.0, 200.0, 80.0, 9000, BS_CUT_UNLIMITED, 7, 0, 0, NULL };
  small.parts[1].thickness = 60.0;
  small.parts[1].wood = 7;
  plan = solve (&small.cutting);
  g_assert_cmpint (plan->price_minor, ==, 10000);
}

/* An offcut of the rack is already paid: it is used before a board is bought, though it is smaller.
 */
static void
test_offcuts_of_the_rack_first (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.cutting.n_stock = 2;
  small.stock[1] = (BsCutStock){ 950.0, 130.0, 50.0, 0, 1, 0, 0, 0, NULL };
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->boards->len, ==, 1);
  g_assert_cmpuint (g_array_index (plan->boards, BsCutBoard, 0).stock, ==, 1);
  g_assert_cmpint (plan->price_minor, ==, 0);
  g_assert_cmpfloat_with_epsilon (bs_cut_plan_gap (plan), 0.0, 1e-12);
}

/* What is at hand is all paid: then the least waste decides which boards are cut. */
static void
test_all_paid_wastes_least (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.cutting.n_stock = 2;
  small.stock[0].price_minor = 0;
  small.stock[0].supply = 1;
  small.stock[1] = (BsCutStock){ 950.0, 130.0, 50.0, 0, 1, 0, 0, 0, NULL };
  small.cutting.min_offcut = 1500.0;
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->boards->len, ==, 1);
  g_assert_cmpuint (g_array_index (plan->boards, BsCutBoard, 0).stock, ==, 1);
  g_assert_true (plan->is_waste_least);
}

/* Four of 900 fit on two boards of 2000 x 65; there is one. */
static void
test_short_supply_is_told (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.stock[0].width = 65.0;
  small.stock[0].supply = 1;
  small.parts[0].quantity = 4;
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->n_missing, ==, 2);
  g_assert_cmpint (plan->missing[0], ==, 2);
  g_assert_cmpint (plan->bound_minor, ==, 0);
  g_assert_false (plan->is_price_least);
}

/* Of two plans of one board each the one with the longer rest is better: 900 + 900 side by side
 * leave 2000 - 900 - 3 = 1097. */
static void
test_offcut_is_kept_long (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->boards->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (sum_squared_offcuts (plan), 1097.0 * 1097.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (plan->offcut_area, 1097.0 * 200.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (plan->waste_area,
                                  2000.0 * 200.0 - 1097.0 * 200.0 - 2.0 * 900.0 * 60.0, 1e-6);
}

/* A pinned part stays, and what remains of its board is used before another is bought: beside it
 * two strips of 60, behind it a section of 900 with three. */
static void
test_pin_stays (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.parts[0].quantity = 6;
  small.pins[0] = (BsCutPin){ 0, 0, 0, 0.0, 0.0 };
  small.cutting.n_pins = 1;
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->boards->len, ==, 1);
  g_assert_true (g_array_index (plan->pieces, BsCutPiece, 0).is_pinned);
  g_assert_true (plan->is_price_least);
}

/* A pin in the middle of the board costs a board: 6 parts no longer fit on one. */
static void
test_bad_pin_costs (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.parts[0].quantity = 6;
  small.pins[0] = (BsCutPin){ 0, 0, 0, 500.0, 70.0 };
  small.cutting.n_pins = 1;
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->boards->len, ==, 2);
  g_assert_cmpint (plan->bound_minor, <=, plan->price_minor);
}

static void
set_negative_kerf (Small *small)
{
  small->cutting.kerf = -1.0;
}

static void
set_no_length (Small *small)
{
  small->stock[0].length = 0.0;
}

static void
set_nan_width (Small *small)
{
  small->parts[0].width = NAN;
}

static void
set_negative_price (Small *small)
{
  small->stock[0].price_minor = -1;
}

static void
set_endless_price (Small *small)
{
  small->stock[0].price_minor = G_MAXINT64;
}

static void
set_negative_quantity (Small *small)
{
  small->parts[0].quantity = -2;
}

static void
set_too_wide (Small *small)
{
  small->parts[0].width = 201.0;
}

static void
set_empty_yard (Small *small)
{
  small->cutting.n_stock = 0;
}

static void
set_backward_defect (Small *small)
{
  small->stock[0].supply = 1;
  small->stock[0].defects = &small->defect;
  small->stock[0].n_defects = 1;
  small->defect = (BsCutDefect){ 500.0, 400.0, 0.0, 10.0, BS_CUT_BOTH_FACES };
}

static void
set_shared_defect (Small *small)
{
  small->stock[0].defects = &small->defect;
  small->stock[0].n_defects = 1;
}

static void
set_pin_over_edge (Small *small)
{
  small->pins[0] = (BsCutPin){ 0, 0, 0, 1200.0, 0.0 };
  small->cutting.n_pins = 1;
}

static void
set_pin_without_board (Small *small)
{
  small->pins[0] = (BsCutPin){ 3, 0, 0, 0.0, 0.0 };
  small->cutting.n_pins = 1;
}

/* One lies across the other's end and beside its edge: neither a crosscut nor a rip frees them. */
static void
set_pins_overlapping (Small *small)
{
  small->pins[0] = (BsCutPin){ 0, 0, 0, 0.0, 0.0 };
  small->pins[1] = (BsCutPin){ 0, 0, 0, 500.0, 30.0 };
  small->cutting.n_pins = 2;
}

typedef struct
{
  const char *name;
  void (*spoil) (Small *small);
  BsCuttingError code;
  const char *word; /* in the message */
} Refusal;

static const Refusal refusals[] = {
  { "negative-kerf", set_negative_kerf, BS_CUTTING_ERROR_INPUT, "kerf" },
  { "board-without-length", set_no_length, BS_CUTTING_ERROR_INPUT, "Board 1" },
  { "part-not-a-number", set_nan_width, BS_CUTTING_ERROR_INPUT, "Part 1" },
  { "negative-price", set_negative_price, BS_CUTTING_ERROR_INPUT, "price" },
  { "endless-price", set_endless_price, BS_CUTTING_ERROR_INPUT, "price" },
  { "negative-quantity", set_negative_quantity, BS_CUTTING_ERROR_INPUT, "quantity" },
  { "wider-than-any-board", set_too_wide, BS_CUTTING_ERROR_PART, "Part 1" },
  { "empty-yard", set_empty_yard, BS_CUTTING_ERROR_PART, "No board" },
  { "defect-ends-before-it-begins", set_backward_defect, BS_CUTTING_ERROR_INPUT,
    "defect of board 1" },
  { "defect-of-many-boards", set_shared_defect, BS_CUTTING_ERROR_INPUT, "single board" },
  { "pin-over-the-end", set_pin_over_edge, BS_CUTTING_ERROR_PIN, "Pinned piece 1" },
  { "pin-without-board", set_pin_without_board, BS_CUTTING_ERROR_PIN, "Pinned piece 1" },
  { "pins-overlap", set_pins_overlapping, BS_CUTTING_ERROR_PIN, "pinned" },
};

static void
test_refused (gconstpointer data)
{
  const Refusal *refusal = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *found = NULL, *wanted = g_ascii_strdown (refusal->word, -1);
  Small small;

  small_init (&small);
  refusal->spoil (&small);
  g_assert_null (bs_cutting_solve (&small.cutting, NULL, &error));
  g_assert_error (error, BS_CUTTING_ERROR, (int)refusal->code);
  found = g_ascii_strdown (error->message, -1);
  g_assert_nonnull (strstr (found, wanted));
}

/* Random orders can be cut, and no plan is better than its bound. */
static void
test_random_is_possible (gconstpointer data)
{
  guint64 seed = GPOINTER_TO_UINT (data);
  BsCutEffort effort = bs_cut_effort_default ();

  effort.rounds = 20;
  for (guint i = 0; i < 12; i++)
    {
      g_autoptr (CuttingFile) file
          = cutting_draw (seed + i, 2 + i % 6, 8 + i, 3 + i % 4, seed % 2 == 1);
      g_autoptr (GError) error = NULL;
      g_autoptr (BsCutPlan) plan = bs_cutting_solve (&file->cutting, &effort, &error);

      g_assert_no_error (error);
      cut_plan_assert_possible (&file->cutting, plan);
      g_assert_cmpuint (plan->n_missing, ==, 0);
    }
}

/* Pinning some pieces of a best plan where they are changes nothing but that they are pinned. */
static void
test_pins_of_best_plan (gconstpointer data)
{
  guint64 seed = GPOINTER_TO_UINT (data);

  for (guint i = 0; i < 8; i++)
    {
      g_autoptr (CuttingFile) file = cutting_draw (seed + i, 4, 10, 4, seed % 2 == 1);
      g_autoptr (BsCutPlan) plan = solve (&file->cutting);
      g_autofree BsCutPin *pins = g_new0 (BsCutPin, plan->pieces->len);
      g_autoptr (BsCutPlan) again = NULL;

      for (guint k = i % 3; k < plan->pieces->len; k += 3)
        {
          const BsCutPiece *piece = &g_array_index (plan->pieces, BsCutPiece, k);
          const BsCutBoard *board = &g_array_index (plan->boards, BsCutBoard, piece->board);
          pins[file->cutting.n_pins++]
              = (BsCutPin){ board->stock, board->copy, piece->part, piece->x, piece->y };
        }
      file->cutting.pins = pins;
      again = solve (&file->cutting);
      g_assert_cmpint (again->price_minor, ==, plan->price_minor);
    }
}

static guint
hash_plan (const BsCutPlan *plan)
{
  guint hash = (guint)plan->price_minor;

  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const BsCutPiece *piece = &g_array_index (plan->pieces, BsCutPiece, i);
      hash = hash * 31 + piece->part;
      hash = hash * 31 + piece->board;
      hash = hash * 31 + (guint)llround (piece->x * 1000.0);
      hash = hash * 31 + (guint)llround (piece->y * 1000.0);
    }
  return hash;
}

static void
test_same_seed_same_plan (void)
{
  g_autoptr (CuttingFile) file = cutting_draw (5, 8, 60, 6, FALSE);
  BsCutEffort effort = bs_cut_effort_default ();
  guint hashes[2];

  effort.rounds = 30;
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (BsCutPlan) plan = bs_cutting_solve (&file->cutting, &effort, NULL);
      hashes[i] = hash_plan (plan);
    }
  g_assert_cmpuint (hashes[0], ==, hashes[1]);
}

typedef struct
{
  guint n_better;
  gint64 price, bound;
} Watch;

static void
better_cb (const BsCutPlan *plan, gpointer data)
{
  Watch *watch = data;

  if (watch->n_better > 0)
    {
      g_assert_cmpint (plan->price_minor, <=, watch->price);
      g_assert_cmpint (plan->bound_minor, >=, watch->bound);
    }
  watch->n_better++;
  watch->price = plan->price_minor;
  watch->bound = plan->bound_minor;
}

static void
test_better_plans_are_reported (void)
{
  g_autoptr (CuttingFile) file = cutting_draw (9, 8, 60, 6, FALSE);
  BsCutEffort effort = bs_cut_effort_default ();
  Watch watch = { 0 };
  g_autoptr (BsCutPlan) plan = NULL;

  effort.rounds = 20;
  effort.better = better_cb;
  effort.data = &watch;
  plan = bs_cutting_solve (&file->cutting, &effort, NULL);
  g_assert_cmpuint (watch.n_better, >, 1);
  g_assert_cmpint (plan->price_minor, ==, watch.price);
  g_assert_cmpint (plan->bound_minor, ==, watch.bound);
}

static gboolean
stop_at_once (double done, gpointer data)
{
  return FALSE;
}

static void
test_stopped_has_a_plan (void)
{
  g_autoptr (CuttingFile) file = cutting_draw (9, 8, 60, 6, FALSE);
  BsCutEffort effort = bs_cut_effort_default ();
  g_autoptr (BsCutPlan) plan = NULL;

  effort.progress.report = stop_at_once;
  plan = bs_cutting_solve (&file->cutting, &effort, NULL);
  cut_plan_assert_possible (&file->cutting, plan);
  g_assert_cmpuint (plan->n_missing, ==, 0);
}

/* 190 of 200: 5 % may be too much. */
static void
test_gap (void)
{
  BsCutPlan plan = { .price_minor = 200, .bound_minor = 190 };

  g_assert_cmpfloat_with_epsilon (bs_cut_plan_gap (&plan), 0.05, 1e-12);
  plan.price_minor = 0;
  g_assert_cmpfloat_with_epsilon (bs_cut_plan_gap (&plan), 0.0, 1e-12);
}

/* A board of 2000 x 200 with a hole in its middle, right across: each half gives 3 strips of 60 mm
 * of 900 mm; 4 that must not be clear of anything take both halves. */
static void
test_unsound_wood_is_left_out (void)
{
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.parts[0] = (BsCutPart){ 900.0, 60.0, 50.0, 4, 0, 0, 0, FALSE };
  small.defect = (BsCutDefect){ 950.0, 1050.0, 0.0, 200.0, BS_CUT_UNSOUND };
  small.stock[0].supply = 1;
  small.stock[0].n_defects = 1;
  small.stock[0].defects = &small.defect;
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->n_missing, ==, 0);

  g_clear_pointer (&plan, bs_cut_plan_free);
  small.defect.x_from = 850.0; /* no room for one on the left */
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->n_missing, ==, 1);
}

/* Two parts of one size; the cheap board suits the first one only. */
static void
test_what_suits_is_kept_to (void)
{
  const gboolean suits[] = { TRUE, FALSE, TRUE, TRUE };
  Small small;
  g_autoptr (BsCutPlan) plan = NULL;

  small_init (&small);
  small.stock[0].price_minor = 10;
  small.parts[0].quantity = small.parts[1].quantity = 1;
  small.cutting.n_stock = small.cutting.n_parts = 2;
  small.cutting.suits = suits;
  plan = solve (&small.cutting);
  g_assert_cmpuint (plan->n_missing, ==, 0);
  g_assert_cmpint (plan->price_minor, ==, 1000);
}

int
main (int argc, char **argv)
{
  const char *files[] = { "c0", "c1", "c2", "c3", "c4" };

  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *path = g_strdup_printf ("/cutting/known-optimum/%s", files[i]);
      g_test_add_data_func_full (path, g_strdup_printf ("cutting-%s.json", files[i]),
                                 test_known_optimum, g_free);
    }
  g_test_add_func ("/cutting/default-passes", test_default_passes);
  g_test_add_func ("/cutting/kerf-counts-between-pieces", test_kerf_counts_between_pieces);
  g_test_add_func ("/cutting/inches-fit-exactly", test_inches_fit_exactly);
  g_test_add_func ("/cutting/order-of-cuts-matters", test_order_of_cuts_matters);
  g_test_add_func ("/cutting/defect-is-avoided-or-hidden", test_defect_is_avoided_or_hidden);
  g_test_add_func ("/cutting/unsound-wood-is-left-out", test_unsound_wood_is_left_out);
  g_test_add_func ("/cutting/what-suits-is-kept-to", test_what_suits_is_kept_to);
  g_test_add_func ("/cutting/best-looking-for-show", test_best_looking_for_show);
  g_test_add_func ("/cutting/wood-and-thickness", test_wood_and_thickness);
  g_test_add_func ("/cutting/offcuts-of-the-rack-first", test_offcuts_of_the_rack_first);
  g_test_add_func ("/cutting/all-paid-wastes-least", test_all_paid_wastes_least);
  g_test_add_func ("/cutting/short-supply-is-told", test_short_supply_is_told);
  g_test_add_func ("/cutting/offcut-is-kept-long", test_offcut_is_kept_long);
  g_test_add_func ("/cutting/pin-stays", test_pin_stays);
  g_test_add_func ("/cutting/bad-pin-costs", test_bad_pin_costs);
  for (guint i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      g_autofree char *path = g_strdup_printf ("/cutting/refused/%s", refusals[i].name);
      g_test_add_data_func (path, &refusals[i], test_refused);
    }
  g_test_add_data_func ("/cutting/random-is-possible/clear", GUINT_TO_POINTER (1000),
                        test_random_is_possible);
  g_test_add_data_func ("/cutting/random-is-possible/defects", GUINT_TO_POINTER (1001),
                        test_random_is_possible);
  g_test_add_data_func ("/cutting/pins-of-best-plan/clear", GUINT_TO_POINTER (300),
                        test_pins_of_best_plan);
  g_test_add_data_func ("/cutting/pins-of-best-plan/defects", GUINT_TO_POINTER (301),
                        test_pins_of_best_plan);
  g_test_add_func ("/cutting/same-seed-same-plan", test_same_seed_same_plan);
  g_test_add_func ("/cutting/better-plans-are-reported", test_better_plans_are_reported);
  g_test_add_func ("/cutting/stopped-has-a-plan", test_stopped_has_a_plan);
  g_test_add_func ("/cutting/gap", test_gap);
  return g_test_run ();
}
