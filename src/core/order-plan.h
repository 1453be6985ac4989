/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-wishes.h"
#include "core/order.h"

G_BEGIN_DECLS

/* From a plan to an order problem and back. */

/* A BsOrderPin that names its laminations by id. */
typedef struct
{
  BsOrderPinKind kind;
  GRefString *lamination;
  guint place;       /* BS_ORDER_PIN_PLACE, from 0 */
  GRefString *other; /* BS_ORDER_PIN_NEIGHBOURS */
  BsFace face;       /* BS_ORDER_PIN_FACE_UP: top or underside as marked */
} BsOrderPlanPin;

typedef struct
{
  BsOrderWishes wishes;
  const BsOrderPlanPin *pins;
  guint n_pins;
  gboolean uses_rack; /* laminations in the rack may be exchanged for those in the slab */
  guint n_places;     /* laminations in the slab; 0: as many as now */
} BsOrderRequest;

/* The candidates are the laminations of the slab, from the front, and then those of the rack when
 * they are to be used. NULL with a BS_ORDER_ERROR when a pin names a lamination that is not among
 * them. */
BsOrderProblem *bs_order_problem_new_for_plan (const BsPlan *plan, const BsOrderRequest *request,
                                               GError **error);

/* The order as it is in the plan. Free with g_free. */
BsOrderPlace *bs_order_present (const BsPlan *plan);

/* Puts the laminations of a plan that is not shared yet in the order found; each keeps its start
 * along the slab, the others go to the rack. */
void bs_order_place_in_plan (const BsOrderProblem *problem, const BsOrderResult *result,
                             BsPlan *plan);

G_END_DECLS
