/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-bound.h"
#include "core/cutting-solution.h"

G_BEGIN_DECLS

/* How much a proof may cost before it is given up. */
typedef struct
{
  guint options;      /* patterns that may matter */
  guint option_nodes; /* steps to list them */
  guint nodes;        /* steps of the search */
} BsCutExactLimits;

/* What to look for. */
typedef enum
{
  BS_CUT_CHEAPER,       /* the least price, whatever the waste */
  BS_CUT_BEST_OF_PRICE, /* the best plan of the same price, which is known to be the least */
  BS_CUT_BEST,          /* the best plan */
} BsCutGoal;

/* Searches all plans for a demand and supply that may be better than `best`, which holds all parts,
 * and replaces it by a better one. duals: as of a master for any demand. TRUE when the search came
 * to its end: then none is better. */
gboolean bs_cut_exact_solve (const BsCutModel *model, BsCutOracle *oracle, const int *demand,
                             const int *supply, const BsCutDuals *duals, BsCutGoal goal,
                             BsCutExactLimits limits, const BsProgress *progress,
                             BsCutSolution **best);

G_END_DECLS
