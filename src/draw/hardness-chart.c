/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/hardness-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"

/* In text sizes: for names, which stand on end; from a name to its tick; for the scale below. */
#define NAMES 12.0
#define LEADER 2.6
#define SCALE 3.6

#define NAME_SIZE 0.85
#define NAME_PITCH 1.1 /* from one name to the next */

typedef struct
{
  cairo_t *cr;
  const BsHardnessScale *scale;
  const BsChart *chart;
  double axis;  /* its y */
  double per_n; /* device units */
} Drawing;

double
bs_hardness_chart_get_height (const BsChart *chart)
{
  return (NAMES + LEADER + SCALE) * chart->text_size;
}

static double
to_x (const Drawing *self, double hardness_n)
{
  return hardness_n * self->per_n;
}

/* Where the band begins and ends; the whole scale where it is open. */
static void
find_band (const Drawing *self, double *from, double *to)
{
  *from = fmax (to_x (self, self->scale->low_n), 0.0); /* the number, of a number and NAN */
  *to = fmin (to_x (self, self->scale->high_n), self->chart->width);
}

static void
draw_band (const Drawing *self)
{
  const double top = (NAMES + 0.2) * self->chart->text_size;
  double from, to;

  find_band (self, &from, &to);
  bs_color_set_faded (&self->chart->palette->ink, self->cr, 0.10);
  cairo_rectangle (self->cr, from, top, to - from, self->axis - top);
  cairo_fill (self->cr);
  bs_chart_line (self->chart, self->cr, from, top, from, self->axis, &self->chart->palette->faint,
                 1.0);
  bs_chart_line (self->chart, self->cr, to, top, to, self->axis, &self->chart->palette->faint, 1.0);
}

static char *
describe_band (const BsHardnessScale *scale)
{
  g_autofree char *low = bs_units_format (scale->low_n, BS_QUANTITY_FORCE, scale->units);
  g_autofree char *high = bs_units_format (scale->high_n, BS_QUANTITY_FORCE, scale->units);

  /* Translators: what the band on the scale of hardness is, by its ends, here and below. */
  if (scale->is_range_usual)
    return g_strdup_printf (_ ("No range asked; common practice: %s to %s"), low, high);
  if (isnan (scale->low_n))
    return g_strdup_printf (_ ("Asked: up to %s"), high);
  if (isnan (scale->high_n))
    return g_strdup_printf (_ ("Asked: from %s"), low);
  return g_strdup_printf (_ ("Asked: %s to %s"), low, high);
}

/* What the band is, under the scale and within the chart. */
static void
draw_band_words (const Drawing *self)
{
  const BsChart *chart = self->chart;
  g_autofree char *words = describe_band (self->scale);
  const BsLettering style = { .size = chart->text_size };
  double from, to, width, height;

  find_band (self, &from, &to);
  bs_lettering_measure (self->cr, words, &style, &width, &height);
  const double middle = fmin ((from + to) / 2.0, chart->width - width / 2.0);
  bs_chart_text (chart, self->cr, words, 1.0, &chart->palette->ink, fmax (middle, width / 2.0),
                 self->axis + 2.0 * chart->text_size, 0.5, 0.0);
}

static void
draw_axis (const Drawing *self)
{
  const BsChart *chart = self->chart;
  const double one = bs_units_one (BS_QUANTITY_FORCE, self->scale->units);
  const double step = bs_chart_step (5.0 * chart->text_size / self->per_n / one) * one;

  bs_chart_line (chart, self->cr, 0.0, self->axis, chart->width, self->axis, &chart->palette->ink,
                 1.0);
  for (guint i = 0; to_x (self, i * step) <= chart->width; i++)
    {
      const double x = to_x (self, i * step);
      g_autofree char *value = bs_units_format (i * step, BS_QUANTITY_FORCE, self->scale->units);

      bs_chart_line (chart, self->cr, x, self->axis, x, self->axis + 0.4 * chart->text_size,
                     &chart->palette->ink, 1.0);
      if (x <= chart->width - 3.0 * chart->text_size)
        bs_chart_text (chart, self->cr, value, 0.85, &chart->palette->faint, x,
                       self->axis + 0.5 * chart->text_size, i == 0 ? 0.0 : 0.5, 0.0);
    }
}

static void
draw_tick (const Drawing *self, const BsHardnessMark *mark)
{
  const BsPalette *palette = self->chart->palette;
  const double x = to_x (self, mark->hardness_n);

  bs_chart_line (self->chart, self->cr, x, self->axis - 0.5 * self->chart->text_size, x, self->axis,
                 mark->is_fit ? &palette->ink : &palette->faint, mark->is_chosen ? 3.0 : 1.0);
}

static void
draw_name (const Drawing *self, const BsHardnessMark *mark, double x)
{
  const BsPalette *palette = self->chart->palette;
  const double text = self->chart->text_size, foot = NAMES * text;
  const double tick = to_x (self, mark->hardness_n);
  BsLettering style = { .size = NAME_SIZE * text, .is_bold = mark->is_chosen };
  /* Translators: the name of a wood whose hardness is estimated. */
  g_autofree char *name
      = mark->is_estimated ? g_strdup_printf (_ ("≈ %s"), mark->name) : g_strdup (mark->name);

  bs_chart_line (self->chart, self->cr, x, foot + 0.2 * text, tick, self->axis - 0.5 * text,
                 &palette->faint, 1.0);
  style.size = bs_lettering_fit (self->cr, name, &style, foot, 0.0);
  cairo_save (self->cr);
  cairo_translate (self->cr, x, foot);
  cairo_rotate (self->cr, -G_PI / 2.0);
  bs_color_set (mark->is_fit || mark->is_chosen ? &palette->ink : &palette->faint, self->cr);
  bs_lettering_draw (self->cr, name, &style, 0.0, 0.0, 0.0, 0.5);
  cairo_restore (self->cr);
}

static guint
get_rank (const BsHardnessMark *mark)
{
  if (mark->is_chosen)
    return 0;
  return mark->is_fit ? 1 : 2;
}

/* Which marks are named: rank by rank while there is room, and of the rank that does not fit whole
 * every so many. */
static void
choose_named (const BsHardnessScale *scale, guint room, gboolean *is_named)
{
  for (guint rank = 0; rank <= 2 && room > 0; rank++)
    {
      guint n = 0, seen = 0;

      for (guint i = 0; i < scale->n; i++)
        n += get_rank (&scale->marks[i]) == rank ? 1 : 0;
      const guint taken = MIN (n, room);
      for (guint i = 0; i < scale->n; i++)
        if (get_rank (&scale->marks[i]) == rank)
          {
            is_named[i] = (seen + 1) * taken / n != seen * taken / n;
            seen++;
          }
      room -= taken;
    }
}

static void
draw_names (const Drawing *self)
{
  const BsHardnessScale *scale = self->scale;
  const double pitch = NAME_PITCH * NAME_SIZE * self->chart->text_size;
  const guint room = (guint)fmax (0.0, floor (self->chart->width / pitch));
  g_autofree gboolean *is_named = g_new0 (gboolean, scale->n + 1);
  g_autofree double *positions = g_new (double, scale->n + 1);
  guint n = 0, k = 0;

  choose_named (scale, room, is_named);
  for (guint i = 0; i < scale->n; i++)
    if (is_named[i])
      positions[n++] = to_x (self, scale->marks[i].hardness_n);
  bs_chart_spread (positions, n, pitch, pitch / 2.0, self->chart->width - pitch / 2.0);
  for (guint i = 0; i < scale->n; i++)
    if (is_named[i])
      draw_name (self, &scale->marks[i], positions[k++]);
}

void
bs_draw_hardness_chart (cairo_t *cr, const BsHardnessScale *scale, const BsChart *chart)
{
  double most = fmax (scale->low_n, scale->high_n); /* the number, of a number and NAN */
  Drawing self
      = { .cr = cr, .scale = scale, .chart = chart, .axis = (NAMES + LEADER) * chart->text_size };

  for (guint i = 0; i < scale->n; i++)
    most = fmax (most, scale->marks[i].hardness_n);
  self.per_n = chart->width / (1.03 * most);

  cairo_save (cr);
  draw_band (&self);
  draw_axis (&self);
  draw_band_words (&self);
  for (guint i = 0; i < scale->n; i++)
    draw_tick (&self, &scale->marks[i]);
  draw_names (&self);
  cairo_restore (cr);
}
