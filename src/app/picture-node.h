/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef void (*BsPictureFunc) (cairo_t *cr, gpointer data);

/* A render node that shows what `draw` draws within `bounds` (whole pixels), as an image for a
 * screen of this scale factor: it costs the same at each frame, however much was drawn. */
GskRenderNode *bs_picture_node_new (const graphene_rect_t *bounds, int scale_factor,
                                    BsPictureFunc draw, gpointer data);

G_END_DECLS
