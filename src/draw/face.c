/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture.h"

#include <math.h>

#include "draw/defects.h"
#include "draw/grain.h"
#include "draw/marks.h"
#include "draw/outline.h"

/* The rings where they cut the show face. */
static void
draw_lines (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, double width, double length,
            const BsColor *color)
{
  const BsGrainStyle style = {
    .per_mm_across = scale->per_mm_across,
    .per_mm_along = scale->per_mm_along,
    .hairline = scale->hairline,
    .color = *color,
  };
  gboolean is_swapped = bs_orientation_sign_x (placed->orientation) < 0;
  BsGrain grain;

  bs_grain_init (&grain, placed->lamination);
  cairo_save (cr);
  cairo_translate (cr, 0.5 * width, is_swapped ? length : 0.0);
  cairo_scale (cr, bs_orientation_sign_y (placed->orientation), is_swapped ? -1.0 : 1.0);
  bs_grain_draw_face (&grain, cr, bs_orientation_face (placed->orientation, BS_FACE_TOP), &style);
  cairo_restore (cr);
}

/* Defect number i as it lies on the show face of the slab; FALSE when it is on another face. */
static gboolean
find_defect (const BsPlaced *placed, guint i, BsPlacedDefect *at)
{
  *at = bs_placed_defect (placed, &g_array_index (placed->lamination->defects, BsDefect, i));
  return at->face == BS_FACE_TOP;
}

static void
draw_defects (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, const BsColor *color)
{
  BsPlacedDefect at;

  for (guint i = 0; i < placed->lamination->defects->len; i++)
    {
      if (find_defect (placed, i, &at))
        bs_defect_draw (cr, at.defect->kind, at.defect->severity,
                        (at.across_from - placed->y) * scale->per_mm_across,
                        (at.x_from - placed->x) * scale->per_mm_along,
                        (at.across_to - at.across_from) * scale->per_mm_across,
                        (at.x_to - at.x_from) * scale->per_mm_along, scale->hairline, color);
    }
}

/* TRUE when no defect shows between two places along the face (mm from the lamination's end). */
static gboolean
is_clear (const BsPlaced *placed, double from, double to)
{
  BsPlacedDefect at;

  for (guint i = 0; i < placed->lamination->defects->len; i++)
    if (find_defect (placed, i, &at) && at.x_from - placed->x < to && at.x_to - placed->x > from)
      return FALSE;
  return TRUE;
}

/* Where something of this length (all in mm along the face) does not lie on a defect: the first of
 * some tries, as parts of the room; the first of all when none is clear. */
static double
find_clear_place (const BsPlaced *placed, const double *tries, gsize n_tries, double from,
                  double to, double length)
{
  double room = to - from - length;

  for (gsize i = 0; i < n_tries; i++)
    if (is_clear (placed, from + tries[i] * room, from + tries[i] * room + length))
      return from + tries[i] * room;
  return from + tries[0] * room;
}

static void
draw_arrow (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, double width, double from,
            double to, double length, const BsColor *color)
{
  static const double tries[] = { 0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95 };
  double per_mm = scale->per_mm_along;
  double start = per_mm
                 * find_clear_place (placed, tries, G_N_ELEMENTS (tries), from / per_mm,
                                     to / per_mm, length / per_mm);

  if (placed->run_out_top < 0)
    start += length;
  bs_mark_run_out (cr, 0.5 * width, start, placed->run_out_top * length,
                   MIN (0.9 * scale->text_size, 0.7 * width), 1.4 * scale->hairline, color);
}

/* In the row of all labels, or nearest below it where it hides no defect. */
static double
find_label_place (const BsPlaced *placed, const BsScale *scale, double from, double to,
                  double label_room)
{
  static const double tries[] = { 0.0, 0.08, 0.16, 0.24, 0.32, 0.4 };
  double per_mm = scale->per_mm_along;

  return per_mm
         * find_clear_place (placed, tries, G_N_ELEMENTS (tries), from / per_mm, to / per_mm,
                             label_room / per_mm);
}

/* Down the face: the bars of the left end at its own end, the label, the arrow of the run-out. */
static void
draw_signs (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, const BsPalette *palette,
            BsMark marks, double width, double length)
{
  const BsLamination *lamination = placed->lamination;
  BsColor text = bs_palette_on_wood (palette, placed->wood, lamination->lightness);
  BsColor patch = bs_palette_wood (palette, placed->wood, lamination->lightness);
  BsLettering style = { .size = bs_scale_get_label_size (scale), .is_bold = TRUE };
  double sign = MIN (0.7 * scale->text_size, 0.6 * width);
  double edge = 0.5 * sign + 3.0 * scale->hairline;
  gboolean is_swapped = bs_orientation_sign_x (placed->orientation) < 0;
  double below_bars = edge + sign;
  double row = 0.8 * scale->text_size;
  double label_room = 2.0 * scale->text_size;
  double arrow = MIN (6.0 * scale->text_size, 0.3 * length), label_top;

  /* Labels stand in one row even where laminations start a little later than others. */
  double late = MIN (placed->x * scale->per_mm_along, row);

  if (length < 3.0 * below_bars)
    return;
  bs_mark_left_end (cr, 0.5 * width, is_swapped ? length - edge : edge, sign, &text);
  if (length - 2.0 * below_bars < label_room + row)
    return;
  label_top
      = find_label_place (placed, scale, below_bars + row - late, length - below_bars, label_room);
  if (lamination->label != NULL)
    bs_mark_label (cr, lamination->label, &style, scale->labels_stand, 0.0, label_top, width,
                   label_room, &text, &patch);
  if (placed->run_out_top != 0 && length - below_bars - label_top - label_room > arrow)
    draw_arrow (cr, placed, scale, width, label_top + label_room, length - below_bars, arrow,
                &text);
}

void
bs_draw_face (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, const BsPalette *palette,
              BsMark marks)
{
  const BsLamination *lamination = placed->lamination;
  double width = placed->thickness * scale->per_mm_across;
  double length = placed->length * scale->per_mm_along;
  BsColor tint = bs_palette_wood (palette, placed->wood, lamination->lightness);
  BsColor grain = bs_palette_grain (palette, placed->wood, lamination->lightness);
  BsColor text = bs_palette_on_wood (palette, placed->wood, lamination->lightness);

  if (!(isfinite (width) && width > 0.0 && isfinite (length) && length > 0.0))
    return;
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, length);
  cairo_clip (cr);
  bs_color_set (&tint, cr);
  cairo_paint (cr);
  draw_lines (cr, placed, scale, width, length, &grain);
  draw_defects (cr, placed, scale, &text);
  cairo_restore (cr);
  bs_outline_draw (cr, 0.0, 0.0, width, length, scale, palette, marks);
  draw_signs (cr, placed, scale, palette, marks, width, length);
  cairo_restore (cr);
}
