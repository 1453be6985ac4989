/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/picture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/dimension.h"

BsMark
bs_marks_from_findings (const BsResults *results, int place)
{
  BsMark marks = BS_MARK_NONE;

  for (guint i = 0; i < results->findings->len; i++)
    {
      const BsFinding *finding = &g_array_index (results->findings, BsFinding, i);

      if (finding->place < 0 || (finding->place != place && finding->neighbour != place))
        continue;
      if (finding->severity == BS_SEVERITY_STOP)
        marks |= BS_MARK_STOP;
      else if (finding->severity == BS_SEVERITY_CAUTION)
        marks |= BS_MARK_CAUTION;
    }
  return marks;
}

/* Where the section stands: the device position of z = 0. */
static double
find_bottom (const BsStack *stack, const BsScale *scale)
{
  return scale->top + stack->height * scale->per_mm_across;
}

static gboolean
is_drawable (const BsStack *stack, const BsScale *scale)
{
  return stack->n > 0 && isfinite (stack->width) && isfinite (stack->height)
         && isfinite (stack->length) && scale->per_mm_across > 0.0;
}

void
bs_draw_section_picture (cairo_t *cr, const BsResults *results, const BsScale *scale,
                         const BsPalette *palette)
{
  const BsStack *stack = results->stack;

  if (!is_drawable (stack, scale))
    return;
  for (guint i = 0; i < stack->n; i++)
    {
      cairo_save (cr);
      cairo_translate (cr, bs_scale_from_y (scale, stack->placed[i].y), find_bottom (stack, scale));
      bs_draw_end (cr, &stack->placed[i], scale, palette, bs_marks_from_findings (results, (int)i));
      cairo_restore (cr);
    }
  bs_draw_finished_faces (cr, results, scale, palette);
  bs_draw_dimensions (cr, results, scale, palette);
}

void
bs_draw_face_picture (cairo_t *cr, const BsResults *results, GHashTable *photos,
                      const BsScale *scale, const BsPalette *palette)
{
  const BsStack *stack = results->stack;

  if (!is_drawable (stack, scale))
    return;
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      BsFacePhoto photo = bs_photo_find_shown (stack->plan, placed);

      if (photos != NULL && photo.path != NULL)
        photo.surface = g_hash_table_lookup (photos, photo.path);
      cairo_save (cr);
      cairo_translate (cr, bs_scale_from_y (scale, placed->y), bs_scale_from_x (scale, placed->x));
      bs_draw_face (cr, placed, &photo, scale, palette, bs_marks_from_findings (results, (int)i));
      cairo_restore (cr);
    }
  bs_draw_surroundings (cr, results, scale, palette);
  bs_draw_tape (cr, results, scale, palette);
}

/* A finished face at the left end, as a line over the whole width and a little more. */
static void
trace_finished_face (cairo_t *cr, const BsResults *results, const BsScale *scale, double lift)
{
  const BsFlattenResult *flat = &results->flatten;
  double bottom = find_bottom (results->stack, scale);
  double out = 0.6 * scale->text_size / scale->per_mm_across;
  double y_to = results->stack->width + out;

  cairo_move_to (cr, bs_scale_from_y (scale, -out),
                 bottom - (flat->offset + lift - flat->slope_y * out) * scale->per_mm_across);
  cairo_line_to (cr, bs_scale_from_y (scale, y_to),
                 bottom - (flat->offset + lift + flat->slope_y * y_to) * scale->per_mm_across);
}

/* A triangle outside the section that points to where the finished face touches the wood. */
static void
draw_touch (cairo_t *cr, const BsTouch *touch, const BsResults *results, const BsScale *scale,
            const BsPalette *palette)
{
  const BsStack *stack = results->stack;
  double size = 0.5 * scale->text_size;
  double x = bs_scale_from_y (scale, touch->y);
  double tip = touch->is_top ? scale->top : find_bottom (stack, scale);
  double base = touch->is_top ? tip - size : tip + size;
  BsLettering style = { .size = 0.8 * scale->text_size };
  g_autofree char *where = bs_units_format (touch->x, BS_QUANTITY_LENGTH, stack->plan->units);

  bs_color_set (&palette->ink, cr);
  cairo_move_to (cr, x, tip);
  cairo_line_to (cr, x + 0.5 * size, base);
  cairo_line_to (cr, x - 0.5 * size, base);
  cairo_close_path (cr);
  cairo_fill (cr);
  bs_color_set (&palette->faint, cr);
  bs_lettering_draw (cr, where, &style, x, base, 0.5, touch->is_top ? 1.0 : 0.0);
}

/* TRUE when an earlier touch stands so near on the same face that the words would overlap. */
static gboolean
is_crowded (const BsFlattenResult *flat, guint i, const BsScale *scale)
{
  for (guint j = 0; j < i; j++)
    if (flat->touches[j].is_top == flat->touches[i].is_top
        && fabs (flat->touches[j].y - flat->touches[i].y) * scale->per_mm_across
               < 5.0 * scale->text_size)
      return TRUE;
  return FALSE;
}

void
bs_draw_finished_faces (cairo_t *cr, const BsResults *results, const BsScale *scale,
                        const BsPalette *palette)
{
  const BsFlattenResult *flat = &results->flatten;
  double dashes[] = { 9.0 * scale->hairline, 2.5 * scale->hairline, 2.0 * scale->hairline,
                      2.5 * scale->hairline };

  if (!is_drawable (results->stack, scale) || !isfinite (flat->thickness))
    return;
  cairo_save (cr);
  /* A light casing first, so that the line is seen on dark wood too. */
  for (int pass = 0; pass < 2; pass++)
    {
      trace_finished_face (cr, results, scale, 0.0);
      trace_finished_face (cr, results, scale, flat->thickness);
      if (pass == 0)
        bs_color_set_faded (&palette->ground, cr, 0.6);
      else
        bs_color_set (&palette->ink, cr);
      cairo_set_line_width (cr, (pass == 0 ? 3.0 : 1.0) * scale->hairline);
      cairo_set_dash (cr, dashes, pass == 0 ? 0 : 4, 0.0);
      cairo_stroke (cr);
    }
  cairo_set_dash (cr, NULL, 0, 0.0);
  for (guint i = 0; i < flat->n_touches; i++)
    if (!is_crowded (flat, i, scale))
      draw_touch (cr, &flat->touches[i], results, scale, palette);
  cairo_restore (cr);
}

void
bs_draw_dimensions (cairo_t *cr, const BsResults *results, const BsScale *scale,
                    const BsPalette *palette)
{
  const BsStack *stack = results->stack;
  const BsFlattenResult *flat = &results->flatten;
  BsUnitSystem units = stack->plan->units;
  g_autofree char *width = bs_units_format (stack->width, BS_QUANTITY_LENGTH, units);
  g_autofree char *height = bs_units_format (stack->height, BS_QUANTITY_LENGTH, units);
  double left = bs_scale_from_y (scale, 0.0), right = bs_scale_from_y (scale, stack->width);
  double bottom = find_bottom (stack, scale);
  double away = 1.2 * scale->text_size;
  double over = scale->top - 1.9 * scale->text_size;

  if (!is_drawable (stack, scale))
    return;
  bs_dimension_draw (cr, left, over, right, over, width, FALSE, scale->text_size, scale->hairline,
                     palette);
  bs_dimension_draw (cr, left - away, bottom, left - away, scale->top, height, TRUE,
                     scale->text_size, scale->hairline, palette);
  if (isfinite (flat->thickness))
    {
      double under = bottom - (flat->offset + flat->slope_y * stack->width) * scale->per_mm_across;
      g_autofree char *thickness = bs_units_format (flat->thickness, BS_QUANTITY_LENGTH, units);

      bs_dimension_draw (cr, right + away, under, right + away,
                         under - flat->thickness * scale->per_mm_across, thickness, FALSE,
                         scale->text_size, scale->hairline, palette);
    }
}

/* The words for both sides stand beside that for the end only where all three find room. */
#define ROOM_FOR_SIDES 13.0

void
bs_draw_surroundings (cairo_t *cr, const BsResults *results, const BsScale *scale,
                      const BsPalette *palette)
{
  const BsStack *stack = results->stack;
  BsLettering style = { .size = 0.85 * scale->text_size };
  double left = bs_scale_from_y (scale, 0.0), right = bs_scale_from_y (scale, stack->width);
  double above = scale->top - 0.3 * scale->text_size;
  double below = bs_scale_from_x (scale, stack->length) + 0.3 * scale->text_size;

  if (!is_drawable (stack, scale) || !(scale->per_mm_along > 0.0))
    return;
  cairo_save (cr);
  bs_color_set (&palette->faint, cr);
  bs_lettering_draw (cr, _ ("left end"), &style, 0.5 * (left + right), above, 0.5, 1.0);
  bs_lettering_draw (cr, _ ("right end"), &style, 0.5 * (left + right), below, 0.5, 0.0);
  if (right - left > ROOM_FOR_SIDES * scale->text_size)
    {
      bs_lettering_draw (cr, _ ("front"), &style, left, above, 0.0, 1.0);
      bs_lettering_draw (cr, _ ("back"), &style, right, above, 1.0, 1.0);
    }
  if (scale->per_mm_along < 0.99 * scale->per_mm_across)
    {
      /* Translators: of a picture whose length is compressed; %.1f is how many times. */
      g_autofree char *note = g_strdup_printf (_ ("Drawn %.1f times shorter along the grain"),
                                               scale->per_mm_across / scale->per_mm_along);

      bs_lettering_draw (cr, note, &style, 0.5 * (left + right), below + 1.2 * style.size, 0.5,
                         0.0);
    }
  cairo_restore (cr);
}
