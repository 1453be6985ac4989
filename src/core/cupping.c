/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/cupping.h"

#include "core/moisture.h"
#include "core/movement.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Where a spot of the board comes to rest. Wood shrinks towards the pith by the radial ratio; its
 * rings shorten by the tangential one, which closes every angle about the pith by the ratio of the
 * two. A turn of the whole board does not matter, so angles are taken from the axis that points
 * away from the pith. */
static BsCupSpot
move_spot (double y, double z, double radial, double tangential)
{
  double distance = hypot (y, z) * (1.0 + radial);
  double angle = atan2 (y, z) * (1.0 + tangential) / (1.0 + radial);

  return (BsCupSpot){ distance * sin (angle), distance * cos (angle) };
}

/* Source: docs/timber-model.md, Cup, equation (1). */
double
bs_cupping_board (double width, double pith_y, double pith_z, double radial, double tangential)
{
  double away = fabs (pith_z); /* as if the pith lay below */
  BsCupSpot left = move_spot (-width / 2.0 - pith_y, away, radial, tangential);
  BsCupSpot middle = move_spot (-pith_y, away, radial, tangential);
  BsCupSpot right = move_spot (width / 2.0 - pith_y, away, radial, tangential);
  double dy = right.y - left.y, dz = right.z - left.z;
  double above = ((middle.z - left.z) * dy - (middle.y - left.y) * dz) / sqrt (dy * dy + dz * dz);

  return pith_z > 0.0 ? -above : above;
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

/* Whether a lamination lies as it does (1) or the other way up (-1). Hearts down count as the first
 * way. */
static double
find_side (const BsPlaced *placed, guint place, BsCupLayup layup)
{
  double heart = placed->pith_z > 0.0 ? -1.0 : 1.0;

  if (layup == BS_CUP_AS_LAID)
    return 1.0;
  return layup == BS_CUP_ALTERNATING && place % 2 == 1 ? -heart : heart;
}

static double
find_middle_moisture (const BsStack *stack)
{
  double dry, damp;

  bs_moisture_seasons (&stack->plan->slab, &dry, &damp);
  return (dry + damp) / 2.0;
}

/* Heights over the line from the first spot to the last. */
static void
level (GArray *profile)
{
  const BsCupSpot last = g_array_index (profile, BsCupSpot, profile->len - 1);

  for (guint i = 0; i < profile->len; i++)
    {
      BsCupSpot *spot = &g_array_index (profile, BsCupSpot, i);
      spot->z -= last.z * spot->y / last.y;
    }
}

/* Laminations glued edge to edge go on with the slope of the one before, so the slab is a row of
 * arcs. */
GArray *
bs_cupping_profile (const BsStack *stack, double to_pct, BsCupLayup layup)
{
  const double glued = find_middle_moisture (stack);
  GArray *profile = g_array_sized_new (FALSE, TRUE, sizeof (BsCupSpot), 2 * stack->n + 1);
  BsCupSpot from = { 0.0, 0.0 };
  double slope = 0.0;

  g_array_append_val (profile, from);
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double cup = find_side (placed, i, layup) * find_board_cup (placed, glued, to_pct);
      double turn = -8.0 * cup / placed->thickness;

      for (guint half = 1; half <= 2; half++)
        {
          double along = half / 2.0 * placed->thickness;
          BsCupSpot spot = { from.y + along, from.z + along * (slope + turn * half / 4.0) };
          g_array_append_val (profile, spot);
        }
      from = g_array_index (profile, BsCupSpot, profile->len - 1);
      slope += turn;
    }
  if (stack->n > 0)
    level (profile);
  return profile;
}

static BsCup
measure (const BsStack *stack, double to_pct, BsCupLayup layup)
{
  g_autoptr (GArray) profile = bs_cupping_profile (stack, to_pct, layup);
  double highest = 0.0, lowest = 0.0;

  for (guint i = 0; i < profile->len; i++)
    {
      double z = g_array_index (profile, BsCupSpot, i).z;

      if (isnan (z))
        return (BsCup){ NAN, NAN };
      highest = fmax (highest, z);
      lowest = fmin (lowest, z);
    }
  return (BsCup){ .cup = highest >= -lowest ? highest : lowest, .waves = highest - lowest };
}

static BsCupping
find_cupping (const BsStack *stack, double to_pct)
{
  const double glued = find_middle_moisture (stack);
  BsCupping self = { .is_on_flat = TRUE, .moisture_pct = to_pct };

  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double cup = find_board_cup (placed, glued, to_pct);

      self.n_no_rings += isnan (placed->pith_y) || isnan (placed->pith_z) ? 1 : 0;
      if (fabs (cup) > fabs (self.greatest_board))
        self.greatest_board = cup;
    }
  self.as_laid = measure (stack, to_pct, BS_CUP_AS_LAID);
  self.same_side = measure (stack, to_pct, BS_CUP_SAME_SIDE);
  self.alternating = measure (stack, to_pct, BS_CUP_ALTERNATING);
  return self;
}

void
bs_cupping_slab (const BsStack *stack, double dry_pct, double damp_pct, BsCupping *cupping)
{
  *cupping = (BsCupping){ .moisture_pct = NAN };
  if (stack->plan->slab.layup != BS_LAYUP_ON_FLAT || stack->n == 0)
    return;
  *cupping = find_cupping (stack, dry_pct);

  BsCupping damp = find_cupping (stack, damp_pct);
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
