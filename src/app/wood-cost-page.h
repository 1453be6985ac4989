/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* What the slab costs and weighs, the prices behind it, and what has to be lifted at each step. */
#define BS_TYPE_WOOD_COST_PAGE (bs_wood_cost_page_get_type ())
G_DECLARE_FINAL_TYPE (BsWoodCostPage, bs_wood_cost_page, BS, WOOD_COST_PAGE, GtkWidget)

GtkWidget *bs_wood_cost_page_new (BsSession *session);

G_END_DECLS
