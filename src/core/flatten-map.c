/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-map.h"

#include "core/flatten-work.h"

#include <math.h>

/* The spot of a face where most comes off a lamination. */
static BsDeepSpot
find_deep_spot (const BsFlattenMap *map, const BsFaces *faces, guint place, gboolean is_top)
{
  BsExtreme extreme = is_top ? BS_EXTREME_GREATEST : BS_EXTREME_LEAST;
  BsFaceSpot spot = bs_faces_extreme_of (faces, place, is_top, extreme, map->slope_x, map->slope_y);
  double plane = map->slope_x * spot.x + map->slope_y * spot.y + map->offset;

  return (BsDeepSpot){ .place = (int)place,
                       .x = spot.x,
                       .y = spot.y,
                       .depth = is_top ? spot.z - plane - map->thickness : plane - spot.z };
}

/* Finer than any plane takes. */
#define NOTHING 1e-3

static void
find_deep_spots (BsFlattenMap *map, const BsFaces *faces, gboolean is_top, double allowance,
                 BsDeepSpots *deep)
{
  for (guint place = 0; place < faces->n; place++)
    {
      BsDeepSpot spot = find_deep_spot (map, faces, place, is_top);
      guint at = deep->n;

      map->deepest = fmax (map->deepest, spot.depth);
      while (at > 0 && deep->spots[at - 1].depth < spot.depth)
        at--;
      if (at == BS_N_DEEP_SPOTS || !(spot.depth > allowance + NOTHING))
        continue;
      deep->n = MIN (deep->n + 1, BS_N_DEEP_SPOTS);
      for (guint i = deep->n - 1; i > at; i--)
        deep->spots[i] = deep->spots[i - 1];
      deep->spots[at] = spot;
    }
}

static const BsFaceStrip *
strip_at (const BsFaces *faces, double y)
{
  for (guint i = 0; i < faces->n; i++)
    if (y < faces->strips[i].y + faces->strips[i].width)
      return &faces->strips[i];
  return &faces->strips[faces->n - 1];
}

static void
fill_cells (BsFlattenMap *map, const BsFaces *faces)
{
  guint n_wood = 0;

  for (guint j = 0; j < map->n_y; j++)
    {
      double y = (j + 0.5) * map->cell_y;
      const BsFaceStrip *strip = strip_at (faces, y);
      double eta = (y - strip->y) / strip->width;

      for (guint i = 0; i < map->n_x; i++)
        {
          double x = (i + 0.5) * map->cell_x;
          double xi = (x - strip->x) / strip->length;
          double plane = map->slope_x * x + map->slope_y * y + map->offset;
          gboolean is_wood = xi >= 0.0 && xi <= 1.0;
          double top = is_wood ? bs_face_strip_top (strip, xi, eta) - plane - map->thickness : NAN;
          double underside = is_wood ? plane - bs_face_strip_underside (strip, xi, eta) : NAN;

          map->top[j * map->n_x + i] = top;
          map->underside[j * map->n_x + i] = underside;
          map->top_mean += is_wood ? top : 0.0;
          map->underside_mean += is_wood ? underside : 0.0;
          n_wood += is_wood ? 1 : 0;
        }
    }
  map->top_mean /= n_wood;
  map->underside_mean /= n_wood;
}

BsFlattenMap *
bs_flatten_map_new (const BsStack *stack, BsFlattenWork work, guint n_x, guint n_y)
{
  BsFlattenMap *self = g_new0 (BsFlattenMap, 1);
  double allowance = stack->plan->slab.allowance;
  BsFitBasis touching;
  BsFaces faces;

  self->work = work;
  self->thickness = NAN;
  if (!bs_faces_init (&faces, stack))
    return self;

  BsFit fit = bs_flatten_fit (&faces, work, &touching);
  self->thickness = fmax (0.0, fit.distance - 2.0 * allowance);
  self->slope_x = fit.slope_x;
  self->slope_y = fit.slope_y;
  self->offset = fit.offset + allowance;
  self->n_x = n_x;
  self->n_y = n_y;
  self->cell_x = faces.length / n_x;
  self->cell_y = faces.width / n_y;
  self->top = g_new (double, (gsize)n_x *n_y);
  self->underside = g_new (double, (gsize)n_x *n_y);
  fill_cells (self, &faces);
  find_deep_spots (self, &faces, TRUE, allowance, &self->deep_top);
  find_deep_spots (self, &faces, FALSE, allowance, &self->deep_underside);
  bs_faces_clear (&faces);
  return self;
}

void
bs_flatten_map_free (BsFlattenMap *self)
{
  g_free (self->top);
  g_free (self->underside);
  g_free (self);
}

/* Taking in neighbours as long as they fit never needs more packs than any other way. */
int
bs_flatten_packs_for_planer (const BsStack *stack, double planer_width)
{
  double width = 0.0;
  int n = stack->n > 0 ? 1 : 0;

  for (guint i = 0; i < stack->n; i++)
    {
      double thickness = stack->placed[i].thickness;
      if (!(thickness <= planer_width))
        return 0;
      if (width + thickness > planer_width)
        {
          n++;
          width = 0.0;
        }
      width += thickness;
    }
  return n;
}
