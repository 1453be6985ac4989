/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/movement.h"

#include "core/moisture.h"

#include <math.h>

/* Where the handbook's linear equation holds, %. */
#define LINEAR_FROM 6.0
#define LINEAR_TO 14.0

/* The moisture to whose size its coefficients refer, %. */
#define COEFFICIENT_AT 10.0

static gboolean
is_linear_at (double moisture_pct)
{
  return moisture_pct >= LINEAR_FROM && moisture_pct <= LINEAR_TO;
}

gboolean
bs_movement_is_linear (const BsMovement *movement)
{
  return is_linear_at (movement->dry_pct) && is_linear_at (movement->damp_pct)
         && is_linear_at (movement->glued_pct);
}

double
bs_movement_within (double coefficient, double from_pct, double to_pct)
{
  return coefficient * (to_pct - from_pct);
}

static double
cap_at_saturation (double moisture_pct)
{
  return moisture_pct > BS_FIBRE_SATURATION_PCT ? BS_FIBRE_SATURATION_PCT : moisture_pct;
}

double
bs_movement_overall (double shrink_pct, double from_pct, double to_pct)
{
  double from = cap_at_saturation (from_pct);
  double to = cap_at_saturation (to_pct);

  /* The handbook divides by 3000 / S - 30 + M; multiplied by S, so that 0 is allowed. */
  return shrink_pct * (to - from)
         / (100.0 * BS_FIBRE_SATURATION_PCT + shrink_pct * (from - BS_FIBRE_SATURATION_PCT));
}

/* The two equations agree on the first point above 10 %. Source: docs/timber-model.md,
 * Movement, equation (3). */
static BsSwelling
complete (double coefficient, double shrink_pct)
{
  BsSwelling self = { coefficient, shrink_pct };

  if (isnan (coefficient))
    self.coefficient = bs_movement_overall (shrink_pct, COEFFICIENT_AT, COEFFICIENT_AT + 1.0);
  if (isnan (shrink_pct))
    self.shrink_pct = 100.0 * BS_FIBRE_SATURATION_PCT * coefficient
                      / (1.0 + (BS_FIBRE_SATURATION_PCT - COEFFICIENT_AT) * coefficient);
  return self;
}

double
bs_movement_ratio (const BsSwelling *swelling, double from_pct, double to_pct)
{
  BsSwelling both = complete (swelling->coefficient, swelling->shrink_pct);
  double enter = CLAMP (from_pct, LINEAR_FROM, LINEAR_TO);
  double leave = CLAMP (to_pct, LINEAR_FROM, LINEAR_TO);

  /* Up to the linear range, through it, and on. */
  return (1.0 + bs_movement_overall (both.shrink_pct, from_pct, enter))
             * (1.0 + bs_movement_within (both.coefficient, enter, leave))
             * (1.0 + bs_movement_overall (both.shrink_pct, leave, to_pct))
         - 1.0;
}

BsSwelling
bs_movement_radial (const BsWood *wood)
{
  return complete (wood->coef_radial, wood->shrink_radial_pct);
}

BsSwelling
bs_movement_tangential (const BsWood *wood)
{
  return complete (wood->coef_tangential, wood->shrink_tangential_pct);
}

/* Turning of a strain without shear. Source: docs/timber-model.md, Movement, equation (4). */
BsSwelling
bs_movement_at (const BsWood *wood, double cos2)
{
  BsSwelling radial = bs_movement_radial (wood);
  BsSwelling tangential = bs_movement_tangential (wood);
  double sin2 = 1.0 - cos2;

  return (BsSwelling){
    .coefficient = cos2 * radial.coefficient + sin2 * tangential.coefficient,
    .shrink_pct = cos2 * radial.shrink_pct + sin2 * tangential.shrink_pct,
  };
}

double
bs_movement_ring_cos2_y (const BsPlaced *placed)
{
  double height = (placed->height_left + placed->height_right) / 2.0;
  double sum = 0.0;

  if (isnan (placed->pith_y) || isnan (placed->pith_z))
    return NAN;
  for (int i = -1; i <= 1; i++)
    for (int j = -1; j <= 1; j++)
      {
        double y = i * placed->thickness / 3.0 - placed->pith_y;
        double z = j * height / 3.0 - placed->pith_z;
        double square = y * y + z * z;

        sum += square > 0.0 ? y * y / square : 0.5;
      }
  return sum / 9.0;
}

/* The direction to move in, and what stands for rings that are not known. */
typedef struct
{
  gboolean is_along_z;
  double unknown_cos2;
} Direction;

static const Direction along_y = { FALSE, 0.5 };
static const Direction along_z = { TRUE, 0.5 };

static double
move_lamination (const BsPlaced *placed, const Direction *direction, double glued_pct,
                 double to_pct)
{
  double own = placed->lamination->moisture_pct;
  double cos2 = bs_movement_ring_cos2_y (placed);
  BsSwelling swelling;

  if (placed->wood == NULL)
    return NAN;
  if (isnan (cos2))
    cos2 = direction->unknown_cos2;
  else if (direction->is_along_z)
    cos2 = 1.0 - cos2;
  swelling = bs_movement_at (placed->wood, cos2);
  return bs_movement_ratio (&swelling, isnan (own) ? glued_pct : own, to_pct);
}

double
bs_movement_lamination_y (const BsPlaced *placed, double glued_pct, double to_pct)
{
  return move_lamination (placed, &along_y, glued_pct, to_pct);
}

double
bs_movement_lamination_z (const BsPlaced *placed, double glued_pct, double to_pct)
{
  return move_lamination (placed, &along_z, glued_pct, to_pct);
}

/* What stands for a moisture that was not measured: the middle of the year. */
static double
find_middle_moisture (const BsStack *stack)
{
  double dry, damp;

  bs_moisture_seasons (&stack->plan->slab, &dry, &damp);
  return (dry + damp) / 2.0;
}

/* Laminations lie side by side along y, so what they move there adds up; along z the mean by width
 * is what a rule laid across the slab would find. */
static double
move_stack (const BsStack *stack, const Direction *direction, double to_pct)
{
  double glued = find_middle_moisture (stack);
  double sum = 0.0;

  for (guint i = 0; i < stack->n; i++)
    sum += stack->placed[i].thickness
           * move_lamination (&stack->placed[i], direction, glued, to_pct);
  return stack->n > 0 ? sum / stack->width : NAN;
}

double
bs_movement_across (const BsStack *stack, double to_pct)
{
  return move_stack (stack, &along_y, to_pct);
}

double
bs_movement_through (const BsStack *stack, double to_pct)
{
  return move_stack (stack, &along_z, to_pct);
}

static BsSeasons
find_seasons (const BsStack *stack, gboolean is_along_z, double size, double dry_pct,
              double damp_pct)
{
  const Direction middle = { is_along_z, 0.5 }, radial = { is_along_z, 1.0 },
                  tangential = { is_along_z, 0.0 };
  BsSeasons self = { .at_gluing = size };

  self.dry = size * (1.0 + move_stack (stack, &middle, dry_pct));
  self.damp = size * (1.0 + move_stack (stack, &middle, damp_pct));
  self.year = self.damp - self.dry;
  self.least
      = size * (move_stack (stack, &radial, damp_pct) - move_stack (stack, &radial, dry_pct));
  self.most
      = size
        * (move_stack (stack, &tangential, damp_pct) - move_stack (stack, &tangential, dry_pct));
  return self;
}

static void
find_step (const BsStack *stack, double thickness, double glued, double to_pct,
           BsMovement *movement)
{
  for (guint i = 0; i + 1 < stack->n; i++)
    {
      double step = thickness
                    * fabs (bs_movement_lamination_z (&stack->placed[i], glued, to_pct)
                            - bs_movement_lamination_z (&stack->placed[i + 1], glued, to_pct));
      if (step > movement->step)
        {
          movement->step = step;
          movement->step_place = (int)i;
        }
    }
}

void
bs_movement_slab (const BsStack *stack, double width, double thickness, BsMovement *movement)
{
  double middle = find_middle_moisture (stack);
  double moisture = 0.0;

  *movement = (BsMovement){ .step_place = -1 };
  bs_moisture_seasons (&stack->plan->slab, &movement->dry_pct, &movement->damp_pct);
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double own = placed->lamination->moisture_pct;

      moisture += placed->thickness * (isnan (own) ? middle : own);
      movement->n_no_rings += isnan (bs_movement_ring_cos2_y (placed)) ? 1 : 0;
    }
  movement->glued_pct = stack->n > 0 ? moisture / stack->width : NAN;
  movement->width = find_seasons (stack, FALSE, width, movement->dry_pct, movement->damp_pct);
  movement->thickness
      = find_seasons (stack, TRUE, thickness, movement->dry_pct, movement->damp_pct);
  find_step (stack, thickness, middle, movement->dry_pct, movement);
  find_step (stack, thickness, middle, movement->damp_pct, movement);
}

BsSlot
bs_movement_slot (const BsStack *stack, double distance, double screw, double clearance,
                  double driven_pct)
{
  double dry, damp;
  bs_moisture_seasons (&stack->plan->slab, &dry, &damp);

  double driven = 1.0 + bs_movement_across (stack, driven_pct);
  double least = (1.0 + bs_movement_across (stack, dry)) / driven;
  double most = (1.0 + bs_movement_across (stack, damp)) / driven;
  double towards = distance * (1.0 - least);
  double away = distance * (most - 1.0);

  /* A slab that is wetter than it ever will be again carries its screws one way only. */
  BsSlot self = {
    .distance = distance,
    .towards = towards < 0.0 ? 0.0 : towards,
    .away = away < 0.0 ? 0.0 : away,
  };
  self.length = screw + self.towards + self.away + 2.0 * clearance;
  self.middle = distance + (self.away - self.towards) / 2.0;
  return self;
}
