/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stages.h"

G_BEGIN_DECLS

/* Plans of many rounds, for which core/stages-search would have too many ways to tell apart: packs
 * of single laminations, glued in their order from the front, as many in a round as the clamps
 * allow, then the slab. Fewest rounds of all such plans, then least time.
 *
 * No piece of the last stage is wider than most_width (mm). NULL: there is no such plan within
 * max_rounds. */
BsStagesPlan *bs_stages_row_find (const BsStagesInput *input, double most_width);

G_END_DECLS
