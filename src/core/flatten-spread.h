/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"

G_BEGIN_DECLS

/* How sure the thickness after flattening is: docs/flattening-model.md, "How sure". What was
 * measured and how the laminations come to lie in the press both spread; many slabs are drawn and
 * flattened, by the order of work of the plan. */
typedef struct
{
  BsUncertainty deviation;
  guint n_draws; /* an even number, at least 2 */
  guint64 seed;
} BsFlattenSpread;

/* The plan's own deviations, 2,000 draws. */
BsFlattenSpread bs_flatten_spread_of (const BsPlan *plan);

#define BS_N_ODDS_BINS 24

/* Thicknesses that are reached in so many of a hundred slabs, mm; NAN as in BsFlattenResult. */
typedef struct
{
  double at_50_pct;
  double at_90_pct;
  double at_95_pct;
  double
      wanted_pct; /* slabs of a hundred that are at least as thick as the plan wants; NAN alike */
  double least, most;         /* of all slabs drawn */
  guint bins[BS_N_ODDS_BINS]; /* slabs in equal steps from least to most */
} BsFlattenOdds;

/* Pure: the same stack, spread and seed give the same numbers. */
BsFlattenOdds bs_flatten_odds (const BsStack *stack, const BsFlattenSpread *spread);

/* The height that all laminations must be milled to, warped as they are, for a slab of at least
 * this thickness in 95 of a hundred. */
double bs_flatten_height_needed (const BsStack *stack, const BsFlattenSpread *spread,
                                 double thickness);

G_END_DECLS
