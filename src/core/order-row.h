/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-table.h"

G_BEGIN_DECLS

/* A row of laminations in which stretches are replaced and priced quickly: what comes before a
 * stretch and after it is kept, so that only the stretch itself is gone through. */
typedef struct
{
  const BsOrderTable *table;
  guint n;
  guint *order; /* [n] */
  guint *idle;  /* [n_idle] candidates that are not in the row */
  guint n_idle;
  int *place_of; /* [candidate] its place in the row; of an idle one -1 - its position in idle */
  gint32 cost;
  BsOrderFour *until; /* [place] least cost of all up to this place, by its orientation */
  BsOrderFour *after; /* [place] least cost of all behind this place, by its orientation */
  guint *proposal;    /* [n] what stands at `from` to `to` in the proposal that is being priced */
  guint from, to;
  int entering;  /* position in idle of a candidate that the proposal brings in, or -1, */
  guint leaving; /* and the one that it sends away */
} BsOrderRow;

BsOrderRow *bs_order_row_new (const BsOrderTable *table, const guint *order);
void bs_order_row_free (BsOrderRow *self);

/* Begins anew with another order of the same table. */
void bs_order_row_set (BsOrderRow *self, const guint *order);

/* The proposals. Each is cheap, and is there until the next one. */

/* The `size` laminations from `first` on are taken out and put back so that they begin at `target`.
 */
void bs_order_row_propose_shift (BsOrderRow *self, guint first, guint size, guint target,
                                 gboolean is_reversed);
void bs_order_row_propose_reverse (BsOrderRow *self, guint first, guint last);
void bs_order_row_propose_swap (BsOrderRow *self, guint a, guint b);

/* The lamination at a place goes to the rack, an idle one comes in at another (or the same) place.
 */
void bs_order_row_propose_exchange (BsOrderRow *self, guint place, guint target, guint idle);

/* Whether the proposal keeps the pins to places and neighbours. */
gboolean bs_order_row_is_allowed (const BsOrderRow *self);

/* Least cost of the row with the proposal. */
gint32 bs_order_row_price (const BsOrderRow *self);

/* Takes the proposal, whose price is `cost`. */
void bs_order_row_take (BsOrderRow *self, gint32 cost);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsOrderRow, bs_order_row_free)

G_END_DECLS
