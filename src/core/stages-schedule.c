/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-schedule.h"

#include <math.h>

static void
clear_stage (gpointer data)
{
  BsStage *stage = data;
  g_clear_pointer (&stage->bounds, g_free);
}

BsStagesPlan *
bs_stages_plan_new (void)
{
  BsStagesPlan *self = g_new0 (BsStagesPlan, 1);

  self->stages = g_array_new (FALSE, TRUE, sizeof (BsStage));
  g_array_set_clear_func (self->stages, clear_stage);
  return self;
}

void
bs_stages_plan_free (BsStagesPlan *self)
{
  g_array_unref (self->stages);
  g_free (self);
}

double
bs_stages_sum (const double *values, int first, int end)
{
  double sum = 0.0;

  if (values == NULL)
    return NAN;
  for (int i = first; i < end; i++)
    sum += values[i];
  return sum;
}

/* The first limit that a stage breaks: times before things, since time is what runs out. */
static BsStageLimit
find_limit (const BsStagesInput *input, const BsStage *stage)
{
  BsStageLimit limit = bs_stage_time_limit (input, &stage->times);

  if (limit != BS_STAGE_LIMIT_NONE)
    return limit;
  if (stage->n_clamps > (stage->is_pack ? input->pack_clamps : input->clamps))
    return BS_STAGE_LIMIT_CLAMPS;
  if (stage->is_pack)
    return bs_stage_pack_limit (input, stage->width, stage->mass_kg);
  return stage->width + 2.0 * input->caul > input->max_opening + BS_STAGES_ROUNDING
             ? BS_STAGE_LIMIT_OPENING
             : BS_STAGE_LIMIT_NONE;
}

void
bs_stages_plan_add (BsStagesPlan *self, const BsStagesInput *input, int round, const int *bounds,
                    int n_pieces)
{
  g_return_if_fail (n_pieces >= 2);

  int first = bounds[0], end = bounds[n_pieces];
  int front = bs_stages_clamps_for (input, first, bounds[1] - first);
  int back = bs_stages_clamps_for (input, bounds[n_pieces - 1], end - bounds[n_pieces - 1]);
  int outer = MAX (front, back);
  gboolean is_pack = first > 0 || end < input->n;
  BsStage stage = {
    .round = round,
    .n_pieces = n_pieces,
    .bounds = g_memdup2 (bounds, (gsize)(n_pieces + 1) * sizeof *bounds),
    .is_pack = is_pack,
    .width = bs_stages_sum (input->widths, first, end),
    .mass_kg = bs_stages_sum (input->masses, first, end),
    .n_clamps = is_pack
                    ? MAX (outer, bs_stages_clamps_for_whole (input, first, end - first, n_pieces))
                    : bs_stages_clamps_for_slab (input, outer, n_pieces),
  };

  stage.times = bs_stage_times (input, n_pieces, stage.n_clamps);
  stage.limit = find_limit (input, &stage);
  g_array_append_val (self->stages, stage);
}

static int
compare_stages (gconstpointer a, gconstpointer b)
{
  const BsStage *x = a, *y = b;
  return x->round != y->round ? x->round - y->round : x->bounds[0] - y->bounds[0];
}

/* Closes the stages of one round, which are next to each other from `from` on, one after another;
 * then they stand in the clamps until the last may come out, rest, and go over the planer one by
 * one. Returns the end of the round. */
static double
schedule_round (BsStagesPlan *self, const BsStagesInput *input, guint from, guint to, double now)
{
  for (guint i = from; i < to; i++)
    {
      BsStage *stage = &g_array_index (self->stages, BsStage, i);
      stage->begin_s = now;
      stage->closed_s = now + stage->times.assembly_s;
      now = stage->closed_s;
    }

  double released = now + input->press_s;
  double planer_free = released + input->rest_s;
  double end = released;
  for (guint i = from; i < to; i++)
    {
      BsStage *stage = &g_array_index (self->stages, BsStage, i);
      gboolean is_planed = stage->is_pack && input->planes_packs;
      stage->released_s = released;
      stage->planing_s = is_planed ? planer_free : released;
      stage->end_s = stage->planing_s + (is_planed ? input->plane_s : 0.0);
      planer_free = fmax (planer_free, stage->end_s);
      end = fmax (end, stage->end_s);
    }
  return end;
}

void
bs_stages_plan_schedule (BsStagesPlan *self, const BsStagesInput *input)
{
  guint to;

  g_array_sort (self->stages, compare_stages);
  for (guint from = 0; from < self->stages->len; from = to)
    {
      int round = g_array_index (self->stages, BsStage, from).round;
      for (to = from; to < self->stages->len; to++)
        if (g_array_index (self->stages, BsStage, to).round != round)
          break;
      self->elapsed_s = schedule_round (self, input, from, to, self->elapsed_s);
      self->n_rounds++;
    }

  const BsStage *last = &g_array_index (self->stages, BsStage, self->stages->len - 1);
  double least = INFINITY, most = 0.0;
  for (int i = 0; i < last->n_pieces; i++)
    {
      double width = bs_stages_sum (input->widths, last->bounds[i], last->bounds[i + 1]);
      least = fmin (least, width);
      most = fmax (most, width);
    }
  self->imbalance = most - least;
}

/* A pack of laminations from first on. */
static void
add_pack (BsStagesPlan *self, const BsStagesInput *input, int round, int first, int count)
{
  g_autofree int *bounds = g_new (int, count + 1);

  for (int i = 0; i <= count; i++)
    bounds[i] = first + i;
  bs_stages_plan_add (self, input, round, bounds, count);
}

BsStagesPlan *
bs_stages_plan_from_packs (const BsStagesInput *input, const int *starts, const int *counts,
                           int n_packs)
{
  BsStagesPlan *self = bs_stages_plan_new ();
  g_autofree int *bounds = g_new (int, input->n + 1);
  int n_pieces = 0, round = 0, clamps = 0, at = 0;

  g_return_val_if_fail (input->n >= 2, self);
  for (int i = 0; i < n_packs; i++)
    {
      add_pack (self, input, round, starts[i], counts[i]);
      BsStage *stage = &g_array_index (self->stages, BsStage, self->stages->len - 1);
      clamps += stage->n_clamps;
      if (clamps > input->pack_clamps && clamps > stage->n_clamps)
        {
          stage->round = ++round;
          clamps = stage->n_clamps;
        }
      for (; at < starts[i]; at++)
        bounds[n_pieces++] = at;
      bounds[n_pieces++] = starts[i];
      at = starts[i] + counts[i];
    }
  for (; at <= input->n; at++)
    bounds[n_pieces++] = at;
  if (n_pieces > 2)
    bs_stages_plan_add (self, input, n_packs > 0 ? round + 1 : 0, bounds, n_pieces - 1);
  bs_stages_plan_schedule (self, input);
  return self;
}
