/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* What is wanted: the slab's size, layup, faces, flattening, and where it will live. */
GtkWidget *bs_slab_page_new (BsSession *session);

G_END_DECLS
