/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"

G_BEGIN_DECLS

/* How sure the thickness after flattening is: docs/flattening-model.md, "How sure". What was
 * measured and how the laminations come to lie in the press both spread; many slabs are drawn and
 * flattened. */

/* Standard deviations, mm. */
typedef struct
{
  double height; /* of the measured height at each end of a lamination */
  double warp;   /* of the measured crook, cup (on flat) and twist */
  double offset; /* of a lamination up or down against where the alignment wants it */
  double rock;   /* of its right end against its left one */
  guint n_draws; /* an even number */
  guint64 seed;
} BsFlattenSpread;

/* Common practice, no source: heights by a caliper, warp by a straightedge and feelers, laminations
 * tapped level by hand. 2000 draws. */
BsFlattenSpread bs_flatten_spread_default (void);

/* Thicknesses that are reached in so many of a hundred slabs, mm; NAN as in BsFlattenResult. */
typedef struct
{
  double at_50_pct;
  double at_90_pct;
  double at_95_pct;
} BsFlattenOdds;

/* Pure: the same stack, spread and seed give the same numbers. */
BsFlattenOdds bs_flatten_odds (const BsStack *stack, const BsFlattenSpread *spread);

/* The height that all laminations must be milled to, warped as they are, for a slab of at least
 * this thickness in 95 of a hundred. */
double bs_flatten_height_needed (const BsStack *stack, const BsFlattenSpread *spread,
                                 double thickness);

G_END_DECLS
