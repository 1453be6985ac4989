/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/pressing.h"
#include "core/progress.h"

G_BEGIN_DECLS

/* What one clamp more, or moved, or tightened changes. */

typedef enum
{
  BS_CLAMP_CHANGE_TIGHTEN, /* by a tenth of its force */
  BS_CLAMP_CHANGE_MOVE,    /* by BS_CLAMP_CHANGE_MOVE_BY, left or right */
  BS_CLAMP_CHANGE_ADD,     /* one more, as strong as the others on the mean */
} BsClampChangeKind;

#define BS_CLAMP_CHANGE_TIGHTEN_BY 0.1 /* part of the force */
#define BS_CLAMP_CHANGE_MOVE_BY 20.0   /* mm */

typedef struct
{
  BsClampChangeKind kind;
  guint clamp;      /* the one that changes; for one more, the one to its right, or the number
                     * of clamps for one at the right end */
  double x, force;  /* of that clamp after the change */
  double least_mpa; /* of all glue lines after it, where they count */
  double greatest_mpa;
  double less_than_wanted; /* mm of all glue lines that are then pressed less than wanted */
} BsClampChange;

/* All of them, the most helpful first: fewest mm pressed too little, then most at the weakest spot.
 * The clamps go from left to right. A change that would put a clamp off the work is left out. Costs
 * 4 n + 1 solves; NULL when asked to stop. Free with g_array_unref. */
GArray *bs_clamp_changes (BsPressing *pressing, const BsPressClamp *clamps, guint n_clamps,
                          double wanted_mpa, const BsProgress *progress);

G_END_DECLS
