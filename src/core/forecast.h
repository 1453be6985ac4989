/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/flatten-spread.h"
#include "core/stages-job.h"
#include "core/working.h"

G_BEGIN_DECLS

/* What follows from a plan and takes too long for every step of a drag (up to a second with 500
 * laminations): the presses, one after another, and how sure the thickness is. Owns its parts. */
typedef struct
{
  BsStack *stack;   /* holds a reference to the plan */
  gboolean has_job; /* there are at least two laminations with a size */
  BsStagesJob job;
  BsStagesPlan *own; /* with the packs that the person chose; NULL: none were */
  BsStages *stages;  /* with any packs; NULL without a job */
  GArray *remedies;  /* BsStagesRemedy: what would make the schedule possible; empty when it is */
  BsFlattenOdds odds;
  double height_needed; /* mm, for the wished thickness in 95 of a hundred slabs */
} BsForecast;

/* Pure; NULL when progress asked it to stop. */
BsForecast *bs_forecast_new (const BsPlan *plan, const BsProgress *progress);
void bs_forecast_free (BsForecast *self);

/* The schedule that is worked by: the person's own packs, else the shortest; NULL: there is none.
 */
const BsStagesPlan *bs_forecast_get_schedule (const BsForecast *self);

/* Appends how sure the thickness is to its working; NULL: not known yet. */
void bs_forecast_add_odds (const BsForecast *self, BsWorking *thickness);

/* The working of one press's assembly time. */
void bs_forecast_why_assembly (const BsForecast *self, const BsStage *stage, BsWorking *working);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsForecast, bs_forecast_free)

G_END_DECLS
