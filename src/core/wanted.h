/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting.h"
#include "core/milling-need.h"
#include "core/plan.h"

G_BEGIN_DECLS

/* What a plan still has to be given wood for: docs/cutting-model.md, What is wanted. Sizes in mm.
 */

/* Pieces that are sawn alike: laminations that no board and no cut is named for, or a kind of part.
 */
typedef struct
{
  gboolean is_lamination;
  const char *name;  /* a lamination's label, or the part's name; NULL: not there yet, or unnamed */
  const char *wood;  /* id; NULL: not said */
  GPtrArray *pieces; /* char *, borrowed: the id that the cut of each piece will name; the spare
                      * ones come last and have none */
  int needed;        /* pieces->len, or laminations that are not there yet */
  int count;         /* with the spare ones */
  double length, width, thickness; /* of the largest, milled; thickness between its wide faces */
  BsMillingNeed need;              /* for a board that gives this piece only */
  double sawn_width;               /* of one strip */
  int clear_faces, clear_edges;
  gboolean is_on_show;
} BsWant;

/* BsWant, in the order of the plan, laminations first. The texts are the plan's. */
GArray *bs_wanted_new (const BsPlan *plan);

/* Whether its pieces may as well be twice as many and half as thick: parts, none of which is cut;
 * and laminations on edge, which then lie side by side in the slab. Within core/limits.h. */
gboolean bs_want_can_be_layers (const BsWant *self, const BsPlan *plan);

/* The wish whose need it is, for the workings. */
BsMillingWish bs_want_get_wish (const BsWant *self, const GArray *wanted, const BsPlan *plan);

G_END_DECLS
