/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/mass.h"

#include "core/lifting.h"
#include "core/moisture.h"

#include <math.h>

#define M2_PER_MM2 1e-6
#define KG_PER_G 1e-3

double
bs_mass_placed (const BsPlaced *placed, double height, double moisture_pct)
{
  double sg = placed->wood != NULL ? placed->wood->sg_12 : NAN;
  double own = placed->lamination->moisture_pct;
  double density = bs_moisture_density (sg, isnan (own) ? moisture_pct : own);

  return density * placed->length * placed->thickness * height * BS_M3_PER_MM3;
}

double
bs_mass_slab (const BsStack *stack, double thickness, double moisture_pct)
{
  double mass = stack->n > 0 ? 0.0 : NAN;

  for (guint i = 0; i < stack->n; i++)
    mass += bs_mass_placed (&stack->placed[i], thickness, moisture_pct);
  return mass;
}

double
bs_mass_glue_area (const BsStack *stack)
{
  double area = 0.0;

  for (guint i = 0; i + 1 < stack->n; i++)
    area += bs_stack_glue_area (stack, i);
  return area;
}

double
bs_mass_glue (const BsStack *stack)
{
  return bs_mass_glue_area (stack) * M2_PER_MM2 * stack->plan->adhesive.spread_g_per_m2 * KG_PER_G;
}

double
bs_mass_most_lifted (const BsShop *shop)
{
  if (!isnan (shop->max_lift_kg))
    return shop->max_lift_kg;
  return bs_lift_team (BS_LIFT_CONSTANT_KG, shop->people);
}
