/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-table.h"
#include "core/progress.h"

G_BEGIN_DECLS

/* Good orders by annealing: laminations are moved about, and each row that comes of it is priced
 * with the best orientations for it. Deterministic for a seed and a number of moves.
 *
 * Source: S. Kirkpatrick, C. D. Gelatt, M. P. Vecchi, "Optimization by simulated annealing",
 * Science 220 (1983) 671-680; the last polish moves short stretches: I. Or's exchange, as in D. S.
 * Johnson, L. A. McGeoch, "The traveling salesman problem: a case study in local optimization"
 * (1997). */

/* A first order that keeps all pins: the pinned ones where they must stand, the other places filled
 * from the front with the candidate that fits best behind the one before. Returns its cost. */
gint32 bs_order_search_start (const BsOrderTable *table, guint *order);

/* Improves an order, in place, by so many moves from a temperature of `heat` (1: everything is
 * moved about, 0.1: only details) down; never makes it worse. Returns its cost. When asked to stop
 * it ends with the best order so far. */
gint32 bs_order_search_anneal (const BsOrderTable *table, guint64 seed, guint64 n_moves,
                               double heat, guint *order, const BsProgress *progress);

G_END_DECLS
