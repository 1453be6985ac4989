/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* One wood for this slab: whether it fits and why not, each of its numbers with its working, its
 * figures to be changed, and what to do with it: use it for laminations, copy it as a wood of one's
 * own, keep its figures for other plans. Besides, what is asked of the slab's wood. Signal:
 * "copied" (the id of the copy). */
#define BS_TYPE_WOOD_DETAILS (bs_wood_details_get_type ())
G_DECLARE_FINAL_TYPE (BsWoodDetails, bs_wood_details, BS, WOOD_DETAILS, GtkWidget)

GtkWidget *bs_wood_details_new (BsSession *session);

/* NULL: no wood. */
void bs_wood_details_set_id (BsWoodDetails *self, const char *id);

/* Works the numbers out anew. */
void bs_wood_details_refresh (BsWoodDetails *self);

G_END_DECLS
