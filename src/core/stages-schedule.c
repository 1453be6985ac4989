/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-schedule.h"

#include <math.h>

#define NO_ROUND (-1)

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

/* What one press makes. */
typedef struct
{
  int first, end; /* its laminations */
  int n_around;   /* presses that it is glued into, one after another */
} Made;

/* The slab and its packs, each before those within it. */
static GArray *
list_made (const BsStagesInput *input, const int *starts, const int *counts, int n_packs)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (Made));
  gboolean is_slab_first = n_packs > 0 && counts[0] == input->n;

  if (!is_slab_first)
    g_array_append_vals (list, &(Made){ 0, input->n, 0 }, 1);
  for (int i = 0; i < n_packs; i++)
    {
      Made made = { starts[i], starts[i] + counts[i], 0 };

      for (guint j = 0; j < list->len; j++)
        made.n_around += g_array_index (list, Made, j).end >= made.end;
      g_array_append_val (list, made);
    }
  return list;
}

/* A press, in no round yet, of the laminations and the largest packs within. */
static void
add_press (BsStagesPlan *self, const BsStagesInput *input, const GArray *list, guint number)
{
  const Made *made = &g_array_index (list, Made, number);
  g_autofree int *bounds = g_new (int, made->end - made->first + 1);
  int n_pieces = 0, at = made->first;

  for (guint i = number + 1; i < list->len; i++)
    {
      const Made *within = &g_array_index (list, Made, i);

      if (within->first < at || within->end > made->end)
        continue;
      while (at < within->first)
        bounds[n_pieces++] = at++;
      bounds[n_pieces++] = at;
      at = within->end;
    }
  while (at < made->end)
    bounds[n_pieces++] = at++;
  bounds[n_pieces] = made->end;
  bs_stages_plan_add (self, input, NO_ROUND, bounds, n_pieces);
}

static gboolean
is_ready (const BsStagesPlan *self, const GArray *list, guint number, int round)
{
  int end = g_array_index (list, Made, number).end;

  for (guint i = number + 1; i < list->len && g_array_index (list, Made, i).first < end; i++)
    {
      int made_in = g_array_index (self->stages, BsStage, i).round;

      if (made_in == NO_ROUND || made_in == round)
        return FALSE;
    }
  return TRUE;
}

/* Puts presses that are ready and have so many around them into a round, as long as there are
 * clamps. Returns how many. */
static int
fill_round (BsStagesPlan *self, const BsStagesInput *input, const GArray *list, int round,
            int n_around, int *clamps)
{
  int n = 0;

  for (guint i = 0; i < list->len; i++)
    {
      BsStage *stage = &g_array_index (self->stages, BsStage, i);

      if (stage->round != NO_ROUND || g_array_index (list, Made, i).n_around != n_around
          || (*clamps > 0 && *clamps + stage->n_clamps > input->pack_clamps)
          || !is_ready (self, list, i, round))
        continue;
      stage->round = round;
      *clamps += stage->n_clamps;
      n++;
    }
  return n;
}

BsStagesPlan *
bs_stages_plan_from_packs (const BsStagesInput *input, const int *starts, const int *counts,
                           int n_packs)
{
  BsStagesPlan *self = bs_stages_plan_new ();
  int n_left, deepest = 0;

  g_return_val_if_fail (input->n >= 2, self);
  g_autoptr (GArray) list = list_made (input, starts, counts, n_packs);
  for (guint i = 0; i < list->len; i++)
    {
      add_press (self, input, list, i);
      deepest = MAX (deepest, g_array_index (list, Made, i).n_around);
    }
  n_left = (int)list->len;
  for (int round = 0, clamps = 0; n_left > 0; round++, clamps = 0)
    for (int n_around = deepest; n_around >= 0; n_around--)
      n_left -= fill_round (self, input, list, round, n_around, &clamps);
  bs_stages_plan_schedule (self, input);
  return self;
}
