/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/season-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/dimension.h"

/* In text sizes. */
#define SIDE 9.0       /* for the thickness at the right */
#define OVER 2.2       /* for the width over the section, and under it */
#define SLOTS 4.6      /* for the slots with their numbers */
#define MARGIN 2.0     /* at the left */
#define NOTE 1.6       /* for the factor */
#define MOST_HIGH 12.0 /* of the section */

/* Of the drawn size that the year's movement shall take. */
#define VISIBLE 0.06

typedef struct
{
  cairo_t *cr;
  const BsResults *results;
  const BsChart *chart;
  double per_mm; /* device units */
  double factor; /* by which movement is larger than true */
  double held;   /* x of the line where the slab is held */
  double foot;   /* y of the underside */
} Drawing;

static gboolean
is_known (const BsResults *results)
{
  return isfinite (results->movement.width.year) && isfinite (results->movement.thickness.year)
         && results->movement.thickness.at_gluing > 0.0;
}

/* Movement that is hardly there is not blown up without end. */
static double
find_factor (const BsMovement *movement)
{
  const double year = fmax (fabs (movement->width.year), 1e-3 * movement->width.at_gluing);

  return fmax (1.0, bs_chart_step (0.5 * VISIBLE * movement->width.at_gluing / year));
}

static double
exaggerate (const Drawing *self, const BsSeasons *seasons, double size)
{
  return seasons->at_gluing + self->factor * (size - seasons->at_gluing);
}

/* The widest that is drawn, mm. */
static double
find_widest (const BsMovement *movement, double factor)
{
  const BsSeasons *width = &movement->width;

  return width->at_gluing + factor * fmax (0.0, fmax (width->dry, width->damp) - width->at_gluing);
}

static double
find_highest (const BsMovement *movement, double factor)
{
  const BsSeasons *thickness = &movement->thickness;

  return thickness->at_gluing
         + factor * fmax (0.0, fmax (thickness->dry, thickness->damp) - thickness->at_gluing);
}

static double
find_scale (const BsResults *results, const BsChart *chart)
{
  const double factor = find_factor (&results->movement);
  const double room = fmax (chart->width - (SIDE + MARGIN) * chart->text_size, chart->text_size);

  return fmin (room / find_widest (&results->movement, factor),
               MOST_HIGH * chart->text_size / find_highest (&results->movement, factor));
}

double
bs_season_chart_get_height (const BsResults *results, const BsChart *chart)
{
  if (!is_known (results))
    return 0.0;
  return (2.0 * OVER + SLOTS + NOTE) * chart->text_size
         + find_highest (&results->movement, find_factor (&results->movement))
               * find_scale (results, chart);
}

/* How much of a width lies left of the line where the slab is held. */
static double
find_left_part (const BsFixing *fixing)
{
  switch (fixing->line)
    {
    case BS_FIXED_FRONT:
      return 0.0;
    case BS_FIXED_BACK:
      return 1.0;
    case BS_FIXED_MIDDLE:
    default:
      return 0.5;
    }
}

static const BsFixing *
get_fixing (const Drawing *self)
{
  return &self->results->stack->plan->slab.fixing;
}

typedef struct
{
  double left, right, top;
} Outline;

static Outline
find_outline (const Drawing *self, double width, double thickness)
{
  const BsMovement *movement = &self->results->movement;
  const double w = exaggerate (self, &movement->width, width) * self->per_mm;
  const double t = exaggerate (self, &movement->thickness, thickness) * self->per_mm;
  const double left = self->held - find_left_part (get_fixing (self)) * w;

  return (Outline){ left, left + w, self->foot - t };
}

static void
trace (const Drawing *self, const Outline *outline)
{
  cairo_rectangle (self->cr, outline->left, outline->top, outline->right - outline->left,
                   self->foot - outline->top);
}

static void
draw_outlines (const Drawing *self, const Outline *glued, const Outline *dry, const Outline *damp)
{
  const double text = self->chart->text_size, dashes[] = { 0.5 * text, 0.35 * text };

  trace (self, glued);
  bs_color_set_faded (&self->chart->palette->ink, self->cr, 0.12);
  cairo_fill (self->cr);
  bs_color_set (&self->chart->palette->ink, self->cr);
  cairo_set_line_width (self->cr, 1.5 * self->chart->hairline);
  trace (self, damp);
  cairo_stroke (self->cr);
  cairo_set_dash (self->cr, dashes, 2, 0.0);
  trace (self, dry);
  cairo_stroke (self->cr);
  cairo_set_dash (self->cr, NULL, 0, 0.0);
}

/* Numbers are the true ones. */
static void
draw_widths (const Drawing *self, const Outline *dry, const Outline *damp)
{
  const BsChart *chart = self->chart;
  const BsUnitSystem units = self->results->stack->plan->units;
  const BsSeasons *width = &self->results->movement.width;
  g_autofree char *damp_width = bs_units_format (width->damp, BS_QUANTITY_LENGTH, units);
  g_autofree char *dry_width = bs_units_format (width->dry, BS_QUANTITY_LENGTH, units);
  /* Translators: a width, here and below. */
  g_autofree char *over = g_strdup_printf (_ ("At its dampest: %s wide"), damp_width);
  g_autofree char *under = g_strdup_printf (_ ("At its driest: %s wide"), dry_width);
  const double text = chart->text_size;
  const double above = fmin (dry->top, damp->top) - 0.5 * text;

  bs_dimension_draw (self->cr, damp->left, above, damp->right, above, over, FALSE, text,
                     chart->hairline, chart->palette);
  bs_dimension_draw (self->cr, dry->left, self->foot + 1.9 * text, dry->right,
                     self->foot + 1.9 * text, under, FALSE, text, chart->hairline, chart->palette);
}

static void
draw_thickness (const Drawing *self, const Outline *dry, const Outline *damp)
{
  const BsUnitSystem units = self->results->stack->plan->units;
  const BsSeasons *thickness = &self->results->movement.thickness;
  g_autofree char *dry_text = bs_units_format (thickness->dry, BS_QUANTITY_LENGTH, units);
  g_autofree char *damp_text = bs_units_format (thickness->damp, BS_QUANTITY_LENGTH, units);
  /* Translators: the thickness at the driest and at the dampest. */
  g_autofree char *words = g_strdup_printf (_ ("%s to\n%s thick"), dry_text, damp_text);
  const double x = fmax (dry->right, damp->right) + 0.8 * self->chart->text_size;
  const double top = fmin (dry->top, damp->top);

  bs_dimension_draw (self->cr, x, top, x, self->foot, words, FALSE, self->chart->text_size,
                     self->chart->hairline, self->chart->palette);
}

/* The spot where the slab is held: a round hole with a cross. */
static void
draw_held (const Drawing *self, double y)
{
  const BsPalette *palette = self->chart->palette;
  const double size = 0.5 * self->chart->text_size;

  bs_chart_line (self->chart, self->cr, self->held, y - 1.6 * size, self->held, y + 1.6 * size,
                 &palette->ink, 1.0);
  bs_chart_line (self->chart, self->cr, self->held - 1.6 * size, y, self->held + 1.6 * size, y,
                 &palette->ink, 1.0);
  cairo_arc (self->cr, self->held, y, size, 0.0, 2.0 * G_PI);
  cairo_stroke (self->cr);
}

/* A slot as long as it is, and at least a little wide. */
static void
draw_slot (const Drawing *self, const BsSlot *slot, double sign, double y)
{
  const double x = self->held + sign * slot->middle * self->per_mm;
  const double wide = fmax (get_fixing (self)->screw * self->per_mm, 0.5 * self->chart->text_size);
  const double half = fmax (slot->length * self->per_mm - wide, 0.0) / 2.0;

  cairo_new_path (self->cr);
  cairo_arc (self->cr, x - half, y, wide / 2.0, G_PI / 2.0, 1.5 * G_PI);
  cairo_arc (self->cr, x + half, y, wide / 2.0, -G_PI / 2.0, G_PI / 2.0);
  cairo_close_path (self->cr);
  bs_color_set (&self->chart->palette->ink, self->cr);
  cairo_set_line_width (self->cr, self->chart->hairline);
  cairo_stroke (self->cr);
  cairo_arc (self->cr, self->held + sign * slot->distance * self->per_mm, y,
             fmin (get_fixing (self)->screw * self->per_mm, wide) / 2.0, 0.0, 2.0 * G_PI);
  cairo_fill (self->cr);
}

/* Distance over the slot and its length under it, where there is room from slot to slot. */
static void
draw_slot_numbers (const Drawing *self, const BsSlot *slot, double sign, double y, double room)
{
  const BsUnitSystem units = self->results->stack->plan->units;
  const BsChart *chart = self->chart;
  const BsLettering style = { .size = 0.85 * chart->text_size };
  const double x = self->held + sign * slot->distance * self->per_mm;
  g_autofree char *distance = bs_units_format_number (slot->distance, BS_QUANTITY_LENGTH, units);
  g_autofree char *length = bs_units_format (slot->length, BS_QUANTITY_LENGTH, units);

  if (bs_lettering_fit (self->cr, length, &style, room, style.size) <= 0.0)
    return;
  bs_chart_text (chart, self->cr, distance, 0.85, &chart->palette->faint, x,
                 y - 0.6 * chart->text_size, 0.5, 1.0);
  bs_chart_text (chart, self->cr, length, 0.85, &chart->palette->ink, x, y + 0.6 * chart->text_size,
                 0.5, 0.0);
}

static void
draw_slots (const Drawing *self, double y)
{
  const GArray *slots = self->results->slots;
  const BsFixing *fixing = get_fixing (self);
  const double reach = bs_fixing_reach (fixing, self->results->movement.width.at_gluing);
  const double back = fixing->line == BS_FIXED_BACK ? 0.0 : reach * self->per_mm;
  const double front = fixing->line == BS_FIXED_FRONT ? 0.0 : reach * self->per_mm;

  if (slots->len == 0)
    return;
  bs_chart_line (self->chart, self->cr, self->held - front, y, self->held + back, y,
                 &self->chart->palette->faint, 1.0);
  draw_held (self, y);
  for (guint i = 0; i < slots->len; i++)
    {
      const BsSlot *slot = &g_array_index (slots, BsSlot, i);
      const double room = 0.95 * slot->distance / (i + 1) * self->per_mm;

      for (int sign = -1; sign <= 1; sign += 2)
        if ((sign < 0 ? front : back) > 0.0)
          {
            draw_slot (self, slot, sign, y);
            draw_slot_numbers (self, slot, sign, y, room);
          }
    }
}

static void
draw_note (const Drawing *self, double y)
{
  g_autofree char *note = g_strdup_printf (
      /* Translators: how many times, a whole number. */
      _ ("The section’s movement is drawn %.0f times larger than it is; the slots below it are to "
         "scale, seen from below."),
      self->factor);
  const BsLettering style = { .size = 0.85 * self->chart->text_size };
  const double size = bs_lettering_fit (self->cr, note, &style, self->chart->width, 0.0);

  bs_chart_text (self->chart, self->cr, note, size / self->chart->text_size,
                 &self->chart->palette->faint, 0.0, y, 0.0, 0.0);
}

void
bs_draw_season_chart (cairo_t *cr, const BsResults *results, const BsChart *chart)
{
  const BsMovement *movement = &results->movement;
  const double text = chart->text_size;

  if (!is_known (results))
    return;

  Drawing self = { .cr = cr,
                   .results = results,
                   .chart = chart,
                   .per_mm = find_scale (results, chart),
                   .factor = find_factor (movement) };
  const double widest = find_widest (movement, self.factor) * self.per_mm;
  self.held = MARGIN * text + find_left_part (get_fixing (&self)) * widest;
  self.foot = OVER * text + find_highest (movement, self.factor) * self.per_mm;

  const Outline glued
      = find_outline (&self, movement->width.at_gluing, movement->thickness.at_gluing);
  const Outline dry = find_outline (&self, movement->width.dry, movement->thickness.dry);
  const Outline damp = find_outline (&self, movement->width.damp, movement->thickness.damp);
  cairo_save (cr);
  draw_outlines (&self, &glued, &dry, &damp);
  draw_widths (&self, &dry, &damp);
  draw_thickness (&self, &dry, &damp);
  draw_slots (&self, self.foot + (OVER + 0.5 * SLOTS) * text);
  draw_note (&self, self.foot + (OVER + SLOTS) * text);
  cairo_restore (cr);
}
