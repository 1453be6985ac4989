/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-table.h"
#include "core/order.h"

G_BEGIN_DECLS

/* Why an order is as it is: for each place the least harmful change that keeps the pins. The
 * orientations are those of the best pass through the order. */
void bs_order_find_changes (const BsOrderTable *table, const BsOrderPlace *places,
                            BsOrderChange *changes);

G_END_DECLS
