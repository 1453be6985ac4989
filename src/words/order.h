/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order.h"

G_BEGIN_DECLS

/* Sentences on orders. All char * are the caller's. */

/* How much matters: the names to choose from, message ids in this context, NULL-terminated. */
#define BS_WORDS_WISH_CONTEXT "how much something matters"
extern const char *const bs_words_wishes[];

/* "A1 stays at place 3". */
char *bs_words_pin (const BsPin *pin, const BsPlan *plan);

/* Points: "24.3". */
char *bs_words_order_points (gint32 cost);

/* How good an order of that cost is known to be: "No order can be more than 0.7 % better." bound:
 * no order costs less; 0 when nothing is known. */
char *bs_words_order_quality (gint32 cost, gint32 bound);

/* Why the lamination at a place stands there: the least harmful change, and what it would cost. */
char *bs_words_order_change (const BsOrderProblem *problem, const BsOrderResult *result,
                             guint place);

/* What it takes to lay the slab of one plan in the order of another: how many move, are turned,
 * come from the rack and go there. */
char *bs_words_order_moves (const BsPlan *before, const BsPlan *after);

/* The laminations from front to back, each with how it lies. */
char *bs_words_order_listing (const BsPlan *plan);

G_END_DECLS
