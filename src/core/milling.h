/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"
#include "core/working.h"

G_BEGIN_DECLS

/* What rough boards finish at: docs/timber-model.md, Milling. Sizes in mm. */

/* A rough board, or a piece of one. Thickness is what lies between its wide faces; bow, crook and
 * cup are the greatest distances from a straight line between ends or edges. Bow and cup have the
 * same sign when their middles stand out the same way; the signs of crook and twist do not matter.
 */
typedef struct
{
  double length, width, thickness;
  double bow, crook, cup; /* along the face, along the edge, across the face */
  double twist;           /* height of one corner with the other three down */
} BsRough;

BsRough bs_rough_of (const BsBoard *board);

/* Bow, crook, cup and twist are all known (not NAN). */
gboolean bs_rough_is_measured (const BsRough *self);

/* What the shop takes off and what its machines take. */
typedef struct
{
  double allowance;      /* off each face beyond flat, for tool marks */
  double edge_allowance; /* off each edge beyond straight */
  double end_trim;       /* off each end of a board, for checks */
  double kerf;
  double spring_per_m;  /* crook of a strip 1 m long once it is ripped, and not before; it goes with
                         * the square of the length */
  double jointer_width; /* 0: none */
  double planer_width;  /* 0: none */
  double shortest;      /* that may be fed to either */
  double thinnest;
} BsMillingShop;

/* Usual figures: common practice, no source, except shortest and thinnest: teaching practice, from
 * memory. With a plan its own allowance and machines. */
BsMillingShop bs_milling_shop_default (void);
BsMillingShop bs_milling_shop_of (const BsPlan *plan);

/* Spring to expect of the strips of a board: as much as it has crook itself. */
double bs_milling_spring_of (const BsRough *board);

/* Thickness lost to make both faces flat and parallel, allowances not counted: once for both faces,
 * because what the first loses in the middle the second loses at the ends. */
double bs_milling_loss (double bow, double cup, double twist);

/* A piece cut out of a board of even curvature: bow and crook go with the square of the length, cup
 * with that of the width, twist with length x width. Sizes above the board's are programmer
 * errors. */
BsRough bs_milling_piece (const BsRough *board, double length, double width);

/* What a piece finishes at when it is planed as it is; 0 when nothing is left. */
double bs_milling_thickness (const BsRough *piece, double allowance);

/* Width to saw a strip at, so that it is `width` wide once both edges are straight again. */
double bs_milling_strip (double width, double length, const BsMillingShop *shop);

/* Strips that a piece gives after one edge was made straight. */
int bs_milling_count (const BsRough *piece, double width, const BsMillingShop *shop);

/* What a board gives when it is crosscut, then ripped, then planed. */
typedef struct
{
  int n_lengths, n_strips;   /* pieces along, strips across each */
  double thickness;          /* that every strip reaches */
  double thickness_whole;    /* the board would reach, planed before any cut */
  double thickness_crosscut; /* its pieces would reach, planed before they are ripped */
  double yield;              /* volume of finished strips over that of the board */
} BsMillingYield;

/* For strips `width` wide and `length` long, finished. */
BsMillingYield bs_milling_yield (const BsRough *board, double length, double width,
                                 const BsMillingShop *shop);

/* What to heed before a piece is milled; flags. */
typedef enum
{
  BS_MILLING_WIDE_FOR_JOINTER = 1 << 0, /* or there is none */
  BS_MILLING_WIDE_FOR_PLANER = 1 << 1,  /* or there is none */
  BS_MILLING_SHORT = 1 << 2,
  BS_MILLING_THIN = 1 << 3,    /* once it is flat */
  BS_MILLING_CROOKED = 1 << 4, /* no straight edge for the fence of the saw */
  BS_MILLING_ROCKS = 1 << 5,   /* no flat face for the table of the saw */
} BsMillingCautions;

#define BS_N_MILLING_CAUTIONS 6

BsMillingCautions bs_milling_cautions (const BsRough *piece, const BsMillingShop *shop);

/* How the thickness of a piece came about. */
void bs_milling_explain (const BsRough *piece, double allowance, BsWorking *why);

G_END_DECLS
