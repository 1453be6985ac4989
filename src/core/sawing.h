/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting.h"

G_BEGIN_DECLS

/* How one board is sawn when its pieces lie at given places: docs/cutting-model.md, Sawing. mm; x
 * along the grain from the left end, y across from the front edge. */

typedef struct
{
  double x, y, length, width;
} BsSawPiece;

/* One straight pass of the saw. */
typedef struct
{
  gboolean is_rip; /* along the grain, at a y; else across it, at an x */
  double at;       /* near side of the kerf */
  double width;    /* of the kerf, as far as there is wood */
  double from, to; /* its ends on the other axis */
} BsSawPass;

/* Why no saw can cut pieces like that; of the first two that are in each other's way. */
typedef enum
{
  BS_SAW_FAULT_NONE,
  BS_SAW_FAULT_OFF_BOARD,   /* `piece` lies over an end or an edge */
  BS_SAW_FAULT_NO_KERF,     /* `piece` and `other` overlap, or the kerf finds no room between */
  BS_SAW_FAULT_NOT_THROUGH, /* no crosscuts or rip cuts through the whole board free them */
} BsSawFault;

typedef struct
{
  double length, width;
  double end_trim; /* nothing is promised from it */
  double kerf;
  double min_offcut;
  guint n_defects;
  const BsCutDefect *defects; /* borrowed: what an offcut must be free of */
} BsSawBoard;

/* Areas in mm2; length x width = pieces + kerfs + offcut + waste. */
typedef struct
{
  double length, width;
  BsSawFault fault;
  guint piece, other; /* see BsSawFault */
  BsCutOrder order;
  GArray *passes;                /* BsSawPass in the order of work; empty when there is a fault */
  guint n_first;                 /* of them go through the whole board */
  double offcut_from, offcut_to; /* along x, full width; equal when there is none worth keeping */
  double piece_area, kerf_area, offcut_area, waste_area;
} BsSawing;

/* Crosscut first where that works, since shorter pieces lose less to bow and leave the longer
 * offcut; else ripped first. A board without pieces is left whole: an offcut. */
BsSawing *bs_sawing_new (const BsSawBoard *board, const BsSawPiece *pieces, guint n_pieces);
void bs_sawing_free (BsSawing *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsSawing, bs_sawing_free)

G_END_DECLS
