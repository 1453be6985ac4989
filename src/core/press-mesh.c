/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/press-mesh.h"

#include <math.h>

/* Fitted so that a layer answers pressure of any wave length from 2.5 thicknesses up as plane
 * elasticity does, within a few per cent: docs/pressing-model.md, The squeeze beam. */
#define SHEAR_FACTOR 0.92
#define SPREAD_FACTOR 0.076
#define FACE_SHARE 0.23

/* Plain shear beams with springs between their middle planes. */
#define PLAIN_SHEAR_FACTOR (5.0 / 6.0)
#define PLAIN_FACE_SHARE 0.5

/* Soft springs that keep a piece in place that nothing touches: this part of a layer's own
 * stiffness through its thickness. Larger: the forces of the lines drift apart (by about n^2 / 8
 * times this part). Smaller: rounding makes the equations of a loose piece unsolvable. */
#define ANCHOR_SHARE 1e-11

/* Ends of pieces no further apart than this share a station, mm. Shorter elements would be so much
 * stiffer than the rest that rounding shows. */
#define SNAP 1.0

static gboolean
has_squeeze (const BsPressMesh *self)
{
  return self->per_node == 3;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return (x > y) - (x < y);
}

/* All ends of pieces, from left to right, those close together as one. */
static GArray *
find_breaks (const BsPressStack *stack)
{
  g_autoptr (GArray) ends = g_array_new (FALSE, FALSE, sizeof (double));
  GArray *breaks = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < stack->n_pieces; i++)
    {
      double end[2] = { stack->pieces[i].start, stack->pieces[i].start + stack->pieces[i].length };

      g_array_append_vals (ends, end, 2);
    }
  g_array_sort (ends, compare_doubles);
  for (guint i = 0; i < ends->len; i++)
    {
      double x = g_array_index (ends, double, i);

      if (i == 0 || x - g_array_index (breaks, double, breaks->len - 1) > SNAP)
        g_array_append_val (breaks, x);
    }
  return breaks;
}

/* The breaks, and between them as many more at even distances as the step asks for. */
static void
place_stations (BsPressMesh *self, const BsPressStack *stack)
{
  g_autoptr (GArray) breaks = find_breaks (stack);
  GArray *stations = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i + 1 < breaks->len; i++)
    {
      double from = g_array_index (breaks, double, i);
      double to = g_array_index (breaks, double, i + 1);
      guint n = (guint)ceil ((to - from) / stack->step - 1e-9);

      for (guint j = 0; j < n; j++)
        {
          double x = from + (to - from) * j / n;

          g_array_append_val (stations, x);
        }
    }
  g_array_append_val (stations, g_array_index (breaks, double, breaks->len - 1));
  self->n_stations = stations->len;
  self->stations = (double *)(void *)g_array_free (stations, FALSE);
}

/* The station nearest to x. */
static guint
find_station (const BsPressMesh *self, double x)
{
  guint low = 0, high = self->n_stations - 1;

  while (high - low > 1)
    {
      guint middle = (low + high) / 2;

      if (self->stations[middle] <= x)
        low = middle;
      else
        high = middle;
    }
  return x - self->stations[low] < self->stations[high] - x ? low : high;
}

static void
make_beam (BsPressMesh *self, const BsPressPiece *piece, BsPressBeam *beam)
{
  double area = piece->height * piece->thickness;
  double direct = piece->e_across_mpa * piece->height / piece->thickness;
  double shear = piece->shear_mpa * area;

  beam->first = find_station (self, piece->start);
  beam->last = find_station (self, piece->start + piece->length);
  beam->unknown = g_new (guint, beam->last - beam->first + 1);
  beam->bending = piece->e_along_mpa * area * piece->thickness * piece->thickness / 12.0;
  beam->shear = (has_squeeze (self) ? SHEAR_FACTOR : PLAIN_SHEAR_FACTOR) * shear;
  beam->anchor = ANCHOR_SHARE * direct;
  beam->squeeze = direct / (1.0 - 2.0 * FACE_SHARE);
  beam->spread = SPREAD_FACTOR * shear / (1.0 - 2.0 * FACE_SHARE);
}

/* Numbers the unknowns and finds the half width of the band. The pieces are sorted by course and
 * place, so that taking them in turn at each station goes from front to back. */
static void
number_unknowns (BsPressMesh *self)
{
  for (guint station = 0; station < self->n_stations; station++)
    for (guint i = 0; i < self->n_beams; i++)
      {
        BsPressBeam *beam = &self->beams[i];

        if (station < beam->first || station > beam->last)
          continue;
        beam->unknown[station - beam->first] = self->n_unknowns;
        self->n_unknowns += self->per_node;
      }
  for (guint i = 0; i < self->n_beams; i++)
    {
      const BsPressBeam *beam = &self->beams[i];

      for (guint j = 0; j < beam->last - beam->first; j++)
        self->half_width
            = MAX (self->half_width, beam->unknown[j + 1] - beam->unknown[j] + self->per_node - 1);
    }
}

/* How far a bowed piece, unloaded, stands off the line between its ends, towards +y. */
static double
bow_at (const BsPressPiece *piece, double x)
{
  double xi = CLAMP ((x - piece->start) / piece->length, 0.0, 1.0);

  return piece->bow * 4.0 * xi * (1.0 - xi);
}

static void
add_segment (BsPressMesh *self, const BsPressStack *stack, guint front, guint back)
{
  const BsPressPiece *a = &stack->pieces[front], *b = &stack->pieces[back];
  const BsPressBeam *beam_a = &self->beams[front], *beam_b = &self->beams[back];
  guint from = MAX (beam_a->first, beam_b->first), to = MIN (beam_a->last, beam_b->last);
  double share = has_squeeze (self) ? FACE_SHARE : PLAIN_FACE_SHARE;
  BsPressSegment segment = {
    .line = a->course,
    .front = front,
    .back = back,
    .first = self->contacts->len,
    .n = to - from + 1,
    .station = from,
    .height = MIN (a->height, b->height),
    .line_stiffness = 1.0
                      / (share
                         * (a->thickness / (a->e_across_mpa * a->height)
                            + b->thickness / (b->e_across_mpa * b->height))),
  };

  g_array_append_val (self->segments, segment);
  for (guint station = from; station <= to; station++)
    {
      double x = self->stations[station];
      double left = station > from ? x - self->stations[station - 1] : 0.0;
      double right = station < to ? self->stations[station + 1] - x : 0.0;
      BsPressContact contact = {
        .front = beam_a->unknown[station - beam_a->first],
        .back = beam_b->unknown[station - beam_b->first],
        .length = (left + right) / 2.0,
        .stiffness = segment.line_stiffness * (left + right) / 2.0,
        .gap = bow_at (b, x) - bow_at (a, x),
      };

      g_array_append_val (self->contacts, contact);
    }
}

/* Every pair of pieces in neighbouring courses that overlap along x. */
static void
find_contacts (BsPressMesh *self, const BsPressStack *stack)
{
  for (guint i = 0; i < stack->n_pieces; i++)
    for (guint j = i + 1; j < stack->n_pieces; j++)
      if (stack->pieces[j].course == stack->pieces[i].course + 1
          && MAX (self->beams[i].first, self->beams[j].first)
                 < MIN (self->beams[i].last, self->beams[j].last))
        add_segment (self, stack, i, j);
}

BsPressMesh *
bs_press_mesh_new (const BsPressStack *stack)
{
  BsPressMesh *self = g_new0 (BsPressMesh, 1);

  self->per_node = stack->model == BS_PRESS_MODEL_SQUEEZE ? 3 : 2;
  self->n_courses = stack->pieces[stack->n_pieces - 1].course + 1;
  self->contacts = g_array_new (FALSE, FALSE, sizeof (BsPressContact));
  self->segments = g_array_new (FALSE, FALSE, sizeof (BsPressSegment));
  place_stations (self, stack);
  self->n_beams = stack->n_pieces;
  self->beams = g_new0 (BsPressBeam, self->n_beams);
  for (guint i = 0; i < self->n_beams; i++)
    make_beam (self, &stack->pieces[i], &self->beams[i]);
  number_unknowns (self);
  find_contacts (self, stack);
  return self;
}

void
bs_press_mesh_free (BsPressMesh *self)
{
  for (guint i = 0; i < self->n_beams; i++)
    g_free (self->beams[i].unknown);
  g_free (self->beams);
  g_free (self->stations);
  g_array_unref (self->contacts);
  g_array_unref (self->segments);
  g_free (self);
}
