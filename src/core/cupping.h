/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"
#include "core/working.h"

G_BEGIN_DECLS

/* How a slab of laminations on flat goes hollow as it dries or swells, because wood moves more
 * along its rings than across them: docs/timber-model.md, Cup. Sizes in mm; a cup is > 0 when the
 * middle stands out towards +z, as in BsLamination. */

/* Cup of a board that was flat: a straight line across it, `width` long, whose middle lies at
 * (-pith_y, -pith_z) from the pith, after the wood has changed by these ratios (see
 * core/movement.h) radially and tangentially. Free shrinkage about the pith; exact. */
double bs_cupping_board (double width, double pith_y, double pith_z, double radial,
                         double tangential);

/* Ways to lay the laminations. */
typedef enum
{
  BS_CUP_AS_LAID,
  BS_CUP_SAME_SIDE,   /* the same laminations, all hearts the same way */
  BS_CUP_ALTERNATING, /* by turns */
} BsCupLayup;

#define BS_N_CUP_LAYUPS 3

/* How a way comes out. */
typedef struct
{
  double cup;   /* greatest departure from the line between the slab's edges, signed */
  double waves; /* from the highest to the lowest spot: what flattening would take off */
} BsCup;

/* All at the moisture at which the slab differs most from gluing. */
typedef struct
{
  gboolean is_on_flat; /* else nothing of the following is told */
  double moisture_pct;
  BsCup as_laid;
  BsCup same_side;
  BsCup alternating;
  double greatest_board; /* greatest cup of one lamination, by size */
  guint n_no_rings;      /* laminations whose pith is not known; they count as flat */
} BsCupping;

void bs_cupping_slab (const BsStack *stack, double dry_pct, double damp_pct, BsCupping *cupping);

/* A spot across the slab, and how high it stands over the line between the slab's edges. */
typedef struct
{
  double y, z;
} BsCupSpot;

/* The slab's shape at a moisture: BsCupSpot at the edges and in the middle of each lamination, from
 * the front; one spot when there are none. The caller's. */
GArray *bs_cupping_profile (const BsStack *stack, double to_pct, BsCupLayup layup);

void bs_cupping_explain (const BsCupping *cupping, BsWorking *why);

G_END_DECLS
