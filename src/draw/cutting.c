/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/cutting.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/defects.h"
#include "draw/lettering.h"
#include "draw/outline.h"

#define NUMBER_SIZE 0.8 /* of the passes' numbers, in heights of the text */
#define LEAST_TEXT 0.72 /* smaller cannot be read */
#define HATCH 7.0       /* between the lines of waste, in hairlines */

double
bs_cut_picture_margin (double text_size)
{
  return 1.4 * text_size;
}

/* Device place of the board's y, from its back edge. */
static double
from_y (const BsSawnBoard *sawn, const BsCutStyle *style, double y)
{
  return (sawn->sawing->width - y) * style->per_mm;
}

static void
trace (cairo_t *cr, const BsSawnBoard *sawn, const BsCutStyle *style, double x, double y,
       double length, double width)
{
  cairo_rectangle (cr, x * style->per_mm, from_y (sawn, style, y + width), length * style->per_mm,
                   width * style->per_mm);
}

/* Text round a point, on a patch that keeps the grain out of it. */
static void
letter_on_patch (cairo_t *cr, const char *text, const BsLettering *lettering, double x, double y,
                 const BsColor *ink, const BsColor *patch)
{
  double width, height, pad = 0.2 * lettering->size;

  bs_lettering_measure (cr, text, lettering, &width, &height);
  cairo_rectangle (cr, x - 0.5 * width - pad, y - 0.45 * height, width + 2.0 * pad, 0.9 * height);
  bs_color_set_faded (patch, cr, 0.85);
  cairo_fill (cr);
  bs_color_set (ink, cr);
  bs_lettering_draw (cr, text, lettering, x, y, 0.5, 0.5);
}

/* Slanted lines within the clip. */
static void
hatch (cairo_t *cr, double width, double height, const BsCutStyle *style)
{
  double step = HATCH * style->hairline;
  int n = (int)CLAMP (ceil ((width + height) / step), 1.0, 20000.0);

  for (int i = 0; i < n; i++)
    {
      cairo_move_to (cr, i * step, 0.0);
      cairo_line_to (cr, i * step - height, height);
    }
  bs_color_set_faded (&style->palette->ink, cr, 0.45);
  cairo_set_line_width (cr, 0.8 * style->hairline);
  cairo_stroke (cr);
}

/* The wood itself, with the defects of its upper face. */
static void
draw_wood (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  const BsBoardLook look
      = { .board = sawn->board, .wood = bs_plan_find_wood (plan, sawn->board->wood) };
  const BsBoardScale scale = {
    .per_mm = style->per_mm,
    .hairline = style->hairline,
    .text_size = style->text_size,
  };

  bs_draw_board_face (cr, &look, BS_FACE_TOP, &scale, style->palette);
}

/* All but pieces and offcut. */
static void
trace_waste (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  const BsSawing *sawing = sawn->sawing;

  trace (cr, sawn, style, 0.0, 0.0, sawing->length, sawing->width);
  for (guint i = 0; i < sawn->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, g_array_index (sawn->cuts, guint, i));
      trace (cr, sawn, style, cut->x, cut->y, cut->length, cut->width);
    }
  trace (cr, sawn, style, sawing->offcut_from, 0.0, sawing->offcut_to - sawing->offcut_from,
         sawing->width);
}

static void
draw_waste (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  cairo_save (cr);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  trace_waste (cr, plan, sawn, style);
  cairo_clip (cr);
  bs_color_set_faded (&style->palette->ground, cr, 0.6);
  cairo_paint (cr);
  hatch (cr, sawn->sawing->length * style->per_mm, sawn->sawing->width * style->per_mm, style);
  cairo_restore (cr);
}

/* Words in the middle of a stretch of the board, on a patch of its tint; left out where they do not
 * fit. */
static void
letter (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn, const char *words, double from,
        double to, const BsCutStyle *style)
{
  const BsWood *wood = bs_plan_find_wood (plan, sawn->board->wood);
  BsColor ink = bs_palette_on_wood (style->palette, wood, NAN);
  BsColor patch = bs_palette_wood (style->palette, wood, NAN);
  BsLettering lettering = { .size = style->text_size };
  double room = (to - from) * style->per_mm, height = sawn->sawing->width * style->per_mm;

  lettering.size
      = bs_lettering_fit (cr, words, &lettering, 0.95 * room, LEAST_TEXT * style->text_size);
  if (lettering.size > 0.0 && lettering.size < 0.9 * height)
    letter_on_patch (cr, words, &lettering, 0.5 * (from + to) * style->per_mm, 0.5 * height, &ink,
                     &patch);
}

static void
draw_offcut (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  const BsSawing *sawing = sawn->sawing;
  double length = sawing->offcut_to - sawing->offcut_from;
  double dashes[] = { 5.0 * style->hairline, 3.0 * style->hairline };

  if (length <= 0.0)
    return;
  g_autofree char *size = bs_units_format (length, BS_QUANTITY_LENGTH, plan->units);
  /* Translators: a rest of a board that is kept, and its length. */
  g_autofree char *words = g_strdup_printf (_ ("offcut, %s"), size);
  cairo_save (cr);
  trace (cr, sawn, style, sawing->offcut_from, 0.0, length, sawing->width);
  cairo_set_dash (cr, dashes, 2, 0.0);
  bs_color_set (&style->palette->edge, cr);
  cairo_set_line_width (cr, 1.5 * style->hairline);
  cairo_stroke (cr);
  cairo_restore (cr);
  letter (cr, plan, sawn, words, sawing->offcut_from, sawing->offcut_to, style);
}

/* A defect that the upper face does not show, seen through the board. Defects are drawn with the
 * grain running down: turned, so that it runs to the right. */
static void
draw_hidden_defect (cairo_t *cr, const BsSawnBoard *sawn, const BsDefect *defect,
                    const BsCutStyle *style)
{
  double depth = defect->across_to - defect->across_from;
  double from = defect->face == BS_FACE_UNDERSIDE ? defect->across_from
                : defect->face == BS_FACE_LEFT    ? 0.0
                                                  : sawn->sawing->width - depth;
  double x = defect->x_from * style->per_mm, y = from_y (sawn, style, from + depth);
  double length = (defect->x_to - defect->x_from) * style->per_mm, width = depth * style->per_mm;
  double dashes[] = { 2.0 * style->hairline, 2.0 * style->hairline };

  cairo_save (cr);
  cairo_translate (cr, x, y + width);
  cairo_rotate (cr, -0.5 * G_PI);
  bs_defect_draw (cr, defect->kind, defect->severity, 0.0, 0.0, width, length, style->hairline,
                  &style->palette->ink);
  cairo_restore (cr);
  cairo_save (cr);
  cairo_set_dash (cr, dashes, 2, 0.0);
  cairo_rectangle (cr, x - 2.0 * style->hairline, y - 2.0 * style->hairline,
                   length + 4.0 * style->hairline, width + 4.0 * style->hairline);
  bs_color_set (&style->palette->ink, cr);
  cairo_set_line_width (cr, style->hairline);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* The number of a pass stands where the saw enters: outside the board where it goes through all of
 * it, else on the kerf. */
static void
number_pass (cairo_t *cr, const BsSawnBoard *sawn, const BsSawPass *pass, guint number,
             gboolean is_crowded, const BsCutStyle *style)
{
  gboolean is_whole = number <= sawn->sawing->n_first;
  BsLettering lettering = { .size = NUMBER_SIZE * style->text_size, .is_bold = TRUE };
  g_autofree char *text = g_strdup_printf ("%u", number);
  double middle = pass->at + 0.5 * pass->width, gap = 2.0 * style->hairline, width, height;

  bs_lettering_measure (cr, text, &lettering, &width, &height);
  bs_color_set (&style->palette->ink, cr);
  if (is_whole && !pass->is_rip)
    bs_lettering_draw (cr, text, &lettering, middle * style->per_mm,
                       sawn->sawing->width * style->per_mm + gap, 0.5, 0.0);
  else if (is_whole)
    bs_lettering_draw (cr, text, &lettering, is_crowded ? -gap - width : -gap,
                       from_y (sawn, style, middle), 1.0, 0.5);
  else if ((pass->to - pass->from) * style->per_mm < 1.3 * (pass->is_rip ? width : height))
    return;
  else if (pass->is_rip)
    letter_on_patch (cr, text, &lettering, pass->from * style->per_mm + 0.5 * width + 2.0 * gap,
                     from_y (sawn, style, middle), &style->palette->ink, &style->palette->ground);
  else
    letter_on_patch (cr, text, &lettering, middle * style->per_mm,
                     from_y (sawn, style, 0.5 * (pass->from + pass->to)), &style->palette->ink,
                     &style->palette->ground);
}

static void
draw_pass (cairo_t *cr, const BsSawnBoard *sawn, const BsSawPass *pass, const BsCutStyle *style)
{
  double width = fmax (pass->width * style->per_mm, 1.5 * style->hairline);

  if (pass->is_rip)
    cairo_rectangle (cr, pass->from * style->per_mm, from_y (sawn, style, pass->at + pass->width),
                     (pass->to - pass->from) * style->per_mm, width);
  else
    cairo_rectangle (cr, pass->at * style->per_mm, from_y (sawn, style, pass->to), width,
                     (pass->to - pass->from) * style->per_mm);
  bs_color_set (&style->palette->ink, cr);
  cairo_fill (cr);
}

/* So near to the pass before it that their numbers would run into each other. */
static gboolean
is_crowded (const GArray *passes, guint i, const BsCutStyle *style)
{
  if (i == 0)
    return FALSE;
  const BsSawPass *pass = &g_array_index (passes, BsSawPass, i);
  const BsSawPass *before = &g_array_index (passes, BsSawPass, i - 1);
  return pass->is_rip && before->is_rip
         && fabs (pass->at - before->at) * style->per_mm < NUMBER_SIZE * style->text_size;
}

static void
draw_passes (cairo_t *cr, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  const GArray *passes = sawn->sawing->passes;

  for (guint i = 0; i < passes->len; i++)
    draw_pass (cr, sawn, &g_array_index (passes, BsSawPass, i), style);
  for (guint i = 0; !style->without_numbers && i < passes->len; i++)
    number_pass (cr, sawn, &g_array_index (passes, BsSawPass, i), i + 1,
                 is_crowded (passes, i, style), style);
}

/* "1830 × 96.5 mm, pinned". */
static char *
describe_piece (const BsPlan *plan, const BsCut *cut, const BsCutStyle *style)
{
  BsUnitSystem units = plan->units;
  g_autofree char *length = bs_units_format_number (cut->length, BS_QUANTITY_LENGTH, units);
  g_autofree char *width = bs_units_format (cut->width, BS_QUANTITY_LENGTH, units);
  g_autofree char *size = g_strdup_printf ("%s × %s", length, width);

  if (cut->is_cut)
    /* Translators: the size of a piece that was sawn already. */
    return g_strdup_printf (_ ("✓ %s, cut"), size);
  if (cut->is_pinned)
    /* Translators: the size of a piece that stays where it is when the rest is planned anew. */
    return g_strdup_printf (_ ("● %s, pinned"), size);
  return g_steal_pointer (&size);
}

/* Where along a piece its words hide no defect of the upper face: mm from its left end. */
static double
find_clear_middle (const BsBoard *board, const BsCut *cut, double length)
{
  static const double tries[] = { 0.5, 0.35, 0.65, 0.2, 0.8 };

  for (gsize i = 0; board != NULL && i < G_N_ELEMENTS (tries); i++)
    {
      double middle = MIN (MAX (tries[i] * cut->length, 0.5 * length), cut->length - 0.5 * length);
      double from = cut->x + middle - 0.5 * length, to = from + length;
      gboolean is_clear = TRUE;

      for (guint k = 0; k < board->defects->len; k++)
        {
          const BsDefect *defect = &g_array_index (board->defects, BsDefect, k);
          is_clear
              = is_clear
                && (defect->x_from > to || defect->x_to < from
                    || defect->across_from > cut->y + cut->width || defect->across_to < cut->y);
        }
      if (is_clear)
        return middle;
    }
  return 0.5 * cut->length;
}

/* Label and size, in two lines or in one, as large as there is room. */
static void
letter_piece (cairo_t *cr, const BsPlan *plan, const BsCut *cut, const BsCutStyle *style,
              const BsWood *wood)
{
  BsColor ink = bs_palette_on_wood (style->palette, wood, NAN);
  BsColor patch = bs_palette_wood (style->palette, wood, NAN);
  double width = 0.94 * cut->length * style->per_mm, height = cut->width * style->per_mm;
  double size = fmin (style->text_size, 0.8 * height);
  const char *label = bs_saw_piece_label (plan, cut->piece);
  g_autofree char *words = describe_piece (plan, cut, style);
  g_autofree char *line = g_strdup_printf ("%s   %s", label, words);
  BsLettering bold = { .size = size, .is_bold = TRUE }, plain = { .size = size };
  const BsBoard *board = bs_plan_find_board (plan, cut->board);
  double words_width, label_width, unused, middle;
  double least = LEAST_TEXT * style->text_size;
  gboolean has_two = height > 2.6 * style->text_size;

  if (size < least)
    return;
  bs_lettering_measure (cr, label, &bold, &label_width, &unused);
  bs_lettering_measure (cr, words, &plain, &words_width, &unused);
  middle = style->per_mm
           * find_clear_middle (
               board, cut, fmin ((label_width + size + words_width) / style->per_mm, cut->length));
  if (!has_two && bs_lettering_fit (cr, line, &bold, width, size) > 0.0)
    {
      double from = middle - 0.5 * (label_width + size + words_width);
      letter_on_patch (cr, label, &bold, from + 0.5 * label_width, 0.5 * height, &ink, &patch);
      letter_on_patch (cr, words, &plain, from + label_width + size + 0.5 * words_width,
                       0.5 * height, &ink, &patch);
      return;
    }
  plain.size = has_two ? bs_lettering_fit (cr, words, &plain, width, least) : 0.0;
  bold.size = bs_lettering_fit (cr, label, &bold, width, least);
  if (bold.size > 0.0)
    letter_on_patch (cr, label, &bold, middle, 0.5 * height - (plain.size > 0.0 ? 0.6 * size : 0.0),
                     &ink, &patch);
  if (plain.size > 0.0)
    letter_on_patch (cr, words, &plain, middle, 0.5 * height + 0.7 * size, &ink, &patch);
}

static void
outline_piece (cairo_t *cr, const BsPlan *plan, const BsCut *cut, const BsCutStyle *style,
               BsMark marks)
{
  const BsBoard *board = bs_plan_find_board (plan, cut->board);
  const BsWood *wood = bs_plan_find_wood (plan, board != NULL ? board->wood : NULL);
  BsScale scale = { .hairline = style->hairline, .text_size = style->text_size };

  bs_outline_draw (cr, 0.0, 0.0, cut->length * style->per_mm, cut->width * style->per_mm, &scale,
                   style->palette, marks);
  letter_piece (cr, plan, cut, style, wood);
}

void
bs_draw_cut_piece (cairo_t *cr, const BsPlan *plan, const BsCut *cut, const BsCutStyle *style,
                   BsMark marks)
{
  const BsBoard *board = bs_plan_find_board (plan, cut->board);
  const BsWood *wood = bs_plan_find_wood (plan, board != NULL ? board->wood : NULL);
  BsColor tint = bs_palette_wood (style->palette, wood, NAN);

  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rectangle (cr, 0.0, 0.0, cut->length * style->per_mm, cut->width * style->per_mm);
  bs_color_set (&tint, cr);
  cairo_fill (cr);
  outline_piece (cr, plan, cut, style, marks);
  cairo_restore (cr);
}

static gboolean
is_selected (const BsPlan *plan, guint cut, const BsCutStyle *style)
{
  guint copy = 0;

  if (g_strcmp0 (g_array_index (plan->cuts, BsCut, cut).piece, style->selected) != 0)
    return FALSE;
  for (guint i = 0; i < cut; i++)
    copy += g_strcmp0 (g_array_index (plan->cuts, BsCut, i).piece, style->selected) == 0;
  return copy == style->selected_copy;
}

static void
draw_pieces (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  for (guint i = 0; i < sawn->cuts->len; i++)
    {
      guint index = g_array_index (sawn->cuts, guint, i);
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, index);

      cairo_save (cr);
      cairo_translate (cr, cut->x * style->per_mm, from_y (sawn, style, cut->y + cut->width));
      outline_piece (cr, plan, cut, style,
                     is_selected (plan, index, style) ? style->mark : BS_MARK_NONE);
      cairo_restore (cr);
    }
}

void
bs_draw_cut_board (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn,
                   const BsCutStyle *style)
{
  const BsSawing *sawing = sawn->sawing;

  if (!(sawing->length * style->per_mm > 0.0 && sawing->width * style->per_mm > 0.0))
    return;
  cairo_save (cr);
  cairo_new_path (cr);
  draw_wood (cr, plan, sawn, style);
  for (guint i = 0; i < sawn->board->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (sawn->board->defects, BsDefect, i);
      if (defect->face != BS_FACE_TOP)
        draw_hidden_defect (cr, sawn, defect, style);
    }
  if (sawn->cuts->len > 0)
    {
      draw_waste (cr, plan, sawn, style);
      draw_offcut (cr, plan, sawn, style);
      draw_pieces (cr, plan, sawn, style);
      draw_passes (cr, sawn, style);
    }
  cairo_restore (cr);
}
