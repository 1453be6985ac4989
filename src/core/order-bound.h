/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-layers.h"
#include "core/progress.h"

G_BEGIN_DECLS

/* A lower bound on the cost of every order: the cheapest row in which laminations may be used more
 * than once, with a price on each use that is raised for those used too often and lowered for those
 * left out (Lagrangean relaxation). i - j - i is not allowed. Whatever the prices are, the bound
 * holds; the better they are, the closer it comes.
 *
 * Source: M. Held, R. M. Karp, "The traveling-salesman problem and minimum spanning trees: part
 * II", Mathematical Programming 1 (1971) 6-25 (prices and their ascent); N. Christofides, A.
 * Mingozzi, P. Toth, "State-space relaxation procedures for the computation of bounds to routing
 * problems", Networks 11 (1981) 145-164 (no i - j - i). */

/* Improves the prices in n_steps steps, or fewer when nothing is left to gain, and takes arcs away
 * through which no order cheaper than `cost` leads. Returns the best bound, at most `cost`; it
 * holds however early it is stopped. */
gint32 bs_order_bound (BsOrderLayers *layers, gint32 cost, guint n_steps,
                       const BsProgress *progress);

G_END_DECLS
