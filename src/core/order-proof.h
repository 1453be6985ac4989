/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-layers.h"
#include "core/progress.h"

G_BEGIN_DECLS

#define BS_ORDER_PROOF_MOST 128 /* candidates: their sets are two machine words */

/* Raises a bound to the cost of the best order, and so proves that order, or finds a better one.
 *
 * Rows are built from the front, each remembering some of the laminations that it has used, and
 * given up when the relaxation of order-bound says that they cannot end below the level looked at.
 * Where the cheapest row of a level still uses a lamination twice, those between are told to
 * remember it. Source: R. Baldacci, A. Mingozzi, R. Roberti, "New route relaxation and pricing
 * strategies for the vehicle routing problem", Operations Research 59 (2011) 1269-1283 (memory by
 * neighbourhood); G. Righini, M. Salani, "New dynamic programming algorithms for the resource
 * constrained elementary shortest path problem", Networks 51 (2008) 155-170 (memory that grows).
 *
 * layers: with the prices and arcs that bs_order_bound left. order and *cost: the best one known;
 * replaced when a better one is found. bound: what is known already. most_rows: gives up when a
 * level needs more (48 bytes each). Returns the bound reached; equal to *cost when proved. */
gint32 bs_order_prove (BsOrderLayers *layers, guint *order, gint32 *cost, gint32 bound,
                       guint most_rows, const BsProgress *progress);

G_END_DECLS
