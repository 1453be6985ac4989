/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/pressing-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "draw/dimension.h"
#include "draw/lettering.h"

/* The legend to the picture of the pressing, and the curve of one glue line. */

/* In text sizes. */
#define ROW 1.5
#define SIGN 1.7
#define SHADES_WIDTH 22.0

typedef struct
{
  cairo_t *cr;
  double width, text, hairline;
  const BsPalette *palette;
  gboolean is_drawn;
  double x, y; /* of the next entry */
} Legend;

typedef enum
{
  ENTRY_SPOT,
  ENTRY_ABOVE,
  ENTRY_BELOW,
  ENTRY_TURN,
  ENTRY_WORDS, /* no sign */
} EntryKind;

static void
draw_entry_sign (const Legend *self, EntryKind kind, BsSpot spot)
{
  double size = 0.9 * self->text, y = self->y + 0.3 * self->text;
  BsLettering number = { .size = 0.7 * self->text, .is_bold = TRUE };

  bs_color_set (&self->palette->ink, self->cr);
  cairo_set_line_width (self->cr, self->hairline);
  if (kind == ENTRY_SPOT)
    {
      bs_pressing_draw_sign (self->cr, spot, self->x, y, 1.3 * self->text, size, self->hairline,
                             &self->palette->ink);
      bs_color_set_faded (&self->palette->ink, self->cr, 0.5);
      cairo_rectangle (self->cr, self->x, y, 1.3 * self->text, size);
    }
  else if (kind == ENTRY_TURN)
    {
      bs_lettering_draw (self->cr, "1", &number, self->x + 0.6 * self->text, y + 0.5 * size, 0.5,
                         0.5);
      cairo_new_sub_path (self->cr);
      cairo_arc (self->cr, self->x + 0.6 * self->text, y + 0.5 * size, 0.62 * self->text, 0.0,
                 2.0 * G_PI);
    }
  else if (kind != ENTRY_WORDS)
    cairo_rectangle (self->cr, self->x + 0.4 * self->text, y, 0.5 * self->text, size);
  if (kind == ENTRY_ABOVE)
    cairo_fill_preserve (self->cr);
  cairo_stroke (self->cr);
}

static void
add_entry (Legend *self, EntryKind kind, BsSpot spot, const char *words)
{
  BsLettering style = { .size = 0.85 * self->text };
  double wide, high, sign = kind == ENTRY_WORDS ? 0.0 : SIGN * self->text;

  bs_lettering_measure (self->cr, words, &style, &wide, &high);
  if (self->x > 0.0 && self->x + sign + wide > self->width)
    {
      self->x = 0.0;
      self->y += ROW * self->text;
    }
  if (self->is_drawn)
    {
      draw_entry_sign (self, kind, spot);
      bs_color_set (&self->palette->ink, self->cr);
      bs_lettering_draw (self->cr, words, &style, self->x + sign, self->y + 0.75 * self->text, 0.0,
                         0.5);
    }
  self->x += sign + 1.2 * self->text + wide;
}

/* What the shades mean. */
static void
add_shades (Legend *self, const BsPressure *pressure)
{
  BsLettering style = { .size = 0.85 * self->text };
  BsHeat heat = bs_pressing_heat (pressure);
  const char *words = _ ("Pressure on the glue lines");
  double wide, high, bar = fmin (SHADES_WIDTH * self->text, self->width - 2.0 * self->text);

  bs_lettering_measure (self->cr, words, &style, &wide, &high);
  if (self->is_drawn)
    {
      bs_color_set (&self->palette->ink, self->cr);
      bs_lettering_draw (self->cr, words, &style, 0.0, 0.0, 0.0, 0.0);
      bs_heat_draw_legend (&heat, self->cr, 0.5 * self->text, high + 0.2 * self->text, bar,
                           self->text, self->hairline, self->palette);
    }
  self->y = high + (BS_HEAT_LEGEND_HEIGHT + 0.5) * self->text;
}

/* "Drawn 1.5 times wider from front to back"; NULL when it is to scale. The caller's. */
static char *
describe_distortion (const BsPressingScale *scale, BsUnitSystem units)
{
  double times = scale->per_mm_across / scale->per_mm_along;
  double greater = round (10.0 * fmax (times, 1.0 / times)) / 10.0;
  g_autofree char *number = bs_units_format (greater, BS_QUANTITY_RATIO, units);

  if (!(greater > 1.0))
    return NULL;
  if (times > 1.0)
    /* Translators: a number such as 1.5. */
    return g_strdup_printf (_ ("drawn %s times wider from front to back"), number);
  /* Translators: a number such as 1.5. */
  return g_strdup_printf (_ ("drawn %s times narrower from front to back"), number);
}

double
bs_draw_pressing_legend (cairo_t *cr, const BsPressure *pressure, const BsPressingScale *scale,
                         double width, const BsPalette *palette, gboolean is_drawn)
{
  Legend self = { .cr = cr,
                  .width = width,
                  .text = scale->text_size,
                  .hairline = scale->hairline,
                  .palette = palette,
                  .is_drawn = is_drawn };
  const BsPlan *plan = pressure->stack->plan;
  g_autofree char *least
      = bs_units_format (plan->adhesive.min_pressure_mpa, BS_QUANTITY_PRESSURE, plan->units);
  /* Translators: a pressure. */
  g_autofree char *below
      = g_strdup_printf (_ ("less than the %s that the adhesive asks for"), least);
  g_autofree char *distortion = describe_distortion (scale, plan->units);

  cairo_save (cr);
  add_shades (&self, pressure);
  add_entry (&self, ENTRY_SPOT, BS_SPOT_BELOW, below);
  if (pressure->open_length > 0.0)
    add_entry (&self, ENTRY_SPOT, BS_SPOT_OPEN, _ ("open"));
  if (pressure->crushed_length > 0.0)
    add_entry (&self, ENTRY_SPOT, BS_SPOT_CRUSHED, _ ("more than the wood bears"));
  add_entry (&self, ENTRY_ABOVE, BS_SPOT_NONE, _ ("clamp above"));
  add_entry (&self, ENTRY_BELOW, BS_SPOT_NONE, _ ("clamp below"));
  add_entry (&self, ENTRY_TURN, BS_SPOT_NONE, _ ("order of tightening"));
  if (distortion != NULL)
    add_entry (&self, ENTRY_WORDS, BS_SPOT_NONE, distortion);
  cairo_restore (cr);
  return self.y + ROW * scale->text_size;
}

/* The curve. */

typedef struct
{
  cairo_t *cr;
  const BsPressure *pressure;
  const BsPressingScale *scale;
  const BsPalette *palette;
  BsHeat heat; /* the range of its upright axis */
  double top, bottom;
} Curve;

static double
from_pressure (const Curve *self, double pressure_mpa)
{
  return self->bottom - (self->bottom - self->top) * bs_heat_get_part (&self->heat, pressure_mpa);
}

static void
draw_level (const Curve *self, double pressure_mpa, gboolean is_dashed)
{
  double dashes[] = { 6.0 * self->scale->hairline, 3.0 * self->scale->hairline };
  double y = from_pressure (self, pressure_mpa);

  cairo_set_line_width (self->cr, self->scale->hairline);
  cairo_set_dash (self->cr, dashes, is_dashed ? 2 : 0, 0.0);
  cairo_move_to (self->cr, self->scale->left, y);
  cairo_line_to (self->cr, bs_pressing_scale_from_x (self->scale, self->scale->length), y);
  cairo_stroke (self->cr);
  cairo_set_dash (self->cr, NULL, 0, 0.0);
}

static void
draw_axis (const Curve *self)
{
  BsLettering small = { .size = 0.85 * self->scale->text_size };
  double step = bs_heat_step (&self->heat, 1.5 * small.size * (self->heat.to - self->heat.from)
                                               / (self->bottom - self->top));

  for (guint i = 0; i * step <= self->heat.to * (1.0 + 1e-9); i++)
    {
      double value = i * step;
      g_autofree char *text
          = bs_units_format_number (value, BS_QUANTITY_PRESSURE, self->heat.units);

      bs_color_set_faded (&self->palette->faint, self->cr, 0.35);
      draw_level (self, value, FALSE);
      bs_color_set (&self->palette->ink, self->cr);
      bs_lettering_draw (self->cr, text, &small, self->scale->left - 0.4 * small.size,
                         from_pressure (self, value), 1.0, 0.5);
    }
}

static void
draw_limit (const Curve *self, double pressure_mpa, const BsColor *color)
{
  if (!(pressure_mpa <= self->heat.to))
    return;
  bs_color_set (color, self->cr);
  draw_level (self, pressure_mpa, TRUE);
}

/* Over the curve, which shows through faintly; clear of the limit's line, on the side where the
 * curve mostly is not. */
#define PLATE_ALPHA 0.85

static void
name_limit (const Curve *self, double pressure_mpa, double mean_mpa, const char *words,
            const BsColor *color)
{
  BsLettering small = { .size = 0.85 * self->scale->text_size };
  double wide, high, gap = 0.3 * small.size;

  if (!(pressure_mpa <= self->heat.to))
    return;
  bs_lettering_measure (self->cr, words, &small, &wide, &high);
  double x = bs_pressing_scale_from_x (self->scale, 0.5 * self->scale->length) - 0.5 * wide;
  double y = from_pressure (self, pressure_mpa);
  double top = mean_mpa > pressure_mpa ? y + gap : y - gap - high;

  bs_color_set_faded (&self->palette->ground, self->cr, PLATE_ALPHA);
  cairo_rectangle (self->cr, x - gap, top, wide + 2.0 * gap, high);
  cairo_fill (self->cr);
  bs_color_set (color, self->cr);
  bs_lettering_draw (self->cr, words, &small, x, top, 0.0, 0.0);
}

/* A stroke for each joint; where it is open, it lies on the ground. */
static void
draw_pressures (const Curve *self, const BsPressLine *line)
{
  bs_color_set (&self->palette->ink, self->cr);
  cairo_set_line_width (self->cr, 2.0 * self->scale->hairline);
  for (guint i = 0; i < line->n_points; i++)
    {
      const BsPressPoint *point = &line->points[i];
      double x = bs_pressing_scale_from_x (self->scale, point->x);
      double y = from_pressure (self, point->pressure_mpa);

      if (i == 0 || point->joint != point[-1].joint)
        cairo_move_to (self->cr, x, y);
      else
        cairo_line_to (self->cr, x, y);
    }
  cairo_stroke (self->cr);
}

/* "Glue line 3, between A3 and A4, MPa". */
static void
draw_title (const Curve *self, guint line)
{
  const BsStack *stack = self->pressure->stack;
  const char *front = stack->placed[line].lamination->label;
  const char *back = stack->placed[line + 1].lamination->label;
  BsLettering plain = { .size = self->scale->text_size };
  const char *unit = bs_units_symbol (BS_QUANTITY_PRESSURE, self->heat.units);
  /* Translators: number of a glue line from the front, two labels of laminations, a unit. */
  g_autofree char *title
      = g_strdup_printf (_ ("Pressure along glue line %u, between %s and %s, in %s"), line + 1,
                         front != NULL ? front : "", back != NULL ? back : "", unit);

  bs_color_set (&self->palette->ink, self->cr);
  bs_lettering_draw (self->cr, title, &plain, self->scale->left,
                     self->top - 0.5 * self->scale->text_size, 0.0, 1.0);
}

void
bs_draw_pressing_curve (cairo_t *cr, const BsPressure *pressure, guint line,
                        const BsPressingScale *scale, double top, double height,
                        const BsPalette *palette)
{
  const BsLayoutProblem *problem = &pressure->press.problem;
  Curve self = { .cr = cr,
                 .pressure = pressure,
                 .scale = scale,
                 .palette = palette,
                 .heat = bs_pressing_heat (pressure),
                 .top = top + 2.4 * scale->text_size,
                 .bottom = top + height - 0.6 * scale->text_size };

  if (line >= bs_pressure_get_n_lines (pressure) || !(scale->per_mm_along > 0.0))
    return;
  double mean = bs_pressure_get_line (pressure, line)->mean_mpa;
  self.heat.to = fmax (1.25 * problem->least_mpa, pressure->layout.greatest_mpa);
  cairo_save (cr);
  draw_axis (&self);
  draw_limit (&self, problem->least_mpa, &palette->caution);
  draw_limit (&self, problem->most_mpa, &palette->stop);
  draw_pressures (&self, bs_pressure_get_line (pressure, line));
  name_limit (&self, problem->least_mpa, mean, _ ("the adhesive’s least"), &palette->caution);
  name_limit (&self, problem->most_mpa, mean, _ ("the wood’s strength"), &palette->stop);
  draw_title (&self, line);
  cairo_restore (cr);
}
