/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/wood-compare.h"

#include "core/cost.h"
#include "core/mass.h"
#include "core/moisture.h"
#include "core/movement.h"

#include <math.h>

/* Rough lumber over finished slab where no boards tell. */
#define GROSS_PER_NET 2.0

/* Above this a hand plane is hard work. */
#define VERY_HARD_N 6500.0

static double
find_ring_cos2 (const BsStack *stack)
{
  double sum = 0.0, width = 0.0;

  for (guint i = 0; i < stack->n; i++)
    {
      double cos2 = bs_movement_ring_cos2_y (&stack->placed[i]);
      if (isnan (cos2))
        return NAN;
      sum += stack->placed[i].thickness * cos2;
      width += stack->placed[i].thickness;
    }
  return width > 0.0 ? sum / width : NAN;
}

BsWoodWish
bs_wood_wish_of (const BsStack *stack)
{
  const BsSlab *slab = &stack->plan->slab;
  BsWoodWish self = {
    .length = slab->length,
    .width = slab->width,
    .thickness = slab->thickness,
    .ring_cos2 = find_ring_cos2 (stack),
    .hardness_low_n = slab->hardness_low_n,
    .hardness_high_n = slab->hardness_high_n,
    .is_hardness_usual = isnan (slab->hardness_low_n) && isnan (slab->hardness_high_n),
    .limits = slab->wood_limits,
  };
  BsCost cost;

  if (self.is_hardness_usual)
    {
      self.hardness_low_n = BS_HARDNESS_LOW_N;
      self.hardness_high_n = BS_HARDNESS_HIGH_N;
    }
  bs_moisture_seasons (slab, &self.dry_pct, &self.damp_pct);
  bs_cost (stack, slab->thickness, 0.0, &cost);
  self.gross
      = stack->n > 0 ? cost.gross : GROSS_PER_NET * slab->length * slab->width * slab->thickness;
  return self;
}

double
bs_wood_thickest_lumber (const BsPlan *plan, const char *wood)
{
  double thickest = NAN;

  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsBoard *board = plan->boards->pdata[i];
      if (g_strcmp0 (board->wood, wood) == 0)
        thickest = fmax (thickest, board->thickness); /* the number, of a number and NAN */
    }
  for (guint i = 0; i < plan->offers->len; i++)
    {
      const BsOffer *offer = plan->offers->pdata[i];
      if (g_strcmp0 (offer->wood, wood) == 0)
        thickest = fmax (thickest, offer->thickness);
    }
  return thickest;
}

double
bs_wood_hardness_estimate (double sg_12, gboolean is_hardwood)
{
  return is_hardwood ? 15300.0 * pow (sg_12, 2.09) : 8590.0 * pow (sg_12, 1.49);
}

static BsPlaning
judge_planing (double hardness_n)
{
  if (isnan (hardness_n))
    return BS_PLANING_UNKNOWN;
  if (hardness_n <= BS_HARDNESS_LOW_N)
    return BS_PLANING_LIGHT;
  if (hardness_n <= BS_HARDNESS_HIGH_N)
    return BS_PLANING_MODERATE;
  return hardness_n <= VERY_HARD_N ? BS_PLANING_HARD : BS_PLANING_VERY_HARD;
}

/* Over the year, from the driest to the dampest; the slab is as wide as wanted in the middle of the
 * two, which makes no difference that could be measured. */
static double
find_movement (const BsWood *wood, const BsWoodWish *wish, double cos2)
{
  BsSwelling swelling = bs_movement_at (wood, cos2);

  return wish->width * bs_movement_ratio (&swelling, wish->dry_pct, wish->damp_pct);
}

/* Comparisons with NAN are false, so that what is not known or not asked is no reason. */
static BsUnfit
find_reasons (const BsWoodCard *card, const BsWoodWish *wish)
{
  BsUnfit unfit = 0;

  if (card->hardness_n < wish->hardness_low_n)
    unfit |= BS_UNFIT_SOFT;
  if (card->hardness_n > wish->hardness_high_n)
    unfit |= BS_UNFIT_HARD;
  if (isnan (card->hardness_n))
    unfit |= BS_UNFIT_HARDNESS_UNKNOWN;
  if (card->slab_kg > wish->limits.max_kg)
    unfit |= BS_UNFIT_HEAVY;
  if (card->movement > wish->limits.max_movement)
    unfit |= BS_UNFIT_MOVES;
  if (card->cost_minor > wish->limits.max_cost_minor)
    unfit |= BS_UNFIT_DEAR;
  if (card->wood->bond == BS_BOND_DIFFICULT && !wish->limits.may_bond_difficult)
    unfit |= BS_UNFIT_BOND;
  if (card->thickest < wish->limits.rough_thickness)
    unfit |= BS_UNFIT_THIN;
  return unfit;
}

BsWoodCard
bs_wood_compare (const BsWood *wood, const BsWoodWish *wish, double thickest)
{
  gboolean has_rings = !isnan (wish->ring_cos2);
  BsWoodCard self = {
    .wood = wood,
    .hardness_n = wood->side_hardness_n,
    .density = bs_moisture_density (wood->sg_12, (wish->dry_pct + wish->damp_pct) / 2.0),
    .moe_mpa = wood->moe_mpa,
    .movement = find_movement (wood, wish, has_rings ? wish->ring_cos2 : 0.5),
    .movement_low = find_movement (wood, wish, has_rings ? wish->ring_cos2 : 1.0),
    .movement_high = find_movement (wood, wish, has_rings ? wish->ring_cos2 : 0.0),
    .cost_minor = wish->gross * BS_M3_PER_MM3 * wood->price_minor_per_m3,
    .thickest = thickest,
  };
  double inertia = wish->width * pow (wish->thickness, 3.0) / 12.0;

  if (isnan (self.hardness_n))
    {
      self.hardness_n = bs_wood_hardness_estimate (wood->sg_12, wood->is_hardwood);
      self.is_hardness_estimated = !isnan (self.hardness_n);
    }
  self.slab_kg = self.density * wish->length * wish->width * wish->thickness * BS_M3_PER_MM3;
  self.sag_per_kn = BS_WOOD_SAG_LOAD_N * pow (wish->length, 3.0) / (48.0 * wood->moe_mpa * inertia);
  self.planing = judge_planing (self.hardness_n);
  self.unfit = find_reasons (&self, wish);
  return self;
}
