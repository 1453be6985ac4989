/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* Where the clamps go, how hard they are tightened, and how hard that presses every glue line. */
GtkWidget *bs_clamping_page_new (BsSession *session);

G_END_DECLS
