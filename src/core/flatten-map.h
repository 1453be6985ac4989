/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"

G_BEGIN_DECLS

/* How much comes off each face, and where: docs/flattening-model.md, "Orders of work". */

/* A spot where much comes off. */
typedef struct
{
  int place;    /* of the lamination in the order */
  double x, y;  /* mm, in the slab's frame */
  double depth; /* mm that come off, allowance included */
} BsDeepSpot;

#define BS_N_DEEP_SPOTS 3

/* Those of a face, deepest first, one of a lamination; none of a lamination from which no more than
 * the allowance comes off. */
typedef struct
{
  guint n;
  BsDeepSpot spots[BS_N_DEEP_SPOTS];
} BsDeepSpots;

typedef struct
{
  BsFlattenWork work;
  double thickness;        /* mm, allowances taken off; NAN and no cells as in BsFlattenResult */
  double slope_x, slope_y; /* of the finished underside: z = slope_x x + slope_y y + offset */
  double offset;
  guint n_x, n_y;        /* cells along x and y */
  double cell_x, cell_y; /* their size, mm */
  double *top;       /* n_y rows of n_x: mm off at the middle of the cell, allowance included; */
  double *underside; /* NAN where no lamination is */
  double top_mean, underside_mean; /* over the cells with wood */
  double deepest;                  /* most that comes off either face, allowance included */
  BsDeepSpots deep_top, deep_underside;
} BsFlattenMap;

BsFlattenMap *bs_flatten_map_new (const BsStack *stack, BsFlattenWork work, guint n_x, guint n_y);
void bs_flatten_map_free (BsFlattenMap *self);

/* In how many packs of neighbours a slab must be flattened when none may be wider than this: 1 when
 * it goes through whole, 0 when one lamination alone is too wide, or when there is no planer. */
int bs_flatten_packs_for_planer (const BsStack *stack, double planer_width);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsFlattenMap, bs_flatten_map_free)

G_END_DECLS
