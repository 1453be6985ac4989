/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture.h"

#include <math.h>

#include "draw/defects.h"
#include "draw/grain.h"
#include "draw/marks.h"
#include "draw/outline.h"

#define LABEL_ROOM 2.0 /* along the face, in heights of the text */

/* From here on x of cr runs across the lamination's own face from where its defects are measured, y
 * from its own left end. */
static void
turn_to_own (cairo_t *cr, const BsPlaced *placed, double width, double length)
{
  int sign_x = bs_orientation_sign_x (placed->orientation);
  int sign_y = bs_orientation_sign_y (placed->orientation);

  cairo_translate (cr, sign_y < 0 ? width : 0.0, sign_x < 0 ? length : 0.0);
  cairo_scale (cr, sign_y, sign_x);
}

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
  BsGrain grain;

  bs_grain_init (&grain, placed->lamination);
  cairo_save (cr);
  turn_to_own (cr, placed, width, length);
  cairo_translate (cr, 0.5 * width, 0.0);
  bs_grain_draw_face (&grain, cr, bs_orientation_face (placed->orientation, BS_FACE_TOP), &style);
  cairo_restore (cr);
}

static void
draw_photo (cairo_t *cr, const BsPlaced *placed, const BsFacePhoto *photo, double width,
            double length)
{
  cairo_save (cr);
  turn_to_own (cr, placed, width, length);
  bs_photo_draw_face (cr, photo, width, length);
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

/* A stretch of the middle of the face, in device units: where signs stand. */
typedef struct
{
  double from, length; /* along the face */
  double width;        /* half of it on either side of the middle */
} Stretch;

static gboolean
is_clear (const BsPlaced *placed, const BsScale *scale, const Stretch *stretch)
{
  double from = placed->x + stretch->from / scale->per_mm_along;
  double to = from + stretch->length / scale->per_mm_along;
  double middle = placed->y + 0.5 * placed->thickness;
  double half = 0.5 * stretch->width / scale->per_mm_across;
  BsPlacedDefect at;

  for (guint i = 0; i < placed->lamination->defects->len; i++)
    if (find_defect (placed, i, &at) && at.x_from < to && at.x_to > from
        && at.across_from < middle + half && at.across_to > middle - half)
      return FALSE;
  return TRUE;
}

/* Moves a stretch to where it hides no defect: the first of some tries, as parts of the room
 * between from and to; the first of all when none is clear. */
static void
find_clear_place (const BsPlaced *placed, const BsScale *scale, const double *tries, gsize n_tries,
                  double from, double to, Stretch *stretch)
{
  double room = to - from - stretch->length;

  for (gsize i = 0; i < n_tries; i++)
    {
      stretch->from = from + tries[i] * room;
      if (is_clear (placed, scale, stretch))
        return;
    }
  stretch->from = from + tries[0] * room;
}

/* ground: beneath it; NULL: none. */
static void
draw_arrow (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, double width, double from,
            double to, double length, const BsColor *color, const BsColor *ground)
{
  static const double tries[] = { 0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95 };
  double head = MIN (0.9 * scale->text_size, 0.7 * width);
  Stretch stretch = { .length = length, .width = head };

  find_clear_place (placed, scale, tries, G_N_ELEMENTS (tries), from, to, &stretch);
  if (ground != NULL)
    bs_mark_ground (cr, 0.5 * (width - head), stretch.from, head, length, ground);
  if (placed->run_out_top < 0)
    stretch.from += length;
  bs_mark_run_out (cr, 0.5 * width, stretch.from, placed->run_out_top * length, head,
                   1.4 * scale->hairline, color);
}

/* In the row of all labels, or nearest below it where it hides no defect. */
static Stretch
find_label_place (const BsPlaced *placed, const BsScale *scale, double from, double to)
{
  static const double tries[] = { 0.0, 0.08, 0.16, 0.24, 0.32, 0.4 };
  const char *label = placed->lamination->label;
  double letters = label != NULL && !scale->labels_stand ? (double)g_utf8_strlen (label, -1) : 1.0;
  Stretch stretch = {
    .length = LABEL_ROOM * scale->text_size,
    .width = letters * bs_scale_get_label_size (scale),
  };

  find_clear_place (placed, scale, tries, G_N_ELEMENTS (tries), from, to, &stretch);
  return stretch;
}

/* Down the face: the bars of the left end at its own end, the label, the arrow of the run-out; on a
 * photo, each on a ground of its own. */
static void
draw_signs (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, const BsPalette *palette,
            gboolean is_on_photo, double width, double length)
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
  double arrow = MIN (6.0 * scale->text_size, 0.3 * length);
  Stretch place;

  /* Labels stand in one row even where laminations start a little later than others. */
  double late = MIN (placed->x * scale->per_mm_along, row);

  if (length < 3.0 * below_bars)
    return;
  if (is_on_photo)
    bs_mark_ground (cr, 0.5 * (width - 1.4 * sign),
                    (is_swapped ? length - edge : edge) - 0.5 * sign, 1.4 * sign, sign, &patch);
  bs_mark_left_end (cr, 0.5 * width, is_swapped ? length - edge : edge, sign, &text);
  if (length - 2.0 * below_bars < LABEL_ROOM * scale->text_size + row)
    return;
  place = find_label_place (placed, scale, below_bars + row - late, length - below_bars);
  if (lamination->label != NULL)
    bs_mark_label (cr, lamination->label, &style, scale->labels_stand, 0.0, place.from, width,
                   place.length, &text, &patch);
  if (placed->run_out_top != 0 && length - below_bars - place.from - place.length > arrow)
    draw_arrow (cr, placed, scale, width, place.from + place.length, length - below_bars, arrow,
                &text, is_on_photo ? &patch : NULL);
}

void
bs_draw_face (cairo_t *cr, const BsPlaced *placed, const BsFacePhoto *photo, const BsScale *scale,
              const BsPalette *palette, BsMark marks)
{
  const BsLamination *lamination = placed->lamination;
  gboolean is_on_photo = photo != NULL && photo->surface != NULL;
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
  if (is_on_photo)
    draw_photo (cr, placed, photo, width, length);
  else
    draw_lines (cr, placed, scale, width, length, &grain);
  draw_defects (cr, placed, scale, &text);
  cairo_restore (cr);
  bs_outline_draw (cr, 0.0, 0.0, width, length, scale, palette, marks);
  draw_signs (cr, placed, scale, palette, is_on_photo, width, length);
  cairo_restore (cr);
}
