/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The place "Boards": the rack as a table, and under it the board that is worked on. */
#define BS_TYPE_BOARDS_PAGE (bs_boards_page_get_type ())
G_DECLARE_FINAL_TYPE (BsBoardsPage, bs_boards_page, BS, BOARDS_PAGE, GtkWidget)

GtkWidget *bs_boards_page_new (BsSession *session);

G_END_DECLS
