/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/purchase.h"
#include "core/sawing-rack.h"

G_BEGIN_DECLS

/* What comes of a purchase. */

/* The purchase's plan with its boards in the rack, and what is cut from them and from boards of the
 * rack among the cuts, not pinned. Makes the laminations when there are none; spare ones are new
 * and stand in the rack. Only for a purchase with cuts. */
BsPlan *bs_purchase_put (const BsPurchase *purchase);

/* The boards that are sawn for a purchase, to be shown before it is made. */
typedef struct
{
  BsPlan *plan; /* as it will be */
  BsSawRack *rack;
  GPtrArray *boards; /* BsSawnBoard, borrowed from the rack: those that get cuts, those of today's
                      * rack first */
  guint n_of_rack;   /* so many of them */
} BsPurchaseSawn;

/* Likewise. */
BsPurchaseSawn *bs_purchase_sawn_new (const BsPurchase *purchase);
void bs_purchase_sawn_free (BsPurchaseSawn *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPurchaseSawn, bs_purchase_sawn_free)

G_END_DECLS
