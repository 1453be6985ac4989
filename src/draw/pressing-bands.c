/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/pressing-private.h"

#define COLUMN 1.0 /* of a band, in device units: shades and signs are looked up so far apart */

BsHeat
bs_pressing_heat (const BsPressure *pressure)
{
  const BsPlan *plan = pressure->stack->plan;
  double least = plan->adhesive.min_pressure_mpa;

  return (BsHeat){ .from = 0.0,
                   .to = fmax (1.1 * least, pressure->layout.greatest_mpa),
                   .quantity = BS_QUANTITY_PRESSURE,
                   .units = plan->units };
}

double
bs_pressing_half_band (const BsPressingScale *scale, const BsStack *stack, guint line)
{
  double thinner = fmin (stack->placed[line].thickness, stack->placed[line + 1].thickness);

  return fmin (0.36 * thinner * scale->per_mm_across, 0.65 * scale->text_size);
}

/* Walks a line from left to right: the pressure at x, NAN where it has no glue, -1 where it is
 * open. Two spots of one joint hold what lies between them. */
static double
find_pressure (const BsPressLine *line, double x, guint *at)
{
  const BsPressPoint *point;
  double part;

  while (*at + 1 < line->n_points && line->points[*at + 1].x < x)
    (*at)++;
  if (*at + 1 >= line->n_points)
    return NAN;
  point = &line->points[*at];
  if (x < point->x || point[0].joint != point[1].joint)
    return NAN;
  part = point[1].x > point->x ? (x - point->x) / (point[1].x - point->x) : 0.0;
  if ((part < 0.5 ? point[0] : point[1]).opening > 0.0)
    return -1.0;
  return point[0].pressure_mpa + part * (point[1].pressure_mpa - point[0].pressure_mpa);
}

static BsSpot
judge (const BsPressure *pressure, double pressure_mpa)
{
  const BsLayoutProblem *problem = &pressure->press.problem;

  if (isnan (pressure_mpa))
    return BS_SPOT_NONE;
  if (pressure_mpa < 0.0)
    return BS_SPOT_OPEN;
  if (pressure_mpa < problem->least_mpa * (1.0 - 1e-3))
    return BS_SPOT_BELOW;
  return pressure_mpa > problem->most_mpa ? BS_SPOT_CRUSHED : BS_SPOT_ENOUGH;
}

static void
trace_hatch (cairo_t *cr, double x, double y, double width, double height)
{
  double step = 5.0;

  for (guint i = 0; i * step < width + height; i++)
    {
      double at = x - height + i * step;

      cairo_move_to (cr, at, y + height);
      cairo_line_to (cr, at + height, y);
    }
}

/* Rings for what is open, crosses for what is crushed. */
static void
trace_marks (cairo_t *cr, BsSpot spot, double x, double y, double width, double height)
{
  double radius = fmin (0.3 * height, 3.0), step = fmax (4.0 * radius, 6.0),
         middle = y + 0.5 * height;

  for (guint i = 0; (i + 0.5) * step < width; i++)
    {
      double at = x + (i + 0.5) * step;

      if (spot == BS_SPOT_OPEN)
        {
          cairo_new_sub_path (cr);
          cairo_arc (cr, at, middle, radius, 0.0, 2.0 * G_PI);
        }
      else
        {
          cairo_move_to (cr, at - radius, middle - radius);
          cairo_line_to (cr, at + radius, middle + radius);
          cairo_move_to (cr, at - radius, middle + radius);
          cairo_line_to (cr, at + radius, middle - radius);
        }
    }
}

void
bs_pressing_draw_sign (cairo_t *cr, BsSpot spot, double x, double y, double width, double height,
                       double hairline, const BsColor *color)
{
  if (spot == BS_SPOT_ENOUGH || spot == BS_SPOT_NONE)
    return;
  cairo_save (cr);
  cairo_rectangle (cr, x, y, width, height);
  cairo_clip (cr);
  bs_color_set (color, cr);
  cairo_set_line_width (cr, hairline);
  if (spot == BS_SPOT_BELOW)
    trace_hatch (cr, x, y, width, height);
  else
    trace_marks (cr, spot, x, y, width, height);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* A stretch of columns of one sign: on the ground where it is open, else in the colour that stands
 * out from the lightest shade in it. */
static void
draw_stretch (cairo_t *cr, const BsHeat *heat, BsSpot spot, const double *values, guint n, double x,
              double y, double width, double height, double hairline, const BsPalette *palette)
{
  double least = INFINITY;

  for (guint i = 0; i < n; i++)
    least = fmin (least, values[i]);
  BsColor on_shade = bs_heat_on_shade (palette, bs_heat_get_part (heat, least));
  if (spot == BS_SPOT_OPEN)
    {
      cairo_rectangle (cr, x, y, width, height);
      bs_color_set (&palette->ground, cr);
      cairo_fill (cr);
    }
  bs_pressing_draw_sign (cr, spot, x, y, width, height, hairline,
                         spot == BS_SPOT_OPEN ? &palette->ink : &on_shade);
}

static void
draw_band (cairo_t *cr, const BsPressure *pressure, guint i, const BsHeat *heat,
           const BsPressingScale *scale, const BsPalette *palette)
{
  const BsPressLine *line = bs_pressure_get_line (pressure, i);
  double half = bs_pressing_half_band (scale, pressure->stack, i);
  double width = scale->length * scale->per_mm_along;
  double y = bs_pressing_scale_from_y (scale, pressure->stack->placed[i + 1].y) - half;
  guint n = (guint)fmax (ceil (width / COLUMN), 1.0), at = 0, from = 0;
  g_autofree double *values = g_new (double, n);

  for (guint j = 0; j < n; j++)
    values[j] = find_pressure (line, (j + 0.5) / n * scale->length, &at);
  bs_heat_draw_cells (heat, cr, values, n, 1, scale->left, y, width, 2.0 * half, palette);
  for (guint j = 1; j <= n; j++)
    {
      BsSpot spot = judge (pressure, values[from]);

      if (j < n && judge (pressure, values[j]) == spot)
        continue;
      draw_stretch (cr, heat, spot, values + from, j - from, scale->left + from * width / n, y,
                    (j - from) * width / n, 2.0 * half, scale->hairline, palette);
      from = j;
    }
}

void
bs_pressing_draw_bands (cairo_t *cr, const BsPressure *pressure, const BsPressingScale *scale,
                        const BsPalette *palette)
{
  BsHeat heat = bs_pressing_heat (pressure);

  for (guint i = 0; i < bs_pressure_get_n_lines (pressure); i++)
    draw_band (cr, pressure, i, &heat, scale, palette);
}
