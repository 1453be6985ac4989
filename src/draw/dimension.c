/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dimension.h"

#include <math.h>

#include "core/units.h"

/* The slanted stroke at each end. */
static void
trace_tick (cairo_t *cr, double x, double y, double size)
{
  cairo_move_to (cr, x - 0.5 * size, y + 0.5 * size);
  cairo_line_to (cr, x + 0.5 * size, y - 0.5 * size);
}

void
bs_dimension_draw (cairo_t *cr, double x_from, double y_from, double x_to, double y_to,
                   const char *value, gboolean is_left, double text_size, double hairline,
                   const BsPalette *palette)
{
  gboolean is_level = fabs (x_to - x_from) > 2.0 * fabs (y_to - y_from);
  double tick = 0.45 * text_size, gap = is_left ? -0.4 * text_size : 0.4 * text_size;
  double x = 0.5 * (x_from + x_to), y = 0.5 * (y_from + y_to);
  BsLettering style = { .size = text_size };

  cairo_save (cr);
  bs_color_set (&palette->faint, cr);
  cairo_set_line_width (cr, hairline);
  cairo_move_to (cr, x_from, y_from);
  cairo_line_to (cr, x_to, y_to);
  trace_tick (cr, x_from, y_from, tick);
  trace_tick (cr, x_to, y_to, tick);
  cairo_stroke (cr);

  bs_color_set (&palette->ink, cr);
  if (is_level)
    bs_lettering_draw (cr, value, &style, x, y - 0.1 * text_size, 0.5, 1.0);
  else
    bs_lettering_draw (cr, value, &style, x + gap, y, is_left ? 1.0 : 0.0, 0.5);
  cairo_restore (cr);
}

typedef struct
{
  double step, minor;
} Step;

double
bs_dimension_step (double least, BsUnitSystem units, double *minor)
{
  static const Step metric[] = {
    { 1.0, 1.0 },    { 5.0, 1.0 },     { 10.0, 5.0 },    { 20.0, 10.0 },    { 50.0, 10.0 },
    { 100.0, 50.0 }, { 200.0, 100.0 }, { 500.0, 100.0 }, { 1000.0, 500.0 }, { 2000.0, 1000.0 },
  };
  static const Step inch[] = {
    { 0.25, 0.125 }, { 0.5, 0.25 },  { 1.0, 0.5 },   { 2.0, 1.0 },   { 6.0, 1.0 },
    { 12.0, 6.0 },   { 24.0, 12.0 }, { 48.0, 12.0 }, { 96.0, 24.0 },
  };
  gboolean is_metric = units == BS_UNIT_SYSTEM_METRIC;
  const Step *steps = is_metric ? metric : inch;
  gsize last = (is_metric ? G_N_ELEMENTS (metric) : G_N_ELEMENTS (inch)) - 1, i = 0;
  double unit = is_metric ? 1.0 : BS_MM_PER_INCH;

  while (i < last && steps[i].step * unit < least)
    i++;
  *minor = steps[i].minor * unit;
  return steps[i].step * unit;
}

void
bs_dimension_scale_bar (cairo_t *cr, double x, double y, double per_mm, double longest,
                        BsUnitSystem units, double text_size, double hairline,
                        const BsPalette *palette)
{
  BsLettering style = { .size = text_size };
  double thick = 0.28 * text_size, minor, length;
  g_autofree char *value = NULL;

  if (!(per_mm > 0.0))
    return;
  length = bs_dimension_step (0.4 * longest / per_mm, units, &minor);
  value = bs_units_format (length, BS_QUANTITY_LENGTH, units);

  cairo_save (cr);
  bs_color_set (&palette->ink, cr);
  cairo_set_line_width (cr, hairline);
  cairo_rectangle (cr, x, y, length * per_mm, thick);
  cairo_stroke (cr);
  cairo_rectangle (cr, x, y, 0.5 * length * per_mm, thick);
  cairo_fill (cr);
  bs_lettering_draw (cr, value, &style, x + length * per_mm, y, 1.0, 1.0);
  cairo_restore (cr);
}
