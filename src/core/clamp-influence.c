/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/clamp-influence.h"

#include "core/press-line.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Places are at least this far apart, mm, and at most this many; a tape is not read more closely.
 */
#define LEAST_STEP 10.0
#define MOST_PLACES 121

/* The stretch in which a head lies wholly on both outer faces; a course is taken as one face. */
static gboolean
find_bearing (BsClampInfluence *self, const BsPressStack *stack, double head, GError **error)
{
  guint last = stack->pieces[stack->n_pieces - 1].course;
  double from[2] = { INFINITY, INFINITY }, to[2] = { -INFINITY, -INFINITY };

  for (guint i = 0; i < stack->n_pieces; i++)
    {
      const BsPressPiece *piece = &stack->pieces[i];
      guint face = piece->course == 0 ? 0 : 1;

      if (piece->course != 0 && piece->course != last)
        continue;
      from[face] = fmin (from[face], piece->start);
      to[face] = fmax (to[face], piece->start + piece->length);
    }
  self->from = fmax (from[0], from[1]) + head / 2.0;
  self->to = fmin (to[0], to[1]) - head / 2.0;
  if (self->from < self->to)
    return TRUE;
  g_set_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_CLAMP,
               _ ("A clamp head of %.0f mm finds no place on both outer faces. Use narrower heads "
                  "or line the faces up."),
               head);
  return FALSE;
}

/* Marks the points of one line that count as spots, joint by joint. */
static guint
mark_spots (const BsPressLine *line, const BsPressStack *stack, gboolean *counts)
{
  guint n = 0;

  for (guint first = 0, end; first < line->n_points; first = end)
    {
      double from, to;

      for (end = first + 1;
           end < line->n_points && line->points[end].joint == line->points[first].joint;)
        end++;
      from = fmax (stack->span_from, line->points[first].x + BS_PRESS_END_LEFT_OUT);
      to = fmin (stack->span_to, line->points[end - 1].x - BS_PRESS_END_LEFT_OUT);
      for (guint j = first; j < end; j++)
        {
          counts[j] = line->points[j].x >= from && line->points[j].x <= to;
          n += (guint)counts[j];
        }
    }
  return n;
}

/* Which points of the solver are spots that count; fills their number and the largest area. */
static gboolean *
choose_spots (BsClampInfluence *self, const BsPressResult *result, const BsPressStack *stack,
              guint n_points)
{
  gboolean *counts = g_new0 (gboolean, n_points);
  guint at = 0;

  for (guint i = 0; i < result->n_lines; i++)
    {
      const BsPressLine *line = &result->lines[i];

      if (line->is_glued)
        {
          self->area = fmax (self->area, line->area);
          self->n_spots += mark_spots (line, stack, counts + at);
        }
      at += line->n_points;
    }
  return counts;
}

static void
keep_spots (const gboolean *counts, guint n_points, const double *pressure, double *kept)
{
  for (guint i = 0; i < n_points; i++)
    if (counts[i])
      *kept++ = pressure[i];
}

/* Fills the influence of every place; FALSE when asked to stop. */
static gboolean
fill_places (BsClampInfluence *self, BsPressing *pressing, double head, const gboolean *counts,
             const BsProgress *progress)
{
  guint n_points = bs_pressing_n_points (pressing);
  g_autofree double *pressure = g_new (double, n_points);

  self->of_bows = g_new (double, self->n_spots);
  self->of_place = g_new (double, (gsize)self->n_spots * self->n_places);
  if (!bs_pressing_glued_response (pressing, NULL, pressure))
    return FALSE;
  keep_spots (counts, n_points, pressure, self->of_bows);
  for (guint i = 0; i < self->n_places; i++)
    {
      BsPressClamp clamp = { .x = self->from + i * self->step, .force = 1.0, .head = head };

      if (!bs_progress_report (progress, (double)i / self->n_places)
          || !bs_pressing_glued_response (pressing, &clamp, pressure))
        return FALSE;
      keep_spots (counts, n_points, pressure, self->of_place + (gsize)i * self->n_spots);
    }
  return TRUE;
}

BsClampInfluence *
bs_clamp_influence_new (const BsPressStack *stack, double head, const BsProgress *progress,
                        GError **error)
{
  g_autoptr (BsClampInfluence) self = g_new0 (BsClampInfluence, 1);
  g_autoptr (BsPressing) pressing = bs_pressing_new (stack, error);
  g_autofree gboolean *counts = NULL;
  g_auto (BsPressResult) result = { 0 };

  if (pressing == NULL || !find_bearing (self, stack, head, error)
      || !bs_pressing_solve (pressing, NULL, 0, &result, error))
    return NULL;
  self->n_places = (guint)CLAMP ((self->to - self->from) / LEAST_STEP, 1.0, MOST_PLACES - 1.0) + 1;
  self->step = (self->to - self->from) / (self->n_places - 1);
  counts = choose_spots (self, &result, stack, bs_pressing_n_points (pressing));
  if (!fill_places (self, pressing, head, counts, progress))
    return NULL;
  return g_steal_pointer (&self);
}

void
bs_clamp_influence_free (BsClampInfluence *self)
{
  g_free (self->of_place);
  g_free (self->of_bows);
  g_free (self);
}

void
bs_clamp_influence_add (const BsClampInfluence *self, double x, double force, double *pressure_mpa)
{
  double place = CLAMP ((x - self->from) / self->step, 0.0, self->n_places - 1.0);
  guint left = MIN ((guint)place, self->n_places - 2);
  const double *restrict a = self->of_place + (gsize)left * self->n_spots;
  const double *restrict b = a + self->n_spots;
  double of_b = force * (place - left), of_a = force - of_b;

  for (guint i = 0; i < self->n_spots; i++)
    pressure_mpa[i] += of_a * a[i] + of_b * b[i];
}
