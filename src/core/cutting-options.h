/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-bound.h"

G_BEGIN_DECLS

/* All patterns that a plan may hold whose price is not above a limit: docs/cutting-model.md, Proof.
 */

/* One kind of board and how much of each type it covers; of several ways to cut that, the one with
 * the least net area, then the greatest score. */
typedef struct
{
  guint sheet;
  gint64 loss; /* how much the board costs more than what it covers is worth under the duals */
  gint64 net_area, score;
  guint counts; /* where in BsCutOptions.counts */
  guint steps;  /* where in BsCutOptions.steps, and how many */
  guint n_steps;
} BsCutOption;

typedef struct
{
  const BsCutModel *model;
  GArray *options; /* BsCutOption */
  GArray *counts;  /* guint8, n_types for each option */
  GArray *steps;
  GPtrArray *contents;
} BsCutOptions;

/* Which ones to list. */
typedef struct
{
  const int *demand; /* at most 127 of each type */
  const int *supply;
  const gboolean *is_left_out; /* for each kind of board: no plan that is looked for takes it */
  const BsCutDuals *duals;     /* no board of the supply is worth more than its price and rent */
  gint64 most_loss;
  gboolean only_full; /* none that more could be added to, which may have longer offcuts */
  guint most_options, most_nodes;
} BsCutOptionsWanted;

/* NULL when there are more than most_options, or more than most_nodes to look at. */
BsCutOptions *bs_cut_options_new (const BsCutModel *model, BsCutOracle *oracle,
                                  const BsCutOptionsWanted *wanted);
void bs_cut_options_free (BsCutOptions *self);

static inline const guint8 *
bs_cut_options_counts (const BsCutOptions *self, const BsCutOption *option)
{
  return &g_array_index (self->counts, guint8, option->counts);
}

BsCutPattern *bs_cut_options_pattern (const BsCutOptions *self, const BsCutOption *option);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCutOptions, bs_cut_options_free)

G_END_DECLS
