/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/explain.h"

#include "core/assembly.h"
#include "core/clamping.h"
#include "core/flatten-explain.h"
#include "core/moisture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Least over mean pressure on the first glue line when clamps stand as far apart as the 45 degree
 * rule allows, over the stacks computed in docs/models.md, Hand rules for clamps. */
#define LEAST_OF_MEAN_FROM 0.56
#define LEAST_OF_MEAN_TO 0.89

/* Coefficient of variation of specific gravity within a species: Wood Handbook (FPL-GTR-190, 2010),
 * table 5-6; from memory. */
#define SG_VARIATION 0.10

#define SET_BY_YOU N_ ("set by you")
#define PLANNING_RULE                                                                              \
  N_ ("planning rule of this program, no single source; a data sheet comes first")
#define DENSITY_SOURCE                                                                             \
  "Selbo 1975, Adhesive bonding of wood, USDA Technical Bulletin 1512 (from memory)"
#define HANDBOOK_EMC "Wood Handbook FPL-GTR-190 (2010), equation 4-5 (from memory)"
#define HANDBOOK_4 "Wood Handbook FPL-GTR-190 (2010), chapter 4 (from memory)"

static double
find_densest (const BsStack *stack)
{
  double densest = NAN;

  for (guint i = 0; i < stack->n; i++)
    if (stack->placed[i].wood != NULL)
      densest = fmax (densest, stack->placed[i].wood->sg_12);
  return densest;
}

static void
explain_force (BsResults *self)
{
  BsWorking *why = &self->why_force;
  const BsAdhesive *adhesive = &self->stack->plan->adhesive;
  BsPressureRange range = bs_clamping_pressure (self->stack);

  if (isnan (self->clamps.force_n))
    {
      bs_working_init (why, N_ ("Pressing force"),
                       self->stack->n < 2
                           ? N_ ("There is no glue line yet: it takes two laminations.")
                           : N_ ("No wood in the slab has a specific gravity in the table."),
                       "F = p A", BS_QUANTITY_FORCE, N_ ("Nothing to go by."));
      return;
    }
  bs_working_init (
      why, N_ ("Pressing force"),
      N_ ("What presses the largest glue line with the least pressure recommended for this wood "
          "and "
          "this adhesive. All clamps together carry it, whatever the number of laminations. Force "
          "spent "
          "on pulling bowed laminations straight is not counted."),
      "F = p A", BS_QUANTITY_FORCE,
      N_ ("The recommended pressure is a range; never above half of what the wood bears across the "
          "grain. Hand clamps often cannot reach it."));
  why->value = self->clamps.force_n;
  why->low = self->clamps.force_n;
  why->high = range.high * self->clamps.area;

  bs_working_add (why, N_ ("recommended pressure for this density, from"), "p",
                  self->clamps.pressure_mpa, BS_QUANTITY_PRESSURE, DENSITY_SOURCE);
  bs_working_add (why, N_ ("area of the largest glue line"), "A", self->clamps.area,
                  BS_QUANTITY_AREA, NULL);
  bs_working_add (why, N_ ("recommended pressure for this density, to"), "", range.high,
                  BS_QUANTITY_PRESSURE, DENSITY_SOURCE);
  bs_working_add (why, N_ ("range of the adhesive, from"), "", adhesive->min_pressure_mpa,
                  BS_QUANTITY_PRESSURE, adhesive->source);
  bs_working_add (why, N_ ("range of the adhesive, to"), "", adhesive->max_pressure_mpa,
                  BS_QUANTITY_PRESSURE, adhesive->source);
  bs_working_add (why, N_ ("specific gravity of the densest wood"), "G", find_densest (self->stack),
                  BS_QUANTITY_RATIO, N_ ("the plan’s table of woods"));
  bs_working_add (why, N_ ("mean pressure that the clamps owned can give"), "",
                  self->clamps.reached_mpa, BS_QUANTITY_PRESSURE, NULL);
}

static void
explain_clamps (BsResults *self)
{
  BsWorking *why = &self->why_clamps;
  const BsClampRule *rule = &self->clamps;
  const BsStack *stack = self->stack;

  if (isnan (rule->spacing) || isnan (rule->force_n))
    {
      bs_working_init (why, N_ ("Clamps by the hand rule"),
                       isnan (rule->force_n)
                           ? N_ ("The pressing force is not known yet.")
                           : N_ ("Say first which clamps you own: their force, reach and heads."),
                       "n = max(F / F₁, L / s, 2)", BS_QUANTITY_COUNT, N_ ("Nothing to go by."));
      return;
    }
  bs_working_init (
      why, N_ ("Clamps by the hand rule"),
      N_ ("A rule of thumb: enough clamps for the force, and near enough for the pressure to "
          "spread "
          "from each head at 45° through caul and outer lamination to the first glue line. Put "
          "every other one above the slab, the rest below; the first and last half a spacing from "
          "the ends."),
      "n = max(F / F₁, L / s, 2),  s = b + 2 (t + c)", BS_QUANTITY_COUNT,
      N_ ("The rule is hopeful: at this spacing the least pressure on the first glue line is 0.56 "
          "to "
          "0.89 of the mean, and less deeper in. The upper figure makes up for 0.56."));
  why->value = rule->n;
  why->low = rule->n;
  why->high = fmax (rule->n, ceil (rule->n_by_force / LEAST_OF_MEAN_FROM));

  bs_working_add (why, N_ ("pressing force"), "F", rule->force_n, BS_QUANTITY_FORCE, NULL);
  bs_working_add (why, N_ ("clamps that come to the force, the strongest first"), "F / F₁",
                  rule->n_by_force, BS_QUANTITY_COUNT, SET_BY_YOU);
  bs_working_add (why, N_ ("length of the slab"), "L", stack->length, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("narrowest clamp head"), "b", rule->head_width, BS_QUANTITY_LENGTH,
                  SET_BY_YOU);
  bs_working_add (why, N_ ("thinner of the two outer laminations"), "t",
                  fmin (stack->placed[0].thickness, stack->placed[stack->n - 1].thickness),
                  BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("thickness of the cauls counted on"), "c", rule->caul_thickness,
                  BS_QUANTITY_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("greatest spacing"), "s", rule->spacing, BS_QUANTITY_LENGTH,
                  N_ ("45 degree rule of woodworking, textbook rule (from memory)"));
  bs_working_add (why, N_ ("clamps that cover the length"), "L / s", rule->n_by_spacing,
                  BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("least over mean pressure at that spacing, from"), "",
                  LEAST_OF_MEAN_FROM, BS_QUANTITY_RATIO,
                  N_ ("computed by plane elasticity with contact: docs/models.md"));
  bs_working_add (why, N_ ("least over mean pressure at that spacing, to"), "", LEAST_OF_MEAN_TO,
                  BS_QUANTITY_RATIO,
                  N_ ("computed by plane elasticity with contact: docs/models.md"));
  bs_working_add (why, N_ ("clamps owned that reach"), "", rule->n_fitting, BS_QUANTITY_COUNT,
                  SET_BY_YOU);
}

static void
explain_time (BsResults *self)
{
  BsWorking *why = &self->why_time;
  const BsAssembly *assembly = &self->assembly;
  const BsAdhesive *adhesive = &self->stack->plan->adhesive;
  const BsShop *shop = &self->stack->plan->shop;

  bs_working_init (
      why, N_ ("Assembly time"),
      assembly->n_joints == 0
          ? N_ ("There is no glue line yet: it takes two laminations.")
          : N_ (
              "From the first glue spread to the last clamp tight, spreading and placing in turn: "
              "the joint that is spread first waits all of it."),
      "T = N (j + p + q) + (r A + m c) / w", BS_QUANTITY_TIME,
      N_ ("It depends on your hands: time a few joints of your own and set them in the shop."));
  if (assembly->n_joints == 0)
    return;
  why->value = assembly->total_s;

  bs_working_add (why, N_ ("glue lines in this press"), "N", assembly->n_joints, BS_QUANTITY_COUNT,
                  NULL);
  bs_working_add (why, N_ ("area of those glue lines"), "A", assembly->area, BS_QUANTITY_AREA,
                  NULL);
  bs_working_add (why, N_ ("fixed part of a joint"), "j", shop->times.joint_s, BS_QUANTITY_TIME,
                  SET_BY_YOU);
  bs_working_add (why, N_ ("spreading"), "r", shop->times.spread_s_per_m2, BS_QUANTITY_SPREAD_TIME,
                  SET_BY_YOU);
  bs_working_add (why, N_ ("placing a lamination"), "p", shop->times.place_s, BS_QUANTITY_TIME,
                  SET_BY_YOU);
  bs_working_add (why, N_ ("lining it up"), "q", shop->times.align_s, BS_QUANTITY_TIME, SET_BY_YOU);
  bs_working_add (why, N_ ("clamps"), "m", self->set_clamps->len, BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("tightening a clamp"), "c", shop->times.tighten_s, BS_QUANTITY_TIME,
                  SET_BY_YOU);
  bs_working_add (why, N_ ("people"), "w", shop->people, BS_QUANTITY_COUNT, SET_BY_YOU);
  bs_working_add (why, N_ ("time allowed at 20 °C"), "", adhesive->total_s, BS_QUANTITY_TIME,
                  adhesive->source);
  bs_working_add (why, N_ ("time allowed in this shop"), "", assembly->limit_s, BS_QUANTITY_TIME,
                  PLANNING_RULE);
  bs_working_add (why, N_ ("temperature of the shop"), "", shop->climate.temperature_c,
                  BS_QUANTITY_TEMPERATURE, SET_BY_YOU);
}

static double
find_volume (const BsStack *stack, double thickness)
{
  double volume = 0.0;

  for (guint i = 0; i < stack->n; i++)
    volume += stack->placed[i].length * stack->placed[i].thickness * thickness;
  return volume;
}

static void
explain_mass (BsResults *self)
{
  BsWorking *why = &self->why_mass;

  if (isnan (self->mass_kg))
    {
      bs_working_init (why, N_ ("Mass of the slab"),
                       self->stack->n == 0
                           ? N_ ("There are no laminations in the slab yet.")
                           : N_ ("The specific gravity of a wood in the slab is not known."),
                       "m = ρ V", BS_QUANTITY_MASS, N_ ("Nothing to go by."));
      return;
    }
  bs_working_init (why, N_ ("Mass of the slab"),
                   N_ ("Flattened and not yet trimmed to length; the adhesive is not counted. A "
                       "lamination of unknown moisture counts as wood that has come to rest where "
                       "the slab will live."),
                   "m = ρ V,  ρ = 1000 G (1 + M / 100)", BS_QUANTITY_MASS,
                   N_ ("Trees of one kind differ: the specific gravity by about a tenth either way "
                       "(Wood Handbook, table 5-6, from memory)."));
  why->value = self->mass_kg;
  why->low = self->mass_kg * (1.0 - SG_VARIATION);
  why->high = self->mass_kg * (1.0 + SG_VARIATION);

  double volume = find_volume (self->stack, self->flatten.thickness);
  bs_working_add (why, N_ ("volume"), "V", volume, BS_QUANTITY_VOLUME, NULL);
  bs_working_add (why, N_ ("mean density at the moisture of the laminations"), "ρ",
                  volume > 0.0 ? self->mass_kg / (volume * 1e-9) : NAN, BS_QUANTITY_DENSITY,
                  HANDBOOK_4);
  bs_working_add (why, N_ ("specific gravity of the densest wood"), "G", find_densest (self->stack),
                  BS_QUANTITY_RATIO, N_ ("the plan’s table of woods"));
  bs_working_add (why, N_ ("moisture where it will live, driest"), "", self->emc_low_pct,
                  BS_QUANTITY_PERCENT, HANDBOOK_EMC);
  bs_working_add (why, N_ ("moisture where it will live, dampest"), "", self->emc_high_pct,
                  BS_QUANTITY_PERCENT, HANDBOOK_EMC);
}

static void
explain_moisture (BsResults *self)
{
  const BsSlab *slab = &self->stack->plan->slab;
  BsWorking *why = &self->why_moisture;

  bs_working_init (
      why, N_ ("Moisture where it will live"),
      N_ ("What wood comes to in the air of the two seasons when it stays long enough, "
          "and the middle between them. Glue the slab at about that."),
      "M = (M₁ + M₂) / 2,  M₁ = EMC (T₁, h₁),  M₂ = EMC (T₂, h₂)", BS_QUANTITY_PERCENT,
      N_ ("From the driest to the dampest; wood and its past shift it by about 1 %."));
  why->value = (self->emc_low_pct + self->emc_high_pct) / 2.0;
  why->low = self->emc_low_pct;
  why->high = self->emc_high_pct;
  bs_working_add (why, N_ ("temperature in the dry season"), "T₁", slab->dry_season.temperature_c,
                  BS_QUANTITY_TEMPERATURE, SET_BY_YOU);
  bs_working_add (why, N_ ("humidity in the dry season"), "h₁", slab->dry_season.humidity_pct,
                  BS_QUANTITY_PERCENT, SET_BY_YOU);
  bs_working_add (why, N_ ("temperature in the damp season"), "T₂", slab->damp_season.temperature_c,
                  BS_QUANTITY_TEMPERATURE, SET_BY_YOU);
  bs_working_add (why, N_ ("humidity in the damp season"), "h₂", slab->damp_season.humidity_pct,
                  BS_QUANTITY_PERCENT, SET_BY_YOU);
  bs_working_add (why, N_ ("moisture of wood in the dry season"), "M₁",
                  bs_moisture_emc (slab->dry_season.temperature_c, slab->dry_season.humidity_pct),
                  BS_QUANTITY_PERCENT, HANDBOOK_EMC);
  bs_working_add (why, N_ ("moisture of wood in the damp season"), "M₂",
                  bs_moisture_emc (slab->damp_season.temperature_c, slab->damp_season.humidity_pct),
                  BS_QUANTITY_PERCENT, HANDBOOK_EMC);
}

void
bs_explain (BsResults *results)
{
  bs_flatten_explain (&results->flatten, results->stack->plan->slab.flatten_work, results->stack,
                      &results->why_thickness);
  explain_force (results);
  explain_clamps (results);
  explain_time (results);
  explain_mass (results);
  explain_moisture (results);
}
