/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "core/results.h"

G_BEGIN_DECLS

/* One finding in words, for a list model: of some results, or of the files that the plan refers to.
 */
#define BS_TYPE_FINDING_ITEM (bs_finding_item_get_type ())
G_DECLARE_FINAL_TYPE (BsFindingItem, bs_finding_item, BS, FINDING_ITEM, GObject)

BsFindingItem *bs_finding_item_new (const BsResults *results, guint index);

/* That a photo of a board cannot be shown; the reason is a sentence. */
BsFindingItem *bs_finding_item_new_photo (const BsBoard *board, const char *reason);

/* Borrowed. */
BsSeverity bs_finding_item_get_severity (BsFindingItem *self);
const char *bs_finding_item_get_title (BsFindingItem *self);
const char *bs_finding_item_get_reason (BsFindingItem *self);
const char *bs_finding_item_get_remedy (BsFindingItem *self);

/* Id of the lamination that it is about, or NULL when it is about none. */
const char *bs_finding_item_get_lamination (BsFindingItem *self);

G_END_DECLS
