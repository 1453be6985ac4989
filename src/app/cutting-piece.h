/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A piece on the canvas of the boards: takes the focus and is read out; the board's picture shows
 * it. */
#define BS_TYPE_CUTTING_PIECE (bs_cutting_piece_get_type ())
G_DECLARE_FINAL_TYPE (BsCuttingPiece, bs_cutting_piece, BS, CUTTING_PIECE, GtkWidget)

/* The id of a lamination or a part. */
GtkWidget *bs_cutting_piece_new (const char *id);
const char *bs_cutting_piece_get_id (BsCuttingPiece *self);

/* What is read out. */
void bs_cutting_piece_describe (BsCuttingPiece *self, const char *text, gboolean is_selected);

G_END_DECLS
