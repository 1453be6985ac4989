/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/photos.h"
#include "app/session.h"

G_BEGIN_DECLS

/* One board to scale, on whose faces defects are drawn: press where one begins, drag over it,
 * choose what it is. One that is there is moved by dragging it, and resized by its corners. By
 * keys: Insert adds one, Space goes to the next, arrows move it and with Shift resize it (with Ctrl
 * finely), Enter chooses what it is, Delete strikes it out. Each gesture is one step to undo. */
#define BS_TYPE_BOARD_CANVAS (bs_board_canvas_get_type ())
G_DECLARE_FINAL_TYPE (BsBoardCanvas, bs_board_canvas, BS, BOARD_CANVAS, GtkWidget)

GtkWidget *bs_board_canvas_new (BsSession *session, BsPhotos *photos);

/* NULL: none. The id is copied. */
void bs_board_canvas_set_board (BsBoardCanvas *self, const char *id);

G_END_DECLS
