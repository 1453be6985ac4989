/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/odds.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/heat.h"
#include "draw/lettering.h"

/* In text sizes. */
#define HEAD 3.2 /* the words over the lines */
#define FOOT 1.8 /* the scale */
#define SIDE 2.0
#define LEAST_RANGE 0.2 /* mm: slabs that hardly differ */

typedef struct
{
  cairo_t *cr;
  const BsFlattenOdds *odds;
  const BsPalette *palette;
  BsUnitSystem units;
  double wanted;
  double from, per_mm; /* thickness at the left edge */
  double left, right;  /* of the chart */
  double top, bottom;
  double text, hairline;
} Chart;

static double
to_x (const Chart *self, double thickness)
{
  return self->left + (thickness - self->from) * self->per_mm;
}

static guint
find_most (const BsFlattenOdds *odds)
{
  guint most = 1;

  for (guint i = 0; i < BS_N_ODDS_BINS; i++)
    most = MAX (most, odds->bins[i]);
  return most;
}

/* Slabs that hardly differ stand in one narrow bar. */
static void
draw_bars (const Chart *self)
{
  const BsFlattenOdds *odds = self->odds;
  double step = (odds->most - odds->least) / BS_N_ODDS_BINS;
  double high = (self->bottom - self->top) / find_most (odds);

  for (guint i = 0; i < BS_N_ODDS_BINS; i++)
    {
      double from = to_x (self, odds->least + i * step);
      double wide = fmax (step * self->per_mm - self->hairline, 2.0 * self->hairline);
      gboolean is_enough = odds->least + (i + 0.5) * step >= self->wanted;

      if (odds->bins[i] == 0)
        continue;
      cairo_rectangle (self->cr, from, self->bottom, wide, -high * odds->bins[i]);
      bs_color_set_faded (&self->palette->ink, self->cr, is_enough ? 0.75 : 0.25);
      cairo_fill (self->cr);
    }
}

static void
draw_scale (const Chart *self)
{
  BsHeat scale = { self->from, self->from + (self->right - self->left) / self->per_mm,
                   BS_QUANTITY_LENGTH, self->units };
  BsLettering small = { .size = 0.85 * self->text };
  double step = bs_heat_step (&scale, 5.0 * self->text / self->per_mm);

  bs_color_set (&self->palette->faint, self->cr);
  cairo_set_line_width (self->cr, self->hairline);
  cairo_move_to (self->cr, self->left, self->bottom);
  cairo_line_to (self->cr, self->right, self->bottom);
  cairo_stroke (self->cr);
  double first = step * ceil (scale.from / step);
  for (guint i = 0; first + i * step <= scale.to; i++)
    {
      double value = first + i * step;
      g_autofree char *text = bs_units_format (value, BS_QUANTITY_LENGTH, self->units);
      double x = to_x (self, value);

      cairo_move_to (self->cr, x, self->bottom);
      cairo_line_to (self->cr, x, self->bottom + 0.3 * self->text);
      cairo_stroke (self->cr);
      bs_lettering_draw (self->cr, text, &small, x, self->bottom + 0.4 * self->text, 0.5, 0.0);
    }
}

static void
set_mark_color (const Chart *self, gboolean is_bold)
{
  bs_color_set (is_bold ? &self->palette->accent : &self->palette->ink, self->cr);
}

static double
row_bottom (const Chart *self, int row)
{
  return (row + 1) * 1.4 * self->text;
}

/* A line through the chart, up to a row of words. */
static void
draw_line (const Chart *self, double thickness, int row, gboolean is_bold)
{
  double x = to_x (self, thickness);

  set_mark_color (self, is_bold);
  cairo_set_line_width (self->cr, (is_bold ? 2.5 : 1.2) * self->hairline);
  cairo_move_to (self->cr, x, row_bottom (self, row));
  cairo_line_to (self->cr, x, self->bottom);
  cairo_stroke (self->cr);
}

/* The words of a line, kept inside the chart; other lines pass behind them. */
static void
draw_words (const Chart *self, double thickness, const char *text, int row, gboolean is_bold)
{
  BsLettering style = { .size = 0.85 * self->text, .is_bold = is_bold };
  double bottom = row_bottom (self, row), wide, high, left;

  bs_lettering_measure (self->cr, text, &style, &wide, &high);
  left = CLAMP (to_x (self, thickness) - 0.5 * wide, 0.0,
                fmax (0.0, self->right + SIDE * self->text - wide));
  bs_color_set (&self->palette->ground, self->cr);
  cairo_rectangle (self->cr, left - 0.2 * self->text, bottom - high, wide + 0.4 * self->text, high);
  cairo_fill (self->cr);
  set_mark_color (self, is_bold);
  bs_lettering_draw (self->cr, text, &style, left, bottom, 0.0, 1.0);
}

static void
draw_marks (const Chart *self)
{
  const BsFlattenOdds *odds = self->odds;
  g_autofree char *thickness = bs_units_format (self->wanted, BS_QUANTITY_LENGTH, self->units);
  /* Translators: %s is a thickness. */
  g_autofree char *wanted = g_strdup_printf (_ ("wanted: %s"), thickness);

  draw_line (self, odds->at_95_pct, 1, FALSE);
  draw_line (self, odds->at_50_pct, 1, FALSE);
  draw_line (self, self->wanted, 0, TRUE);
  /* Translators: what so many of a hundred slabs reach, over a line of a small chart. */
  draw_words (self, odds->at_95_pct, _ ("95 %"), 1, FALSE);
  if ((odds->at_50_pct - odds->at_95_pct) * self->per_mm > 3.0 * self->text)
    draw_words (self, odds->at_50_pct, _ ("50 %"), 1, FALSE);
  draw_words (self, self->wanted, wanted, 0, TRUE);
}

void
bs_draw_odds (cairo_t *cr, const BsFlattenOdds *odds, double wanted, BsUnitSystem units,
              double width, double text_size, double hairline, const BsPalette *palette)
{
  Chart self = { .cr = cr,
                 .odds = odds,
                 .palette = palette,
                 .units = units,
                 .wanted = wanted,
                 .left = SIDE * text_size,
                 .right = width - SIDE * text_size,
                 .top = HEAD * text_size,
                 .bottom = (BS_ODDS_HEIGHT - FOOT) * text_size,
                 .text = text_size,
                 .hairline = hairline };
  double least = fmin (odds->least, wanted), most = fmax (odds->most, wanted);
  double room = fmax (0.05 * (most - least), LEAST_RANGE);

  if (!isfinite (odds->least) || !(self.right > self.left))
    return;
  self.from = least - room;
  self.per_mm = (self.right - self.left) / (most - least + 2.0 * room);
  cairo_save (cr);
  draw_bars (&self);
  draw_scale (&self);
  draw_marks (&self);
  cairo_restore (cr);
}
