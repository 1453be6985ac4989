/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* What the wood does over the year: its moisture, how the slab moves, what that asks of its fixing,
 * and on flat how it cups. */
#define BS_TYPE_WOOD_MOVEMENT_PAGE (bs_wood_movement_page_get_type ())
G_DECLARE_FINAL_TYPE (BsWoodMovementPage, bs_wood_movement_page, BS, WOOD_MOVEMENT_PAGE, GtkWidget)

GtkWidget *bs_wood_movement_page_new (BsSession *session);

G_END_DECLS
