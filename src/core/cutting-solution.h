/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-pattern.h"

G_BEGIN_DECLS

/* A choice of patterns, one for each board taken. */
typedef struct
{
  GPtrArray *patterns; /* BsCutPattern */
  int n_missing;       /* parts without a place */
  gint64 price;
  gint64 net_area, score; /* sums of BsCutPattern's */
} BsCutSolution;

BsCutSolution *bs_cut_solution_new (void);
BsCutSolution *bs_cut_solution_copy (const BsCutSolution *self);
void bs_cut_solution_free (BsCutSolution *self);

/* Takes a reference of its own. */
void bs_cut_solution_add (BsCutSolution *self, const BsCutModel *model, BsCutPattern *pattern);
void bs_cut_solution_remove (BsCutSolution *self, const BsCutModel *model, guint index);

/* < 0 when it is better than another of the same demand. */
int bs_cut_solution_compare (const BsCutSolution *self, const BsCutSolution *other);

/* Takes what is more than the demand out again and closes the gaps, so that offcuts become as long
 * as they are. Sets n_missing. */
void bs_cut_solution_trim (BsCutSolution *self, const BsCutModel *model, const int *demand);

/* In the terms of the problem, with pinned parts, and the best looking boards for parts on show. */
BsCutPlan *bs_cut_solution_describe (const BsCutSolution *self, const BsCutModel *model);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCutSolution, bs_cut_solution_free)

G_END_DECLS
