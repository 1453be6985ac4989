/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "core/wood-compare.h"

G_BEGIN_DECLS

/* One wood beside the others: a row of a list model. Signal: "changed" when it got another card. */
#define BS_TYPE_WOOD_ITEM (bs_wood_item_get_type ())
G_DECLARE_FINAL_TYPE (BsWoodItem, bs_wood_item, BS, WOOD_ITEM, GObject)

BsWoodItem *bs_wood_item_new (const BsWoodCard *card);

/* Keeps the card's wood. */
void bs_wood_item_set_card (BsWoodItem *self, const BsWoodCard *card);
const BsWoodCard *bs_wood_item_get_card (BsWoodItem *self);
const char *bs_wood_item_get_id (BsWoodItem *self);

G_END_DECLS
