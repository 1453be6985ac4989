/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-cost.h"

G_BEGIN_DECLS

/* All of them normal, and the rack left alone. */
BsOrderWishes bs_order_wishes_default (void);

/* The weights that the wishes stand for. */
BsOrderWeights bs_order_wishes_weigh (const BsOrderWishes *self);

G_END_DECLS
