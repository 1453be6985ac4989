/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-rules.h"

G_BEGIN_DECLS

/* All costs of a problem for one planing direction, laid out for the searches.
 *
 * A node is a candidate in one orientation, numbered 4 x candidate + orientation. Four costs that
 * differ only in the right-hand orientation make a BsOrderFour, on which the compiler uses the
 * machine's vector registers. */
typedef gint32 BsOrderFour __attribute__ ((vector_size (16)));

typedef struct
{
  const BsOrderRules *rules; /* borrowed */
  guint n_candidates, n_places;
  int plane;
  gboolean is_mirrored; /* turning the whole slab end for end leaves every cost as it is */
  BsOrderFour *first;   /* [candidate] a node at the first place; NEVER if pinned away */
  BsOrderFour
      *arcs; /* [(left x n_candidates + right) x 4 + left orientation] joint and right node */
  BsOrderFour *last; /* [candidate] what a node at the last place costs besides */
} BsOrderTable;

BsOrderTable *bs_order_table_new (const BsOrderProblem *problem, const BsOrderRules *rules,
                                  int plane);
void bs_order_table_free (BsOrderTable *self);

static inline const BsOrderFour *
bs_order_table_arcs (const BsOrderTable *self, guint left, guint right)
{
  return &self->arcs[((gsize)left * self->n_candidates + right) * 4];
}

static inline BsOrderFour
bs_order_four_min (BsOrderFour a, BsOrderFour b)
{
  BsOrderFour is_less = a < b;

  return (a & is_less) | (b & ~is_less);
}

static inline gint32
bs_order_four_least (BsOrderFour a)
{
  return MIN (MIN (a[0], a[1]), MIN (a[2], a[3]));
}

/* One step along the row: the least cost of ending in each orientation of the right-hand
 * lamination, given that of ending in each of the left one. */
static inline BsOrderFour
bs_order_four_step (BsOrderFour value, const BsOrderFour arcs[4])
{
  BsOrderFour a = bs_order_four_min (arcs[0] + value[0], arcs[1] + value[1]);
  BsOrderFour b = bs_order_four_min (arcs[2] + value[2], arcs[3] + value[3]);

  return bs_order_four_min (a, b);
}

/* The best orientations of a given order of candidates; returns the cost. orientations may be NULL.
 */
gint32 bs_order_table_orient (const BsOrderTable *self, const guint *order,
                              BsOrientation *orientations);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsOrderTable, bs_order_table_free)

G_END_DECLS
