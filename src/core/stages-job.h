/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"
#include "core/stages.h"

G_BEGIN_DECLS

/* The job that a plan makes of its slab: how core/stages is told of it.
 *
 * A press has as many clamps as the hand rule of core/clamping goes with: near enough to cover the
 * length, and enough for the force of its own glue lines or all that fit. To that is added what is
 * known of its pressing layout (core/stages-press). */
typedef struct
{
  BsStagesInput input;
  const BsStack *stack; /* borrowed */
  double *widths;
  double *masses;
  double head_width; /* of the narrowest clamp, mm */
  int *by_force;     /* for each interval of laminations; 0: not counted yet */
  int *of_pack;      /* for each interval that was laid out as a pack; 0: it was not */
  int *of_slab;      /* for each number of pieces with which the slab was laid out; likewise */
  int of_packs;      /* most of those: what other packs, */
  int of_slabs;      /* or other pieces of the slab, are taken to need; 0: none was laid out */
} BsStagesJob;

/* FALSE when there are not two laminations with a size; then there is nothing to clear. The job
 * must stay where it is; the stack must outlive it. */
gboolean bs_stages_job_init (BsStagesJob *self, const BsStack *stack);
void bs_stages_job_clear (BsStagesJob *self);

/* What a stage would have by the hand rule alone. */
int bs_stages_job_count_by_rule (const BsStagesJob *self, const BsStage *stage);

/* From now on a pack of the laminations of this stage, or the slab of as many pieces, has so many
 * clamps at least, as far as there are so many. */
void bs_stages_job_set_layout (BsStagesJob *self, const BsStage *stage, int n_clamps);

/* The same layouts as another job of as many laminations. */
void bs_stages_job_take_layouts (BsStagesJob *self, const BsStagesJob *from);

/* The packs that the person chose. */
BsStagesPlan *bs_stages_job_own_packs (const BsStagesJob *self, const BsPlan *plan);

/* The packs of such presses as a plan keeps them: an array of BsPack, for g_array_unref. */
GArray *bs_stages_plan_list_packs (const BsStagesPlan *self);

/* No stage breaks a limit. */
gboolean bs_stages_plan_is_possible (const BsStagesPlan *self);

G_END_DECLS
