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
bs_cut_picture_margin (const BsCutStyle *style)
{
  return 1.25 * style->text_size;
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

static BsColor
find_tint (const BsPlan *plan, const char *wood, const BsCutStyle *style)
{
  return bs_palette_wood (style->palette, bs_plan_find_wood (plan, wood), NAN);
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

/* The whole board as waste; pieces and offcut are drawn over it. */
static void
draw_waste (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  double width = sawn->sawing->length * style->per_mm;
  double height = sawn->sawing->width * style->per_mm;
  BsColor tint = find_tint (plan, sawn->board->wood, style);

  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  bs_color_set_faded (&tint, cr, 0.4);
  cairo_paint (cr);
  hatch (cr, width, height, style);
  cairo_restore (cr);
}

/* Whole again: what stands on the ground in the wood's tint. */
static void
fill_clear (cairo_t *cr, const BsColor *tint, const BsCutStyle *style)
{
  bs_color_set (&style->palette->ground, cr);
  cairo_fill_preserve (cr);
  bs_color_set (tint, cr);
  cairo_fill (cr);
}

static void
draw_offcut (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn, const BsCutStyle *style)
{
  const BsSawing *sawing = sawn->sawing;
  double length = sawing->offcut_to - sawing->offcut_from;
  double dashes[] = { 5.0 * style->hairline, 3.0 * style->hairline };
  BsColor tint = find_tint (plan, sawn->board->wood, style);
  BsLettering lettering = { .size = style->text_size };

  if (length <= 0.0)
    return;
  g_autofree char *size = bs_units_format (length, BS_QUANTITY_LENGTH, plan->units);
  /* Translators: a rest of a board that is kept, and its length. */
  g_autofree char *words = sawn->cuts->len > 0 ? g_strdup_printf (_ ("offcut, %s"), size)
                                               : g_strdup (_ ("nothing is cut from it"));
  trace (cr, sawn, style, sawing->offcut_from, 0.0, length, sawing->width);
  fill_clear (cr, &tint, style);
  cairo_save (cr);
  trace (cr, sawn, style, sawing->offcut_from, 0.0, length, sawing->width);
  cairo_set_dash (cr, dashes, 2, 0.0);
  bs_color_set (&style->palette->edge, cr);
  cairo_set_line_width (cr, style->hairline);
  cairo_stroke (cr);
  cairo_restore (cr);
  lettering.size = bs_lettering_fit (cr, words, &lettering, 0.95 * length * style->per_mm,
                                     LEAST_TEXT * style->text_size);
  if (lettering.size <= 0.0 || lettering.size > sawing->width * style->per_mm)
    return;
  BsColor ink
      = bs_palette_on_wood (style->palette, bs_plan_find_wood (plan, sawn->board->wood), NAN);
  bs_color_set (&ink, cr);
  bs_lettering_draw (cr, words, &lettering,
                     0.5 * (sawing->offcut_from + sawing->offcut_to) * style->per_mm,
                     0.5 * sawing->width * style->per_mm, 0.5, 0.5);
}

/* Defects are drawn with the grain running down: turned, so that it runs to the right. */
static void
draw_defect (cairo_t *cr, const BsSawnBoard *sawn, const BsDefect *defect, const BsCutStyle *style)
{
  gboolean is_wide = defect->face == BS_FACE_TOP || defect->face == BS_FACE_UNDERSIDE;
  double depth = defect->across_to - defect->across_from;
  double from = is_wide ? defect->across_from
                        : (defect->face == BS_FACE_LEFT ? 0.0 : sawn->sawing->width - depth);
  double x = defect->x_from * style->per_mm, y = from_y (sawn, style, from + depth);
  double length = (defect->x_to - defect->x_from) * style->per_mm, width = depth * style->per_mm;
  double dashes[] = { 2.0 * style->hairline, 2.0 * style->hairline };

  cairo_save (cr);
  cairo_translate (cr, x, y + width);
  cairo_rotate (cr, -0.5 * G_PI);
  bs_defect_draw (cr, defect->kind, defect->severity, 0.0, 0.0, width, length, style->hairline,
                  &style->palette->ink);
  cairo_restore (cr);
  if (defect->face != BS_FACE_UNDERSIDE)
    return;
  cairo_save (cr);
  cairo_set_dash (cr, dashes, 2, 0.0);
  cairo_rectangle (cr, x - 2.0 * style->hairline, y - 2.0 * style->hairline,
                   length + 4.0 * style->hairline, width + 4.0 * style->hairline);
  bs_color_set (&style->palette->ink, cr);
  cairo_set_line_width (cr, style->hairline);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* Their number stands where the saw enters: a crosscut's below the board, a rip cut's at its left
 * end, on a patch. */
static void
draw_pass (cairo_t *cr, const BsSawnBoard *sawn, const BsSawPass *pass, guint number,
           const BsCutStyle *style)
{
  double width = fmax (pass->width * style->per_mm, 1.5 * style->hairline);
  double at
      = pass->is_rip ? from_y (sawn, style, pass->at + pass->width) : pass->at * style->per_mm;
  double from = pass->is_rip ? pass->from * style->per_mm : from_y (sawn, style, pass->to);
  double length = (pass->to - pass->from) * style->per_mm;
  BsLettering lettering = { .size = NUMBER_SIZE * style->text_size, .is_bold = TRUE };
  g_autofree char *text = g_strdup_printf ("%u", number);
  double text_width, text_height;

  bs_color_set (&style->palette->ink, cr);
  if (pass->is_rip)
    cairo_rectangle (cr, from, at, length, width);
  else
    cairo_rectangle (cr, at, from, width, length);
  cairo_fill (cr);
  if (style->without_numbers)
    return;
  bs_lettering_measure (cr, text, &lettering, &text_width, &text_height);
  if (!pass->is_rip)
    {
      bs_lettering_draw (cr, text, &lettering, at + 0.5 * width,
                         from_y (sawn, style, pass->from) + 2.0 * style->hairline, 0.5, 0.0);
      return;
    }
  if (length < 4.0 * text_width)
    return;
  cairo_rectangle (cr, from, at + 0.5 * (width - text_height), text_width + 4.0 * style->hairline,
                   text_height);
  bs_color_set (&style->palette->ground, cr);
  cairo_fill (cr);
  bs_color_set (&style->palette->ink, cr);
  bs_lettering_draw (cr, text, &lettering, from + 2.0 * style->hairline, at + 0.5 * width, 0.0,
                     0.5);
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

/* Label and size, in two lines or in one, as large as there is room. */
static void
letter_piece (cairo_t *cr, const BsPlan *plan, const BsCut *cut, const BsCutStyle *style,
              const BsColor *ink)
{
  double width = 0.94 * cut->length * style->per_mm, height = cut->width * style->per_mm;
  double size = fmin (style->text_size, 0.8 * height);
  const char *label = bs_saw_piece_label (plan, cut->piece);
  g_autofree char *words = describe_piece (plan, cut, style);
  g_autofree char *line = g_strdup_printf ("%s   %s", label, words);
  BsLettering bold = { .size = size, .is_bold = TRUE }, plain = { .size = size };
  double middle = 0.5 * cut->length * style->per_mm;
  double least = LEAST_TEXT * style->text_size;
  gboolean has_two = height > 2.6 * style->text_size;

  if (size < least)
    return;
  bs_color_set (ink, cr);
  if (!has_two && bs_lettering_fit (cr, line, &bold, width, size) > 0.0)
    {
      double label_width, words_width, unused;

      bs_lettering_measure (cr, label, &bold, &label_width, &unused);
      bs_lettering_measure (cr, words, &plain, &words_width, &unused);
      double from = middle - 0.5 * (label_width + size + words_width);
      bs_lettering_draw (cr, label, &bold, from, 0.5 * height, 0.0, 0.5);
      bs_lettering_draw (cr, words, &plain, from + label_width + size, 0.5 * height, 0.0, 0.5);
      return;
    }
  plain.size = has_two ? bs_lettering_fit (cr, words, &plain, width, least) : 0.0;
  bold.size = bs_lettering_fit (cr, label, &bold, width, least);
  if (bold.size > 0.0)
    bs_lettering_draw (cr, label, &bold, middle,
                       0.5 * height - (plain.size > 0.0 ? 0.6 * size : 0.0), 0.5, 0.5);
  if (plain.size > 0.0)
    bs_lettering_draw (cr, words, &plain, middle, 0.5 * height + 0.7 * size, 0.5, 0.5);
}

void
bs_draw_cut_piece (cairo_t *cr, const BsPlan *plan, const BsCut *cut, const BsCutStyle *style,
                   BsMark marks)
{
  const BsBoard *board = bs_plan_find_board (plan, cut->board);
  const char *wood = board != NULL ? board->wood : NULL;
  BsColor tint = find_tint (plan, wood, style);
  BsColor ink = bs_palette_on_wood (style->palette, bs_plan_find_wood (plan, wood), NAN);
  BsScale scale = { .hairline = style->hairline, .text_size = style->text_size };
  double width = cut->length * style->per_mm, height = cut->width * style->per_mm;

  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  fill_clear (cr, &tint, style);
  bs_outline_draw (cr, 0.0, 0.0, width, height, &scale, style->palette, marks);
  letter_piece (cr, plan, cut, style, &ink);
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
      bs_draw_cut_piece (cr, plan, cut, style,
                         is_selected (plan, index, style) ? BS_MARK_SELECTED : BS_MARK_NONE);
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
  draw_waste (cr, plan, sawn, style);
  draw_offcut (cr, plan, sawn, style);
  draw_pieces (cr, plan, sawn, style);
  for (guint i = 0; i < sawn->board->defects->len; i++)
    draw_defect (cr, sawn, &g_array_index (sawn->board->defects, BsDefect, i), style);
  for (guint i = 0; i < sawing->passes->len; i++)
    draw_pass (cr, sawn, &g_array_index (sawing->passes, BsSawPass, i), i + 1, style);
  cairo_rectangle (cr, 0.0, 0.0, sawing->length * style->per_mm, sawing->width * style->per_mm);
  bs_color_set (&style->palette->edge, cr);
  cairo_set_line_width (cr, style->hairline);
  cairo_stroke (cr);
  cairo_restore (cr);
}
