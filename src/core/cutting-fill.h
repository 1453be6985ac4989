/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-solution.h"
#include "core/cutting-oracle.h"

G_BEGIN_DECLS

/* Fills board after board with the pattern of the best value for its price: docs/cutting-model.md,
 * Sequential value correction. */
typedef struct
{
  const BsCutModel *model;
  BsCutOracle *oracle;
  double *costs;  /* of a board of each sheet: price, and a trace of its area */
  gint64 *fair;   /* what a part of each type ought to cost, in 1 / scale of it */
  gint64 *values; /* what it is taken to be worth; corrected by each board that it ends up in */
  gint64 scale;
} BsCutFiller;

BsCutFiller *bs_cut_filler_new (const BsCutModel *model, BsCutOracle *oracle);
void bs_cut_filler_free (BsCutFiller *self);

/* Starts from the values that a bound gives to the parts, instead of from their areas. */
void bs_cut_filler_set_values (BsCutFiller *self, const gint64 *values, gint64 scale);

/* Adds boards to a solution until the demand is covered or no board can hold more of it. demand and
 * supply become what is left. inertia: how slowly the values change, about 0.5 to 1. */
void bs_cut_filler_run (BsCutFiller *self, int *demand, int *supply, double inertia,
                        BsCutSolution *solution);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCutFiller, bs_cut_filler_free)

G_END_DECLS
