/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The slab in its clamps with the pressure on every glue line, and the curve of one of them. Clamps
 * are dragged along the slab, or moved, tightened, added and taken off with the keys. */
#define BS_TYPE_CLAMPING_CANVAS (bs_clamping_canvas_get_type ())
G_DECLARE_FINAL_TYPE (BsClampingCanvas, bs_clamping_canvas, BS, CLAMPING_CANVAS, GtkWidget)

GtkWidget *bs_clamping_canvas_new (BsSession *session);

/* The clamp that is chosen; -1: none. */
int bs_clamping_canvas_get_clamp (BsClampingCanvas *self);

G_END_DECLS
