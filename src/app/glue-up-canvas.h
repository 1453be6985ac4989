/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The glue-up to be taken hold of: the end section, the show face under it, and the rack. Each
 * lamination is a child widget that can be focused and is read out; picking one up with the
 * pointer, carrying it and letting go is one edit of the session's plan.
 *
 * In three files: glue-up-canvas.c places and draws the laminations, glue-up-hold.c carries one,
 * and glue-up-layout.c knows where everything stands. */
#define BS_TYPE_GLUE_UP_CANVAS (bs_glue_up_canvas_get_type ())
G_DECLARE_FINAL_TYPE (BsGlueUpCanvas, bs_glue_up_canvas, BS, GLUE_UP_CANVAS, GtkWidget)

#define BS_GLUE_UP_ZOOM_MOST 4.0

/* Once, before it is shown. */
void bs_glue_up_canvas_set_session (BsGlueUpCanvas *self, BsSession *session);

/* What the canvas is scrolled by. */
void bs_glue_up_canvas_set_adjustments (BsGlueUpCanvas *self, GtkAdjustment *horizontal,
                                        GtkAdjustment *vertical);

/* 1 (the whole slab fits the view) to BS_GLUE_UP_ZOOM_MOST; others are brought into that range. The
 * place under `at` (of the view, in pixels) stays where it is. */
void bs_glue_up_canvas_set_zoom (BsGlueUpCanvas *self, double zoom, double at);
double bs_glue_up_canvas_get_zoom (BsGlueUpCanvas *self);

/* Pixels for each mm of the section when the whole slab is in view; 0 before it is laid out. Signal
 * "rescaled": it is another one; emitted while sizes are given out. */
double bs_glue_up_canvas_get_per_mm (BsGlueUpCanvas *self);

/* Of the selected lamination if it is in view, else of the view: pixels from its left edge. */
double bs_glue_up_canvas_find_middle (BsGlueUpCanvas *self);

/* Shown at the selected lamination by bs_glue_up_canvas_popup (). */
void bs_glue_up_canvas_set_menu (BsGlueUpCanvas *self, GMenuModel *menu);
void bs_glue_up_canvas_popup (BsGlueUpCanvas *self);

G_END_DECLS
