/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/purchase.h"

#include <math.h>

#include "core/board-measure.h"
#include "core/cutting-model.h"
#include "core/sawing-wish.h"

/* By which widths are picked from a pile, mm. */
#define PICK_METRIC 10.0
#define PICK_INCH 25.4

/* Sizes are solved in whole steps of the saw: pieces and trims rounded up, boards down. With inches
 * and millimetres mixed, finer ones would make the search long for nothing that a saw could show.
 */
static double
round_up (const BsPurchase *self, double size)
{
  return bs_saw_round_up (self->plan->units, size);
}

static double
round_down (const BsPurchase *self, double size)
{
  return -bs_saw_round_up (self->plan->units, -size);
}

/* Woods as the numbers that the solver wants. */
static int
number_wood (GPtrArray *woods, const char *wood)
{
  for (guint i = 0; i < woods->len; i++)
    if (g_strcmp0 (g_ptr_array_index (woods, i), wood) == 0)
      return (int)i;
  g_ptr_array_add (woods, (gpointer)wood);
  return (int)woods->len - 1;
}

static void
add_rack (BsPurchase *self, GPtrArray *woods, gboolean with_rests)
{
  self->rack = bs_purchase_rack_new (self->plan, &self->cutting, self->wanted, with_rests);
  for (guint i = 0; i < self->rack->boards->len; i++)
    {
      BsCutStock stock = g_array_index (self->rack->stock, BsCutStock, i);
      const BsBoard *board = self->rack->boards->pdata[i];

      stock.wood = number_wood (woods, board->wood);
      if (isnan (stock.straighten))
        stock.straighten = self->straighten;
      g_array_append_val (self->as_sold, stock);
    }
}

static BsYardOffer
describe_offer (const BsOffer *offer, GPtrArray *woods, GArray *lengths)
{
  for (guint i = 0; i < offer->lengths->len; i++)
    {
      const BsOfferLength *length = &g_array_index (offer->lengths, BsOfferLength, i);
      BsYardLength yard_length = { length->length, length->supply };
      g_array_append_val (lengths, yard_length);
    }
  return (BsYardOffer){
    .wood = number_wood (woods, offer->wood),
    .thickness = offer->thickness,
    .usable_thickness = offer->thickness,
    .width_least = offer->width_least,
    .width_most = offer->width_most,
    .may_pick = offer->may_pick,
    .lengths = (const BsYardLength *)lengths->data,
    .n_lengths = lengths->len,
    .unit = offer->price_unit,
    .price_minor = offer->price_minor,
  };
}

static void
add_yard (BsPurchase *self, GPtrArray *woods)
{
  guint n = self->plan->offers->len;
  g_autofree BsYardOffer *offers = g_new0 (BsYardOffer, n);
  g_autoptr (GPtrArray) lengths = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  double step = self->plan->units == BS_UNIT_SYSTEM_INCH ? PICK_INCH : PICK_METRIC;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < n; i++)
    {
      GArray *list = g_array_new (FALSE, FALSE, sizeof (BsYardLength));
      g_ptr_array_add (lengths, list);
      offers[i] = describe_offer (g_ptr_array_index (self->plan->offers, i), woods, list);
    }
  g_autoptr (BsYardStock) yard = bs_yard_stock_new (offers, n, step, &error);
  if (yard == NULL)
    {
      self->problem = g_strdup (error->message);
      return;
    }
  for (guint i = 0; i < yard->stock->len; i++)
    g_array_index (yard->stock, BsCutStock, i).straighten = self->straighten;
  g_array_append_vals (self->as_sold, yard->stock->data, yard->stock->len);
  g_array_append_vals (self->yard_offers, yard->offers->data, yard->offers->len);
}

/* Boards of the rack are as they are: what was cut of them may reach their ends. */
static void
round_stock (BsPurchase *self)
{
  g_array_append_vals (self->stock, self->as_sold->data, self->as_sold->len);
  for (guint i = self->rack->boards->len; i < self->stock->len; i++)
    {
      BsCutStock *stock = &g_array_index (self->stock, BsCutStock, i);
      stock->length = round_down (self, stock->length);
      stock->width = round_down (self, stock->width);
    }
}

/* The edge that is made straight first takes the crook of the longest piece with it, beyond what is
 * trimmed of both edges anyway. */
static double
find_straighten (const BsPurchase *self)
{
  double trim = self->plan->shop.saw.edge_trim, least = round_up (self, trim);

  for (guint i = 0; i < self->wanted->len; i++)
    {
      const BsWant *want = &g_array_index (self->wanted, BsWant, i);
      trim = fmax (trim, (want->need.width - want->sawn_width) / 2.0);
    }
  return 2.0 * (round_up (self, trim) - least);
}

static void
set_saw (BsPurchase *self)
{
  static const BsCutOrder orders[] = {
    [BS_SAW_FIRST_EITHER] = BS_CUT_EITHER,
    [BS_SAW_FIRST_CROSSCUT] = BS_CUT_CROSSCUT_FIRST,
    [BS_SAW_FIRST_RIP] = BS_CUT_RIP_FIRST,
  };
  const BsSaw *saw = &self->plan->shop.saw;

  self->cutting = (BsCutting){
    .kerf = bs_saw_kerf (self->plan),
    .trim_end = round_up (self, saw->end_trim),
    .trim_edge = round_up (self, saw->edge_trim),
    .min_offcut = saw->min_offcut,
    .order = orders[saw->first],
  };
}

/* Which of the checks the best of the boards fails first. */
static BsLack
find_lack (const BsPurchase *self, const BsCutPart *part)
{
  BsLack lack = BS_LACK_WOOD;

  for (guint i = 0; i < self->stock->len; i++)
    {
      const BsCutStock *stock = &g_array_index (self->stock, BsCutStock, i);
      BsLack here = BS_LACK_NONE;

      if (stock->wood != part->wood)
        here = BS_LACK_WOOD;
      else if (stock->thickness < part->thickness)
        here = BS_LACK_THICKNESS;
      else if (stock->length - 2.0 * self->cutting.trim_end < part->length)
        here = BS_LACK_LENGTH;
      else if (bs_cutting_room_across (&self->cutting, stock) < part->width)
        here = BS_LACK_WIDTH;
      else if (stock->supply == 0)
        here = BS_LACK_SUPPLY;
      else
        return BS_LACK_NONE;
      lack = MAX (lack, here);
    }
  return lack;
}

/* Of what names no wood: that of the first that does. */
static const char *
find_main_wood (const BsPurchase *self)
{
  for (guint i = 0; i < self->wanted->len; i++)
    if (g_array_index (self->wanted, BsWant, i).wood != NULL)
      return g_array_index (self->wanted, BsWant, i).wood;
  if (self->plan->offers->len == 0)
    return NULL;
  return ((const BsOffer *)g_ptr_array_index (self->plan->offers, 0))->wood;
}

static void
add_parts (BsPurchase *self, GPtrArray *woods)
{
  const char *main_wood = find_main_wood (self);

  for (guint i = 0; i < self->wanted->len; i++)
    {
      const BsWant *want = &g_array_index (self->wanted, BsWant, i);
      BsCutPart part = {
        .length = round_up (self, want->length),
        .width = round_up (self, want->sawn_width),
        .thickness = want->need.thickness,
        .quantity = want->count,
        .wood = number_wood (woods, want->wood != NULL ? want->wood : main_wood),
        .clear_faces = want->clear_faces,
        .clear_edges = want->clear_edges,
        .is_on_show = want->is_on_show,
      };
      BsShortfall shortfall = { .lack = find_lack (self, &part) };

      shortfall.n_missing = shortfall.lack == BS_LACK_NONE ? 0 : want->count;
      g_array_append_val (self->shortfalls, shortfall);
      if (shortfall.lack != BS_LACK_NONE)
        continue;
      g_array_append_val (self->parts, part);
      g_array_append_val (self->part_wants, i);
    }
}

/* What was cut of the rack's boards is pinned there. */
static void
pin_cuts (BsPurchase *self)
{
  guint n = self->parts->len;

  g_array_append_vals (self->parts, self->rack->cuts->data, self->rack->cuts->len);
  for (guint i = 0; i < self->rack->pins->len; i++)
    {
      BsCutPin *pin = &g_array_index (self->rack->pins, BsCutPin, i);

      pin->part += n;
      g_array_index (self->parts, BsCutPart, pin->part).wood
          = g_array_index (self->stock, BsCutStock, pin->stock).wood;
    }
  self->cutting.pins = (const BsCutPin *)self->rack->pins->data;
  self->cutting.n_pins = self->rack->pins->len;
}

static BsPurchase *
prepare_with (const BsPlan *plan, gboolean with_rests)
{
  BsPurchase *self = g_new0 (BsPurchase, 1);
  g_autoptr (GPtrArray) woods = g_ptr_array_new ();

  self->plan = bs_plan_ref ((BsPlan *)plan);
  self->wanted = bs_wanted_new (plan);
  self->shortfalls = g_array_new (FALSE, FALSE, sizeof (BsShortfall));
  self->stock = g_array_new (FALSE, FALSE, sizeof (BsCutStock));
  self->as_sold = g_array_new (FALSE, FALSE, sizeof (BsCutStock));
  self->parts = g_array_new (FALSE, FALSE, sizeof (BsCutPart));
  self->part_wants = g_array_new (FALSE, FALSE, sizeof (guint));
  self->yard_offers = g_array_new (FALSE, FALSE, sizeof (guint));
  self->lines = g_array_new (FALSE, FALSE, sizeof (BsPurchaseLine));
  self->offcuts = g_array_new (FALSE, FALSE, sizeof (BsPurchaseOffcut));
  set_saw (self);
  self->straighten = find_straighten (self);
  add_rack (self, woods, with_rests);
  add_yard (self, woods);
  round_stock (self);
  add_parts (self, woods);
  pin_cuts (self);
  self->cutting.stock = (const BsCutStock *)self->stock->data;
  self->cutting.n_stock = self->stock->len;
  self->cutting.parts = (const BsCutPart *)self->parts->data;
  self->cutting.n_parts = self->parts->len;
  return self;
}

/* Cuts that lie off every step of the saw may not do beside all others in the steps that the search
 * then takes; it does without the rests rather than without a purchase. */
static BsPurchase *
purchase_prepare (const BsPlan *plan)
{
  BsPurchase *self = prepare_with (plan, TRUE);
  g_autoptr (GError) error = NULL;

  if (self->cutting.n_pins == 0 || !bs_cutting_check (&self->cutting, NULL))
    return self;
  g_autoptr (BsCutModel) model = bs_cut_model_new (&self->cutting, &error);
  if (!g_error_matches (error, BS_CUTTING_ERROR, BS_CUTTING_ERROR_PIN))
    return self;
  bs_purchase_free (self);
  return prepare_with (plan, FALSE);
}

void
bs_purchase_free (BsPurchase *self)
{
  bs_plan_unref (self->plan);
  g_array_unref (self->wanted);
  g_array_unref (self->shortfalls);
  g_array_unref (self->stock);
  g_array_unref (self->as_sold);
  g_array_unref (self->parts);
  g_array_unref (self->part_wants);
  bs_purchase_rack_free (self->rack);
  g_array_unref (self->yard_offers);
  g_free (self->problem);
  g_clear_pointer (&self->cuts, bs_cut_plan_free);
  g_array_unref (self->lines);
  g_array_unref (self->offcuts);
  g_free (self);
}

/* What comes of the cuts. */

static const BsCutStock *
get_stock (const BsPurchase *self, const BsCutBoard *board)
{
  return &g_array_index (self->stock, BsCutStock, board->stock);
}

static double
get_volume (const BsCutStock *stock)
{
  return stock->length * stock->width * stock->thickness;
}

static double
find_paid_width (const BsPurchase *self, const BsCutStock *stock, const BsOffer *offer)
{
  gboolean is_any = !offer->may_pick || stock->supply != BS_CUT_UNLIMITED;

  return is_any ? (offer->width_least + offer->width_most) / 2.0 : stock->width;
}

/* Boards of one kind stand one after the other. */
static void
add_line (BsPurchase *self, guint kind, int count, BsTally *tally)
{
  const BsCutStock *stock = &g_array_index (self->as_sold, BsCutStock, kind);
  guint index = g_array_index (self->yard_offers, guint, kind - self->rack->boards->len);
  const BsOffer *offer = g_ptr_array_index (self->plan->offers, index);
  BsPurchaseLine line = {
    .offer = index,
    .count = count,
    .length = stock->length,
    .width = stock->width,
    .paid_width = find_paid_width (self, stock, offer),
    .price_minor = count * stock->price_minor,
  };

  for (int i = 0; i < count; i++)
    line.board_feet
        += bs_tally_add (tally, offer->thickness, line.paid_width, line.length).board_feet;
  line.volume = count * line.length * line.paid_width * offer->thickness;
  self->board_feet += line.board_feet;
  self->bought_volume += line.volume;
  self->n_boards += count;
  g_array_append_val (self->lines, line);
}

/* Of each board that has cuts or gets some, whether any are new: the others are no part of this. */
static gboolean *
find_sawn (const BsPurchase *self)
{
  gboolean *is_sawn = g_new0 (gboolean, self->cuts->boards->len + 1);

  for (guint i = 0; i < self->cuts->pieces->len; i++)
    {
      const BsCutPiece *piece = &g_array_index (self->cuts->pieces, BsCutPiece, i);
      if (!piece->is_pinned)
        is_sawn[piece->board] = TRUE;
    }
  return is_sawn;
}

static void
list_boards (BsPurchase *self, const gboolean *is_sawn)
{
  g_autofree int *counts = g_new0 (int, self->stock->len);
  BsTally tally = { 0 };

  for (guint i = 0; i < self->cuts->boards->len; i++)
    {
      const BsCutBoard *board = &g_array_index (self->cuts->boards, BsCutBoard, i);

      if (!is_sawn[i])
        continue;
      counts[board->stock]++;
      self->sawn_volume += get_volume (get_stock (self, board));
      self->n_rack += board->stock < self->rack->boards->len;
    }
  for (guint kind = self->rack->boards->len; kind < self->stock->len; kind++)
    if (counts[kind] > 0)
      add_line (self, kind, counts[kind], &tally);
}

static void
measure_pieces (BsPurchase *self, const gboolean *is_sawn)
{
  g_autofree int *counts = g_new0 (int, self->wanted->len);

  for (guint i = 0; i < self->cuts->pieces->len; i++)
    {
      const BsCutPiece *piece = &g_array_index (self->cuts->pieces, BsCutPiece, i);
      const BsCutBoard *board = &g_array_index (self->cuts->boards, BsCutBoard, piece->board);
      double thickness = get_stock (self, board)->thickness;

      if (is_sawn[piece->board])
        self->used_volume += piece->length * piece->width * thickness;
      if (piece->is_pinned)
        continue;
      guint index = g_array_index (self->part_wants, guint, piece->part);
      const BsWant *want = &g_array_index (self->wanted, BsWant, index);

      self->n_pieces++;
      if (counts[index]++ < want->needed)
        self->bare_volume += want->length * want->width * thickness;
    }
}

/* The first part wanted, in the order of the plan, that fits; laminations have all that they need.
 */
static int
find_served (const BsPurchase *self, const BsCutStock *stock, double length)
{
  for (guint i = 0; i < self->part_wants->len; i++)
    {
      const BsCutPart *part = &g_array_index (self->parts, BsCutPart, i);
      guint want = g_array_index (self->part_wants, guint, i);

      if (!g_array_index (self->wanted, BsWant, want).is_lamination && part->wood == stock->wood
          && part->thickness <= stock->thickness && part->length <= length
          && part->width <= bs_cutting_room_across (&self->cutting, stock))
        return (int)want;
    }
  return -1;
}

static int
compare_offcuts (gconstpointer a, gconstpointer b)
{
  const BsPurchaseOffcut *x = a, *y = b;

  if (x->length < y->length || x->length > y->length)
    return x->length < y->length ? 1 : -1;
  return x->board < y->board ? -1 : 1;
}

static void
list_offcuts (BsPurchase *self, const gboolean *is_sawn)
{
  for (guint i = 0; i < self->cuts->boards->len; i++)
    {
      const BsCutBoard *board = &g_array_index (self->cuts->boards, BsCutBoard, i);
      const BsCutStock *stock = get_stock (self, board);
      BsPurchaseOffcut offcut
          = { .board = i, .length = board->offcut_to - board->offcut_from, .width = stock->width };

      if (!is_sawn[i] || offcut.length <= 0.0)
        continue;
      offcut.want = find_served (self, stock, offcut.length);
      self->used_volume += offcut.length * offcut.width * stock->thickness;
      g_array_append_val (self->offcuts, offcut);
    }
  g_array_sort (self->offcuts, compare_offcuts);
}

static void
note_missing (BsPurchase *self)
{
  for (guint i = 0; i < self->part_wants->len; i++)
    {
      guint want = g_array_index (self->part_wants, guint, i);
      BsShortfall *shortfall = &g_array_index (self->shortfalls, BsShortfall, want);

      shortfall->n_missing = self->cuts->missing[i];
      if (shortfall->n_missing > 0)
        shortfall->lack = BS_LACK_SUPPLY;
    }
}

/* Takes the cuts. */
static void
set_cuts (BsPurchase *self, BsCutPlan *cuts)
{
  self->cuts = cuts;
  g_autofree gboolean *is_sawn = find_sawn (self);
  list_boards (self, is_sawn);
  measure_pieces (self, is_sawn);
  list_offcuts (self, is_sawn);
  note_missing (self);
}

/* Better ones while the search goes on. */

typedef struct
{
  const BsPurchase *order;
  const BsProgress *progress;
} Report;

static BsCutPlan *
copy_cuts (const BsCutPlan *cuts, guint n_parts)
{
  BsCutPlan *copy = g_new (BsCutPlan, 1);

  *copy = *cuts;
  copy->boards = g_array_copy (cuts->boards);
  copy->slices = g_array_copy (cuts->slices);
  copy->pieces = g_array_copy (cuts->pieces);
  copy->missing = g_memdup2 (cuts->missing, n_parts * sizeof *cuts->missing);
  return copy;
}

static void
better_cb (const BsCutPlan *cuts, gpointer data)
{
  const Report *report = data;

  if (report->progress == NULL || report->progress->better == NULL)
    return;
  BsPurchase *purchase = purchase_prepare (report->order->plan);
  set_cuts (purchase, copy_cuts (cuts, purchase->parts->len));
  report->progress->better (purchase, report->progress->data);
}

BsPurchase *
bs_purchase_new (const BsPlan *plan, guint rounds, const BsProgress *progress)
{
  BsPurchase *self = purchase_prepare (plan);
  Report report = { self, progress };
  BsCutEffort effort = bs_cut_effort_default ();
  g_autoptr (GError) error = NULL;

  effort.rounds = rounds;
  if (progress != NULL)
    effort.progress = *progress;
  effort.better = better_cb;
  effort.data = &report;
  if (self->problem != NULL || self->part_wants->len == 0)
    return self;

  BsCutPlan *cuts = bs_cutting_solve (&self->cutting, &effort, &error);
  if (cuts != NULL)
    set_cuts (self, cuts);
  else
    self->problem = g_strdup (error->message);
  return self;
}

double
bs_purchase_get_price (const BsPurchase *self)
{
  double price = 0.0;

  for (guint i = 0; i < self->lines->len; i++)
    {
      const BsPurchaseLine *line = &g_array_index (self->lines, BsPurchaseLine, i);
      price += line->price_minor > 0 ? (double)line->price_minor : NAN;
    }
  return self->lines->len > 0 ? price : NAN;
}

double
bs_purchase_get_waste_pct (const BsPurchase *self)
{
  if (self->sawn_volume <= 0.0)
    return NAN;
  return 100.0 * (1.0 - self->used_volume / self->sawn_volume);
}

double
bs_purchase_get_extra_pct (const BsPurchase *self)
{
  if (self->bought_volume <= 0.0 || self->n_rack > 0)
    return NAN;
  return 100.0 * (self->bought_volume / self->bare_volume - 1.0);
}
