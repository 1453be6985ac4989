/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/purchase.h"

G_BEGIN_DECLS

/* A purchase as a list to take to the yard, its numbers, and what is left over. */
#define BS_TYPE_PURCHASE_VIEW (bs_purchase_view_get_type ())
G_DECLARE_FINAL_TYPE (BsPurchaseView, bs_purchase_view, BS, PURCHASE_VIEW, GtkWidget)

GtkWidget *bs_purchase_view_new (void);

/* Shows it; keeps nothing of it. NULL: nothing. */
void bs_purchase_view_show (BsPurchaseView *self, const BsPurchase *purchase);

G_END_DECLS
