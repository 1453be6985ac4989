/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/assembly.h"

#include "core/packs.h"

#include <math.h>

#define M2_PER_MM2 1e-6

/* Planning rules, stated by no single source: chosen here from what makers of adhesives say in
 * kind. */
#define DOUBLING_C 10.0     /* times double for each so many degrees colder */
#define REFERENCE_C 20.0    /* the figures of an adhesive hold here */
#define COLDEST_C 10.0      /* no further scaling below */
#define WARMEST_C 35.0      /* and above */
#define DRY_AIR_PCT 40.0    /* below: a waterborne adhesive skins over sooner */
#define DAMP_AIR_PCT 70.0   /* above: later; a moisture-curing one sets sooner */
#define MOIST_WOOD_PCT 10.0 /* above: a moisture-curing adhesive sets sooner */
#define SOONER 0.7
#define LATER 1.2

static double
scale_by_temperature (double temperature_c)
{
  double bounded = CLAMP (temperature_c, COLDEST_C, WARMEST_C);
  return exp2 ((REFERENCE_C - bounded) / DOUBLING_C);
}

static double
scale_by_moisture (const BsAdhesive *adhesive, double humidity_pct, double moisture_pct)
{
  if (adhesive->is_moisture_curing)
    return humidity_pct > DAMP_AIR_PCT || moisture_pct > MOIST_WOOD_PCT ? SOONER : 1.0;
  if (adhesive->is_waterborne && humidity_pct < DRY_AIR_PCT)
    return SOONER;
  if (adhesive->is_waterborne && humidity_pct > DAMP_AIR_PCT)
    return LATER;
  return 1.0;
}

BsAdhesiveTimes
bs_assembly_limits (const BsAdhesive *adhesive, const BsClimate *climate, double moisture_pct)
{
  BsAdhesiveTimes times = {
    .temperature_factor = scale_by_temperature (climate->temperature_c),
    .humidity_factor = scale_by_moisture (adhesive, climate->humidity_pct, moisture_pct),
  };
  /* Once the joint is closed the air takes no more water from it. */
  double closed_factor = adhesive->is_moisture_curing ? times.humidity_factor : 1.0;
  double closed = fmax (0.0, adhesive->total_s - adhesive->open_s);

  times.open_s = times.temperature_factor * times.humidity_factor * adhesive->open_s;
  times.total_s = times.open_s + times.temperature_factor * closed_factor * closed;
  times.clamp_s = times.temperature_factor * adhesive->clamp_s;
  return times;
}

double
bs_assembly_joint_s (const BsShop *shop, double area)
{
  return shop->times.joint_s + shop->times.spread_s_per_m2 * area * M2_PER_MM2 / shop->people;
}

double
bs_assembly_tighten_s (const BsShop *shop, int n_clamps)
{
  return shop->times.tighten_s * n_clamps / shop->people;
}

/* The press of a pack; with pack NULL, the final one. glued_in: the pack of each glue line. Spread,
 * place, spread, place; then the clamps. The joint that was spread first waits longest; the one
 * that takes longest to spread is open longest. */
static BsAssembly
time_press (const BsStack *stack, const BsPack *const *glued_in, const BsPack *pack, int n_clamps)
{
  const BsShop *shop = &stack->plan->shop;
  BsAssembly press = { 0 };
  double first_open = 0.0;

  for (guint i = 0; i + 1 < stack->n; i++)
    if (glued_in[i] == pack)
      {
        double area = bs_stack_glue_area (stack, i);
        double open = bs_assembly_joint_s (shop, area) + shop->times.place_s;
        if (press.n_joints == 0)
          first_open = open;
        press.n_joints++;
        press.area += area;
        press.open_s = fmax (press.open_s, open);
        press.total_s += open + shop->times.align_s;
      }
  if (press.n_joints > 0)
    press.total_s += bs_assembly_tighten_s (shop, n_clamps);
  press.closed_s = press.total_s - first_open;
  return press;
}

static double
find_mean_moisture (const BsStack *stack)
{
  double sum = 0.0;
  int n = 0;

  for (guint i = 0; i < stack->n; i++)
    if (!isnan (stack->placed[i].lamination->moisture_pct))
      {
        sum += stack->placed[i].lamination->moisture_pct;
        n++;
      }
  return n > 0 ? sum / n : NAN;
}

void
bs_assembly_times (const BsStack *stack, int n_clamps, BsAssembly *assembly)
{
  const BsPlan *plan = stack->plan;
  BsAdhesiveTimes limits
      = bs_assembly_limits (&plan->adhesive, &plan->shop.climate, find_mean_moisture (stack));

  g_autofree const BsPack **glued_in = g_new (const BsPack *, stack->n);

  for (guint i = 0; i < stack->n; i++)
    glued_in[i] = bs_packs_find_joint (plan, (int)i);
  *assembly = time_press (stack, glued_in, NULL, n_clamps);
  for (guint i = 0; i < plan->packs->len; i++)
    {
      const BsPack *pack = &g_array_index (plan->packs, BsPack, i);
      BsAssembly press = time_press (stack, glued_in, pack, n_clamps);
      if (press.total_s > assembly->total_s)
        *assembly = press;
    }
  assembly->limit_s = limits.total_s;
  assembly->open_limit_s = limits.open_s;
  assembly->left_s = limits.total_s - assembly->total_s;
  assembly->clamp_s = limits.clamp_s;
}
