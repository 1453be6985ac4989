/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "core/clamp-layout.h"
#include "core/units.h"
#include "draw/dimension.h"
#include "draw/picture.h"

static void
draw_ticks (cairo_t *cr, const BsScale *scale, double at, double length, double every, double size)
{
  int n = (int)floor (length / every + 1e-6);

  for (int i = 0; i <= n; i++)
    {
      double y = bs_scale_from_x (scale, i * every);

      cairo_move_to (cr, at, y);
      cairo_line_to (cr, at + size, y);
    }
  cairo_stroke (cr);
}

/* The tape itself, right of the face. */
static void
draw_scale (cairo_t *cr, const BsStack *stack, const BsScale *scale, const BsPalette *palette)
{
  BsUnitSystem units = stack->plan->units;
  BsLettering style = { .size = 0.85 * scale->text_size };
  double at = bs_scale_from_y (scale, stack->width) + 1.6 * scale->text_size;
  double minor, major;

  major = bs_dimension_step (2.2 * style.size / scale->per_mm_along, units, &minor);
  bs_color_set (&palette->faint, cr);
  cairo_set_line_width (cr, scale->hairline);
  cairo_move_to (cr, at, bs_scale_from_x (scale, 0.0));
  cairo_line_to (cr, at, bs_scale_from_x (scale, stack->length));
  cairo_stroke (cr);
  draw_ticks (cr, scale, at, stack->length, minor, 0.3 * scale->text_size);
  draw_ticks (cr, scale, at, stack->length, major, 0.6 * scale->text_size);

  for (int i = 0; i * major <= stack->length + 1e-6; i++)
    {
      g_autofree char *value = i == 0
                                   ? bs_units_format (0.0, BS_QUANTITY_LENGTH, units)
                                   : bs_units_format_number (i * major, BS_QUANTITY_LENGTH, units);

      bs_lettering_draw (cr, value, &style, at + 0.9 * scale->text_size,
                         bs_scale_from_x (scale, i * major), 0.0, 0.5);
    }
}

/* The pads of a clamp on both sides of the slab, filled above and open below, and the line between
 * them. */
static void
draw_clamp (cairo_t *cr, const BsResults *results, const BsLayoutClamp *clamp, const BsScale *scale,
            const BsPalette *palette)
{
  const BsClampKind *kind = g_ptr_array_index (results->stack->plan->shop.clamps, clamp->kind);
  double left = bs_scale_from_y (scale, 0.0);
  double right = bs_scale_from_y (scale, results->stack->width);
  double y = bs_scale_from_x (scale, clamp->x);
  double thick = 0.35 * scale->text_size;
  double high = fmax (kind->head_width * scale->per_mm_along, 0.4 * scale->text_size);
  double dashes[] = { 4.0 * scale->hairline, 3.0 * scale->hairline };

  bs_color_set_faded (&palette->edge, cr, 0.55);
  cairo_set_line_width (cr, scale->hairline);
  cairo_set_dash (cr, dashes, clamp->is_above ? 0 : 2, 0.0);
  cairo_move_to (cr, left, y);
  cairo_line_to (cr, right, y);
  cairo_stroke (cr);

  cairo_set_dash (cr, NULL, 0, 0.0);
  bs_color_set (&palette->ink, cr);
  cairo_rectangle (cr, left - thick - 2.0 * scale->hairline, y - 0.5 * high, thick, high);
  cairo_rectangle (cr, right + 2.0 * scale->hairline, y - 0.5 * high, thick, high);
  if (clamp->is_above)
    cairo_fill_preserve (cr);
  cairo_stroke (cr);
}

/* Left of the face: how far the clamp is from the left end. */
static void
label_clamp (cairo_t *cr, const BsResults *results, double x, const BsScale *scale,
             const BsPalette *palette)
{
  BsLettering style = { .size = 0.85 * scale->text_size };
  g_autofree char *value
      = bs_units_format_number (x, BS_QUANTITY_LENGTH, results->stack->plan->units);

  bs_color_set (&palette->ink, cr);
  bs_lettering_draw (cr, value, &style, bs_scale_from_y (scale, 0.0) - 0.9 * scale->text_size,
                     bs_scale_from_x (scale, x), 1.0, 0.5);
}

void
bs_draw_tape (cairo_t *cr, const BsResults *results, const BsScale *scale, const BsPalette *palette)
{
  const BsStack *stack = results->stack;
  double last = -INFINITY;

  if (stack->n == 0 || !isfinite (stack->width) || !isfinite (stack->length)
      || !(scale->per_mm_along > 0.0))
    return;
  cairo_save (cr);
  draw_scale (cr, stack, scale, palette);
  for (guint i = 0; i < results->set_clamps->len; i++)
    {
      const BsLayoutClamp *clamp = &g_array_index (results->set_clamps, BsLayoutClamp, i);
      double x = clamp->x;

      if (!isfinite (x))
        continue;
      draw_clamp (cr, results, clamp, scale, palette);
      if ((x - last) * scale->per_mm_along < 1.1 * scale->text_size)
        continue;
      label_clamp (cr, results, x, scale, palette);
      last = x;
    }
  cairo_restore (cr);
}
