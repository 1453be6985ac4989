/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/moisture-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

#include "core/moisture.h"
#include "core/units.h"

/* In text sizes: for the scale at the left, from the plot to the words at its right, for the plot,
 * for labels. */
#define LEFT 3.2
#define LEADER 1.0
#define PLOT 11.0
#define LABELS 1.8
#define TOP 0.8

#define DOT 0.28

/* What the band and the line are. */
typedef struct
{
  char *text;
  double pct;
} Word;

#define N_WORDS 3

typedef struct
{
  cairo_t *cr;
  const BsResults *results;
  const BsChart *chart;
  double left, right, top, bottom; /* of the plot */
  double least, most;              /* moisture at its foot and head, % */
  double shop_pct;
  Word words[N_WORDS]; /* from the dampest to the driest */
} Drawing;

double
bs_moisture_chart_get_height (const BsChart *chart)
{
  return (TOP + PLOT + LABELS) * chart->text_size;
}

static double
to_y (const Drawing *self, double pct)
{
  return self->bottom
         - (pct - self->least) / (self->most - self->least) * (self->bottom - self->top);
}

static double
to_x (const Drawing *self, int place)
{
  return self->left + (place + 0.5) * (self->right - self->left) / (double)self->results->stack->n;
}

static double
get_moisture (const Drawing *self, int place)
{
  return self->results->stack->placed[place].lamination->moisture_pct;
}

static double
get_middle (const Drawing *self)
{
  return (self->results->emc_low_pct + self->results->emc_high_pct) / 2.0;
}

/* Whole steps of two per cent around all there is. */
static void
find_range (Drawing *self)
{
  double least = fmin (self->results->emc_low_pct, self->shop_pct);
  double most = fmax (self->results->emc_high_pct, self->shop_pct);

  for (guint i = 0; i < self->results->stack->n; i++)
    {
      least = fmin (least, get_moisture (self, (int)i)); /* the number, of a number and NAN */
      most = fmax (most, get_moisture (self, (int)i));
    }
  self->least = fmax (0.0, 2.0 * floor ((least - 0.5) / 2.0));
  self->most = 2.0 * ceil ((most + 0.5) / 2.0);
}

static void
draw_axis (const Drawing *self)
{
  const BsChart *chart = self->chart;
  const double span = self->most - self->least;
  const double step
      = fmax (2.0, bs_chart_step (1.6 * chart->text_size * span / (self->bottom - self->top)));

  for (guint i = 0; self->least + i * step <= self->most; i++)
    {
      const double pct = self->least + i * step;
      g_autofree char *value = bs_units_format (pct, BS_QUANTITY_PERCENT, BS_UNIT_SYSTEM_METRIC);
      const double y = to_y (self, pct);

      bs_chart_text (chart, self->cr, value, 0.85, &chart->palette->faint,
                     self->left - 0.5 * chart->text_size, y, 1.0, 0.5);
      bs_color_set_faded (&chart->palette->faint, self->cr, 0.35);
      cairo_set_line_width (self->cr, chart->hairline);
      cairo_move_to (self->cr, self->left, y);
      cairo_line_to (self->cr, self->right, y);
      cairo_stroke (self->cr);
    }
}

static void
draw_band (const Drawing *self)
{
  const double top = to_y (self, self->results->emc_high_pct);
  const double bottom = to_y (self, self->results->emc_low_pct);

  bs_color_set_faded (&self->chart->palette->ink, self->cr, 0.12);
  cairo_rectangle (self->cr, self->left, top, self->right - self->left, bottom - top);
  cairo_fill (self->cr);
}

static void
draw_shop (const Drawing *self)
{
  const double text = self->chart->text_size, dashes[] = { 0.6 * text, 0.4 * text };
  const double y = to_y (self, self->shop_pct);

  cairo_set_dash (self->cr, dashes, 2, 0.0);
  bs_chart_line (self->chart, self->cr, self->left, y, self->right, y, &self->chart->palette->ink,
                 1.0);
  cairo_set_dash (self->cr, NULL, 0, 0.0);
}

static int
compare_words (gconstpointer a, gconstpointer b)
{
  const double first = ((const Word *)a)->pct, second = ((const Word *)b)->pct;

  return (first < second) - (first > second);
}

static void
find_words (Drawing *self)
{
  const BsResults *results = self->results;
  g_autofree char *damp
      = bs_units_format (results->emc_high_pct, BS_QUANTITY_PERCENT, BS_UNIT_SYSTEM_METRIC);
  g_autofree char *dry
      = bs_units_format (results->emc_low_pct, BS_QUANTITY_PERCENT, BS_UNIT_SYSTEM_METRIC);
  g_autofree char *shop
      = bs_units_format (self->shop_pct, BS_QUANTITY_PERCENT, BS_UNIT_SYSTEM_METRIC);

  /* Translators: a moisture in per cent, here and below. */
  self->words[0] = (Word){ g_strdup_printf (_ ("Damp season: %s"), damp), results->emc_high_pct };
  self->words[1] = (Word){ g_strdup_printf (_ ("Dry season: %s"), dry), results->emc_low_pct };
  self->words[2] = (Word){ g_strdup_printf (_ ("In the shop: %s"), shop), self->shop_pct };
  qsort (self->words, N_WORDS, sizeof *self->words, compare_words);
}

/* The plot leaves the words the room that they need. */
static void
find_right (Drawing *self)
{
  const double text = self->chart->text_size;
  const BsLettering style = { .size = text };
  double widest = 0.0;

  for (guint i = 0; i < N_WORDS; i++)
    {
      double width, height;
      bs_lettering_measure (self->cr, self->words[i].text, &style, &width, &height);
      widest = fmax (widest, width);
    }
  self->right = fmax (self->chart->width - LEADER * text - widest, self->left + text);
}

/* At the right, moved apart where they would touch. */
static void
draw_words (const Drawing *self)
{
  const double text = self->chart->text_size;
  double heights[N_WORDS];

  for (guint i = 0; i < N_WORDS; i++)
    heights[i] = to_y (self, self->words[i].pct);
  bs_chart_spread (heights, N_WORDS, 1.5 * text, self->top + 0.5 * text, self->bottom - 0.5 * text);
  for (guint i = 0; i < N_WORDS; i++)
    {
      const double y = to_y (self, self->words[i].pct);

      bs_chart_line (self->chart, self->cr, self->right, y, self->right + 0.7 * text, heights[i],
                     &self->chart->palette->faint, 1.0);
      bs_chart_text (self->chart, self->cr, self->words[i].text, 1.0, &self->chart->palette->ink,
                     self->right + LEADER * text, heights[i], 0.0, 0.5);
    }
}

/* Neighbours that are too far apart. */
static void
draw_complaints (const Drawing *self)
{
  const BsPalette *palette = self->chart->palette;

  for (guint i = 0; i < self->results->findings->len; i++)
    {
      const BsFinding *finding = &g_array_index (self->results->findings, BsFinding, i);

      if (finding->kind == BS_FINDING_MOISTURE_APART)
        bs_chart_line (
            self->chart, self->cr, to_x (self, finding->place),
            to_y (self, get_moisture (self, finding->place)), to_x (self, finding->neighbour),
            to_y (self, get_moisture (self, finding->neighbour)),
            finding->severity == BS_SEVERITY_STOP ? &palette->stop : &palette->caution, 3.0);
    }
}

static gboolean
is_unfit (const Drawing *self, int place)
{
  for (guint i = 0; i < self->results->findings->len; i++)
    {
      const BsFinding *finding = &g_array_index (self->results->findings, BsFinding, i);

      if (finding->kind == BS_FINDING_MOISTURE_UNFIT && finding->place == place)
        return TRUE;
    }
  return FALSE;
}

/* Measured: a dot, with a ring around it when it does not suit the place; not measured: a ring. */
static void
draw_dot (const Drawing *self, int place)
{
  const BsPalette *palette = self->chart->palette;
  const double moisture = get_moisture (self, place), size = DOT * self->chart->text_size;
  const double x = to_x (self, place);
  const double y = to_y (self, isnan (moisture) ? get_middle (self) : moisture);

  cairo_new_path (self->cr);
  cairo_arc (self->cr, x, y, size, 0.0, 2.0 * G_PI);
  bs_color_set (isnan (moisture) ? &palette->ground : &palette->ink, self->cr);
  cairo_fill_preserve (self->cr);
  bs_color_set (&palette->ink, self->cr);
  cairo_set_line_width (self->cr, self->chart->hairline);
  cairo_stroke (self->cr);
  if (!is_unfit (self, place))
    return;
  cairo_arc (self->cr, x, y, 2.0 * size, 0.0, 2.0 * G_PI);
  bs_color_set (&palette->caution, self->cr);
  cairo_set_line_width (self->cr, 1.5 * self->chart->hairline);
  cairo_stroke (self->cr);
}

/* Under the dots, where all have room. */
static void
draw_labels (const Drawing *self)
{
  const BsStack *stack = self->results->stack;
  const double room = 0.95 * (self->right - self->left) / (double)stack->n;
  BsLettering style = { .size = 0.85 * self->chart->text_size };

  for (guint i = 0; i < stack->n && style.size > 0.0; i++)
    style.size = bs_lettering_fit (self->cr, stack->placed[i].lamination->label, &style, room,
                                   0.6 * self->chart->text_size);
  bs_color_set (&self->chart->palette->faint, self->cr);
  for (guint i = 0; i < stack->n && style.size > 0.0; i++)
    bs_lettering_draw (self->cr, stack->placed[i].lamination->label, &style, to_x (self, (int)i),
                       self->bottom + 0.4 * self->chart->text_size, 0.5, 0.0);
}

void
bs_draw_moisture_chart (cairo_t *cr, const BsResults *results, const BsChart *chart)
{
  const BsClimate *shop = &results->stack->plan->shop.climate;
  const double text = chart->text_size;
  Drawing self = {
    .cr = cr,
    .results = results,
    .chart = chart,
    .left = LEFT * text,
    .top = TOP * text,
    .bottom = (TOP + PLOT) * text,
    .shop_pct = bs_moisture_emc (shop->temperature_c, shop->humidity_pct),
  };

  find_range (&self);
  find_words (&self);
  find_right (&self);
  cairo_save (cr);
  draw_band (&self);
  draw_axis (&self);
  draw_shop (&self);
  draw_words (&self);
  draw_complaints (&self);
  for (guint i = 0; i < results->stack->n; i++)
    draw_dot (&self, (int)i);
  draw_labels (&self);
  cairo_restore (cr);
  for (guint i = 0; i < N_WORDS; i++)
    g_free (self.words[i].text);
}
