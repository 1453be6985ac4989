/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/flatten-map.h"
#include "core/flatten-spread.h"
#include "core/results.h"

G_BEGIN_DECLS

/* Sentences on flattening. All char * are the caller's. */

/* What is done in which order, a sentence a step, with the shims that are needed. */
char *bs_words_flatten_steps (const BsResults *results);

/* What shims are worth: the thicknesses by the three orders of work side by side. */
char *bs_words_flatten_choice (const BsFlattenResult by_work[BS_N_FLATTEN_WORKS],
                               BsUnitSystem units);

/* "Most off: 3.2 mm above, 2.1 mm below". */
char *bs_words_flatten_most (const BsFlattenResult *result, BsUnitSystem units);

/* "A4: 3.2 mm, 1210 mm from the left end, 85 mm from the front". */
char *bs_words_deep_spot (const BsDeepSpot *spot, const BsStack *stack);
const char *bs_words_no_deep_spot (void);

/* "95 of 100 reach 84.9 mm"; or, when fewer are as thick as wanted, "40 of 100 reach 90 mm". NULL
 * odds: not worked out yet. */
char *bs_words_sure (const BsFlattenOdds *odds, const BsPlan *plan);

/* Whether the slab goes through the planer, and in how many packs. */
char *bs_words_planer (const BsStack *stack);

G_END_DECLS
