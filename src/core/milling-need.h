/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/lumber-sizes.h"
#include "core/milling.h"

G_BEGIN_DECLS

/* Which rough size must be bought for a lamination that is wanted: docs/timber-model.md, What to
 * buy. Sizes in mm. */

typedef struct
{
  double mean, deviation;
} BsScatter;

/* How lumber of a yard is warped as it comes: departures without sign, bow and crook over 2 m, cup
 * over 200 mm, twist over both, and how far its thickness falls short of what it is sold as. */
typedef struct
{
  BsScatter bow, crook, cup, twist, thickness;
} BsWarpHabit;

/* Planning figures of this program, no source: measure some boards of your own yard. */
BsWarpHabit bs_warp_habit_default (void);

/* Those of the boards in a plan's rack whose warp was measured, when they are enough to tell (5);
 * else the planning figures. */
BsWarpHabit bs_warp_habit_of (const BsPlan *plan);

/* Mean and standard deviation of measured boards; the thickness stays as it is in `habit`. FALSE,
 * and nothing changed, for less than two. */
gboolean bs_warp_habit_measure (BsWarpHabit *habit, const BsRough *boards, guint n);

/* Laminations of one size, milled: thickness between the wide faces, width between the edges. */
typedef struct
{
  double thickness, width, length;
  int count;         /* of them in all, at least 1 */
  int strips;        /* from one board, side by side, at least 1 */
  double confidence; /* that all of them come out of the boards, 0.5 to less than 1 */
} BsMillingWish;

typedef struct
{
  double thickness, width, length; /* of a rough board, least */
  double loss, loss_deviation;     /* in thickness, allowances not counted: mean and standard
                                    * deviation of single pieces */
  double crook, crook_deviation;   /* likewise */
  double deviations;               /* that are provided for, in thickness and in width */
} BsMillingNeed;

/* Crosscut, ripped and then planed. Bow, cup and half of the twist count in full, which is never
 * too little. */
void bs_milling_need (const BsMillingWish *wish, const BsWarpHabit *habit,
                      const BsMillingShop *shop, BsMillingNeed *need);

/* How the thickness, and how the width came about. */
void bs_milling_need_explain (const BsMillingNeed *need, const BsMillingWish *wish,
                              const BsMillingShop *shop, BsWorking *why);
void bs_milling_need_explain_width (const BsMillingNeed *need, const BsMillingWish *wish,
                                    const BsMillingShop *shop, BsWorking *why);

/* A piece made of one or more layers glued face to face, out of the thinnest lumber of a
 * series that will do. */
typedef struct
{
  int layers;
  int row;            /* of the series; -1: none is thick enough */
  BsMillingNeed need; /* of one layer */
  double volume;      /* rough, of one piece with all its layers, mm3; NAN: no row */
  double glue_area;   /* between its layers, mm2 */
} BsLayerWay;

/* `ratio` is what the lumber changed since it was sold (bs_lumber_least). */
BsLayerWay bs_milling_layers (int layers, const BsMillingWish *wish, const BsWarpHabit *habit,
                              const BsMillingShop *shop, const BsLumberSeries *series,
                              double ratio);

/* Wood, and glue between the layers, of one piece, in minor units; NAN when a price that it
 * takes is not known (NAN). The wood's price is that of the row found. */
double bs_milling_layers_cost (const BsLayerWay *way, double wood_minor_per_m3,
                               double glue_minor_per_m2);

G_END_DECLS
