/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define BS_TYPE_BLOCKS (bs_blocks_get_type ())
G_DECLARE_FINAL_TYPE (BsBlocks, bs_blocks, BS, BLOCKS, GtkWidget)

/* Children in rows of equal columns: as many side by side as have room at their natural width, up
 * to `most`, and the others under them. The columns share what room is left. Unlike GTK's box for
 * this it takes no part in the keyboard's focus, which would stay in a child that has nothing to
 * focus. */
GtkWidget *bs_blocks_new (guint most, int column_gap, int row_gap);
void bs_blocks_append (BsBlocks *self, GtkWidget *child);

G_END_DECLS
