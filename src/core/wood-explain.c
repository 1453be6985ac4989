/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/wood-compare.h"

#include "core/movement.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SET_BY_YOU N_ ("set by you")

static void
add_sizes (const BsWoodWish *wish, BsWorking *why)
{
  bs_working_add (why, N_ ("length of the slab"), "L", wish->length, BS_QUANTITY_LENGTH,
                  SET_BY_YOU);
  bs_working_add (why, N_ ("width of the slab"), "W", wish->width, BS_QUANTITY_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("thickness of the slab"), "T", wish->thickness, BS_QUANTITY_LENGTH,
                  SET_BY_YOU);
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
  source
      = wish->is_hardness_usual ? N_ ("no range is asked; common practice, no source") : SET_BY_YOU;
  if (!isnan (wish->hardness_low_n))
    bs_working_add (why, N_ ("range wanted, from"), "", wish->hardness_low_n, BS_QUANTITY_FORCE,
                    source);
  if (!isnan (wish->hardness_high_n))
    bs_working_add (why, N_ ("range wanted, to"), "", wish->hardness_high_n, BS_QUANTITY_FORCE,
                    source);
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
  bs_working_add (why, N_ ("width of the slab"), "W", wish->width, BS_QUANTITY_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("mean coefficient of movement across, for each %"), "C",
                  card->movement / wish->width / (wish->damp_pct - wish->dry_pct),
                  BS_QUANTITY_RATIO,
                  N_ ("Wood Handbook FPL-GTR-190 (2010), equation 13-2 from 6 to 14 %, 13-3 "
                      "outside (13-3 from memory)"));
  bs_working_add (why, N_ ("moisture at the dampest"), "M₂", wish->damp_pct, BS_QUANTITY_PERCENT,
                  "Wood Handbook FPL-GTR-190 (2010), equation 4-5 (from memory)");
  bs_working_add (why, N_ ("moisture at the driest"), "M₁", wish->dry_pct, BS_QUANTITY_PERCENT,
                  "Wood Handbook FPL-GTR-190 (2010), equation 4-5 (from memory)");
  bs_working_add (why, N_ ("coefficient in the wood’s table, at these rings"), "",
                  swelling.coefficient, BS_QUANTITY_RATIO, card->wood->source);
}

void
bs_wood_explain_mass (const BsWoodCard *card, const BsWoodWish *wish, BsWorking *why)
{
  bs_working_init (why, N_ ("Weight of this slab in this wood"),
                   isnan (card->slab_kg)
                       ? N_ ("Its specific gravity is not in the table.")
                       : N_ ("The finished slab at the year’s middle moisture, glue not counted."),
                   "m = ρ L W T", BS_QUANTITY_MASS,
                   N_ ("Boards of one wood differ in density by a tenth and more."));
  why->value = card->slab_kg;
  add_sizes (wish, why);
  bs_working_add (why, N_ ("density at that moisture"), "ρ", card->density, BS_QUANTITY_DENSITY,
                  N_ ("Wood Handbook FPL-GTR-190 (2010), chapter 4 (from memory)"));
  bs_working_add (why, N_ ("year’s middle moisture"), "", (wish->dry_pct + wish->damp_pct) / 2.0,
                  BS_QUANTITY_PERCENT, NULL);
  bs_working_add (why, N_ ("specific gravity, oven-dry mass and volume at 12 %"), "",
                  card->wood->sg_12, BS_QUANTITY_RATIO, card->wood->source);
}

void
bs_wood_explain_sag (const BsWoodCard *card, const BsWoodWish *wish, BsWorking *why)
{
  bs_working_init (
      why, N_ ("Sag of this slab in this wood"),
      isnan (card->sag_per_kn)
          ? N_ ("Its modulus of elasticity is not in the table; give a figure of your "
                "own.")
          : N_ ("How far its middle goes down under a load there while it lies on its "
                "two ends, its own weight not counted."),
      "s = F L³ / (4 E W T³)", BS_QUANTITY_LENGTH,
      N_ ("Boards of one wood differ in stiffness by a fifth and more; shear and creep "
          "are left out."));
  why->value = card->sag_per_kn;
  bs_working_add (why, N_ ("load in the middle"), "F", BS_WOOD_SAG_LOAD_N, BS_QUANTITY_FORCE,
                  N_ ("a measure chosen here"));
  add_sizes (wish, why);
  bs_working_add (why, N_ ("modulus of elasticity along the grain, in bending"), "E", card->moe_mpa,
                  BS_QUANTITY_PRESSURE, card->wood->source);
}

void
bs_wood_explain_cost (const BsWoodCard *card, const BsWoodWish *wish, const char *currency,
                      BsWorking *why)
{
  bs_working_init (
      why, N_ ("Rough cost of this slab in this wood"),
      isnan (card->cost_minor)
          ? N_ ("What this wood costs is not known; give the price that your yard asks.")
          : N_ ("The rough lumber that the slab takes, at the price of this wood."),
      "K = G k", BS_QUANTITY_MONEY,
      N_ ("It is as good as the price. The lumber is what the laminations’ boards come "
          "to; before there are any, twice the slab: common practice, no source."));
  why->currency = currency;
  why->value = card->cost_minor;
  bs_working_add (why, N_ ("rough lumber"), "G", wish->gross, BS_QUANTITY_VOLUME, NULL);
  bs_working_add (why, N_ ("price of a cubic metre"), "k", card->wood->price_minor_per_m3,
                  BS_QUANTITY_MONEY, SET_BY_YOU);
}
