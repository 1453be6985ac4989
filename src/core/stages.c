/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages.h"

#include "core/stages-balance.h"
#include "core/stages-row.h"
#include "core/stages-schedule.h"
#include "core/stages-search.h"

#include <math.h>

/* Attempts to make a plan of many rounds more even. */
#define MOST_ATTEMPTS 40

#define ROUNDING_US 1000 /* of the sum of a plan's times */

/* The hand times are those of a new plan; the rest is common practice, no source. */
BsStagesInput
bs_stages_input_default (void)
{
  return (BsStagesInput){
    .people = 1,
    .spread_s_per_m2 = 200.0,
    .joint_s = 5.0,
    .place_s = 8.0,
    .align_s = 7.0,
    .tighten_s = 12.0,
    .spreading = BS_SPREADING_ALTERNATE,
    .open_s = 5.0 * 60.0,
    .closed_s = 10.0 * 60.0,
    .total_s = 10.0 * 60.0,
    .press_s = 90.0 * 60.0,
    .plane_s = 5.0 * 60.0,
    .planes_packs = TRUE,
    .planer_width = 300.0,
    .max_pack_kg = INFINITY,
    .clamps = 12,
    .pack_clamps = 12,
    .max_opening = 1250.0,
    .caul = 45.0,
    .max_spacing = 300.0,
    .end = 50.0,
    .max_rounds = 12,
  };
}

typedef struct
{
  BsStagesPlan *plan;
  const BsStagesInput *input;
} Report;

static void
report_stage (int round, const int *bounds, int n_pieces, gpointer data)
{
  Report *report = data;
  bs_stages_plan_add (report->plan, report->input, round, bounds, n_pieces);
}

static BsStagesPlan *
make_plan (const BsStagesSearch *search, const BsStagesInput *input, int way)
{
  Report report = { bs_stages_plan_new (), input };

  bs_stages_search_report (search, way, report_stage, &report);
  bs_stages_plan_schedule (report.plan, input);
  return report.plan;
}

/* Time of a plan that is the same for all of so many rounds. */
static gint64
find_waiting_us (const BsStagesInput *input, int n_rounds)
{
  double rest = input->planes_packs ? input->rest_s : 0.0;
  return (gint64)(1e6 * (n_rounds * input->press_s + (n_rounds - 1) * rest));
}

static void
take_ways (BsStages *self, BsStagesSearch *search, const BsStagesInput *input, int way,
           int n_rounds)
{
  gint64 time = bs_stages_search_time_us (search, way);
  gint64 waiting = find_waiting_us (input, n_rounds);
  gint64 slack = (gint64)((double)(time + waiting) * BS_STAGES_BALANCE_PCT / 100.0);
  int shortest = bs_stages_balance (search, input->n, way, time);
  int balanced = bs_stages_balance (search, input->n, shortest, time + slack);

  self->shortest = make_plan (search, input, shortest);
  if (bs_stages_search_imbalance (search, balanced)
      < bs_stages_search_imbalance (search, shortest) - BS_STAGES_ROUNDING)
    self->balanced = make_plan (search, input, balanced);
}

/* What a way of so many rounds may take at most to be no longer than a plan that is known. */
static gint64
find_limit_us (const BsStagesInput *input, const BsStagesPlan *known, int n_rounds)
{
  if (known == NULL || known->n_rounds > n_rounds)
    return G_MAXINT64;
  return (gint64)(known->elapsed_s * 1e6) - find_waiting_us (input, n_rounds) + ROUNDING_US;
}

typedef struct
{
  int way;              /* BS_STAGES_NO_WAY: none */
  int n_rounds;         /* that it takes */
  gboolean is_complete; /* nothing was left out */
} Found;

/* The first round at whose end the slab can be had. known: a plan that there is in any case, or
 * NULL. */
static Found
find_way (BsStagesSearch *search, const BsStagesInput *input, const BsStagesPlan *known,
          const BsProgress *progress)
{
  int most = MIN (known != NULL ? known->n_rounds : input->max_rounds, BS_STAGES_SEARCH_ROUNDS);
  Found found = { BS_STAGES_NO_WAY, 0, FALSE };

  for (int round = 1; round <= most; round++)
    {
      found.way
          = bs_stages_search_finish (search, 0.0, INFINITY, find_limit_us (input, known, round));
      found.n_rounds = round;
      found.is_complete = !bs_stages_search_gave_up (search);
      if (found.way != BS_STAGES_NO_WAY || !found.is_complete || round == most)
        break;
      bs_stages_search_next_round (search);
      found.is_complete = FALSE;
      if (!bs_progress_report (progress, (double)round / most))
        break;
    }
  return found;
}

static double
find_widest_piece (const BsStagesPlan *plan, const BsStagesInput *input)
{
  const BsStage *last = &g_array_index (plan->stages, BsStage, plan->stages->len - 1);
  double widest = 0.0;

  for (int i = 0; i < last->n_pieces; i++)
    widest = fmax (widest, bs_stages_sum (input->widths, last->bounds[i], last->bounds[i + 1]));
  return widest;
}

/* A plan from the front, and the evenest that comes of narrower and narrower packs. */
static void
take_row (BsStages *self, const BsStagesInput *input, BsStagesPlan *row)
{
  self->shortest = row;

  double most_elapsed = self->shortest->elapsed_s * (1.0 + BS_STAGES_BALANCE_PCT / 100.0);
  double widest = find_widest_piece (self->shortest, input);
  double best = self->shortest->imbalance;
  for (int i = 0; i < MOST_ATTEMPTS; i++)
    {
      g_autoptr (BsStagesPlan) plan = bs_stages_row_find (input, widest - 2 * BS_STAGES_ROUNDING);
      if (plan == NULL || plan->n_rounds > self->shortest->n_rounds
          || plan->elapsed_s > most_elapsed)
        break;
      widest = find_widest_piece (plan, input);
      if (plan->imbalance >= best)
        continue;
      best = plan->imbalance;
      g_clear_pointer (&self->balanced, bs_stages_plan_free);
      self->balanced = g_steal_pointer (&plan);
    }
}

gboolean
bs_stages_is_possible (const BsStagesInput *input)
{
  if (input->n < 2)
    return FALSE;

  g_autoptr (BsStagesPlan) row = bs_stages_row_find (input, INFINITY);
  if (row != NULL)
    return TRUE;

  BsStagesSearch *search = bs_stages_search_new (input);
  Found found = find_way (search, input, NULL, NULL);
  bs_stages_search_free (search);
  return found.way != BS_STAGES_NO_WAY;
}

/* What stands in the way: the limit that even the smallest stage breaks, or the one without which
 * the slab could be had. */
static BsStageLimit
find_obstacle (const BsStagesInput *input)
{
  double width = bs_stages_sum (input->widths, 0, input->n);
  BsStageTimes least_times = bs_stage_times (input, 2, 2);
  BsStageLimit limit = bs_stage_time_limit (input, &least_times);

  if (limit != BS_STAGE_LIMIT_NONE)
    return limit;
  if (!(input->max_opening > 0.0)) /* there is no clamp at all */
    return BS_STAGE_LIMIT_CLAMPS;
  if (width + 2.0 * input->caul > input->max_opening + BS_STAGES_ROUNDING)
    return BS_STAGE_LIMIT_OPENING;

  BsStagesInput eased = *input;
  eased.max_rounds = input->n;
  if (bs_stages_is_possible (&eased))
    return BS_STAGE_LIMIT_ROUNDS;
  eased = *input;
  eased.planes_packs = FALSE;
  if (input->planes_packs && bs_stages_is_possible (&eased))
    return BS_STAGE_LIMIT_PLANER;
  eased = *input;
  eased.max_pack_kg = INFINITY;
  if (isfinite (input->max_pack_kg) && bs_stages_is_possible (&eased))
    return BS_STAGE_LIMIT_WEIGHT;
  eased = *input;
  eased.clamps = eased.pack_clamps = BS_STAGES_MOST_CLAMPS;
  return bs_stages_is_possible (&eased) ? BS_STAGE_LIMIT_CLAMPS : BS_STAGE_LIMIT_TOTAL;
}

BsStages *
bs_stages_solve (const BsStagesInput *input, const BsProgress *progress)
{
  BsStages *self = g_new0 (BsStages, 1);
  BsStagesInput job = *input;

  self->is_proved = TRUE;
  if (input->n < 2)
    return self;
  job.clamps = MIN (job.clamps, BS_STAGES_MOST_CLAMPS);
  job.pack_clamps = MIN (job.pack_clamps, BS_STAGES_MOST_CLAMPS);

  g_autoptr (BsStagesPlan) row = bs_stages_row_find (&job, INFINITY);
  BsStagesSearch *search = bs_stages_search_new (&job);
  Found found = find_way (search, &job, row, progress);
  self->is_proved = found.is_complete
                    && (found.way != BS_STAGES_NO_WAY || job.max_rounds <= BS_STAGES_SEARCH_ROUNDS);
  if (found.way != BS_STAGES_NO_WAY)
    take_ways (self, search, &job, found.way, found.n_rounds);
  else if (row != NULL)
    take_row (self, &job, g_steal_pointer (&row));
  else if (found.is_complete)
    self->limit = find_obstacle (&job);
  bs_stages_search_free (search);
  return self;
}

void
bs_stages_free (BsStages *self)
{
  g_clear_pointer (&self->shortest, bs_stages_plan_free);
  g_clear_pointer (&self->balanced, bs_stages_plan_free);
  g_free (self);
}
