/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-cost.h"

G_BEGIN_DECLS

/* How much something matters to the person. */
typedef enum
{
  BS_ORDER_WISH_OFF,
  BS_ORDER_WISH_LITTLE,
  BS_ORDER_WISH_NORMAL,
  BS_ORDER_WISH_MUCH,
} BsOrderWish;

#define BS_N_ORDER_WISHES 4

typedef struct
{
  BsOrderWish looks;        /* a show face without defects and without steps of colour */
  BsOrderWish easy_planing; /* all run-out one way, no steps to plane down */
  BsOrderWish stays_flat;   /* heart sides, bows and moisture that keep each other in check */
} BsOrderWishes;

/* All of them normal. */
BsOrderWishes bs_order_wishes_default (void);

/* The weights that the wishes stand for. */
BsOrderWeights bs_order_wishes_weigh (const BsOrderWishes *self);

G_END_DECLS
