/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"
#include "core/stages.h"

G_BEGIN_DECLS

/* The job that a plan makes of its slab: how core/stages is told of it. */
typedef struct
{
  BsStagesInput input; /* clamps by the hand rule of core/clamping; set clamps_for for another */
  double *widths;
  double *masses;
  double head_width; /* of the narrowest clamp, mm */
} BsStagesJob;

/* FALSE when there are not two laminations with a size; then there is nothing to clear. The job
 * must stay where it is. */
gboolean bs_stages_job_init (BsStagesJob *self, const BsStack *stack);
void bs_stages_job_clear (BsStagesJob *self);

/* The packs that the person chose. */
BsStagesPlan *bs_stages_job_own_packs (const BsStagesJob *self, const BsPlan *plan);

/* No stage breaks a limit. */
gboolean bs_stages_plan_is_possible (const BsStagesPlan *self);

G_END_DECLS
