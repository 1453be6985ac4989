/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"
#include "core/working.h"

G_BEGIN_DECLS

/* Woods side by side for one slab: docs/timber-model.md, Woods. Says which fit what the person
 * wants and why the others do not, and never which is the right one. */

/* Side hardness (N) that suits a surface to be hit and planed again by hand: softer dents and wants
 * flattening often, harder is heavy to mill and dents the work instead. Common practice, no source;
 * stands in where the plan asks no range. */
#define BS_HARDNESS_LOW_N 3000.0
#define BS_HARDNESS_HIGH_N 4200.0

/* In the middle of the slab, to see how it sags, N. */
#define BS_WOOD_SAG_LOAD_N 1000.0

/* What is wanted of a wood, and of how much of it. NAN: not asked, unless said otherwise. */
typedef struct
{
  double length, width, thickness; /* of the finished slab, mm */
  double gross;                    /* rough lumber that it takes, mm3 */
  double dry_pct, damp_pct;        /* moisture over the year */
  double ring_cos2;                /* mean over the slab, see core/movement.h; NAN: not known */
  double hardness_low_n, hardness_high_n;
  gboolean is_hardness_usual; /* nobody asked: common practice stands in */
  BsWoodLimits limits;
} BsWoodWish;

/* Of a stack's plan: its sizes, its climate, what it asks of the wood, and the rings of the
 * laminations on it. Without boards the rough lumber is twice the slab (common practice, no
 * source). */
BsWoodWish bs_wood_wish_of (const BsStack *stack);

/* Why a wood does not fit; flags. */
typedef enum
{
  BS_UNFIT_SOFT = 1 << 0,
  BS_UNFIT_HARD = 1 << 1,
  BS_UNFIT_HARDNESS_UNKNOWN = 1 << 2,
  BS_UNFIT_HEAVY = 1 << 3,
  BS_UNFIT_MOVES = 1 << 4,
  BS_UNFIT_DEAR = 1 << 5,
  BS_UNFIT_BOND = 1 << 6,
  BS_UNFIT_THIN = 1 << 7, /* not to be had thick enough */
} BsUnfit;

#define BS_N_UNFITS 8

/* How hard it is to plane by hand, by its side hardness: up to 3000, 4200, 6500 N and above. Common
 * practice, no source. */
typedef enum
{
  BS_PLANING_UNKNOWN = -1,
  BS_PLANING_LIGHT,
  BS_PLANING_MODERATE,
  BS_PLANING_HARD,
  BS_PLANING_VERY_HARD,
} BsPlaning;

typedef struct
{
  const BsWood *wood; /* borrowed */
  double hardness_n;
  gboolean is_hardness_estimated; /* from the specific gravity, for want of a figure */
  double density;                 /* kg/m3, at the year's middle moisture */
  double slab_kg;
  double moe_mpa;
  double sag_per_kn;    /* mm at the middle of the slab, lying on its ends, for 1 kN there */
  double movement;      /* of the slab's width over the year, mm */
  double movement_low;  /* were all its rings radial, */
  double movement_high; /* or tangential; both the same as movement when rings are known */
  double cost_minor;    /* of the rough lumber */
  double thickest;      /* to be had, mm; NAN: not known */
  BsPlaning planing;
  BsUnfit unfit; /* 0: fits all that was asked and is known */
} BsWoodCard;

/* `thickest` is the thickest lumber of this wood to be had (mm), NAN when that is not known. */
BsWoodCard bs_wood_compare (const BsWood *wood, const BsWoodWish *wish, double thickest);

/* The thickest of the plan's boards and of what its yards offer of a wood, mm; NAN when there is
 * none. */
double bs_wood_thickest_lumber (const BsPlan *plan, const char *wood);

/* Side hardness (N) to expect of a specific gravity at 12 %.
 * Source: Wood Handbook (FPL-GTR-190, 2010), table 5-11a; from memory. */
double bs_wood_hardness_estimate (double sg_12, gboolean is_hardwood);

/* How a card's numbers came about: core/wood-explain.c. */
void bs_wood_explain_hardness (const BsWoodCard *card, const BsWoodWish *wish, BsWorking *why);
void bs_wood_explain_mass (const BsWoodCard *card, const BsWoodWish *wish, BsWorking *why);
void bs_wood_explain_sag (const BsWoodCard *card, const BsWoodWish *wish, BsWorking *why);
void bs_wood_explain_movement (const BsWoodCard *card, const BsWoodWish *wish, BsWorking *why);
void bs_wood_explain_cost (const BsWoodCard *card, const BsWoodWish *wish, const char *currency,
                           BsWorking *why);

G_END_DECLS
