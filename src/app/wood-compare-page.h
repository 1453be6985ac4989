/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* All woods side by side for this slab: along the scale of hardness, in a table, and one of them in
 * detail; what is asked of the wood can be said here. */
#define BS_TYPE_WOOD_COMPARE_PAGE (bs_wood_compare_page_get_type ())
G_DECLARE_FINAL_TYPE (BsWoodComparePage, bs_wood_compare_page, BS, WOOD_COMPARE_PAGE, GtkWidget)

GtkWidget *bs_wood_compare_page_new (BsSession *session);

G_END_DECLS
