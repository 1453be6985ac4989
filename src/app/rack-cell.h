/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/rack.h"

G_BEGIN_DECLS

/* One cell of the rack's table: shows a text, and an entry in its place while someone types. There
 * are hundreds of them in sight, so that it is no more than a layout otherwise.
 *
 * Signal: "left" when the focus goes elsewhere while it is being edited. */
#define BS_TYPE_RACK_CELL (bs_rack_cell_get_type ())
G_DECLARE_FINAL_TYPE (BsRackCell, bs_rack_cell, BS, RACK_CELL, GtkWidget)

typedef enum
{
  BS_RACK_CELL_PLAIN = 0,
  BS_RACK_CELL_NUMBER = 1 << 0, /* stands at the right */
  BS_RACK_CELL_FAINT = 1 << 1,
  BS_RACK_CELL_WRONG = 1 << 2, /* what is shown was typed and could not be taken over */
} BsRackCellLook;

/* Where it stands: which column of its table, and which row (borrowed; NULL while it is in none).
 * `n_chars` is about how many it has room for; `title` is what it is called when it is read out
 * (copied). */
GtkWidget *bs_rack_cell_new (int column, int n_chars);
int bs_rack_cell_get_column (BsRackCell *self);
void bs_rack_cell_set_place (BsRackCell *self, BsRackRow *row, guint position);
BsRackRow *bs_rack_cell_get_row (BsRackCell *self);
guint bs_rack_cell_get_position (BsRackCell *self);

/* `problem` is shown as its tooltip; NULL: there is none. While it is edited only what lies under
 * the entry changes. */
void bs_rack_cell_show (BsRackCell *self, const char *title, const char *text, BsRackCellLook look,
                        const char *problem);

/* Begins to edit: with the text that is shown, selected, or with another one. */
void bs_rack_cell_edit (BsRackCell *self, const char *text);
gboolean bs_rack_cell_is_edited (BsRackCell *self);
const char *bs_rack_cell_get_typed (BsRackCell *self); /* NULL: it is not edited */
GtkWidget *bs_rack_cell_get_entry (BsRackCell *self);  /* likewise */
void bs_rack_cell_end_edit (BsRackCell *self);

G_END_DECLS
