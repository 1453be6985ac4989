/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* From what is wanted to the purchase: laminations and other parts, what yards offer, and what to
 * buy of it, which follows from the session's study and gets better while that goes on. */
#define BS_TYPE_BUYING_PAGE (bs_buying_page_get_type ())
G_DECLARE_FINAL_TYPE (BsBuyingPage, bs_buying_page, BS, BUYING_PAGE, GtkWidget)

GtkWidget *bs_buying_page_new (BsSession *session);

G_END_DECLS
