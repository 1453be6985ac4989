/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* What there is to work with: the room, hands, machines, the adhesive, clamps and cauls. */
GtkWidget *bs_shop_page_new (BsSession *session);

G_END_DECLS
