/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-job.h"

#include "core/assembly.h"
#include "core/clamping.h"
#include "core/mass.h"
#include "core/moisture.h"

#include <math.h>

/* Common practice, no source. */
#define PLANE_S (5.0 * 60.0)
#define MOST_ROUNDS 12

/* A waterborne adhesive swells the wood beside the glue line; planed too soon, the joint sinks when
 * it dries. Wood Handbook (FPL-GTR-190), chapter 10, asks for conditioning after bonding; a day is
 * common practice, from memory. */
#define REST_S (24.0 * 3600.0)

/* As in core/clamping: force spreads within 45 degrees through the caul and the outer piece. */
static int
count_clamps (int first, int count, gpointer data)
{
  const BsStagesJob *self = data;
  double outer = self->input.caul;

  for (int i = first; i < first + count; i++)
    outer += self->input.widths[i];
  double n = ceil (self->input.length / (self->head_width + 2.0 * outer));
  return (int)CLAMP (n, 2.0, BS_STAGES_MOST_CLAMPS + 1.0);
}

static void
take_clamps (BsStagesJob *self, const BsStack *stack)
{
  const BsShop *shop = &stack->plan->shop;
  g_autoptr (GArray) positions = g_array_new (FALSE, FALSE, sizeof (double));
  BsClampRule rule = { .positions = positions };
  double widest_pack
      = self->input.planes_packs ? fmin (shop->planer_width, stack->width) : stack->width;

  bs_clamping_rule (stack, &rule);
  self->head_width = isnan (rule.head_width) ? 0.0 : rule.head_width;
  self->input.caul = rule.caul_thickness;
  self->input.clamps = rule.n_fitting;
  for (guint i = 0; i < shop->clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (shop->clamps, i);
      if (kind->reach >= widest_pack + 2.0 * rule.caul_thickness)
        self->input.pack_clamps += kind->count;
      if (kind->count > 0)
        self->input.max_opening = fmax (self->input.max_opening, kind->reach);
    }
  self->input.clamps_for = count_clamps;
  self->input.clamps_data = self;
}

static void
take_times (BsStagesJob *self, const BsStack *stack)
{
  const BsPlan *plan = stack->plan;
  const BsHandTimes *times = &plan->shop.times;
  BsAssembly assembly;

  bs_assembly_times (stack, 2, &assembly);
  self->input.people = plan->shop.people;
  self->input.spread_s_per_m2 = times->spread_s_per_m2;
  self->input.joint_s = times->joint_s;
  self->input.place_s = times->place_s;
  self->input.align_s = times->align_s;
  self->input.tighten_s = times->tighten_s;
  self->input.open_s = assembly.open_limit_s;
  self->input.closed_s = assembly.limit_s;
  self->input.total_s = assembly.limit_s;
  self->input.press_s = assembly.clamp_s;
  self->input.rest_s = plan->adhesive.is_waterborne ? REST_S : 0.0;
  self->input.plane_s = PLANE_S;
}

/* Length and height of the largest glue line. */
static void
take_sizes (BsStagesJob *self, const BsStack *stack)
{
  double low_pct, high_pct, area = 0.0;

  bs_moisture_seasons (&stack->plan->slab, &low_pct, &high_pct);
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double height = fmax (placed->height_left, placed->height_right);
      self->widths[i] = placed->thickness;
      self->masses[i] = bs_mass_placed (placed, height, (low_pct + high_pct) / 2.0);
    }
  for (guint i = 0; i + 1 < stack->n; i++)
    area = fmax (area, bs_stack_glue_area (stack, i));
  self->input.n = (int)stack->n;
  self->input.widths = self->widths;
  self->input.masses = self->masses;
  self->input.length = stack->length;
  self->input.height = area / stack->length;
}

static gboolean
has_sizes (const BsStack *stack)
{
  for (guint i = 0; i < stack->n; i++)
    if (!(stack->placed[i].thickness > 0.0 && stack->placed[i].length > 0.0))
      return FALSE;
  return stack->n >= 2;
}

gboolean
bs_stages_job_init (BsStagesJob *self, const BsStack *stack)
{
  const BsShop *shop = &stack->plan->shop;

  if (!has_sizes (stack))
    return FALSE;
  *self = (BsStagesJob){
    .widths = g_new (double, stack->n),
    .masses = g_new (double, stack->n),
    .input = { .spreading = BS_SPREADING_ALTERNATE,
               .planes_packs = shop->planer_width > 0.0,
               .planer_width = shop->planer_width,
               .max_pack_kg = isnan (shop->max_lift_kg) ? INFINITY : shop->max_lift_kg,
               .max_rounds = MOST_ROUNDS },
  };
  take_sizes (self, stack);
  take_times (self, stack);
  take_clamps (self, stack);
  return TRUE;
}

void
bs_stages_job_clear (BsStagesJob *self)
{
  g_clear_pointer (&self->widths, g_free);
  g_clear_pointer (&self->masses, g_free);
}

BsStagesPlan *
bs_stages_job_own_packs (const BsStagesJob *self, const BsPlan *plan)
{
  int n = (int)plan->packs->len;
  g_autofree int *starts = g_new (int, n);
  g_autofree int *counts = g_new (int, n);

  for (int i = 0; i < n; i++)
    {
      const BsPack *pack = &g_array_index (plan->packs, BsPack, i);
      starts[i] = pack->first;
      counts[i] = pack->count;
    }
  return bs_stages_plan_from_packs (&self->input, starts, counts, n);
}

gboolean
bs_stages_plan_is_possible (const BsStagesPlan *self)
{
  for (guint i = 0; i < self->stages->len; i++)
    if (g_array_index (self->stages, BsStage, i).limit != BS_STAGE_LIMIT_NONE)
      return FALSE;
  return TRUE;
}
