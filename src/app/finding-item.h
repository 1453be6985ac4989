/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "core/results.h"

G_BEGIN_DECLS

/* One finding of some results, for a list model. */
#define BS_TYPE_FINDING_ITEM (bs_finding_item_get_type ())
G_DECLARE_FINAL_TYPE (BsFindingItem, bs_finding_item, BS, FINDING_ITEM, GObject)

BsFindingItem *bs_finding_item_new (BsResults *results, guint index);

/* Borrowed. */
const BsFinding *bs_finding_item_get_finding (BsFindingItem *self);
const BsResults *bs_finding_item_get_results (BsFindingItem *self);

/* The lamination that it is about, or NULL for the slab as a whole. */
const BsLamination *bs_finding_item_get_lamination (BsFindingItem *self);

G_END_DECLS
