/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stages.h"

G_BEGIN_DECLS

/* Of widths or masses from first up to end; NAN without values. */
double bs_stages_sum (const double *values, int first, int end);

/* Making a plan of stages: an empty one, then its stages in any order, then the calendar. */
BsStagesPlan *bs_stages_plan_new (void);

/* bounds: the laminations where the pieces begin, n_pieces + 1 numbers with the end of the last. */
void bs_stages_plan_add (BsStagesPlan *self, const BsStagesInput *input, int round,
                         const int *bounds, int n_pieces);

void bs_stages_plan_schedule (BsStagesPlan *self, const BsStagesInput *input);

G_END_DECLS
