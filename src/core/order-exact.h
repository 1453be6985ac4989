/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-table.h"
#include "core/progress.h"

G_BEGIN_DECLS

#define BS_ORDER_EXACT_MOST 16 /* candidates: 17 MB and some 30 ms; each one more doubles both */

/* The cheapest order by dynamic programming over the sets of laminations laid so far.
 *
 * Source: M. Held, R. M. Karp, "A dynamic programming approach to sequencing problems", J. SIAM 10
 * (1962) 196-210; here with the orientation of the last lamination in the state.
 *
 * Returns FALSE, and leaves order as it is, when it was asked to stop. */
gboolean bs_order_exact (const BsOrderTable *table, guint *order, const BsProgress *progress);

G_END_DECLS
