/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-table.h"

G_BEGIN_DECLS

/* The places of a row as layers of a graph, in which the relaxed rows of order-bound and
 * order-proof are paths.
 *
 * A stand is a candidate; one with pinned neighbours is two stands, which read its row of partners
 * forwards and backwards, so that arcs alone keep partners together. In each layer each stand has a
 * BsOrderFour of values, one an orientation. With the values go the best ones that come from
 * another candidate, so that a row need not return at once to the one it came from. */
typedef struct
{
  BsOrderFour best;   /* least cost of reaching (or leaving) the node */
  BsOrderFour via;    /* candidate at the next place on that way, by orientation; -1: none */
  BsOrderFour second; /* least cost by way of any other candidate */
} BsOrderReach;

typedef struct
{
  const BsOrderTable *table; /* borrowed */
  guint n_stands, n_words;
  guint *candidate_of; /* [stand] */
  gint32 *prices;      /* [candidate] added to the cost of each use */
  guint64 *arcs;       /* [(place x n_stands + right) x n_words] stands that may come before */
  BsOrderReach
      *reach; /* [place x n_stands + stand] from the front up to the stand, its price included */
  BsOrderReach
      *leave; /* [place x n_stands + stand] from the stand to the back, its price left out */
} BsOrderLayers;

BsOrderLayers *bs_order_layers_new (const BsOrderTable *table);
void bs_order_layers_free (BsOrderLayers *self);

/* Fills reach; returns the cost of the cheapest row, all prices taken off again: a lower bound on
 * every order that uses only the arcs left. */
gint32 bs_order_layers_forward (BsOrderLayers *self);

/* Fills leave. */
void bs_order_layers_backward (BsOrderLayers *self);

/* After forward: the candidates of the cheapest row. */
void bs_order_layers_trace (const BsOrderLayers *self, guint *row);

/* After forward and backward: takes away the arcs through which every row costs `cost` or more.
 * Returns how many are left. */
gsize bs_order_layers_prune (BsOrderLayers *self, gint32 cost);

gint32 bs_order_layers_sum_prices (const BsOrderLayers *self);

static inline gsize
bs_order_layers_index (const BsOrderLayers *self, guint place, guint stand)
{
  return (gsize)place * self->n_stands + stand;
}

/* Of the ways to a node, the least that does not come by `candidate`. */
static inline BsOrderFour
bs_order_reach_except (const BsOrderReach *self, guint candidate)
{
  BsOrderFour is_same = self->via == (gint32)candidate;

  return (self->second & is_same) | (self->best & ~is_same);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsOrderLayers, bs_order_layers_free)

G_END_DECLS
