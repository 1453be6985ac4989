/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/money.h"
#include "core/units.h"
#include "draw/paper-scale.h"
#include "words/buying.h"

/* A box to tick for each board, as far as they fit their cell. */
#define MOST_BOXES 10

static char *
draw_boxes (int count)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < MIN (count, MOST_BOXES); i++)
    g_string_append (text, "\u2610 ");
  if (count > MOST_BOXES)
    g_string_append (text, "\u2026");
  return g_string_free (text, FALSE);
}

static void
add_line (BsFlow *flow, const BsPurchase *purchase, const BsPurchaseLine *line)
{
  const BsPlan *plan = purchase->plan;
  g_autofree char *boxes = draw_boxes (line->count);
  g_autofree char *offer = bs_words_offer (plan, g_ptr_array_index (plan->offers, line->offer));
  g_autofree char *boards = g_strdup_printf ("%d", line->count);
  g_autofree char *size = bs_words_purchase_size (purchase, line);
  g_autofree char *measure = bs_words_purchase_measure (line);
  g_autofree char *price
      = bs_money_format (line->price_minor > 0 ? (double)line->price_minor : NAN, plan->currency);
  const char *texts[] = { boxes, boards, offer, size, measure, price };

  bs_flow_add_row (flow, texts);
}

static void
add_boards (BsFlow *flow, const BsPurchase *purchase)
{
  static const BsFlowCell cells[] = {
    { .from = 0.00, .width = 0.18 },
    { .from = 0.18, .width = 0.07, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.27, .width = 0.26 },
    { .from = 0.53, .width = 0.18, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.71, .width = 0.17, .is_right = TRUE },
    { .from = 0.88, .width = 0.12, .is_right = TRUE },
  };
  const char *head[]
      = { _ ("Bought"), _ ("Boards"), _ ("Offer"), _ ("Size"), _ ("Measure"), _ ("Price") };

  if (purchase->lines->len == 0)
    return;
  bs_flow_begin_table (flow, cells, G_N_ELEMENTS (cells), head);
  for (guint i = 0; i < purchase->lines->len; i++)
    add_line (flow, purchase, &g_array_index (purchase->lines, BsPurchaseLine, i));
  bs_flow_add_space (flow);
}

static void
add_wants (BsFlow *flow, const BsPurchase *purchase)
{
  if (purchase->wanted->len > 0)
    bs_flow_add_heading (flow, _ ("What it is for"));
  for (guint i = 0; i < purchase->wanted->len; i++)
    {
      const BsWant *want = &g_array_index (purchase->wanted, BsWant, i);
      g_autofree char *what = bs_words_want (want, purchase->plan->units);
      g_autofree char *rough = bs_words_want_rough (purchase, i);
      g_autofree char *shortfall = bs_words_shortfall (purchase, i);

      bs_flow_add_text (flow, what, BS_FLOW_TITLE, BS_FLOW_SIGN_NONE);
      bs_flow_add_text (flow, rough, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
      if (shortfall != NULL)
        bs_flow_add_text (flow, shortfall, BS_FLOW_PLAIN, BS_FLOW_SIGN_CAUTION);
      bs_flow_add_space (flow);
    }
}

static void
add_offcuts (BsFlow *flow, const BsPurchase *purchase)
{
  g_auto (GStrv) lines = bs_words_purchase_offcuts (purchase);

  if (lines[0] != NULL)
    bs_flow_add_heading (flow, _ ("Offcuts"));
  for (guint i = 0; lines[i] != NULL; i++)
    bs_flow_add_text (flow, lines[i], BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
}

static void
add_pictures (BsFlow *flow, const BsPurchase *purchase)
{
  if (purchase->cuts == NULL)
    return;
  g_autoptr (BsPurchaseSawn) sawn = bs_purchase_sawn_new (purchase);
  BsCutStyle style = bs_sheet_make_cut_style (flow, sawn->boards, sawn->plan->units);
  g_autofree char *ratio = bs_paper_scale_format (BS_POINTS_PER_MM / style.per_mm);
  /* Translators: a scale: "1:10". */
  g_autofree char *heading = g_strdup_printf (_ ("What is cut from each board, %s"), ratio);

  style.without_numbers = TRUE;
  bs_flow_add_heading (flow, heading);
  bs_flow_add_text (flow,
                    _ ("Seen from above, the front edge below. Hatched is waste, an offcut worth "
                       "keeping has a dashed edge. A board of a pile that is not picked from is "
                       "drawn as narrow as any of it."),
                    BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  bs_flow_add_space (flow);
  for (guint i = 0; i < sawn->boards->len; i++)
    {
      g_autofree char *title = bs_words_purchase_board (sawn, i);

      bs_flow_add_text (flow, title, BS_FLOW_KEPT, BS_FLOW_SIGN_NONE);
      bs_sheet_add_cut_board (flow, sawn->plan, sawn->boards->pdata[i], &style);
      bs_flow_add_space (flow);
    }
}

void
bs_sheet_add_buying (BsFlow *flow, const BsPurchase *purchase)
{
  g_autofree char *summary = bs_words_purchase (purchase);
  g_autofree char *bound = bs_words_purchase_bound (purchase);

  bs_flow_add_heading (flow, _ ("Buying list"));
  bs_flow_add_text (flow, summary, BS_FLOW_TITLE, BS_FLOW_SIGN_NONE);
  if (bound != NULL)
    bs_flow_add_text (flow, bound, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  bs_flow_add_space (flow);
  add_boards (flow, purchase);
  add_wants (flow, purchase);
  add_offcuts (flow, purchase);
  add_pictures (flow, purchase);
}
