/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/buying.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/money.h"
#include "core/purchase-layers.h"
#include "core/units.h"
#include "words/table-names.h"
#include "words/timber.h"

char *
bs_words_class (double thickness, BsUnitSystem units)
{
  g_autofree char *name = bs_lumber_name_class (thickness);

  if (units == BS_UNIT_SYSTEM_INCH && strchr (name, '/') != NULL)
    return g_steal_pointer (&name);
  return bs_units_format (thickness, BS_QUANTITY_LENGTH, units);
}

char *
bs_words_board_length (double length, BsUnitSystem units)
{
  double feet = length / (12.0 * BS_MM_PER_INCH);

  if (units == BS_UNIT_SYSTEM_INCH && fabs (feet - round (feet)) < 1e-6)
    return g_strdup_printf ("%.0f'", feet);
  return bs_units_format (length, BS_QUANTITY_LENGTH, units);
}

static const char *
name_wood (const BsPlan *plan, const char *id)
{
  const BsWood *wood = id != NULL ? bs_plan_find_wood (plan, id) : NULL;

  return wood != NULL ? bs_words_wood (wood) : C_ ("wood", "any");
}

char *
bs_words_offer (const BsPlan *plan, const BsOffer *offer)
{
  g_autofree char *class = bs_words_class (offer->thickness, plan->units);
  const char *wood = name_wood (plan, offer->wood);

  if (offer->yard == NULL || *offer->yard == '\0')
    /* Translators: a wood, the thickness that a yard sells it in. */
    return g_strdup_printf (_ ("%s, %s"), wood, class);
  /* Translators: a wood, the thickness that a yard sells it in, the yard's name. */
  return g_strdup_printf (_ ("%s, %s, %s"), wood, class, offer->yard);
}

/* "1530 × 63 × 40 mm": the unit once. */
static char *
format_size (const BsWant *want, BsUnitSystem units)
{
  g_autofree char *length = bs_units_format_number (want->length, BS_QUANTITY_LENGTH, units);
  g_autofree char *width = bs_units_format_number (want->width, BS_QUANTITY_LENGTH, units);
  g_autofree char *thickness = bs_units_format (want->thickness, BS_QUANTITY_LENGTH, units);

  /* Translators: length, width and thickness; the last one with its unit. */
  return g_strdup_printf (_ ("%s × %s × %s"), length, width, thickness);
}

static const char *
get_name (const BsWant *want)
{
  return want->name != NULL && *want->name != '\0' ? want->name : _ ("Unnamed part");
}

char *
bs_words_want (const BsWant *want, BsUnitSystem units)
{
  g_autofree char *size = format_size (want, units);
  int spare = want->count - want->needed;

  if (!want->is_lamination)
    /* Translators: how many, the name of a part, its size. */
    return g_strdup_printf (_ ("%d of “%s”, %s"), want->count, get_name (want), size);
  g_autofree char *laminations
      /* Translators: how many, and the size of each. */
      = g_strdup_printf (
          ngettext ("%d lamination of %s", "%d laminations of %s", (unsigned long)want->count),
          want->count, size);
  if (spare == 0)
    return g_steal_pointer (&laminations);
  return g_strdup_printf (
      /* Translators: "16 laminations of 1530 × 63 × 40 mm", and how many of them are spare. */
      ngettext ("%s, %d of them spare", "%s, %d of them spare", (unsigned long)spare), laminations,
      spare);
}

/* The thinnest class on offer in its wood that is thick enough; 0: none. */
static double
find_class (const BsPurchase *purchase, const BsWant *want)
{
  double found = 0.0;

  for (guint i = 0; i < purchase->plan->offers->len; i++)
    {
      const BsOffer *offer = g_ptr_array_index (purchase->plan->offers, i);
      gboolean fits = offer->thickness >= want->need.thickness
                      && (want->wood == NULL || g_strcmp0 (offer->wood, want->wood) == 0);
      if (fits && (found <= 0.0 || offer->thickness < found))
        found = offer->thickness;
    }
  return found;
}

char *
bs_words_want_rough (const BsPurchase *purchase, guint index)
{
  const BsWant *want = &g_array_index (purchase->wanted, BsWant, index);
  BsUnitSystem units = purchase->plan->units;
  BsMillingWish wish = bs_want_get_wish (want, purchase->wanted, purchase->plan);
  double class = find_class (purchase, want);
  g_autofree char *name = class > 0.0 ? bs_words_class (class, units) : NULL;

  return bs_words_need (&want->need, &wish, name, units);
}

static char *
describe_lack (const BsPurchase *purchase, const BsWant *want, const BsShortfall *shortfall,
               const char *what)
{
  BsUnitSystem units = purchase->plan->units;
  g_autofree char *thickness = bs_units_format (want->need.thickness, BS_QUANTITY_LENGTH, units);
  g_autofree char *width = bs_units_format (want->sawn_width + 2.0 * purchase->cutting.trim_edge
                                                + purchase->straighten,
                                            BS_QUANTITY_LENGTH, units);
  g_autofree char *length = bs_units_format (want->length + 2.0 * purchase->cutting.trim_end,
                                             BS_QUANTITY_LENGTH, units);

  switch (shortfall->lack)
    {
    case BS_LACK_WOOD:
      /* Translators: what is wanted, the name of a wood. */
      return g_strdup_printf (_ ("Not to be had: %s. Nothing of its wood (%s) is offered or in the "
                                 "rack: add an offer."),
                              what, name_wood (purchase->plan, want->wood));
    case BS_LACK_THICKNESS:
      /* Translators: what is wanted, a thickness. */
      return g_strdup_printf (_ ("Not to be had: %s. No board of its wood is %s thick, which it "
                                 "takes to be that sure: add a thicker offer, be less sure, or "
                                 "glue it of two layers."),
                              what, thickness);
    case BS_LACK_LENGTH:
      /* Translators: what is wanted, a length. */
      return g_strdup_printf (_ ("Not to be had: %s. No board that is thick enough is %s long: "
                                 "add longer boards."),
                              what, length);
    case BS_LACK_WIDTH:
      /* Translators: what is wanted, a width. */
      return g_strdup_printf (_ ("Not to be had: %s. Every board that is thick and long enough is "
                                 "narrower than %s: add wider boards, or glue it up from strips."),
                              what, width);
    case BS_LACK_SUPPLY:
      return g_strdup_printf (
          /* Translators: how many pieces, and of what. */
          ngettext ("There are too few boards: %d piece is missing of %s. Add an offer or a larger "
                    "supply.",
                    "There are too few boards: %d pieces are missing of %s. Add an offer or a "
                    "larger supply.",
                    (unsigned long)shortfall->n_missing),
          shortfall->n_missing, what);
    case BS_LACK_NONE:
    default:
      return NULL;
    }
}

char *
bs_words_shortfall (const BsPurchase *purchase, guint want)
{
  const BsShortfall *shortfall = &g_array_index (purchase->shortfalls, BsShortfall, want);
  const BsWant *wanted = &g_array_index (purchase->wanted, BsWant, want);
  g_autofree char *what = bs_words_want (wanted, purchase->plan->units);

  return describe_lack (purchase, wanted, shortfall, what);
}

static char *
describe_boards (const BsPurchase *purchase)
{
  double price = bs_purchase_get_price (purchase);
  g_autofree char *money = bs_money_format (price, purchase->plan->currency);
  g_autofree char *pieces = g_strdup_printf (ngettext ("%u piece", "%u pieces", purchase->n_pieces),
                                             purchase->n_pieces);

  if (purchase->n_boards == 0)
    return g_strdup (_ ("Nothing to buy: the boards of the rack are enough."));
  if (isnan (price))
    return g_strdup_printf (
        /* Translators: how many boards, and "20 pieces". */
        ngettext ("%d board to buy for %s. An offer has no price yet.",
                  "%d boards to buy for %s. An offer has no price yet.",
                  (unsigned long)purchase->n_boards),
        purchase->n_boards, pieces);
  return g_strdup_printf (
      /* Translators: how many boards, "20 pieces", and a price. */
      ngettext ("%d board to buy for %s: %s.", "%d boards to buy for %s: %s.",
                (unsigned long)purchase->n_boards),
      purchase->n_boards, pieces, money);
}

static char *
describe_cuts (const BsPurchase *purchase)
{
  g_autofree char *boards = describe_boards (purchase);
  g_autofree char *rack = g_strdup_printf (ngettext ("%d board of the rack serves too.",
                                                     "%d boards of the rack serve too.",
                                                     (unsigned long)purchase->n_rack),
                                           purchase->n_rack);

  if (purchase->n_boards == 0 || purchase->n_rack == 0)
    return g_steal_pointer (&boards);
  return g_strjoin (" ", boards, rack, NULL);
}

char *
bs_words_purchase (const BsPurchase *purchase)
{
  if (purchase->wanted->len == 0)
    return g_strdup (_ ("Nothing to buy: every lamination has its board and every part its cut."));
  if (purchase->problem != NULL)
    return g_strdup (purchase->problem);
  if (purchase->plan->offers->len == 0 && purchase->rack->boards->len == 0)
    return g_strdup (_ ("The yard is empty: add what is offered, and what to buy follows."));
  if (purchase->cuts == NULL)
    return g_strdup (_ ("Nothing that is wanted can be cut from what is offered."));
  return describe_cuts (purchase);
}

char *
bs_words_purchase_bound (const BsPurchase *purchase)
{
  const BsCutPlan *cuts = purchase->cuts;

  if (cuts == NULL || isnan (bs_purchase_get_price (purchase)))
    return NULL;
  for (guint i = 0; i < purchase->shortfalls->len; i++)
    if (g_array_index (purchase->shortfalls, BsShortfall, i).n_missing > 0)
      return g_strdup (_ ("As long as pieces are missing, nothing is proven about the price."));
  if (cuts->is_waste_least)
    return g_strdup (_ ("Proven: it cannot be done for less, nor at that price with less waste."));
  if (cuts->is_price_least)
    return g_strdup (_ ("Proven: it cannot be done for less."));

  g_autofree char *gap = bs_units_format (100.0 * bs_cut_plan_gap (cuts), BS_QUANTITY_PERCENT,
                                          purchase->plan->units);
  g_autofree char *bound = bs_money_format ((double)cuts->bound_minor, purchase->plan->currency);
  /* Translators: a price, and a difference in per cent. */
  return g_strdup_printf (_ ("Proven: it cannot be done for less than %s. So at most %s of the "
                             "price could be saved, and perhaps nothing."),
                          bound, gap);
}

/* What two layers mean for the work. */
static const char *
describe_layers (const BsWant *want, const BsPlan *plan)
{
  if (want->is_lamination && plan->slab.layup == BS_LAYUP_ON_EDGE)
    return _ ("Two thinner laminations side by side do the same in this slab: more joints to glue, "
              "but no press before it.");
  return _ ("The layers must be milled and glued before the piece is: a press more.");
}

char *
bs_words_purchase_layers (const BsPurchase *purchase, guint index)
{
  const BsWant *want = &g_array_index (purchase->wanted, BsWant, index);
  g_autoptr (BsPurchaseLayers) layers = bs_purchase_layers_new (purchase, index);

  if (layers == NULL || !bs_purchase_layers_gain (layers))
    return NULL;
  g_autofree char *text
      = bs_words_layers (&layers->one, &layers->two, &layers->classes, layers->one_minor,
                         layers->two_minor, purchase->plan->currency, purchase->plan->units);
  const char *glue
      = layers->is_glue_counted ? NULL : _ ("The price of the glue is not known and not counted.");
  return g_strjoin (" ", text, describe_layers (want, purchase->plan), glue, NULL);
}

char *
bs_words_purchase_width (const BsPurchase *purchase, const BsPurchaseLine *line)
{
  BsUnitSystem units = purchase->plan->units;
  const BsOffer *offer = g_ptr_array_index (purchase->plan->offers, line->offer);
  g_autofree char *least = bs_units_format_number (line->width, BS_QUANTITY_LENGTH, units);
  g_autofree char *most = bs_units_format (offer->width_most, BS_QUANTITY_LENGTH, units);

  if (line->paid_width <= line->width)
    return bs_units_format (line->width, BS_QUANTITY_LENGTH, units);
  /* Translators: the range that a number may well have: "86.9 to 88.4 mm". */
  return g_strdup_printf (_ ("%s to %s"), least, most);
}

char *
bs_words_purchase_size (const BsPurchase *purchase, const BsPurchaseLine *line)
{
  g_autofree char *length = bs_words_board_length (line->length, purchase->plan->units);
  g_autofree char *width = bs_words_purchase_width (purchase, line);

  return g_strdup_printf ("%s × %s", length, width);
}

char *
bs_words_measure (double board_feet, double volume)
{
  g_autofree char *metric = bs_units_format (volume, BS_QUANTITY_VOLUME, BS_UNIT_SYSTEM_METRIC);

  /* Translators: board feet, and cubic metres with their unit. */
  return g_strdup_printf (_ ("%.2f bd ft, %s"), board_feet, metric);
}

char *
bs_words_purchase_measure (const BsPurchaseLine *line)
{
  return bs_words_measure (line->board_feet, line->volume);
}

static char *
describe_offcut (const BsPurchase *purchase, const BsPurchaseOffcut *offcut)
{
  BsUnitSystem units = purchase->plan->units;
  const BsCutBoard *board = &g_array_index (purchase->cuts->boards, BsCutBoard, offcut->board);
  const BsCutStock *stock = &g_array_index (purchase->stock, BsCutStock, board->stock);
  g_autofree char *length = bs_units_format (offcut->length, BS_QUANTITY_LENGTH, units);
  g_autofree char *width = bs_units_format (offcut->width, BS_QUANTITY_LENGTH, units);
  g_autofree char *class = bs_words_class (stock->thickness, units);

  if (offcut->want < 0)
    /* Translators: length, width and thickness of an offcut. */
    return g_strdup_printf (_ ("%s long, %s wide, %s"), length, width, class);
  return g_strdup_printf (
      /* Translators: length, width and thickness of an offcut, then the name of a part. */
      _ ("%s long, %s wide, %s: enough for another “%s”"), length, width, class,
      get_name (&g_array_index (purchase->wanted, BsWant, offcut->want)));
}

char **
bs_words_purchase_offcuts (const BsPurchase *purchase)
{
  g_autoptr (GPtrArray) alike = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GHashTable) counts = g_hash_table_new (g_str_hash, g_str_equal);
  GStrvBuilder *lines = g_strv_builder_new ();

  for (guint i = 0; i < purchase->offcuts->len; i++)
    {
      char *text
          = describe_offcut (purchase, &g_array_index (purchase->offcuts, BsPurchaseOffcut, i));
      guint count = GPOINTER_TO_UINT (g_hash_table_lookup (counts, text)) + 1;

      g_ptr_array_add (alike, text);
      g_hash_table_insert (counts, text, GUINT_TO_POINTER (count));
    }
  for (guint i = 0; i < alike->len; i++)
    {
      const char *text = alike->pdata[i];
      guint count = GPOINTER_TO_UINT (g_hash_table_lookup (counts, text));
      /* Translators: how many offcuts, and what each is: "3 × 1.2 m long, 150 mm wide, 8/4". */
      g_autofree char *line = count > 1 ? g_strdup_printf (_ ("%u × %s"), count, text) : NULL;

      if (count > 0)
        g_strv_builder_add (lines, line != NULL ? line : text);
      g_hash_table_remove (counts, text);
    }
  char **all = g_strv_builder_end (lines);
  g_strv_builder_unref (lines);
  return all;
}

char *
bs_words_purchase_board (const BsPurchaseSawn *sawn, guint index)
{
  const BsBoard *lumber = ((const BsSawnBoard *)sawn->boards->pdata[index])->board;
  BsUnitSystem units = sawn->plan->units;
  g_autofree char *length = bs_words_board_length (lumber->length, units);
  g_autofree char *width = bs_units_format (lumber->width, BS_QUANTITY_LENGTH, units);
  g_autofree char *class = bs_words_class (lumber->thickness, units);
  /* Translators: length, width and thickness of a board. */
  g_autofree char *size = g_strdup_printf (_ ("%s × %s, %s"), length, width, class);

  if (index >= sawn->n_of_rack)
    return g_steal_pointer (&size);
  /* Translators: which board it is, and its size. */
  return g_strdup_printf (_ ("Board %s of the rack: %s"), bs_saw_board_label (lumber), size);
}
