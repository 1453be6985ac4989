/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-layers.h"
#include "core/progress.h"

G_BEGIN_DECLS

#define BS_ORDER_PROOF_MOST 128 /* candidates: their sets are two machine words */

/* Raises a bound, level by level, to the cost of the best order, and so proves that order or finds
 * a better one.
 *
 * Rows are built from the front, each remembering some of the laminations that it has used, and
 * given up when the relaxation of order-bound says that they cannot end below the level looked at.
 * Where the cheapest rows of a level still use a lamination twice, those between are told to
 * remember it. Source: R. Baldacci, A. Mingozzi, R. Roberti, "New route relaxation and pricing
 * strategies for the vehicle routing problem", Operations Research 59 (2011) 1269-1283 (memory by
 * neighbourhood); G. Righini, M. Salani, "New dynamic programming algorithms for the resource
 * constrained elementary shortest path problem", Networks 51 (2008) 155-170 (memory that grows). */
typedef struct _BsOrderProof BsOrderProof;

/* layers: with the prices and arcs that bs_order_bound left; borrowed, and not to be changed until
 * the proof is freed. cost, bound: what is known already. most_rows: 40 bytes each. */
BsOrderProof *bs_order_proof_new (BsOrderLayers *layers, gint32 cost, gint32 bound,
                                  guint most_rows);
void bs_order_proof_free (BsOrderProof *self);

/* Looks at the next level. *cost: the least cost known, of this table's orders or of others; when
 * an order that costs less is found it comes in `order` and its cost in *cost. *bound: the bound so
 * far; raised. FALSE when there is no more to gain: *bound is *cost, or most_rows were not enough,
 * or it was asked to stop. */
gboolean bs_order_proof_raise (BsOrderProof *self, guint *order, gint32 *cost, gint32 *bound,
                               const BsProgress *progress);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsOrderProof, bs_order_proof_free)

G_END_DECLS
