/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The boards of the rack, one under another to scale, with the pieces that are cut from them. A
 * piece is picked up and put elsewhere with the pointer; its cost is told while it is held.
 *
 * Signals: "notify::selected" (the place of a piece's cut in the plan, -1: none); "notify::message"
 * (what is told about the piece that is held, or about the last one that could not be put down). */
#define BS_TYPE_CUTTING_CANVAS (bs_cutting_canvas_get_type ())
G_DECLARE_FINAL_TYPE (BsCuttingCanvas, bs_cutting_canvas, BS, CUTTING_CANVAS, GtkWidget)

GtkWidget *bs_cutting_canvas_new (BsSession *session);

/* What it scrolls in. */
void bs_cutting_canvas_set_adjustment (BsCuttingCanvas *self, GtkAdjustment *vertical);

int bs_cutting_canvas_get_selected (BsCuttingCanvas *self);
void bs_cutting_canvas_select (BsCuttingCanvas *self, int cut);

const char *bs_cutting_canvas_get_message (BsCuttingCanvas *self);
gboolean bs_cutting_canvas_is_holding (BsCuttingCanvas *self);

/* Puts the selected piece to the next stop along (or across) its board, or on the next board; -1:
 * the one before. One edit, as with the pointer. */
void bs_cutting_canvas_move_along (BsCuttingCanvas *self, int direction);
void bs_cutting_canvas_move_across (BsCuttingCanvas *self, int direction);
void bs_cutting_canvas_move_to_board (BsCuttingCanvas *self, int direction);

G_END_DECLS
