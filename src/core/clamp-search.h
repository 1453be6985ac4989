/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/clamp-influence.h"
#include "core/clamp-layout.h"

G_BEGIN_DECLS

/* The search for a layout of a given number of clamps, by sums of influences. */

/* One clamp that reaches. */
typedef struct
{
  guint kind;
  double cap; /* most force, N */
} BsClampOwned;

typedef struct
{
  const BsLayoutProblem *problem;
  BsClampInfluence *influence;
  GArray *owned; /* BsClampOwned, all that reach, strongest first */
  double head;   /* of the narrowest, mm */

  guint n;                  /* clamps of the layout at hand */
  double *x, *force;        /* from left to right */
  guint *of_owned;          /* which of those owned each is */
  double *pressure, *trial; /* MPa at all spots: of the layout at hand, and of a change */
} BsClampSearch;

/* Lists the clamps that reach; the rest waits for the influences. Borrows the problem. */
void bs_clamp_search_init (BsClampSearch *self, const BsLayoutProblem *problem);
void bs_clamp_search_clear (BsClampSearch *self);

/* Takes the influences over. */
void bs_clamp_search_take_influence (BsClampSearch *self, BsClampInfluence *influence);

/* The most that one of those owned may press, N. */
double bs_clamp_search_cap (const BsClampSearch *self, guint owned);

/* The least number whose forces together press the largest glue line (mm2) enough on the mean; 0:
 * not even all do. And as many as find room side by side. */
guint bs_clamp_search_count_by_force (const BsClampSearch *self, double area);
guint bs_clamp_search_count_by_room (const BsClampSearch *self);

/* Makes the best layout of the n strongest clamps, evenly spread if that does. Returns how good it
 * is: above zero, the pressure of the weakest spot (MPa) before the clamps are eased to what is
 * wanted; below zero, what is missing, as a sum of squares. */
double bs_clamp_search_draft (BsClampSearch *self, guint n);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BsClampSearch, bs_clamp_search_clear)

G_END_DECLS
