/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-oracle.h"

G_BEGIN_DECLS

/* The least price as a linear programme over all patterns, of which only those are written out that
 * may matter (column generation): docs/cutting-model.md, The bound. */

typedef struct _BsCutMaster BsCutMaster;

/* Prices of parts and of stock, in 1 / scale of the price unit, that prove the bound:
 *   every pattern:  sum of its parts' values - stock's rent <= price of its board
 *   so every plan:  price >= sum over parts of value - sum over boards in stock of rent. */
typedef struct
{
  gint64 *values; /* of a part of each type */
  gint64 *rents;  /* of each kind of board; 0 where the supply is not limited */
  gint64 total;   /* of the last line, for the demand and supply that were set */
  gint64 scale;
} BsCutDuals;

BsCutMaster *bs_cut_master_new (const BsCutModel *model, BsCutOracle *oracle);
void bs_cut_master_free (BsCutMaster *self);

/* Offers a pattern; takes a reference of its own. FALSE when it knows one like it. */
gboolean bs_cut_master_add (BsCutMaster *self, BsCutPattern *pattern);

/* What is to be covered, and how many of each kind of board there are (as BsCutBoards.supply).
 * Patterns that hold more than that are set aside. */
void bs_cut_master_set (BsCutMaster *self, const int *demand, const int *supply);

/* Solves it by at most so many rounds of new patterns. TRUE when no pattern can lower it further,
 * or when its bound would not become larger, in whole units of the price. Returns FALSE also when
 * the progress says so. */
gboolean bs_cut_master_solve (BsCutMaster *self, guint max_rounds, const BsProgress *progress);

/* What the last solving proved; borrowed. */
const BsCutDuals *bs_cut_master_get_duals (const BsCutMaster *self);

/* The bound in whole units of the price: total / scale, rounded up. */
gint64 bs_cut_master_get_bound (const BsCutMaster *self);

/* The patterns and how often the solution uses them. */
guint bs_cut_master_get_n_patterns (const BsCutMaster *self);
BsCutPattern *bs_cut_master_get_pattern (const BsCutMaster *self, guint index);
double bs_cut_master_get_use (const BsCutMaster *self, guint index);

/* Gives back what the solver keeps for the calling thread, once no master of this thread is left.
 */
void bs_cut_master_leave_thread (void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCutMaster, bs_cut_master_free)

G_END_DECLS
