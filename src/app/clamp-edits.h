/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* What picture and table of the clamps do to a plan. All return a new plan. */

/* The plan with its clamps placed: while there are none, those of the hand rule are taken over, so
 * that one of them can be changed. `results` are the plan's. */
BsPlan *bs_clamp_edits_begin (BsPlan *plan, const BsResults *results);

/* One more in the widest gap, as strong as the others on the mean, of a kind of which one is left
 * over if there is any; `placed_at` (or NULL) is its place. The same plan when the shop has none.
 */
BsPlan *bs_clamp_edits_add (BsPlan *plan, const BsResults *results, guint *placed_at);

G_END_DECLS
