/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/cup-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"

/* In text sizes: a row, and its words at the right; the note. */
#define ROW 4.2
#define WORDS 14.0
#define NOTE 1.6

/* Of a row that the largest cup shall take at most. */
#define FULL 0.8

typedef struct
{
  cairo_t *cr;
  const BsResults *results;
  const BsChart *chart;
  double per_mm; /* along the slab's width */
  double factor; /* heights: times per_mm */
} Drawing;

static gboolean
is_known (const BsResults *results)
{
  return results->cupping.is_on_flat && isfinite (results->cupping.as_laid.waves);
}

static const BsCup *
get_cup (const BsResults *results, BsCupLayup layup)
{
  const BsCup *const cups[BS_N_CUP_LAYUPS] = {
    [BS_CUP_AS_LAID] = &results->cupping.as_laid,
    [BS_CUP_SAME_SIDE] = &results->cupping.same_side,
    [BS_CUP_ALTERNATING] = &results->cupping.alternating,
  };

  return cups[layup];
}

static const char *
name_layup (BsCupLayup layup)
{
  switch (layup)
    {
    case BS_CUP_AS_LAID:
      return _ ("as laid");
    case BS_CUP_SAME_SIDE:
      return _ ("all hearts the same way");
    case BS_CUP_ALTERNATING:
      return _ ("hearts up and down by turns");
    default:
      g_return_val_if_reached ("");
    }
}

double
bs_cup_chart_get_height (const BsResults *results, const BsChart *chart)
{
  return is_known (results) ? (BS_N_CUP_LAYUPS * ROW + NOTE) * chart->text_size : 0.0;
}

/* The largest round one with which no shape leaves its row. */
static double
find_factor (const Drawing *self)
{
  double waves = 0.0;

  for (int layup = 0; layup < BS_N_CUP_LAYUPS; layup++)
    waves = fmax (waves, get_cup (self->results, layup)->waves);
  const double most = FULL * ROW * self->chart->text_size / (fmax (waves, 0.01) * self->per_mm);
  const double step = bs_chart_step (most);
  return step > most * 1.001 ? fmax (1.0, bs_chart_step (most / 2.5)) : step;
}

static void
draw_shape (const Drawing *self, BsCupLayup layup, double y)
{
  const BsStack *stack = self->results->stack;
  g_autoptr (GArray) profile
      = bs_cupping_profile (stack, self->results->cupping.moisture_pct, layup);

  bs_chart_line (self->chart, self->cr, 0.0, y, stack->width * self->per_mm, y,
                 &self->chart->palette->faint, 1.0);
  bs_color_set (&self->chart->palette->ink, self->cr);
  cairo_set_line_width (self->cr, 2.0 * self->chart->hairline);
  for (guint i = 0; i < profile->len; i++)
    {
      const BsCupSpot *spot = &g_array_index (profile, BsCupSpot, i);
      cairo_line_to (self->cr, spot->y * self->per_mm, y - spot->z * self->factor * self->per_mm);
    }
  cairo_stroke (self->cr);
}

/* Where the line lies in its row so that the shape is in the middle of it. */
static double
find_line (const Drawing *self, BsCupLayup layup)
{
  const BsCup *cup = get_cup (self->results, layup);
  const double highest = cup->cup > 0.0 ? cup->cup : cup->waves + cup->cup;

  return (layup + 0.5) * ROW * self->chart->text_size
         + (highest - cup->waves / 2.0) * self->factor * self->per_mm;
}

static void
draw_words (const Drawing *self, BsCupLayup layup)
{
  const BsChart *chart = self->chart;
  const double text = chart->text_size, x = self->results->stack->width * self->per_mm + text;
  const double y = (layup + 0.5) * ROW * text;
  g_autofree char *waves = bs_units_format (get_cup (self->results, layup)->waves,
                                            BS_QUANTITY_LENGTH, self->results->stack->plan->units);
  /* Translators: how far a slab goes out of flat. */
  g_autofree char *words = g_strdup_printf (_ ("out of flat by %s"), waves);
  const BsLettering style = { .size = 0.85 * text };
  const double size
      = bs_lettering_fit (self->cr, name_layup (layup), &style, chart->width - x, 0.0);

  bs_chart_text (chart, self->cr, name_layup (layup), size / text, &chart->palette->faint, x, y,
                 0.0, 1.0);
  bs_chart_text (chart, self->cr, words, 0.85, &chart->palette->ink, x, y, 0.0, 0.0);
}

void
bs_draw_cup_chart (cairo_t *cr, const BsResults *results, const BsChart *chart)
{
  if (!is_known (results))
    return;

  Drawing self = { .cr = cr, .results = results, .chart = chart };
  self.per_mm
      = fmax (chart->width - WORDS * chart->text_size, chart->text_size) / results->stack->width;
  self.factor = find_factor (&self);
  /* Translators: how many times, a whole number. */
  g_autofree char *note
      = g_strdup_printf (_ ("Heights are drawn %.0f times larger than they are."), self.factor);

  cairo_save (cr);
  for (int layup = 0; layup < BS_N_CUP_LAYUPS; layup++)
    {
      draw_shape (&self, layup, find_line (&self, layup));
      draw_words (&self, layup);
    }
  bs_chart_text (chart, cr, note, 0.85, &chart->palette->faint, 0.0,
                 BS_N_CUP_LAYUPS * ROW * chart->text_size, 0.0, 0.0);
  cairo_restore (cr);
}
