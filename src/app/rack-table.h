/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The boards as a table that a person types into: arrows, Tab and Enter go from cell to cell,
 * typing replaces what is in a cell, F2 changes it; in the empty row at the end it adds a board.
 * What cannot be taken over stays in its cell, with a sentence under the table. Each cell that was
 * changed is one step to undo.
 *
 * Signal: "selection-changed". Actions: board.add, board.more(n), board.strike-out, board.paste,
 * board.copy. */
#define BS_TYPE_RACK_TABLE (bs_rack_table_get_type ())
G_DECLARE_FINAL_TYPE (BsRackTable, bs_rack_table, BS, RACK_TABLE, GtkWidget)

GtkWidget *bs_rack_table_new (BsSession *session);

/* The board that is worked on, or NULL: the first that is selected. */
const BsBoard *bs_rack_table_get_board (BsRackTable *self);

/* Ids of the boards that are selected, NULL-terminated. The caller's. */
char **bs_rack_table_dup_selected (BsRackTable *self);

G_END_DECLS
