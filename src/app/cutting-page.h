/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The boards of the rack and what is cut from them. */
#define BS_TYPE_CUTTING_PAGE (bs_cutting_page_get_type ())
G_DECLARE_FINAL_TYPE (BsCuttingPage, bs_cutting_page, BS, CUTTING_PAGE, GtkWidget)

GtkWidget *bs_cutting_page_new (BsSession *session);

G_END_DECLS
