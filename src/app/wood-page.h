/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The wood of the slab in three parts: woods compared, movement over the year, money and weight. */
GtkWidget *bs_wood_page_new (BsSession *session);

G_END_DECLS
