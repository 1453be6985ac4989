/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-faces.h"

#include <math.h>

static double
zero_if_unknown (double value)
{
  return isnan (value) ? 0.0 : value;
}

/* Twist is measured on the wide face. The section turns by the same angle whichever face is looked
 * at, so a narrow face on top shows less of it, in proportion to its width. */
static double
twist_of_top (const BsPlaced *placed, BsLayup layup)
{
  double wide = layup == BS_LAYUP_ON_EDGE ? placed->lamination->height : placed->thickness;
  return zero_if_unknown (placed->twist) * placed->thickness / wide;
}

static BsFaceStrip
strip_of (const BsPlaced *placed, BsLayup layup)
{
  return (BsFaceStrip){
    .x = placed->x,
    .y = placed->y,
    .length = placed->length,
    .width = placed->thickness,
    .crook = zero_if_unknown (placed->crook),
    .cup = layup == BS_LAYUP_ON_FLAT ? zero_if_unknown (placed->cup) : 0.0,
    .twist = twist_of_top (placed, layup),
    .height = placed->height_left,
    .taper = placed->height_right - placed->height_left,
  };
}

static gboolean
has_size (const BsFaceStrip *strip)
{
  return strip->length > 0.0 && strip->width > 0.0 && strip->height > 0.0
         && strip->height + strip->taper > 0.0;
}

static void
find_middle (BsFaces *self)
{
  double area = 0.0, moment_x = 0.0, moment_y = 0.0;

  for (guint i = 0; i < self->n; i++)
    {
      const BsFaceStrip *strip = &self->strips[i];
      double part = strip->length * strip->width;
      area += part;
      moment_x += part * (strip->x + strip->length / 2.0);
      moment_y += part * (strip->y + strip->width / 2.0);
    }
  self->x_mid = moment_x / area;
  self->y_mid = moment_y / area;
}

gboolean
bs_faces_init (BsFaces *self, const BsStack *stack)
{
  *self = (BsFaces){
    .n = stack->n,
    .strips = g_new (BsFaceStrip, stack->n),
    .length = stack->length,
    .width = stack->width,
    .height = stack->height,
    .alignment = stack->plan->slab.alignment,
  };
  gboolean is_whole = stack->n > 0;

  for (guint i = 0; i < stack->n; i++)
    {
      self->strips[i] = strip_of (&stack->placed[i], stack->plan->slab.layup);
      is_whole = is_whole && has_size (&self->strips[i]);
    }
  if (!is_whole)
    {
      bs_faces_clear (self);
      return FALSE;
    }
  find_middle (self);
  bs_faces_align (self);
  return TRUE;
}

void
bs_faces_clear (BsFaces *self)
{
  g_clear_pointer (&self->strips, g_free);
}

double
bs_face_strip_underside (const BsFaceStrip *self, double xi, double eta)
{
  return self->low + self->rise * xi + 4.0 * self->crook * xi * (1.0 - xi)
         + 4.0 * self->cup * eta * (1.0 - eta) + self->twist * (xi - 0.5) * (eta - 0.5);
}

double
bs_face_strip_top (const BsFaceStrip *self, double xi, double eta)
{
  return bs_face_strip_underside (self, xi, eta) + self->height + self->taper * xi;
}

void
bs_faces_update_spot (const BsFaces *self, BsFaceSpot *spot)
{
  const BsFaceStrip *strip = &self->strips[spot->place];
  double xi = (spot->x - strip->x) / strip->length;
  double eta = (spot->y - strip->y) / strip->width;

  spot->z = spot->is_top ? bs_face_strip_top (strip, xi, eta)
                         : bs_face_strip_underside (strip, xi, eta);
}

/* The surface value(xi, eta) = constant + along xi + 4 crook xi (1 - xi) + across eta
 * + 4 cup eta (1 - eta) + twist xi eta on the unit square, and where it is greatest. */
typedef struct
{
  double constant, along, across;
  double crook, cup, twist;
} Patch;

typedef struct
{
  double xi, eta, value;
} Peak;

/* Greatest of slope s + 4 arch s (1 - s), for s from 0 to 1. */
static double
find_peak (double arch, double slope)
{
  if (arch > 0.0)
    return CLAMP (0.5 + slope / (8.0 * arch), 0.0, 1.0);
  return slope > 0.0 ? 1.0 : 0.0;
}

static double
patch_value (const Patch *self, double xi, double eta)
{
  return self->constant + self->along * xi + 4.0 * self->crook * xi * (1.0 - xi)
         + self->across * eta + 4.0 * self->cup * eta * (1.0 - eta) + self->twist * xi * eta;
}

static void
consider (const Patch *patch, double xi, double eta, Peak *best)
{
  double value = patch_value (patch, xi, eta);
  if (value > best->value)
    *best = (Peak){ xi, eta, value };
}

/* With twist the two directions do not part: the greatest value lies on one of the four edges, or
 * where both slopes vanish inside. */
static Peak
find_twisted_peak (const Patch *patch)
{
  Peak best = { .value = -INFINITY };

  for (int edge = 0; edge <= 1; edge++)
    {
      consider (patch, find_peak (patch->crook, patch->along + patch->twist * edge), edge, &best);
      consider (patch, edge, find_peak (patch->cup, patch->across + patch->twist * edge), &best);
    }

  double determinant = 64.0 * patch->crook * patch->cup - patch->twist * patch->twist;
  if (patch->crook > 0.0 && patch->cup > 0.0 && determinant > 0.0)
    {
      double gx = patch->along + 4.0 * patch->crook;
      double gy = patch->across + 4.0 * patch->cup;
      double xi = (8.0 * patch->cup * gx + patch->twist * gy) / determinant;
      double eta = (8.0 * patch->crook * gy + patch->twist * gx) / determinant;
      if (xi > 0.0 && xi < 1.0 && eta > 0.0 && eta < 1.0)
        consider (patch, xi, eta, &best);
    }
  return best;
}

static Peak
find_patch_peak (const Patch *patch)
{
  if (patch->twist > 0.0 || patch->twist < 0.0)
    return find_twisted_peak (patch);

  double xi = find_peak (patch->crook, patch->along);
  double eta = find_peak (patch->cup, patch->across);
  return (Peak){ xi, eta, patch_value (patch, xi, eta) };
}

/* No value of the patch is above this; much quicker than to find the greatest. */
static double
bound_patch (const Patch *patch)
{
  return patch->constant + MAX (0.0, patch->along) + MAX (0.0, patch->across)
         + MAX (0.0, patch->crook) + MAX (0.0, patch->cup) + MAX (0.0, patch->twist);
}

/* sign times what a strip's face stands above the plane slope_x x + slope_y y. */
static Patch
patch_of (const BsFaceStrip *strip, gboolean is_top, double sign, double slope_x, double slope_y)
{
  double low = strip->low + strip->twist / 4.0 - slope_x * strip->x - slope_y * strip->y;
  double along = strip->rise - strip->twist / 2.0 - slope_x * strip->length;
  double across = -strip->twist / 2.0 - slope_y * strip->width;

  if (is_top)
    {
      low += strip->height;
      along += strip->taper;
    }
  return (Patch){ .constant = sign * low,
                  .along = sign * along,
                  .across = sign * across,
                  .crook = sign * strip->crook,
                  .cup = sign * strip->cup,
                  .twist = sign * strip->twist };
}

static Peak
find_strip_peak (const BsFaceStrip *strip, gboolean is_top, double sign, double slope_x,
                 double slope_y)
{
  Patch patch = patch_of (strip, is_top, sign, slope_x, slope_y);
  return find_patch_peak (&patch);
}

static BsFaceSpot
spot_of (const BsFaces *self, guint place, gboolean is_top, const Peak *peak)
{
  const BsFaceStrip *strip = &self->strips[place];
  BsFaceSpot spot = { .x = strip->x + peak->xi * strip->length,
                      .y = strip->y + peak->eta * strip->width,
                      .place = (int)place,
                      .is_top = is_top };

  spot.z = is_top ? bs_face_strip_top (strip, peak->xi, peak->eta)
                  : bs_face_strip_underside (strip, peak->xi, peak->eta);
  return spot;
}

BsFaceSpot
bs_faces_extreme_of (const BsFaces *self, guint place, gboolean is_top, BsExtreme extreme,
                     double slope_x, double slope_y)
{
  Peak peak = find_strip_peak (&self->strips[place], is_top, extreme, slope_x, slope_y);
  return spot_of (self, place, is_top, &peak);
}

BsFaceSpot
bs_faces_extreme (const BsFaces *self, gboolean is_top, BsExtreme extreme, double slope_x,
                  double slope_y)
{
  Peak best = { .value = -INFINITY };
  guint place = 0;

  for (guint i = 0; i < self->n; i++)
    {
      Patch patch = patch_of (&self->strips[i], is_top, extreme, slope_x, slope_y);
      if (bound_patch (&patch) <= best.value)
        continue;
      Peak peak = find_patch_peak (&patch);
      if (peak.value > best.value)
        {
          best = peak;
          place = i;
        }
    }
  return spot_of (self, place, is_top, &best);
}

static double
extreme_of_strip (const BsFaceStrip *strip, gboolean is_top, BsExtreme extreme)
{
  return extreme * find_strip_peak (strip, is_top, extreme, 0.0, 0.0).value;
}

/* How far a strip has to be lifted. */
static double
lift_of (const BsFaceStrip *strip, BsAlignment alignment, double height)
{
  switch (alignment)
    {
    case BS_ALIGNMENT_UNDERSIDES_DOWN:
      return -extreme_of_strip (strip, FALSE, BS_EXTREME_LEAST);
    case BS_ALIGNMENT_SHOW_FACES_DOWN:
      return height - extreme_of_strip (strip, TRUE, BS_EXTREME_GREATEST);
    case BS_ALIGNMENT_ENDS_FLUSH:
      return 0.0;
    case BS_ALIGNMENT_MIDDLES_LEVEL:
      {
        /* The mid-surface is an underside lifted by half the height. */
        BsFaceStrip middle = *strip;
        middle.low += strip->height / 2.0;
        middle.rise += strip->taper / 2.0;
        return (height - extreme_of_strip (&middle, FALSE, BS_EXTREME_LEAST)
                - extreme_of_strip (&middle, FALSE, BS_EXTREME_GREATEST))
               / 2.0;
      }
    default:
      g_return_val_if_reached (0.0);
    }
}

void
bs_faces_align (BsFaces *self)
{
  for (guint i = 0; i < self->n; i++)
    {
      self->strips[i].low = 0.0;
      self->strips[i].low = lift_of (&self->strips[i], self->alignment, self->height);
    }
}
