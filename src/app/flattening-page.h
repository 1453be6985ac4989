/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What comes off each face, by which order of work, and how sure the thickness is. */
#define BS_TYPE_FLATTENING_PAGE (bs_flattening_page_get_type ())
G_DECLARE_FINAL_TYPE (BsFlatteningPage, bs_flattening_page, BS, FLATTENING_PAGE, GtkWidget)

GtkWidget *bs_flattening_page_new (BsSession *session);

G_END_DECLS
