/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/pressing.h"
#include "core/progress.h"

G_BEGIN_DECLS

/* Where to put clamps and how hard to tighten them, so that every spot of every glue line is
 * pressed enough and none too much, with as few clamps as can be: docs/pressing-model.md, Layout.
 */

typedef struct
{
  guint count;
  double max_force;   /* N, above zero */
  double reach;       /* greatest distance between the heads, mm */
  double head_width;  /* along x, mm */
  double head_height; /* along z, mm */
} BsLayoutKind;

typedef struct
{
  BsPressStack stack;
  guint n_kinds;
  const BsLayoutKind *kinds; /* those owned */
  double reach_needed;       /* mm */
  double least_mpa;          /* wanted everywhere: the adhesive's least */
  double most_mpa;       /* nowhere more: strength of the wood across the grain; INFINITY unknown */
  double bearing_mpa;    /* under a head no more than this; INFINITY unknown */
  double bearing_height; /* of the outer faces along z, mm: a taller head bears on this only */
  guint at_least;        /* clamps: layouts with fewer are not tried */
} BsLayoutProblem;

typedef struct
{
  guint kind;
  double x, force;
  gboolean is_above; /* above the slab, else below: by turns, so that their pull does not cup it */
  guint turn;        /* in the order of tightening, from 0: the middle first, then outwards by
                      * turns, so that bows close from the middle and glue can run to the ends.
                      * Common practice, no source */
} BsLayoutClamp;

typedef enum
{
  BS_LAYOUT_REACHED,   /* every spot is pressed enough and none too much */
  BS_LAYOUT_SHORT,     /* the best that the clamps owned can do is too little somewhere */
  BS_LAYOUT_CRUSHES,   /* enough everywhere only by pressing too hard somewhere */
  BS_LAYOUT_NO_CLAMPS, /* fewer than two clamps reach; no layout */
  BS_LAYOUT_STOPPED,   /* progress asked to stop; no layout */
} BsLayoutStatus;

typedef struct
{
  BsLayoutStatus status;
  guint n_clamps;
  BsLayoutClamp *clamps;          /* from left to right */
  BsPressResult pressures;        /* of this layout, with all that opens */
  double least_mpa, greatest_mpa; /* of all glue lines, where they count */
  double mean_mpa;                /* of the largest glue line; */
  double mean_possible_mpa;       /* and with every clamp that reaches at its most */
  guint fewest_by_force; /* no layout with fewer clamps can do, since force / area would be too
                          * little; 0: not even all of them can */
  guint n_reaching;      /* clamps owned whose reach suffices */
} BsLayout;

void bs_layout_clear (BsLayout *self);

/* Of all its clamps, N. */
double bs_layout_sum_forces (const BsLayout *self);

/* Finds it; `layout` is overwritten, to be cleared by the caller. Spread evenly if that does, else
 * with places moved. FALSE with an error of BS_PRESS_ERROR for a stack that cannot be pressed. */
gboolean bs_layout_find (const BsLayoutProblem *problem, const BsProgress *progress,
                         BsLayout *layout, GError **error);

/* Fills in the order of tightening of clamps that go from left to right. */
void bs_layout_order_turns (BsLayoutClamp *clamps, guint n);

/* The other way round: presses with given clamps, from left to right, by a solver of the problem's
 * stack, and judges them as the search would. `layout` is overwritten, to be cleared by the caller.
 * FALSE with an error of BS_PRESS_ERROR for a clamp off the work. */
gboolean bs_layout_press (const BsLayoutProblem *problem, BsPressing *pressing,
                          const BsLayoutClamp *clamps, guint n, BsLayout *layout, GError **error);

/* The clamps of a layout as bs_pressing_solve wants them. Free with g_free. */
BsPressClamp *bs_layout_press_clamps (const BsLayout *self, const BsLayoutProblem *problem);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BsLayout, bs_layout_clear)

G_END_DECLS
