/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/rack-table.h"
#include "app/rack-view.h"
#include "app/rack.h"
#include "plan/board-columns.h"
#include "plan/edits.h"

G_BEGIN_DECLS

/* Shared by rack-table.c (the widget), rack-table-cells.c (what is shown and taken over),
 * rack-table-keys.c (going from cell to cell) and rack-table-actions.c (many boards at once). */

/* Columns are those of BsBoardColumn up to the twist, and one that is worked out. */
#define BS_RACK_FINISH (BS_BOARD_TWIST + 1)
#define BS_N_RACK_COLUMNS (BS_RACK_FINISH + 1)

struct _BsRackTable
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *view;   /* BsRackView */
  GtkWidget *status; /* GtkLabel */
  GtkWidget *unit;   /* GtkLabel */
  GtkWidget *more;   /* GtkButton */

  /* owned */
  BsSession *session;
  BsRack *rack;
  GtkMultiSelection *selection;
  GHashTable *drafts; /* key of board and column -> what was typed there */
  char *titles[BS_N_RACK_COLUMNS];

  int first_column; /* where a run of Tabs began: Enter goes back under it */
};

/* rack-table-cells.c */
GHashTable *bs_rack_table_drafts_new (void);
const BsBoard *bs_rack_table_get_board_of (BsRackCell *cell);
void bs_rack_table_show_cell (BsRackTable *self, BsRackCell *cell);
void bs_rack_table_show_status (BsRackTable *self);
BsRackCell *bs_rack_table_get_focused (BsRackTable *self); /* or NULL */
void bs_rack_table_drop_draft (BsRackTable *self, BsRackCell *cell);

/* FALSE when it cannot be taken over: it stays in the cell with a sentence. */
gboolean bs_rack_table_take_text (BsRackTable *self, BsRackCell *cell, const char *text);
gboolean bs_rack_table_end_edit (BsRackTable *self, BsRackCell *cell);

/* rack-table-keys.c */
void bs_rack_table_keys_init (BsRackTable *self);
void bs_rack_table_go_to (BsRackTable *self, guint position, int column);

/* rack-table-actions.c */
void bs_rack_table_actions_class_init (GtkWidgetClass *class);
GtkWidget *bs_rack_table_buttons_new (BsRackTable *self);
void bs_rack_table_update_actions (BsRackTable *self);

G_END_DECLS
