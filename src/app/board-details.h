/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* One board: its picture with the defects, what it finishes at and why, what to heed before it is
 * milled, its rings, its photos and its defects as rows. */
#define BS_TYPE_BOARD_DETAILS (bs_board_details_get_type ())
G_DECLARE_FINAL_TYPE (BsBoardDetails, bs_board_details, BS, BOARD_DETAILS, GtkWidget)

GtkWidget *bs_board_details_new (BsSession *session);

/* NULL: none. The id is copied. */
void bs_board_details_set_board (BsBoardDetails *self, const char *id);

G_END_DECLS
