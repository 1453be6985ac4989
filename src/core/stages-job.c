/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-job.h"

#include "core/assembly.h"
#include "core/clamping.h"
#include "core/mass.h"
#include "core/moisture.h"
#include "core/packs.h"

#include <math.h>
#include <string.h>

/* Common practice, no source. */
#define PLANE_S (5.0 * 60.0)
#define MOST_ROUNDS 12

/* A waterborne adhesive swells the wood beside the glue line; planed too soon, the joint sinks when
 * it dries. Wood Handbook (FPL-GTR-190), chapter 10, asks for conditioning after bonding; a day is
 * common practice, from memory. */
#define REST_S (24.0 * 3600.0)

static gsize
interval (const BsStagesJob *self, int first, int count)
{
  return (gsize)first * (gsize)(self->input.n + 1) + (gsize)count;
}

/* As in core/clamping: force spreads within 45 degrees through the caul and the outer piece. */
static int
count_by_spacing (int first, int count, gpointer data)
{
  const BsStagesJob *self = data;
  const BsPlaced *front = &self->stack->placed[first], *back = front + count - 1;
  double outer = self->input.caul + back->thickness + (back->y - front->y);
  double n = ceil (self->input.length / (self->head_width + 2.0 * outer));
  return (int)CLAMP (n, 2.0, BS_STAGES_MOST_CLAMPS + 1.0);
}

/* Clamps at hand for a press of so many laminations. */
static int
count_owned (const BsStagesJob *self, int count)
{
  return count < self->input.n ? self->input.pack_clamps : self->input.clamps;
}

/* As in core/clamping: so many of the strongest as come to the force of the largest glue line, or
 * all that fit. */
static int
count_by_force (const BsStagesJob *self, int first, int count)
{
  int *known = &self->by_force[interval (self, first, count)];

  if (*known == 0)
    {
      BsStack part = bs_stack_part (self->stack, (guint)first, (guint)count);
      g_autoptr (GArray) positions = g_array_new (FALSE, FALSE, sizeof (double));
      BsClampRule rule = { .positions = positions };

      bs_clamping_rule (&part, &rule);
      *known = CLAMP (rule.n_by_force, 2, MAX (count_owned (self, count), 2));
    }
  return *known;
}

static int
count_for_whole (int first, int count, int n_pieces, gpointer data)
{
  const BsStagesJob *self = data;
  gboolean is_pack = count < self->input.n;
  int by_layout = is_pack ? self->of_pack[interval (self, first, count)] : self->of_slab[n_pieces];

  if (by_layout == 0 && is_pack)
    by_layout = self->of_packs;
  if (by_layout == 0 && !is_pack && n_pieces > 0)
    by_layout = self->of_slabs;
  return MAX (by_layout, count_by_force (self, first, count));
}

int
bs_stages_job_count_by_rule (const BsStagesJob *self, const BsStage *stage)
{
  const int *bounds = stage->bounds;
  int n = stage->n_pieces, first = bounds[0], end = bounds[n];
  int front = count_by_spacing (first, bounds[1] - first, (gpointer)self);
  int back = count_by_spacing (bounds[n - 1], end - bounds[n - 1], (gpointer)self);

  return MAX (MAX (front, back), count_by_force (self, first, end - first));
}

void
bs_stages_job_set_layout (BsStagesJob *self, const BsStage *stage, int n_clamps)
{
  int first = stage->bounds[0], count = stage->bounds[stage->n_pieces] - first;
  int *known = stage->is_pack ? &self->of_pack[interval (self, first, count)]
                              : &self->of_slab[stage->n_pieces];

  int *most = stage->is_pack ? &self->of_packs : &self->of_slabs;

  *known = MAX (*known, MIN (n_clamps, count_owned (self, count)));
  *most = MAX (*most, *known);
}

void
bs_stages_job_take_layouts (BsStagesJob *self, const BsStagesJob *from)
{
  gsize n = (gsize)self->input.n;

  g_return_if_fail (self->input.n == from->input.n);
  memcpy (self->of_pack, from->of_pack, n * (n + 1) * sizeof (int));
  memcpy (self->of_slab, from->of_slab, (n + 1) * sizeof (int));
  self->of_packs = from->of_packs;
  self->of_slabs = from->of_slabs;
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
  self->input.slab_clamps = (int)stack->plan->placed_clamps->len;
  self->input.clamps_for = count_by_spacing;
  self->input.whole_for = count_for_whole;
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
  gsize n_intervals = (gsize)stack->n * (stack->n + 1);

  if (!has_sizes (stack))
    return FALSE;
  *self = (BsStagesJob){
    .stack = stack,
    .by_force = g_new0 (int, n_intervals),
    .of_pack = g_new0 (int, n_intervals),
    .of_slab = g_new0 (int, stack->n + 1),
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
  g_clear_pointer (&self->by_force, g_free);
  g_clear_pointer (&self->of_pack, g_free);
  g_clear_pointer (&self->of_slab, g_free);
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

GArray *
bs_stages_plan_list_packs (const BsStagesPlan *self)
{
  GArray *packs = g_array_new (FALSE, FALSE, sizeof (BsPack));

  for (guint i = 0; i < self->stages->len; i++)
    {
      const BsStage *stage = &g_array_index (self->stages, BsStage, i);
      BsPack pack = { .first = stage->bounds[0] };

      pack.count = stage->bounds[stage->n_pieces] - pack.first;
      if (stage->is_pack)
        g_array_append_val (packs, pack);
    }
  g_array_sort (packs, bs_packs_compare);
  return packs;
}

gboolean
bs_stages_plan_is_possible (const BsStagesPlan *self)
{
  for (guint i = 0; i < self->stages->len; i++)
    if (g_array_index (self->stages, BsStage, i).limit != BS_STAGE_LIMIT_NONE)
      return FALSE;
  return TRUE;
}
