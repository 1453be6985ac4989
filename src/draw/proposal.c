/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/proposal.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/order-moves.h"
#include "draw/lettering.h"
#include "draw/marks.h"
#include "draw/picture.h"

/* In text sizes: the row of the present order, the lines under it, the signs under the section; and
 * the room at each side. */
#define ROW 1.6
#define LINES 2.6
#define SIGNS 1.7
#define SIDE 5.5

typedef struct
{
  cairo_t *cr;
  const BsStack *present;
  const BsResults *proposed;
  const BsScale *scale;
  const BsPalette *palette;
  const char *selected;
  double row_bottom, section_top, section_bottom;
} Picture;

void
bs_proposal_fit (BsScale *scale, const BsStack *present, const BsStack *proposed, double per_mm,
                 double width, double text_size)
{
  double across = width - 2.0 * SIDE * text_size;
  double widest = fmax (present->width, proposed->width);

  *scale = (BsScale){ .hairline = 1.0, .text_size = text_size, .left = SIDE * text_size };
  if (!(isfinite (widest) && widest > 0.0 && across > 0.0))
    return;
  scale->per_mm_across = fmin (per_mm, across / widest);
  scale->left += round (0.5 * (across - present->width * scale->per_mm_across));
  bs_scale_fit_labels (scale, present, text_size);
}

double
bs_proposal_get_height (const BsStack *proposed, const BsScale *scale)
{
  double height = isfinite (proposed->height) ? proposed->height : 0.0;

  return ceil ((ROW + LINES + SIGNS) * scale->text_size + height * scale->per_mm_across);
}

static double
find_middle (const Picture *self, const BsPlaced *placed)
{
  return bs_scale_from_y (self->scale, placed->y + 0.5 * placed->thickness);
}

static gboolean
is_selected (const Picture *self, const BsPlaced *placed)
{
  return g_strcmp0 (placed->lamination->id, self->selected) == 0;
}

static void
set_line_color (const Picture *self, const BsPlaced *placed, gboolean is_dark)
{
  if (is_selected (self, placed))
    bs_color_set (&self->palette->accent, self->cr);
  else
    bs_color_set_faded (&self->palette->ink, self->cr, is_dark ? 1.0 : 0.25);
}

/* The hollow square of the rack. */
static void
draw_rack_sign (const Picture *self, double x, double y)
{
  double size = 0.45 * self->scale->text_size;

  cairo_rectangle (self->cr, x - 0.5 * size, y - 0.5 * size, size, size);
  cairo_stroke (self->cr);
}

/* The present order: a row of boxes with labels. */

static void
draw_present_box (const Picture *self, guint place)
{
  static const BsColor no_patch = { 0.0, 0.0, 0.0, 0.0 };
  const BsPlaced *placed = &self->present->placed[place];
  const BsColor *ink = is_selected (self, placed) ? &self->palette->accent : &self->palette->ink;
  const BsLettering style
      = { .size = fmin (bs_scale_get_label_size (self->scale), 0.85 * self->scale->text_size) };
  double left = bs_scale_from_y (self->scale, placed->y);
  double width = placed->thickness * self->scale->per_mm_across;
  double top = self->scale->top, height = self->row_bottom - top;

  bs_color_set_faded (ink, self->cr, 0.5);
  cairo_rectangle (self->cr, left, top, width, height);
  cairo_stroke (self->cr);
  if (placed->lamination->label != NULL)
    bs_mark_label (self->cr, placed->lamination->label, &style, self->scale->labels_stand, left,
                   top, width, height, ink, &no_patch);
}

static void
draw_leaving (const Picture *self, guint place)
{
  const BsPlaced *placed = &self->present->placed[place];
  double x = find_middle (self, placed);
  double y = self->row_bottom + 0.4 * LINES * self->scale->text_size;

  if (bs_plan_find_place (self->proposed->stack->plan, placed->lamination->id) >= 0)
    return;
  set_line_color (self, placed, TRUE);
  cairo_move_to (self->cr, x, self->row_bottom);
  cairo_line_to (self->cr, x, y);
  cairo_stroke (self->cr);
  draw_rack_sign (self, x, y + 0.225 * self->scale->text_size);
}

/* The lines. */

static void
draw_line (const Picture *self, guint place, const BsOrderMove *move)
{
  const BsPlaced *placed = &self->proposed->stack->placed[place];
  double x_to = find_middle (self, placed);
  double half = 0.5 * (self->section_top - self->row_bottom);

  set_line_color (self, placed, move->is_moved);
  if (move->from < 0)
    {
      double y = self->section_top - 0.8 * half;

      cairo_move_to (self->cr, x_to, y);
      cairo_line_to (self->cr, x_to, self->section_top);
      cairo_stroke (self->cr);
      draw_rack_sign (self, x_to, y - 0.225 * self->scale->text_size);
      return;
    }
  double x_from = find_middle (self, &self->present->placed[move->from]);
  cairo_move_to (self->cr, x_from, self->row_bottom);
  cairo_curve_to (self->cr, x_from, self->row_bottom + half, x_to, self->section_top - half, x_to,
                  self->section_top);
  cairo_stroke (self->cr);
}

/* The proposed section. */

static void
draw_end (const Picture *self, guint place)
{
  const BsPlaced *placed = &self->proposed->stack->placed[place];
  BsMark marks = bs_marks_from_findings (self->proposed, (int)place);

  if (is_selected (self, placed))
    marks |= BS_MARK_SELECTED;
  cairo_save (self->cr);
  cairo_translate (self->cr, bs_scale_from_y (self->scale, placed->y), self->section_bottom);
  bs_draw_end (self->cr, placed, self->scale, self->palette, marks);
  cairo_restore (self->cr);
}

/* An arrow with a head at both ends. */
static void
draw_arrow (cairo_t *cr, double x, double y, double dx, double dy)
{
  for (int end = -1; end <= 1; end += 2)
    {
      double tip_x = x + end * dx, tip_y = y + end * dy;

      cairo_move_to (cr, x, y);
      cairo_line_to (cr, tip_x, tip_y);
      cairo_move_to (cr, tip_x - end * 0.5 * dx + 0.5 * dy, tip_y - end * 0.5 * dy + 0.5 * dx);
      cairo_line_to (cr, tip_x, tip_y);
      cairo_line_to (cr, tip_x - end * 0.5 * dx - 0.5 * dy, tip_y - end * 0.5 * dy - 0.5 * dx);
    }
  cairo_stroke (cr);
}

static void
draw_turn (const Picture *self, guint place, BsOrientation turn)
{
  const BsPlaced *placed = &self->proposed->stack->placed[place];
  double room = placed->thickness * self->scale->per_mm_across;
  double size = fmin (0.4 * self->scale->text_size, 0.2 * room);
  double x = find_middle (self, placed);
  double y = self->section_bottom + 0.5 * SIGNS * self->scale->text_size;
  double apart = turn == BS_ORIENTATION_OVER_AND_END ? 1.1 * size : 0.0;

  set_line_color (self, placed, TRUE);
  if ((turn & BS_ORIENTATION_OVER) != 0)
    draw_arrow (self->cr, x - apart, y, 0.0, size);
  if ((turn & BS_ORIENTATION_END_FOR_END) != 0)
    draw_arrow (self->cr, x + apart, y, size, 0.0);
}

static void
draw_word (const Picture *self, const char *text, double top, double bottom)
{
  const BsLettering style = { .size = self->scale->text_size };

  bs_color_set (&self->palette->faint, self->cr);
  bs_lettering_draw (self->cr, text, &style, self->scale->left - 0.6 * self->scale->text_size,
                     0.5 * (top + bottom), 1.0, 0.5);
}

static gboolean
picture_init (Picture *self, cairo_t *cr, const BsResults *proposed, const BsScale *scale,
              const BsPalette *palette, const char *selected)
{
  double height = proposed->stack->height * scale->per_mm_across;

  *self = (Picture){
    .cr = cr,
    .proposed = proposed,
    .scale = scale,
    .palette = palette,
    .selected = selected,
    .row_bottom = scale->top + ROW * scale->text_size,
    .section_top = scale->top + (ROW + LINES) * scale->text_size,
  };
  self->section_bottom = round (self->section_top + height);
  return isfinite (height) && height > 0.0;
}

void
bs_draw_proposal_section (cairo_t *cr, const BsResults *proposed, const BsScale *scale,
                          const BsPalette *palette, const char *selected)
{
  Picture self;

  if (!picture_init (&self, cr, proposed, scale, palette, selected))
    return;
  for (guint i = 0; i < proposed->stack->n; i++)
    draw_end (&self, i);
}

void
bs_draw_proposal_changes (cairo_t *cr, const BsStack *present, const BsResults *proposed,
                          const BsScale *scale, const BsPalette *palette, const char *selected)
{
  g_autofree BsOrderMove *moves = bs_order_moves_new (present->plan, proposed->stack->plan);
  Picture self;

  if (!picture_init (&self, cr, proposed, scale, palette, selected))
    return;
  self.present = present;
  cairo_save (cr);
  cairo_set_line_width (cr, scale->hairline);
  /* Translators: the order of the laminations as it is, beside a narrow picture. */
  draw_word (&self, C_ ("order", "Now"), scale->top, self.row_bottom);
  /* Translators: an order that was found, beside a narrow picture. */
  draw_word (&self, C_ ("order", "Proposed"), self.section_top, self.section_bottom);
  for (guint i = 0; i < present->n; i++)
    {
      draw_present_box (&self, i);
      draw_leaving (&self, i);
    }
  for (guint i = 0; i < proposed->stack->n; i++)
    {
      draw_line (&self, i, &moves[i]);
      draw_turn (&self, i, moves[i].turn);
    }
  cairo_restore (cr);
}
