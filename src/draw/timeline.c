/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/timeline.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/lettering.h"
#include "draw/marks.h"
#include "draw/span-bar.h"
#include "words/schedule.h"

/* In text sizes. */
#define ROW 2.4
#define BAR 1.1
#define OPEN_BAR 0.4
#define HEAD 3.7    /* title and scale */
#define LIMITS 2.7  /* what the limits are, under the rows */
#define KEY_ROW 1.8 /* of the key, which is as high as it needs */
#define KEY_SPACE 0.9
#define SMALL 0.85
#define NUMBERS 2.2 /* before the names of the presses */
#define SIGN 2.6    /* behind them, where a limit is broken */

/* Shares of the width: names at most, and where the calendar begins in what is left of it. */
#define MOST_NAMES 0.3
#define CALENDAR 0.46

/* A chart of times: where its zero is and how long a second. */
typedef struct
{
  double left, width, per_s, longest_s;
} Axis;

typedef struct
{
  const BsTimeline *of;
  cairo_t *cr;
  Axis assembly, calendar;
  double name_size;
} Chart;

double
bs_timeline_step (double least)
{
  static const double steps[] = { 10.0,   30.0,   60.0,   120.0,   300.0,   600.0,   1200.0,
                                  1800.0, 3600.0, 7200.0, 14400.0, 21600.0, 43200.0, 86400.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] >= least)
      return steps[i];
  return 86400.0 * ceil (least / 86400.0);
}

static const BsStage *
get_stage (const BsTimeline *self, guint i)
{
  return &g_array_index (self->presses->stages, BsStage, i);
}

static double
find_foot (const BsTimeline *self)
{
  return (HEAD + ROW * self->presses->stages->len) * self->text_size;
}

static double
find_longest_assembly (const BsTimeline *self)
{
  double longest = self->schedule->job.input.total_s;

  for (guint i = 0; i < self->presses->stages->len; i++)
    longest = fmax (longest, get_stage (self, i)->times.total_s);
  return longest;
}

/* One size for all names, at which the longest fits into `room`; and what that takes. */
static double
fit_names (const BsTimeline *self, cairo_t *cr, double room, double *longest)
{
  BsLettering bold = { .size = self->text_size, .is_bold = TRUE };

  *longest = 0.0;
  for (guint i = 0; i < self->presses->stages->len; i++)
    {
      g_autofree char *name = bs_words_press_name (self->schedule, get_stage (self, i));
      double width, height;

      bs_lettering_measure (cr, name, &bold, &width, &height);
      *longest = fmax (*longest, width);
    }
  if (*longest <= room)
    return self->text_size;
  double size = self->text_size * room / *longest;
  *longest = room;
  return size;
}

static Axis
axis_new (double left, double width, double longest_s)
{
  return (Axis){ left, width, longest_s > 0.0 ? width / longest_s : 0.0, longest_s };
}

static void
draw_line (const Chart *self, double x, double top, double bottom)
{
  cairo_move_to (self->cr, x, top);
  cairo_line_to (self->cr, x, bottom);
  cairo_stroke (self->cr);
}

static void
draw_axis (const Chart *self, const Axis *axis, const char *title)
{
  const BsTimeline *of = self->of;
  double text = of->text_size, foot = find_foot (of);
  BsLettering plain = { .size = text }, small = { .size = SMALL * text };
  double step = axis->per_s > 0.0 ? bs_timeline_step (6.0 * text / axis->per_s) : INFINITY;

  plain.size = bs_lettering_fit (self->cr, title, &plain, axis->width + text, 0.5 * text);
  bs_color_set (&of->palette->ink, self->cr);
  bs_lettering_draw (self->cr, title, &plain, axis->left, 0.0, 0.0, 0.0);
  cairo_set_line_width (self->cr, of->hairline);
  for (int i = 0; i * step <= axis->longest_s; i++)
    {
      double at = i * step;
      g_autofree char *value = bs_units_format (at, BS_QUANTITY_TIME, BS_UNIT_SYSTEM_METRIC);
      double x = axis->left + at * axis->per_s;
      double width, height;

      bs_lettering_measure (self->cr, value, &small, &width, &height);
      bs_color_set (&of->palette->faint, self->cr);
      if (x + width <= axis->left + axis->width + text)
        bs_lettering_draw (self->cr, value, &small, x, 1.9 * text, 0.0, 0.0);
      bs_color_set_faded (&of->palette->faint, self->cr, 0.35);
      draw_line (self, x, (HEAD - 0.4) * text, foot);
    }
}

static void
draw_span (const Chart *self, BsSpan span, const Axis *axis, double y, double from_s, double to_s)
{
  double high = (span == BS_SPAN_OPEN ? OPEN_BAR : BAR) * self->of->text_size;

  if (to_s > from_s)
    bs_span_bar_draw (self->cr, span, axis->left + from_s * axis->per_s, y - 0.5 * high,
                      fmax ((to_s - from_s) * axis->per_s, self->of->hairline), high,
                      self->of->hairline, self->of->palette);
}

static void
draw_name (const Chart *self, guint number, double y)
{
  const BsTimeline *of = self->of;
  const BsStage *stage = get_stage (of, number);
  double text = of->text_size, left = NUMBERS * text;
  BsLettering style = { .size = self->name_size, .is_bold = !stage->is_pack };
  g_autofree char *name = bs_words_press_name (of->schedule, stage);
  g_autofree char *place = g_strdup_printf ("%u", number + 1);

  bs_color_set (&of->palette->ink, self->cr);
  bs_lettering_draw (self->cr, place, &style, left - 0.6 * text, y, 1.0, 0.5);
  bs_lettering_draw (self->cr, name, &style, left, y, 0.0, 0.5);
  if (stage->limit != BS_STAGE_LIMIT_NONE)
    bs_mark_finding (self->cr, self->assembly.left - 1.2 * text, y, 1.3 * text, BS_SEVERITY_STOP,
                     &of->palette->stop, &of->palette->ground);
}

static void
draw_press (const Chart *self, guint number, double top)
{
  const BsStage *stage = get_stage (self->of, number);
  const BsStagesInput *input = &self->of->schedule->job.input;
  double text = self->of->text_size, middle = top + 0.5 * ROW * text;
  double tighten = stage->n_clamps * input->tighten_s / input->people;

  draw_name (self, number, middle);
  draw_span (self, BS_SPAN_SPREAD, &self->assembly, middle - 0.25 * text, 0.0,
             stage->times.total_s - tighten);
  draw_span (self, BS_SPAN_TIGHTEN, &self->assembly, middle - 0.25 * text,
             stage->times.total_s - tighten, stage->times.total_s);
  draw_span (self, BS_SPAN_OPEN, &self->assembly, middle + 0.75 * text, 0.0, stage->times.open_s);

  draw_span (self, BS_SPAN_SPREAD, &self->calendar, middle, stage->begin_s,
             stage->closed_s - tighten);
  draw_span (self, BS_SPAN_TIGHTEN, &self->calendar, middle, stage->closed_s - tighten,
             stage->closed_s);
  draw_span (self, BS_SPAN_PRESS, &self->calendar, middle, stage->closed_s, stage->released_s);
  draw_span (self, BS_SPAN_REST, &self->calendar, middle, stage->released_s, stage->planing_s);
  draw_span (self, BS_SPAN_PLANE, &self->calendar, middle, stage->planing_s, stage->end_s);
}

/* Down through all presses, with what it is at its foot, in a line of its own. */
static void
draw_limit (const Chart *self, double limit_s, const char *text, int line, gboolean is_dashed)
{
  const BsTimeline *of = self->of;
  double dash = 0.35 * of->text_size, foot = find_foot (of);
  double x = self->assembly.left + limit_s * self->assembly.per_s;
  double bottom = foot + (0.9 + 1.2 * line) * of->text_size, width, height;
  BsLettering small = { .size = SMALL * of->text_size };

  cairo_save (self->cr);
  bs_color_set (&of->palette->stop, self->cr);
  cairo_set_line_width (self->cr, 2.0 * of->hairline);
  if (is_dashed)
    cairo_set_dash (self->cr, &dash, 1, 0.0);
  draw_line (self, x, (HEAD - 0.4) * of->text_size, bottom);
  cairo_restore (self->cr);
  bs_lettering_measure (self->cr, text, &small, &width, &height);
  x = fmax (x - width - 0.3 * of->text_size, 0.0);
  bs_color_set (&of->palette->ink, self->cr);
  bs_lettering_draw (self->cr, text, &small, x, bottom, 0.0, 0.7);
}

static void
draw_limits (const Chart *self)
{
  const BsStagesInput *input = &self->of->schedule->job.input;

  if (input->open_s < input->total_s)
    draw_limit (self, input->open_s, _ ("glue: open at most"), 0, TRUE);
  draw_limit (self, input->total_s, _ ("glue: in all at most"), 1, FALSE);
}

static const struct
{
  BsSpan span;
  const char *name;
} entries[] = {
  { BS_SPAN_SPREAD, N_ ("spreading and placing") },
  { BS_SPAN_TIGHTEN, N_ ("tightening") },
  { BS_SPAN_OPEN, N_ ("a joint open") },
  { BS_SPAN_PRESS, N_ ("in the clamps") },
  { BS_SPAN_REST, N_ ("rest") },
  { BS_SPAN_PLANE, N_ ("planing") },
};

/* Draws the key from a height on, or only finds how high it is (cr is for measuring then). */
static double
lay_key (const BsTimeline *self, cairo_t *cr, double top, gboolean is_drawn)
{
  double text = self->text_size, x = 0.0, y = top + 0.5 * KEY_ROW * text;
  BsLettering small = { .size = SMALL * text };

  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      double high = (entries[i].span == BS_SPAN_OPEN ? OPEN_BAR : BAR) * text, width, height;
      const char *name = _ (entries[i].name);

      bs_lettering_measure (cr, name, &small, &width, &height);
      if (x > 0.0 && x + 2.2 * text + width > self->width)
        {
          x = 0.0;
          y += KEY_ROW * text;
        }
      if (is_drawn)
        {
          bs_span_bar_draw (cr, entries[i].span, x, y - 0.5 * high, 1.7 * text, high,
                            self->hairline, self->palette);
          bs_color_set (&self->palette->ink, cr);
          bs_lettering_draw (cr, name, &small, x + 2.2 * text, y, 0.0, 0.5);
        }
      x += 3.6 * text + width;
    }
  return y + 0.5 * KEY_ROW * text - top;
}

static double
find_key_top (const BsTimeline *self)
{
  return find_foot (self) + (LIMITS + KEY_SPACE) * self->text_size;
}

double
bs_timeline_get_height (const BsTimeline *self)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double height = find_key_top (self) + lay_key (self, cr, 0.0, FALSE);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return height;
}

/* Where a round begins there is a line across. */
static void
draw_round (const Chart *self, double y)
{
  bs_color_set_faded (&self->of->palette->faint, self->cr, 0.5);
  cairo_set_line_width (self->cr, self->of->hairline);
  cairo_move_to (self->cr, 0.0, y);
  cairo_line_to (self->cr, self->of->width, y);
  cairo_stroke (self->cr);
}

static Chart
chart_new (const BsTimeline *self, cairo_t *cr)
{
  double text = self->text_size, beside = (NUMBERS + SIGN) * text, longest;
  Chart chart = { .of = self, .cr = cr };

  chart.name_size = fit_names (self, cr, MOST_NAMES * self->width - beside, &longest);
  double left = longest + beside, calendar = left + CALENDAR * (self->width - left);
  chart.assembly
      = axis_new (left, calendar - left - 2.0 * text, 1.05 * find_longest_assembly (self));
  chart.calendar = axis_new (calendar, self->width - calendar - text, self->presses->elapsed_s);
  return chart;
}

void
bs_timeline_draw (const BsTimeline *self, cairo_t *cr)
{
  Chart chart = chart_new (self, cr);
  int round = -1;

  cairo_save (cr);
  draw_axis (&chart, &chart.assembly, _ ("Assembly of each press"));
  draw_axis (&chart, &chart.calendar, _ ("From the first glue to the last clamp off"));
  for (guint i = 0; i < self->presses->stages->len; i++)
    {
      double top = (HEAD + ROW * i) * self->text_size;

      if (get_stage (self, i)->round != round)
        draw_round (&chart, top);
      round = get_stage (self, i)->round;
      draw_press (&chart, i, top);
    }
  draw_limits (&chart);
  lay_key (self, cr, find_key_top (self), TRUE);
  cairo_restore (cr);
}
