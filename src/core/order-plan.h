/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-wishes.h"
#include "core/order.h"

G_BEGIN_DECLS

/* From a plan to an order problem and back. */

/* As many places as the slab has laminations, which are the candidates, from the front; then those
 * of the rack when the plan wishes that they may be used. NULL with a BS_ORDER_ERROR when the
 * slab has no laminations or the pins cannot be kept. */
BsOrderProblem *bs_order_problem_new_for_plan (const BsPlan *plan, GError **error);

/* Whether two plans make the same problem: what is found for the one is found for the other. How
 * the laminations are arranged at present does not matter. */
gboolean bs_order_is_same_problem (const BsPlan *a, const BsPlan *b);

/* The order as it is in the plan. Free with g_free. */
BsOrderPlace *bs_order_present (const BsPlan *plan);

/* What it costs, as the plan's wishes count it; pins or not. */
BsOrderCost bs_order_present_cost (const BsPlan *plan);

/* An order that was found, each lamination at the start along the slab that it has now. Borrows the
 * problem's ids; [result->n_places], free with g_free. */
BsPlacement *bs_order_get_placements (const BsOrderProblem *problem, const BsOrderResult *result);

G_END_DECLS
