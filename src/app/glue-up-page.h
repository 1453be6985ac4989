/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The place where the slab is put in order: the canvas, and the commands for the selected
 * lamination. */
#define BS_TYPE_GLUE_UP_PAGE (bs_glue_up_page_get_type ())
G_DECLARE_FINAL_TYPE (BsGlueUpPage, bs_glue_up_page, BS, GLUE_UP_PAGE, GtkWidget)

GtkWidget *bs_glue_up_page_new (BsSession *session);

G_END_DECLS
