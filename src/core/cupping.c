/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/cupping.h"

#include "core/moisture.h"
#include "core/movement.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  double y, z;
} Spot;

/* Where a spot of the board comes to rest. Wood shrinks towards the pith by the radial ratio; its
 * rings shorten by the tangential one, which closes every angle about the pith by the ratio of the
 * two. A turn of the whole board does not matter, so angles are taken from the axis that points
 * away from the pith. */
static Spot
move_spot (double y, double z, double radial, double tangential)
{
  double distance = hypot (y, z) * (1.0 + radial);
  double angle = atan2 (y, z) * (1.0 + tangential) / (1.0 + radial);

  return (Spot){ distance * sin (angle), distance * cos (angle) };
}

/* Source: docs/timber-model.md, Cup, equation (1). */
double
bs_cupping_board (double width, double pith_y, double pith_z, double radial, double tangential)
{
  double away = fabs (pith_z); /* as if the pith lay below */
  Spot left = move_spot (-width / 2.0 - pith_y, away, radial, tangential);
  Spot middle = move_spot (-pith_y, away, radial, tangential);
  Spot right = move_spot (width / 2.0 - pith_y, away, radial, tangential);
  double dy = right.y - left.y, dz = right.z - left.z;
  double above = ((middle.z - left.z) * dy - (middle.y - left.y) * dz) / sqrt (dy * dy + dz * dz);

  return pith_z > 0.0 ? -above : above;
}

/* A lamination as an arc. */
typedef struct
{
  double width;
  double cup;
} Arc;

/* Laminations glued edge to edge go on with the slope of the one before, so the slab is a row of
 * arcs. Heights are taken at the edges and in the middle of each. */
static BsCup
join_arcs (const Arc *arcs, guint n, const double sides[])
{
  const gsize last = 2 * (gsize)n;
  g_autofree Spot *spots = g_new0 (Spot, last + 1);
  double slope = 0.0, highest = 0.0, lowest = 0.0;
  Spot *spot = spots;

  for (guint i = 0; i < n; i++)
    {
      const Spot from = *spot;
      double turn = -8.0 * sides[i] * arcs[i].cup / arcs[i].width;

      for (guint half = 1; half <= 2; half++)
        {
          double part = half / 2.0;
          *++spot = (Spot){ from.y + part * arcs[i].width,
                            from.z + arcs[i].width * part * (slope + turn * part / 2.0) };
        }
      slope += turn;
    }
  if (isnan (spots[last].z))
    return (BsCup){ NAN, NAN };
  for (gsize i = 0; i <= last; i++)
    {
      double above = spots[i].z - spots[last].z * spots[i].y / spots[last].y;

      highest = fmax (highest, above);
      lowest = fmin (lowest, above);
    }
  return (BsCup){ .cup = highest >= -lowest ? highest : lowest, .waves = highest - lowest };
}

static double
find_board_cup (const BsPlaced *placed, double glued_pct, double to_pct)
{
  double own = placed->lamination->moisture_pct;
  double from = isnan (own) ? glued_pct : own;

  if (placed->wood == NULL)
    return NAN;
  if (isnan (placed->pith_y) || isnan (placed->pith_z))
    return 0.0;

  BsSwelling radial = bs_movement_radial (placed->wood);
  BsSwelling tangential = bs_movement_tangential (placed->wood);
  return bs_cupping_board (placed->thickness, placed->pith_y, placed->pith_z,
                           bs_movement_ratio (&radial, from, to_pct),
                           bs_movement_ratio (&tangential, from, to_pct));
}

static BsCupping
find_cupping (const BsStack *stack, double glued_pct, double to_pct)
{
  g_autofree Arc *arcs = g_new (Arc, stack->n);
  g_autofree double *as_laid = g_new (double, stack->n);
  g_autofree double *same = g_new (double, stack->n);
  g_autofree double *by_turns = g_new (double, stack->n);
  BsCupping self = { .is_on_flat = TRUE, .moisture_pct = to_pct };

  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double cup = find_board_cup (placed, glued_pct, to_pct);
      double heart = placed->pith_z > 0.0 ? -1.0 : 1.0; /* down counts as the first way */

      arcs[i] = (Arc){ placed->thickness, cup };
      as_laid[i] = 1.0;
      same[i] = heart;
      by_turns[i] = i % 2 == 0 ? heart : -heart;
      self.n_no_rings += isnan (placed->pith_y) || isnan (placed->pith_z) ? 1 : 0;
      if (fabs (cup) > fabs (self.greatest_board))
        self.greatest_board = cup;
    }
  self.as_laid = join_arcs (arcs, stack->n, as_laid);
  self.same_side = join_arcs (arcs, stack->n, same);
  self.alternating = join_arcs (arcs, stack->n, by_turns);
  return self;
}

void
bs_cupping_slab (const BsStack *stack, double dry_pct, double damp_pct, BsCupping *cupping)
{
  double middle = (dry_pct + damp_pct) / 2.0;

  *cupping = (BsCupping){ .moisture_pct = NAN };
  if (stack->plan->slab.layup != BS_LAYUP_ON_FLAT || stack->n == 0)
    return;
  *cupping = find_cupping (stack, middle, dry_pct);

  BsCupping damp = find_cupping (stack, middle, damp_pct);
  if (fabs (damp.greatest_board) > fabs (cupping->greatest_board))
    *cupping = damp;
}

void
bs_cupping_explain (const BsCupping *cupping, BsWorking *why)
{
  if (!cupping->is_on_flat || isnan (cupping->as_laid.cup))
    {
      bs_working_init (
          why, N_ ("Cup of the slab"),
          cupping->is_on_flat
              ? N_ ("How much a wood in the slab moves is not known.")
              : N_ ("Laminations on edge hold one another flat; only on flat do they cup "
                    "the slab together."),
          "", BS_QUANTITY_LENGTH, N_ ("Nothing to go by."));
      return;
    }
  bs_working_init (
      why, N_ ("Cup of the slab"),
      N_ ("How far the middle of the slab would stand off a straight line between its edges when "
          "it comes to rest in the season that changes it most, if nothing holds it: up is above "
          "zero, down below. Each lamination goes hollow on its bark side as it dries."),
      "c = (1 + r) (ρ cos(q θ) − h),  q = (1 + t) / (1 + r)", BS_QUANTITY_LENGTH,
      cupping->n_no_rings > 0
          ? N_ ("Laminations whose rings are not known count as flat. Shrinkage about the pith, "
                "free of stress; a thick slab lags behind the seasons.")
          : N_ ("Shrinkage about the pith, free of stress; a thick slab lags behind the "
                "seasons."));
  why->value = cupping->as_laid.cup;
  bs_working_add (why, N_ ("moisture of that season"), "", cupping->moisture_pct,
                  BS_QUANTITY_PERCENT,
                  "Wood Handbook FPL-GTR-190 (2010), equation 4-5 (from memory)");
  bs_working_add (why, N_ ("greatest cup of one lamination"), "c", cupping->greatest_board,
                  BS_QUANTITY_LENGTH, N_ ("geometry of docs/timber-model.md, computed"));
  bs_working_add (why, N_ ("highest to lowest spot, as laid"), "", cupping->as_laid.waves,
                  BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("highest to lowest spot, all hearts the same way"), "",
                  cupping->same_side.waves, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("highest to lowest spot, hearts up and down by turns"), "",
                  cupping->alternating.waves, BS_QUANTITY_LENGTH, NULL);
}
