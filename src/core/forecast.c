/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/forecast.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stages-remedy.h"

static void
find_schedule (BsForecast *self, const BsProgress *progress)
{
  const BsPlan *plan = self->stack->plan;

  self->has_job = bs_stages_job_init (&self->job, self->stack);
  if (!self->has_job)
    return;
  if (plan->packs->len > 0)
    self->own = bs_stages_job_own_packs (&self->job, plan);
  self->stages = bs_stages_solve (&self->job.input, progress);
}

/* What stops the schedule, if anything does. */
static gboolean
is_possible (const BsForecast *self)
{
  const BsStagesPlan *schedule = bs_forecast_get_schedule (self);

  return !self->has_job || (schedule != NULL && bs_stages_plan_is_possible (schedule));
}

BsForecast *
bs_forecast_new (const BsPlan *plan, const BsProgress *progress)
{
  g_autoptr (BsForecast) self = g_new0 (BsForecast, 1);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);

  self->stack = bs_stack_new (plan);
  self->odds = bs_flatten_odds (self->stack, &spread);
  self->height_needed = bs_flatten_height_needed (self->stack, &spread, plan->slab.thickness);
  if (!bs_progress_report (progress, 0.1))
    return NULL;
  find_schedule (self, progress);
  if (!bs_progress_report (progress, 0.5))
    return NULL;
  self->remedies = is_possible (self) ? g_array_new (FALSE, FALSE, sizeof (BsStagesRemedy))
                                      : bs_stages_remedies (plan, self->own != NULL);
  return bs_progress_report (progress, 1.0) ? g_steal_pointer (&self) : NULL;
}

void
bs_forecast_free (BsForecast *self)
{
  if (self->has_job)
    bs_stages_job_clear (&self->job);
  g_clear_pointer (&self->own, bs_stages_plan_free);
  g_clear_pointer (&self->stages, bs_stages_free);
  g_clear_pointer (&self->remedies, g_array_unref);
  bs_stack_free (self->stack);
  g_free (self);
}

const BsStagesPlan *
bs_forecast_get_schedule (const BsForecast *self)
{
  if (self->own != NULL)
    return self->own;
  return self->stages != NULL ? self->stages->shortest : NULL;
}

void
bs_forecast_add_odds (const BsForecast *self, BsWorking *thickness)
{
  const char *source = self != NULL ? N_ ("2,000 drawn slabs") : N_ ("working…");

  bs_working_add (thickness, N_ ("thickness reached in 50 of 100 slabs"), "",
                  self != NULL ? self->odds.at_50_pct : NAN, BS_QUANTITY_LENGTH, source);
  bs_working_add (thickness, N_ ("thickness reached in 90 of 100 slabs"), "",
                  self != NULL ? self->odds.at_90_pct : NAN, BS_QUANTITY_LENGTH, source);
  bs_working_add (thickness, N_ ("thickness reached in 95 of 100 slabs"), "",
                  self != NULL ? self->odds.at_95_pct : NAN, BS_QUANTITY_LENGTH, source);
  bs_working_add (thickness,
                  N_ ("height to mill all laminations to, for the wished thickness in 95 of 100"),
                  "", self != NULL ? self->height_needed : NAN, BS_QUANTITY_LENGTH, source);
}

void
bs_forecast_why_assembly (const BsForecast *self, const BsStage *stage, BsWorking *working)
{
  const BsStagesInput *input = &self->job.input;
  const BsHandTimes *times = &self->stack->plan->shop.times;

  bs_working_init (working, N_ ("Assembly time of the longest press"),
                   N_ ("From the first glue spread to the last clamp tight, spreading a joint and "
                       "placing a piece in turn. All people spread and tighten; one places."),
                   "t = (n − 1) (f + s A / p + b + a) + c k / p", BS_QUANTITY_TIME,
                   N_ ("As sure as the times of the shop's hands: time yourselves once."));
  working->value = stage->times.total_s;
  bs_working_add (working, N_ ("pieces"), "n", stage->n_pieces, BS_QUANTITY_COUNT, NULL);
  bs_working_add (working, N_ ("fixed time of a joint"), "f", times->joint_s, BS_QUANTITY_TIME,
                  NULL);
  bs_working_add (working, N_ ("spreading"), "s", times->spread_s_per_m2, BS_QUANTITY_SPREAD_TIME,
                  NULL);
  bs_working_add (working, N_ ("largest glue line"), "A", input->length * input->height,
                  BS_QUANTITY_AREA, NULL);
  bs_working_add (working, N_ ("people"), "p", input->people, BS_QUANTITY_COUNT, NULL);
  bs_working_add (working, N_ ("placing a piece"), "b", times->place_s, BS_QUANTITY_TIME, NULL);
  bs_working_add (working, N_ ("lining it up"), "a", times->align_s, BS_QUANTITY_TIME, NULL);
  bs_working_add (working, N_ ("tightening a clamp"), "c", times->tighten_s, BS_QUANTITY_TIME,
                  NULL);
  bs_working_add (working, N_ ("clamps"), "k", stage->n_clamps, BS_QUANTITY_COUNT, NULL);
  bs_working_add (working, N_ ("total time that the adhesive allows here"), "", input->total_s,
                  BS_QUANTITY_TIME, self->stack->plan->adhesive.source);
}
