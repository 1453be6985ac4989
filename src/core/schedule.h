/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stages-job.h"
#include "core/stages-press.h"
#include "core/working.h"

G_BEGIN_DECLS

/* How the clamps of a press are counted: docs/stages-model.md, Clamps. */
typedef enum
{
  BS_SCHEDULE_BY_RULE,   /* by the hand rule alone: some milliseconds */
  BS_SCHEDULE_BY_LAYOUT, /* and by the pressing engine, for every press shown: up to a second */
} BsScheduleClamps;

/* The presses of a plan's slab, one after another: with the person's own packs, and the best there
 * are. Owns its parts. */
typedef struct
{
  BsStack *stack;   /* holds a reference to the plan */
  gboolean has_job; /* there are at least two laminations with a size */
  BsStagesJob job;
  BsStagesPlan *own;     /* with the packs that the person chose; NULL: none were */
  BsStages *stages;      /* with any packs; NULL without a job */
  GArray *remedies;      /* BsStagesRemedy: what would make it possible; empty when it is */
  GHashTable *pressings; /* private: BsStagePressing by stage */
} BsSchedule;

/* Pure; NULL when progress asked it to stop. */
BsSchedule *bs_schedule_new (const BsPlan *plan, BsScheduleClamps clamps,
                             const BsProgress *progress);
void bs_schedule_free (BsSchedule *self);

/* The presses that are worked by: those of the person's own packs, else the shortest; NULL: there
 * are none. */
const BsStagesPlan *bs_schedule_get_presses (const BsSchedule *self);

/* Nothing stops the slab from being glued so; also TRUE when there is nothing to glue. */
gboolean bs_schedule_is_possible (const BsSchedule *self);

/* What the pressing engine says of a press; NULL: it was not asked, or cannot tell. */
const BsStagePressing *bs_schedule_get_pressing (const BsSchedule *self, const BsStage *stage);

/* What a press and the whole calendar take, and why. */
void bs_schedule_why_assembly (const BsSchedule *self, const BsStage *stage, BsWorking *working);
void bs_schedule_why_open (const BsSchedule *self, const BsStage *stage, BsWorking *working);
void bs_schedule_why_closed (const BsSchedule *self, const BsStage *stage, BsWorking *working);
void bs_schedule_why_clamps (const BsSchedule *self, const BsStage *stage, BsWorking *working);
void bs_schedule_why_elapsed (const BsSchedule *self, const BsStagesPlan *presses,
                              BsWorking *working);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsSchedule, bs_schedule_free)

G_END_DECLS
