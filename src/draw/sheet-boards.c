/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/money.h"
#include "core/units.h"
#include "words/boards.h"
#include "words/buying.h"
#include "words/table-names.h"

static const BsFlowCell cells[] = {
  { .from = 0.00, .width = 0.07, .is_bold = TRUE },
  { .from = 0.07, .width = 0.19 },
  { .from = 0.26, .width = 0.08, .is_right = TRUE },
  { .from = 0.34, .width = 0.08, .is_right = TRUE },
  { .from = 0.42, .width = 0.08, .is_right = TRUE },
  { .from = 0.50, .width = 0.08, .is_right = TRUE },
  { .from = 0.58, .width = 0.06, .is_right = TRUE },
  { .from = 0.64, .width = 0.06, .is_right = TRUE },
  { .from = 0.70, .width = 0.07, .is_right = TRUE },
  { .from = 0.77, .width = 0.05, .is_right = TRUE },
  { .from = 0.82, .width = 0.08, .is_right = TRUE },
  { .from = 0.91, .width = 0.09 },
};

/* Empty where it was not measured. */
static char *
format (double value, BsQuantity quantity, BsUnitSystem units)
{
  return isnan (value) ? g_strdup ("") : bs_units_format_number (value, quantity, units);
}

/* By its class where inches are spoken. */
static char *
format_thickness (double thickness, BsUnitSystem units)
{
  return units == BS_UNIT_SYSTEM_INCH ? bs_words_class (thickness, units)
                                      : format (thickness, BS_QUANTITY_LENGTH, units);
}

static char *
format_defects (const BsBoard *board)
{
  guint n = board->defects->len;

  return n > 0 ? g_strdup_printf (ngettext ("%u defect", "%u defects", n), n) : g_strdup ("");
}

static void
add_board (BsFlow *flow, const BsBoard *board, const BsPlan *plan)
{
  const BsWood *wood = board->wood != NULL ? bs_plan_find_wood (plan, board->wood) : NULL;
  const double warps[] = { board->bow, board->crook, board->cup, board->twist };
  g_autofree char *thickness = format_thickness (board->thickness, plan->units);
  g_autofree char *width = format (board->width, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *length = format (board->length, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *moisture = format (board->moisture_pct, BS_QUANTITY_PERCENT, plan->units);
  g_autofree char *price = board->price_minor > 0
                               ? bs_money_format_number ((double)board->price_minor, plan->currency)
                               : g_strdup ("");
  g_autofree char *defects = format_defects (board);
  g_auto (GStrv) warp = g_new0 (char *, G_N_ELEMENTS (warps) + 1);

  for (guint i = 0; i < G_N_ELEMENTS (warps); i++)
    warp[i] = format (warps[i], BS_QUANTITY_LENGTH, plan->units);
  const char *texts[] = {
    board->label != NULL ? board->label : board->id,
    wood != NULL ? bs_words_wood (wood) : "",
    thickness,
    width,
    length,
    moisture,
    warp[0],
    warp[1],
    warp[2],
    warp[3],
    price,
    defects,
  };
  bs_flow_add_row (flow, texts);
}

void
bs_sheet_add_boards (BsFlow *flow, const BsPlan *plan)
{
  const char *head[]
      = { _ ("Label"), _ ("Wood"),  _ ("Thickness"), _ ("Width"), _ ("Length"), _ ("Moisture"),
          _ ("Bow"),   _ ("Crook"), _ ("Cup"),       _ ("Twist"), _ ("Price"),  _ ("Remarks") };
  g_autofree char *sum = bs_words_boards_sum (plan->boards, plan->currency);
  g_autofree char *note = g_strdup_printf (
      /* Translators: %s is a unit of length */
      _ ("Sizes and warp in %s, moisture in per cent; what is empty was not measured or is not "
         "known. Board feet are not rounded as in a tally."),
      bs_units_symbol (BS_QUANTITY_LENGTH, plan->units));

  bs_flow_add_heading (flow, _ ("Boards in the rack"));
  bs_flow_add_text (flow, sum, BS_FLOW_KEPT, BS_FLOW_SIGN_NONE);
  bs_flow_add_text (flow, note, BS_FLOW_KEPT, BS_FLOW_SIGN_NONE);
  bs_flow_add_space (flow);
  bs_flow_begin_table (flow, cells, G_N_ELEMENTS (cells), head);
  for (guint i = 0; i < plan->boards->len; i++)
    add_board (flow, plan->boards->pdata[i], plan);
}
