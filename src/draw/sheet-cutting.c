/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/paper-scale.h"
#include "words/sawing.h"

/* All boards are drawn to one scale, no larger than this. */
#define LARGEST_SCALE 5.0 /* 1:5 */

BsCutStyle
bs_sheet_make_cut_style (const BsFlow *flow, const GPtrArray *boards, BsUnitSystem units)
{
  double room = bs_flow_get_column_width (flow) - bs_cut_picture_margin (BS_SHEET_TEXT);
  double longest = 1.0, times;

  for (guint i = 0; i < boards->len; i++)
    {
      const BsSawnBoard *sawn = boards->pdata[i];
      if (sawn->cuts->len > 0)
        longest = fmax (longest, sawn->board->length);
    }
  times = fmax (bs_paper_scale_find (longest, room, units), LARGEST_SCALE);
  return (BsCutStyle){
    .per_mm = BS_POINTS_PER_MM / times,
    .hairline = BS_SHEET_HAIRLINE,
    .text_size = 0.9 * BS_SHEET_TEXT,
    .palette = bs_palette_paper (),
  };
}

void
bs_sheet_add_cut_board (BsFlow *flow, const BsPlan *plan, const BsSawnBoard *sawn,
                        const BsCutStyle *style)
{
  double margin = style->without_numbers ? 0.0 : bs_cut_picture_margin (style->text_size),
         above = 0.5 * style->text_size;
  double height = above + sawn->board->width * style->per_mm + margin;
  cairo_rectangle_t box = { 0.0, 0.0, bs_flow_get_column_width (flow), height };
  cairo_surface_t *picture = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &box);
  cairo_t *cr = cairo_create (picture);

  cairo_translate (cr, margin, above);
  bs_draw_cut_board (cr, plan, sawn, style);
  cairo_destroy (cr);
  bs_flow_add_picture (flow, picture, height);
  cairo_surface_destroy (picture);
}

static void
add_board (BsFlow *flow, const BsPlan *plan, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  g_autofree char *title = bs_words_sawn_board (sawn, plan);
  g_autofree char *crosscuts = bs_words_saw_passes (sawn->sawing, FALSE, plan->units);
  g_autofree char *rips = bs_words_saw_passes (sawn->sawing, TRUE, plan->units);

  bs_flow_add_text (flow, title, BS_FLOW_TITLE, BS_FLOW_SIGN_NONE);
  bs_sheet_add_cut_board (flow, plan, sawn, style);
  if (crosscuts != NULL)
    bs_flow_add_text (flow, crosscuts, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  if (rips != NULL)
    bs_flow_add_text (flow, rips, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  bs_flow_add_space (flow);
}

static void
add_piece (BsFlow *flow, const BsPlan *plan, const BsSawnBoard *sawn, const BsCut *cut)
{
  g_autofree char *x = bs_units_format (cut->x, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *y = bs_units_format (cut->y, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *length = bs_units_format_number (cut->length, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *width = bs_units_format (cut->width, BS_QUANTITY_LENGTH, plan->units);
  g_autofree char *size = g_strdup_printf ("%s × %s", length, width);
  g_autofree char *defects = bs_words_cut_defects (plan, cut);
  const char *texts[] = {
    bs_saw_piece_label (plan, cut->piece),           bs_saw_board_label (sawn->board), size, x, y,
    cut->is_cut ? bs_words_cut_state (cut) : defects
  };

  bs_flow_add_row (flow, texts);
}

static void
add_pieces (BsFlow *flow, const BsPlan *plan, const BsSawRack *rack)
{
  static const BsFlowCell cells[] = {
    { .from = 0.00, .width = 0.20, .is_bold = TRUE },
    { .from = 0.20, .width = 0.08, .is_right = TRUE },
    { .from = 0.28, .width = 0.17, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.45, .width = 0.13, .is_right = TRUE },
    { .from = 0.58, .width = 0.13, .is_right = TRUE },
    { .from = 0.73, .width = 0.27 },
  };
  const char *head[] = { _ ("Piece"),         _ ("Board"),           _ ("Sawn size"),
                         _ ("From left end"), _ ("From front edge"), _ ("Remarks") };

  bs_flow_add_heading (flow, _ ("Pieces"));
  bs_flow_begin_table (flow, cells, G_N_ELEMENTS (cells), head);
  for (guint i = 0; i < rack->boards->len; i++)
    {
      const BsSawnBoard *sawn = rack->boards->pdata[i];

      for (guint k = 0; k < sawn->cuts->len; k++)
        add_piece (flow, plan, sawn,
                   &g_array_index (plan->cuts, BsCut, g_array_index (sawn->cuts, guint, k)));
    }
}

static void
add_missing (BsFlow *flow, const BsPlan *plan)
{
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);

  for (guint i = 0; i < wishes->len; i++)
    {
      const BsSawWish *wish = &g_array_index (wishes, BsSawWish, i);
      int missing = bs_saw_count_missing (plan, wish);
      g_autofree char *lack = missing > 0 ? bs_words_saw_lack (plan, wish) : NULL;
      g_autofree char *text = NULL;

      if (missing == 0)
        continue;
      /* Translators: how many pieces, what they are, and why they have no place. */
      text = g_strdup_printf (_ ("Without a place: %d of %s; %s."), missing, wish->label, lack);
      bs_flow_add_text (flow, text, BS_FLOW_PLAIN, BS_FLOW_SIGN_CAUTION);
    }
}

void
bs_sheet_add_cutting (BsFlow *flow, const BsPlan *plan)
{
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  const BsCutStyle style = bs_sheet_make_cut_style (flow, rack->boards, plan->units);
  g_autofree char *sum = bs_words_saw_sum (rack, plan->units);
  g_autofree char *ratio = bs_paper_scale_format (BS_POINTS_PER_MM / style.per_mm);
  /* Translators: a scale: "1:10". */
  g_autofree char *heading = g_strdup_printf (_ ("Cutting the boards, %s"), ratio);

  bs_flow_add_heading (flow, heading);
  bs_flow_add_text (flow, sum, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  bs_flow_add_text (flow,
                    _ ("Seen from above, the front edge below. Cut in the order of the numbers; "
                       "distances are to the near side of the saw’s kerf. Hatched is waste."),
                    BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  add_missing (flow, plan);
  bs_flow_add_space (flow);
  for (guint i = 0; i < rack->boards->len; i++)
    {
      const BsSawnBoard *sawn = rack->boards->pdata[i];
      if (sawn->cuts->len > 0)
        add_board (flow, plan, sawn, &style);
    }
  add_pieces (flow, plan, rack);
}
