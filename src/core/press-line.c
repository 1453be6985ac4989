/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/press-line.h"

#include <math.h>

/* The pressure at x of a joint's points, between those that enclose it. */
static double
pressure_at (const BsPressPoint *points, guint n, double x)
{
  guint i = 1;
  double part;

  while (i + 1 < n && points[i].x < x)
    i++;
  part = (x - points[i - 1].x) / (points[i].x - points[i - 1].x);
  return points[i - 1].pressure_mpa + part * (points[i].pressure_mpa - points[i - 1].pressure_mpa);
}

static void
take_place (BsPressLine *line, double x, double pressure, double opening)
{
  if (!(line->least_mpa <= pressure))
    {
      line->least_mpa = pressure;
      line->least_x = x;
    }
  if (!(line->greatest_mpa >= pressure))
    {
      line->greatest_mpa = pressure;
      line->greatest_x = x;
    }
  line->widest_opening = fmax (line->widest_opening, opening);
}

/* Least and greatest of one joint within the span and off its ends. */
static void
take_extremes (BsPressLine *line, const BsPressStack *stack, const BsPressPoint *points, guint n)
{
  double from = MAX (points[0].x + BS_PRESS_END_LEFT_OUT, stack->span_from);
  double to = MIN (points[n - 1].x - BS_PRESS_END_LEFT_OUT, stack->span_to);

  if (!(from < to))
    return;
  line->from = fmin (line->from, from);
  line->to = fmax (line->to, to);
  take_place (line, from, pressure_at (points, n, from), 0.0);
  for (guint i = 0; i < n; i++)
    if (points[i].x > from && points[i].x < to)
      take_place (line, points[i].x, points[i].pressure_mpa, points[i].opening);
  take_place (line, to, pressure_at (points, n, to), 0.0);
}

static void
add_joint (BsPressLine *line, const BsPressStack *stack, const BsPressMesh *mesh,
           const BsPressSegment *segment, const double *forces, const double *overlaps)
{
  BsPressPoint *points = line->points + line->n_points;
  guint joint = line->n_points > 0 ? points[-1].joint + 1 : 0;

  for (guint i = 0; i < segment->n; i++)
    {
      guint c = segment->first + i;
      double length = g_array_index (mesh->contacts, BsPressContact, c).length;
      double force = fmax (0.0, forces[c]);

      points[i].x = mesh->stations[segment->station + i];
      points[i].pressure_mpa = force / (length * segment->height);
      points[i].opening = fmax (0.0, -overlaps[c]);
      points[i].joint = joint;
      line->force += force;
      line->area += length * segment->height;
    }
  line->n_points += segment->n;
  take_extremes (line, stack, points, segment->n);
}

static void
start_line (BsPressLine *line, guint n_points)
{
  *line = (BsPressLine){
    .points = g_new (BsPressPoint, n_points),
    .is_glued = TRUE,
    .from = NAN,
    .to = NAN,
    .least_mpa = NAN,
    .least_x = NAN,
    .greatest_mpa = NAN,
    .greatest_x = NAN,
  };
}

void
bs_press_result_clear (BsPressResult *self)
{
  for (guint i = 0; i < self->n_lines; i++)
    g_free (self->lines[i].points);
  g_free (self->lines);
  *self = (BsPressResult){ 0 };
}

/* Length of the stretch between two points, within the line's part that counts, whose pressure less
 * the limit has the given sign; the pressure runs straight between them. */
static double
stretch_beyond (const BsPressLine *line, const BsPressPoint *a, const BsPressPoint *b, double limit,
                double sign)
{
  double from = fmax (a->x, line->from), to = fmin (b->x, line->to);
  double slope, at_from, at_to;

  if (!(from < to))
    return 0.0;
  slope = (b->pressure_mpa - a->pressure_mpa) / (b->x - a->x);
  at_from = sign * (a->pressure_mpa + slope * (from - a->x) - limit);
  at_to = sign * (a->pressure_mpa + slope * (to - a->x) - limit);
  if (at_from <= 0.0 && at_to <= 0.0)
    return 0.0;
  if (at_from > 0.0 && at_to > 0.0)
    return to - from;
  return (to - from) * fmax (at_from, at_to) / fabs (at_from - at_to);
}

static double
length_beyond (const BsPressLine *line, double limit, double sign)
{
  double length = 0.0;

  for (guint i = 1; i < line->n_points; i++)
    if (line->points[i].joint == line->points[i - 1].joint)
      length += stretch_beyond (line, &line->points[i - 1], &line->points[i], limit, sign);
  return length;
}

double
bs_press_line_length_below (const BsPressLine *line, double pressure_mpa)
{
  return length_beyond (line, pressure_mpa, -1.0);
}

double
bs_press_line_length_above (const BsPressLine *line, double pressure_mpa)
{
  return length_beyond (line, pressure_mpa, 1.0);
}

static void
find_worst (BsPressResult *result)
{
  for (guint i = 0; i < result->n_lines; i++)
    {
      const BsPressLine *line = &result->lines[i];

      if (!line->is_glued)
        continue;
      if (!result->lines[result->weakest].is_glued
          || line->least_mpa < result->lines[result->weakest].least_mpa)
        result->weakest = i;
      if (!result->lines[result->hardest].is_glued
          || line->greatest_mpa > result->lines[result->hardest].greatest_mpa)
        result->hardest = i;
    }
}

void
bs_press_lines_fill (BsPressResult *result, const BsPressStack *stack, const BsPressMesh *mesh,
                     const double *forces, const double *overlaps)
{
  g_autofree guint *n_points = g_new0 (guint, mesh->n_courses);

  result->n_lines = mesh->n_courses - 1;
  result->lines = g_new0 (BsPressLine, result->n_lines);
  for (guint i = 0; i < mesh->segments->len; i++)
    {
      const BsPressSegment *segment = &g_array_index (mesh->segments, BsPressSegment, i);

      n_points[segment->line] += segment->n;
    }
  for (guint i = 0; i < result->n_lines; i++)
    start_line (&result->lines[i], n_points[i]);
  for (guint i = 0; i < mesh->segments->len; i++)
    {
      const BsPressSegment *segment = &g_array_index (mesh->segments, BsPressSegment, i);
      BsPressLine *line = &result->lines[segment->line];

      if (stack->pieces[segment->front].is_caul || stack->pieces[segment->back].is_caul)
        line->is_glued = FALSE;
      add_joint (line, stack, mesh, segment, forces, overlaps);
    }
  for (guint i = 0; i < result->n_lines; i++)
    {
      BsPressLine *line = &result->lines[i];

      line->mean_mpa = line->force / line->area;
      line->open_length
          = bs_press_line_length_below (line, INFINITY) - bs_press_line_length_above (line, 0.0);
    }
  find_worst (result);
}
