/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/wood-compare.h"

#include "core/cost.h"
#include "core/mass.h"
#include "core/moisture.h"
#include "core/movement.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Rough lumber over finished slab where no boards tell. */
#define GROSS_PER_NET 2.0

/* Above this a hand plane is hard work. */
#define VERY_HARD_N 6500.0

#define KILONEWTON 1000.0

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
    .hardness_low_n = isnan (slab->hardness_low_n) ? BS_HARDNESS_LOW_N : slab->hardness_low_n,
    .hardness_high_n = isnan (slab->hardness_high_n) ? BS_HARDNESS_HIGH_N : slab->hardness_high_n,
    .max_kg = NAN,
    .max_movement = NAN,
    .max_cost_minor = NAN,
    .rough_thickness = NAN,
  };
  BsCost cost;

  bs_moisture_seasons (slab, &self.dry_pct, &self.damp_pct);
  bs_cost (stack, slab->thickness, 0.0, &cost);
  self.gross
      = stack->n > 0 ? cost.gross : GROSS_PER_NET * slab->length * slab->width * slab->thickness;
  return self;
}

double
bs_wood_thickest_board (const BsPlan *plan, const char *wood)
{
  double thickest = NAN;

  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsBoard *board = plan->boards->pdata[i];
      if (g_strcmp0 (board->wood, wood) == 0)
        thickest = fmax (thickest, board->thickness); /* the number, of a number and NAN */
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
  if (card->slab_kg > wish->max_kg)
    unfit |= BS_UNFIT_HEAVY;
  if (card->movement > wish->max_movement)
    unfit |= BS_UNFIT_MOVES;
  if (card->cost_minor > wish->max_cost_minor)
    unfit |= BS_UNFIT_DEAR;
  if (card->wood->bond == BS_BOND_DIFFICULT && !wish->may_bond_difficult)
    unfit |= BS_UNFIT_BOND;
  if (card->thickest < wish->rough_thickness)
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
  self.sag_per_kn = KILONEWTON * pow (wish->length, 3.0) / (48.0 * wood->moe_mpa * inertia);
  self.planing = judge_planing (self.hardness_n);
  self.unfit = find_reasons (&self, wish);
  return self;
}

void
bs_wood_explain_hardness (const BsWoodCard *card, const BsWoodWish *wish, BsWorking *why)
{
  const char *source
      = card->is_hardness_estimated
            ? N_ ("estimated from the specific gravity: Wood Handbook FPL-GTR-190 (2010), table "
                  "5-11a (from memory)")
            : card->wood->source;

  bs_working_init (
      why, N_ ("Side hardness"),
      isnan (card->hardness_n)
          ? N_ ("Neither its hardness nor its specific gravity is in the table.")
          : N_ ("The force that presses a steel ball of 11.28 mm in by half. Softer wood dents and "
                "wants flattening often; harder wood is heavy to mill and to plane, and dents the "
                "work instead."),
      "", BS_QUANTITY_FORCE,
      card->is_hardness_estimated
          ? N_ ("An estimate: woods of one density differ in hardness by a fifth and more.")
          : N_ ("Boards of one wood differ by a fifth and more."));
  why->value = card->hardness_n;
  if (isnan (card->hardness_n))
    return;
  bs_working_add (why, N_ ("side hardness"), "", card->hardness_n, BS_QUANTITY_FORCE, source);
  bs_working_add (why, N_ ("range that suits the use, from"), "", wish->hardness_low_n,
                  BS_QUANTITY_FORCE, N_ ("common practice, no source, unless set by you"));
  bs_working_add (why, N_ ("range that suits the use, to"), "", wish->hardness_high_n,
                  BS_QUANTITY_FORCE, N_ ("common practice, no source, unless set by you"));
}

void
bs_wood_explain_movement (const BsWoodCard *card, const BsWoodWish *wish, BsWorking *why)
{
  gboolean has_rings = !isnan (wish->ring_cos2);
  BsSwelling swelling = bs_movement_at (card->wood, has_rings ? wish->ring_cos2 : 0.5);

  bs_working_init (
      why, N_ ("Movement of this slab in this wood"),
      isnan (card->movement)
          ? N_ ("How much this wood moves is not in the table.")
          : N_ ("How much wider the slab would be at its dampest than at its driest."),
      "ΔW = W C (M₂ − M₁)", BS_QUANTITY_LENGTH,
      has_rings ? N_ ("With rings as in the laminations on the slab. Boards of one wood differ.")
                : N_ ("From all rings square to the width to all rings along it."));
  why->value = card->movement;
  if (isnan (card->movement))
    return;
  why->low = fmin (card->movement_low, card->movement_high);
  why->high = fmax (card->movement_low, card->movement_high);
  bs_working_add (why, N_ ("width of the slab"), "W", wish->width, BS_QUANTITY_LENGTH,
                  N_ ("set by you"));
  bs_working_add (why, N_ ("mean coefficient of movement across, for each %"), "C",
                  card->movement / wish->width / (wish->damp_pct - wish->dry_pct),
                  BS_QUANTITY_RATIO,
                  N_ ("Wood Handbook FPL-GTR-190 (2010), equation 13-2 from 6 to 14 %, 13-3 "
                      "outside (13-3 from memory)"));
  bs_working_add (why, N_ ("moisture at the dampest"), "M₂", wish->damp_pct, BS_QUANTITY_PERCENT,
                  "Wood Handbook FPL-GTR-190 (2010), equation 4-5 (from memory)");
  bs_working_add (why, N_ ("moisture at the driest"), "M₁", wish->dry_pct, BS_QUANTITY_PERCENT,
                  "Wood Handbook FPL-GTR-190 (2010), equation 4-5 (from memory)");
  bs_working_add (why, N_ ("coefficient in the wood's table, at these rings"), "",
                  swelling.coefficient, BS_QUANTITY_RATIO, card->wood->source);
}
