/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/timeline.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/lettering.h"
#include "words/schedule.h"

/* In text sizes. */
#define ROW 2.0
#define BAR 1.1
#define HEAD 3.6 /* title and scale */
#define FOOT 2.4 /* key */

/* A chart of times: where its zero is and how long a second. */
typedef struct
{
  double left, width, per_s, longest_s;
} Axis;

typedef struct
{
  cairo_t *cr;
  const BsForecast *forecast;
  const BsStagesPlan *schedule;
  const BsPalette *palette;
  double text, hairline;
  Axis assembly, calendar;
} Timeline;

double
bs_timeline_get_height (const BsForecast *forecast, double text_size)
{
  const BsStagesPlan *schedule = bs_forecast_get_schedule (forecast);

  return schedule == NULL ? 0.0 : (HEAD + FOOT + ROW * schedule->stages->len) * text_size;
}

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

static Axis
axis_new (double left, double width, double longest_s)
{
  return (Axis){ left, width, longest_s > 0.0 ? width / longest_s : 0.0, longest_s };
}

static void
draw_line (const Timeline *self, double x, double top, double bottom)
{
  cairo_set_line_width (self->cr, self->hairline);
  cairo_move_to (self->cr, x, top);
  cairo_line_to (self->cr, x, bottom);
  cairo_stroke (self->cr);
}

static void
draw_axis (const Timeline *self, const Axis *axis, const char *title)
{
  BsLettering plain = { .size = self->text }, small = { .size = 0.85 * self->text };
  double bottom = (HEAD + ROW * self->schedule->stages->len) * self->text;
  double step = axis->per_s > 0.0 ? bs_timeline_step (6.0 * self->text / axis->per_s) : INFINITY;

  bs_color_set (&self->palette->ink, self->cr);
  bs_lettering_draw (self->cr, title, &plain, axis->left, 0.0, 0.0, 0.0);
  for (double at = 0.0; at <= axis->longest_s; at += step)
    {
      g_autofree char *value = bs_units_format (at, BS_QUANTITY_TIME, BS_UNIT_SYSTEM_METRIC);
      double x = axis->left + at * axis->per_s;

      bs_color_set (&self->palette->faint, self->cr);
      if (x + 5.0 * self->text <= axis->left + axis->width + 2.0 * self->text)
        bs_lettering_draw (self->cr, value, &small, x, 1.9 * self->text, 0.0, 0.0);
      bs_color_set_faded (&self->palette->faint, self->cr, 0.35);
      draw_line (self, x, (HEAD - 0.3) * self->text, bottom);
    }
}

/* How a part of the time looks, in ink only: the wood alone has colour. */
typedef enum
{
  PART_ASSEMBLY, /* full */
  PART_PRESS,    /* grey */
  PART_REST,     /* outlined */
} Part;

static void
draw_bar (const Timeline *self, Part part, double x, double y, double width)
{
  double high = part == PART_REST ? 0.5 * BAR * self->text : BAR * self->text;

  cairo_rectangle (self->cr, x, y - 0.5 * high, fmax (width, self->hairline), high);
  if (part == PART_ASSEMBLY)
    bs_color_set (&self->palette->ink, self->cr);
  else if (part == PART_PRESS)
    bs_color_set_faded (&self->palette->ink, self->cr, 0.4);
  if (part != PART_REST)
    {
      cairo_fill (self->cr);
      return;
    }
  bs_color_set (&self->palette->faint, self->cr);
  cairo_set_line_width (self->cr, self->hairline);
  cairo_stroke (self->cr);
}

static void
draw_span (const Timeline *self, Part part, const Axis *axis, double y, double from_s, double to_s)
{
  if (to_s > from_s)
    draw_bar (self, part, axis->left + from_s * axis->per_s, y, (to_s - from_s) * axis->per_s);
}

static void
draw_name (const Timeline *self, const BsStage *stage, double y)
{
  BsLettering style = { .size = self->text, .is_bold = !stage->is_pack };
  g_autofree char *name = bs_words_press_name (self->forecast, stage);
  double size = bs_lettering_fit (self->cr, name, &style, self->assembly.left - self->text, 0.0);

  style.size = size;
  bs_color_set (stage->limit == BS_STAGE_LIMIT_NONE ? &self->palette->ink : &self->palette->stop,
                self->cr);
  bs_lettering_draw (self->cr, name, &style, 0.0, y, 0.0, 0.5);
}

static void
draw_press (const Timeline *self, const BsStage *stage, double y)
{
  double limit = self->assembly.left + self->forecast->job.input.total_s * self->assembly.per_s;

  draw_name (self, stage, y);
  draw_span (self, PART_ASSEMBLY, &self->assembly, y, 0.0, stage->times.total_s);
  bs_color_set (&self->palette->stop, self->cr);
  cairo_set_line_width (self->cr, 2.0 * self->hairline);
  cairo_move_to (self->cr, limit, y - 0.4 * ROW * self->text);
  cairo_line_to (self->cr, limit, y + 0.4 * ROW * self->text);
  cairo_stroke (self->cr);

  draw_span (self, PART_REST, &self->calendar, y, stage->released_s, stage->end_s);
  draw_span (self, PART_PRESS, &self->calendar, y, stage->closed_s, stage->released_s);
  draw_span (self, PART_ASSEMBLY, &self->calendar, y, stage->begin_s, stage->closed_s);
}

static double
draw_key_entry (const Timeline *self, Part part, const char *text, double x, double y)
{
  BsLettering style = { .size = 0.85 * self->text };
  double width, height;

  draw_bar (self, part, x, y, 1.6 * self->text);
  bs_lettering_measure (self->cr, text, &style, &width, &height);
  bs_color_set (&self->palette->ink, self->cr);
  bs_lettering_draw (self->cr, text, &style, x + 2.1 * self->text, y, 0.0, 0.5);
  return x + 3.6 * self->text + width;
}

static void
draw_key (const Timeline *self)
{
  BsLettering style = { .size = 0.85 * self->text };
  double y = (HEAD + ROW * self->schedule->stages->len + 0.6 * FOOT) * self->text, x = 0.0;

  x = draw_key_entry (self, PART_ASSEMBLY, _ ("Assembly"), x, y);
  x = draw_key_entry (self, PART_PRESS, _ ("In the clamps"), x, y);
  x = draw_key_entry (self, PART_REST, _ ("Rest, planing and waiting"), x, y);
  bs_color_set (&self->palette->stop, self->cr);
  cairo_set_line_width (self->cr, 2.0 * self->hairline);
  cairo_move_to (self->cr, x, y - 0.7 * self->text);
  cairo_line_to (self->cr, x, y + 0.7 * self->text);
  cairo_stroke (self->cr);
  bs_color_set (&self->palette->ink, self->cr);
  bs_lettering_draw (self->cr, _ ("What the glue allows"), &style, x + 0.6 * self->text, y, 0.0,
                     0.5);
}

/* Where a round begins there is a line across. */
static void
draw_round (const Timeline *self, double y, double width)
{
  bs_color_set_faded (&self->palette->faint, self->cr, 0.35);
  cairo_set_line_width (self->cr, self->hairline);
  cairo_move_to (self->cr, 0.0, y);
  cairo_line_to (self->cr, width, y);
  cairo_stroke (self->cr);
}

void
bs_draw_timeline (cairo_t *cr, const BsForecast *forecast, double width, double text_size,
                  double hairline, const BsPalette *palette)
{
  Timeline self = { .cr = cr,
                    .forecast = forecast,
                    .schedule = bs_forecast_get_schedule (forecast),
                    .palette = palette,
                    .text = text_size,
                    .hairline = hairline };
  double most_s = forecast->has_job ? forecast->job.input.total_s : 0.0, names = 0.2 * width;
  int round = -1;

  if (self.schedule == NULL)
    return;
  for (guint i = 0; i < self.schedule->stages->len; i++)
    most_s = fmax (most_s, g_array_index (self.schedule->stages, BsStage, i).times.total_s);
  self.assembly = axis_new (names, 0.32 * width - text_size, 1.05 * most_s);
  self.calendar = axis_new (0.54 * width, 0.46 * width - text_size, self.schedule->elapsed_s);
  cairo_save (cr);
  draw_axis (&self, &self.assembly, _ ("Assembly"));
  draw_axis (&self, &self.calendar, _ ("From the first glue to the last clamp off"));
  for (guint i = 0; i < self.schedule->stages->len; i++)
    {
      const BsStage *stage = &g_array_index (self.schedule->stages, BsStage, i);
      double top = (HEAD + ROW * i) * text_size;

      if (stage->round != round)
        draw_round (&self, top, width);
      round = stage->round;
      draw_press (&self, stage, top + 0.5 * ROW * text_size);
    }
  draw_key (&self);
  cairo_restore (cr);
}
