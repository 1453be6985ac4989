/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/progress.h"
#include "core/stages-job.h"

G_BEGIN_DECLS

/* When a slab cannot be closed in time: which single change would make it so. */

typedef enum
{
  BS_STAGES_REMEDY_SMALLER_PACKS,   /* value: most pieces in one press of the plan that does it */
  BS_STAGES_REMEDY_SLOWER_ADHESIVE, /* value: so many times the open and the total time at least */
  BS_STAGES_REMEDY_MORE_PEOPLE,     /* value: people in all */
  BS_STAGES_REMEDY_COOLER_SHOP,     /* value: temperature, degrees C */
  BS_STAGES_REMEDY_MORE_CLAMPS,     /* value: clamps in all, as long as the longest owned */
  BS_STAGES_REMEDY_LONGER_CLAMPS,   /* value: reach, mm, of as many as are owned */
  BS_STAGES_REMEDY_WIDER_PLANER,    /* value: mm; or packs flattened by other means */
} BsStagesRemedyKind;

#define BS_N_STAGES_REMEDY_KINDS 7

typedef struct
{
  BsStagesRemedyKind kind;
  double value;
} BsStagesRemedy;

/* Each by itself, the smallest change of its kind; in the order of the kinds; empty when no single
 * change helps, or when there is nothing to change. keeps_packs: with the packs that the person
 * chose (none: the slab in one press), else with any. What is known of the job's layouts holds
 * after each change. Stops with what it has when progress asks. Free with g_array_unref. */
GArray *bs_stages_remedies (const BsStagesJob *job, gboolean keeps_packs,
                            const BsProgress *progress);

G_END_DECLS
