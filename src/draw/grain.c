/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/grain.h"

#include <math.h>

/* Rings of 1.6 to 3.6 mm: slower and faster grown than most lumber, but seen in all of it. */
#define RING_WIDTH_LEAST 1.6
#define RING_WIDTH_SPAN 2.0
#define RING_JITTER 0.30 /* of the ring width; under 0.5, so that rings keep their order */
#define WAVE 0.28        /* of the ring width */

/* The lean is drawn small, so that the rings at the right end are still those that were marked. */
#define LEAN_OVER_LENGTH 11.0 /* mm, with run-out */
#define LEAN_WITHOUT 4.0      /* mm, without */
#define WANDER 1.6            /* mm, of the pith along the length */

/* Rings closer than this many hairlines are thinned out to every second, fourth, ... */
#define LEAST_LINES_APART 3.6

/* A hash of two numbers that spreads every bit. */
static guint32
mix (guint32 seed, guint32 number)
{
  guint32 h = seed ^ (number * 0x9e3779b9u);

  h = (h ^ (h >> 16)) * 0x85ebca6bu;
  h = (h ^ (h >> 13)) * 0xc2b2ae35u;
  return h ^ (h >> 16);
}

/* 0 to 1. */
static double
chance (const BsGrain *self, guint32 number)
{
  return mix (self->seed, number) / 4294967295.0;
}

static int
rise_of_fibres (const BsLamination *lamination)
{
  if (lamination->run_out_top != 0)
    return lamination->run_out_top;
  return -lamination->run_out_underside;
}

void
bs_grain_init (BsGrain *self, const BsLamination *lamination)
{
  int rise = rise_of_fibres (lamination);
  double length = lamination->length > 0.0 ? lamination->length : 1.0;

  *self = (BsGrain){
    .seed = lamination->id != NULL ? g_str_hash (lamination->id) : 0,
    .length = length,
    .thickness = lamination->thickness,
    .height = lamination->height,
    .pith_y = lamination->pith_y,
    .pith_z = lamination->pith_z,
  };
  self->has_rings = isfinite (self->pith_y) && isfinite (self->pith_z);
  self->ring_width = RING_WIDTH_LEAST + RING_WIDTH_SPAN * chance (self, 1);
  self->lean = rise * LEAN_OVER_LENGTH / length;
  if (rise == 0)
    self->lean = (chance (self, 2) - 0.5) * LEAN_WITHOUT / length;
  for (guint i = 0; i < G_N_ELEMENTS (self->phases); i++)
    self->phases[i] = 2.0 * G_PI * chance (self, 3 + i);
}

double
bs_grain_ring (const BsGrain *self, int ring)
{
  double good_and_bad_years = 0.9 * sin (0.42 * ring + self->phases[0]);
  double jitter = RING_JITTER * (2.0 * chance (self, 100u + (guint32)ring) - 1.0);

  return self->ring_width * (ring + good_and_bad_years + jitter);
}

/* How far the ring of radius r stands out at (x, y): slow, so that neighbours run alike. */
static double
wave (const BsGrain *self, double x, double y, double r)
{
  return self->ring_width * WAVE
         * (sin (y / 9.0 + r / 31.0 + x / 310.0 + self->phases[1])
            + 0.5 * sin (y / 4.1 - r / 19.0 - x / 130.0 + self->phases[2]));
}

/* The pith along the length, where it was marked at the left end. */
static double
pith_z_at (const BsGrain *self, double x)
{
  return self->pith_z + self->lean * x
         + WANDER * (sin (x / 230.0 + self->phases[3]) - sin (self->phases[3]));
}

static double
pith_y_at (const BsGrain *self, double x)
{
  return self->pith_y + WANDER * (sin (x / 310.0 + self->phases[2]) - sin (self->phases[2]));
}

/* Late wood differs from year to year. */
static void
stroke_ring (const BsGrain *self, cairo_t *cr, int ring, const BsGrainStyle *style)
{
  double strength = chance (self, 5000u + (guint32)ring);

  bs_color_set_faded (&style->color, cr, 0.26 + 0.34 * strength);
  cairo_set_line_width (cr, style->hairline * (0.75 + 0.65 * strength));
  cairo_stroke (cr);
}

/* Every how many rings one is drawn. */
static int
thin_out (const BsGrain *self, const BsGrainStyle *style)
{
  double apart = self->ring_width * style->per_mm_across;
  int every = 1;

  while (every < 1 << 12 && apart * every < LEAST_LINES_APART * style->hairline)
    every *= 2;
  return every;
}

/* The rings, multiples of every, that may lie between two radii. */
static void
find_rings (const BsGrain *self, double r_from, double r_to, int every, int *first, int *last)
{
  double spread = 2.0;

  *first = (int)floor (MAX (r_from / self->ring_width - spread, 1.0));
  *first = MAX (every, (*first + every - 1) / every * every);
  *last = (int)ceil (r_to / self->ring_width + spread);
}

/* Nearest and farthest that |v + offset| gets for v from -half to +half. */
static void
find_reach (double offset, double half, double *nearest, double *farthest)
{
  *nearest = MAX (fabs (offset) - half, 0.0);
  *farthest = fabs (offset) + half;
}

/* Without a marked pith: even hatching that claims nothing. */
static void
hatch_end (const BsGrain *self, cairo_t *cr, const BsGrainStyle *style)
{
  double w = self->thickness * style->per_mm_across;
  double h = self->height * style->per_mm_across;
  double step = 6.0 * style->hairline;
  int n = (int)CLAMP (ceil ((w + h) / step), 0.0, 4000.0);

  for (int i = 0; i < n; i++)
    {
      double at = -0.5 * (w + h) + i * step;

      cairo_move_to (cr, at - 0.5 * h, 0.5 * h);
      cairo_line_to (cr, at + 0.5 * h, -0.5 * h);
    }
  bs_color_set_faded (&style->color, cr, 0.24);
  cairo_set_line_width (cr, style->hairline);
  cairo_stroke (cr);
}

/* The angles, from the pith, between which the section lies. */
static void
find_angles (const BsGrain *self, double *from, double *to)
{
  double middle = atan2 (-self->pith_z, -self->pith_y);
  double half_y = 0.5 * self->thickness, half_z = 0.5 * self->height;

  if (fabs (self->pith_y) <= half_y && fabs (self->pith_z) <= half_z)
    {
      *from = 0.0;
      *to = 2.0 * G_PI;
      return;
    }
  *from = *to = middle;
  for (int corner = 0; corner < 4; corner++)
    {
      double y = (corner & 1 ? half_y : -half_y) - self->pith_y;
      double z = (corner & 2 ? half_z : -half_z) - self->pith_z;
      double off = remainder (atan2 (z, y) - middle, 2.0 * G_PI);

      *from = MIN (*from, middle + off);
      *to = MAX (*to, middle + off);
    }
}

static void
trace_end_ring (const BsGrain *self, cairo_t *cr, double r, double from, double to, double per_mm)
{
  int n_steps = (int)CLAMP ((to - from) * r * per_mm / 5.0, 4.0 * (to - from) + 4.0, 90.0);

  for (int i = 0; i <= n_steps; i++)
    {
      double angle = from + (to - from) * i / n_steps;
      double y = self->pith_y + r * cos (angle);
      double out = r + wave (self, 0.0, y, r);

      cairo_line_to (cr, per_mm * (self->pith_y + out * cos (angle)),
                     -per_mm * (self->pith_z + out * sin (angle)));
    }
}

static void
draw_pith (const BsGrain *self, cairo_t *cr, const BsGrainStyle *style)
{
  cairo_arc (cr, self->pith_y * style->per_mm_across, -self->pith_z * style->per_mm_across,
             MAX (1.5 * style->hairline, 1.2 * style->per_mm_across), 0.0, 2.0 * G_PI);
  bs_color_set_faded (&style->color, cr, 0.9);
  cairo_fill (cr);
}

void
bs_grain_draw_end (const BsGrain *self, cairo_t *cr, const BsGrainStyle *style)
{
  double from, to, near_y, far_y, near_z, far_z;
  int first, last, every;

  if (!self->has_rings)
    {
      hatch_end (self, cr, style);
      return;
    }
  find_angles (self, &from, &to);
  find_reach (self->pith_y, 0.5 * self->thickness, &near_y, &far_y);
  find_reach (self->pith_z, 0.5 * self->height, &near_z, &far_z);
  every = thin_out (self, style);
  find_rings (self, hypot (near_y, near_z), hypot (far_y, far_z), every, &first, &last);
  for (int ring = first; ring <= last; ring += every)
    {
      trace_end_ring (self, cr, bs_grain_ring (self, ring), from, to, style->per_mm_across);
      stroke_ring (self, cr, ring, style);
    }
  draw_pith (self, cr, style);
}

/* Where the ring of radius r cuts the face at x, on one side of the pith; FALSE where it does not
 * come up to the face. Both sides wave alike, so that they meet. */
static gboolean
cut_face (const BsGrain *self, double r, double x, double z, int side, double *y)
{
  double up = z - pith_z_at (self, x);
  double out = r + wave (self, x, self->pith_y, r);
  double across = out * out - up * up;

  *y = pith_y_at (self, x) + side * sqrt (MAX (across, 0.0));
  return across > 0.0;
}

/* Between a place where the ring stands above the face and one where it does not: from the tip,
 * where it comes through, to the place above, or the other way. The points crowd towards the tip,
 * where the line turns fastest. */
static void
trace_tip (const BsGrain *self, cairo_t *cr, double r, double z, int side, double above,
           double below, gboolean is_from_tip, const BsGrainStyle *style)
{
  const int n_points = 6;
  double tip = above, y;

  for (int halving = 0; halving < 10; halving++)
    {
      double middle = 0.5 * (tip + below);

      *(cut_face (self, r, middle, z, side, &y) ? &tip : &below) = middle;
    }
  for (int i = 0; i < n_points; i++)
    {
      double part = (double)(is_from_tip ? i : n_points - 1 - i) / n_points;
      double x = tip + part * part * (above - tip);

      cut_face (self, r, x, z, side, &y);
      cairo_line_to (cr, y * style->per_mm_across, x * style->per_mm_along);
    }
}

/* One line along the face. Where the ring dips under the face its two sides meet in the pointed
 * arches of flat-sawn wood. */
static void
trace_face_ring (const BsGrain *self, cairo_t *cr, double r, double z, int side, int n_steps,
                 const BsGrainStyle *style)
{
  double y, step = self->length / n_steps;
  gboolean was_cut = FALSE;

  for (int i = 0; i <= n_steps; i++)
    {
      double x = i * step;
      gboolean is_cut = cut_face (self, r, x, z, side, &y);

      if (i > 0 && is_cut && !was_cut)
        trace_tip (self, cr, r, z, side, x, x - step, TRUE, style);
      if (i > 0 && was_cut && !is_cut)
        trace_tip (self, cr, r, z, side, x - step, x, FALSE, style);
      if (is_cut)
        cairo_line_to (cr, y * style->per_mm_across, x * style->per_mm_along);
      else
        cairo_new_sub_path (cr);
      was_cut = is_cut;
    }
  cairo_new_sub_path (cr);
}

/* Fine streaks along the grain: all that is drawn where no rings are known, and a little life where
 * rings lie far apart. */
static void
streak_face (const BsGrain *self, cairo_t *cr, const BsGrainStyle *style)
{
  double w = self->thickness * style->per_mm_across;
  double l = self->length * style->per_mm_along;
  int n_streaks = (int)CLAMP (w / (5.0 * style->hairline), 0.0, 24.0);

  for (int i = 0; i < n_streaks; i++)
    {
      double at = (chance (self, 9000u + 3u * (guint32)i) - 0.5) * w;
      double from = chance (self, 9001u + 3u * (guint32)i) * l;
      double to = from + (0.1 + 0.3 * chance (self, 9002u + 3u * (guint32)i)) * l;

      cairo_move_to (cr, at, from);
      cairo_line_to (cr, at, MIN (to, l));
    }
  bs_color_set_faded (&style->color, cr, 0.14);
  cairo_set_line_width (cr, style->hairline);
  cairo_stroke (cr);
}

void
bs_grain_draw_face (const BsGrain *self, cairo_t *cr, BsFace face, const BsGrainStyle *style)
{
  double z = face == BS_FACE_UNDERSIDE ? -0.5 * self->height : 0.5 * self->height;
  double drift = LEAN_OVER_LENGTH + 2.0 * WANDER;
  double near_y, far_y, near_z, far_z;
  int first, last, every, n_steps;

  streak_face (self, cr, style);
  if (!self->has_rings)
    return;
  find_reach (self->pith_y, 0.5 * self->thickness + 2.0 * WANDER, &near_y, &far_y);
  find_reach (self->pith_z - z, drift, &near_z, &far_z);
  every = thin_out (self, style);
  find_rings (self, hypot (near_y, near_z), hypot (far_y, far_z), every, &first, &last);
  n_steps = (int)CLAMP (self->length * style->per_mm_along / 6.0, 8.0, 96.0);
  for (int ring = first; ring <= last; ring += every)
    {
      double r = bs_grain_ring (self, ring);

      trace_face_ring (self, cr, r, z, -1, n_steps, style);
      trace_face_ring (self, cr, r, z, +1, n_steps, style);
      stroke_ring (self, cr, ring, style);
    }
}
