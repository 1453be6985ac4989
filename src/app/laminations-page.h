/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* All laminations as a table to type into, slab first, then the rack; under it the selected one's
 * end grain, run-out and defects. */
#define BS_TYPE_LAMINATIONS_PAGE (bs_laminations_page_get_type ())
G_DECLARE_FINAL_TYPE (BsLaminationsPage, bs_laminations_page, BS, LAMINATIONS_PAGE, GtkWidget)

GtkWidget *bs_laminations_page_new (BsSession *session);

G_END_DECLS
