/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The pieces as a table: those that have a place, board by board, after those that have none, with
 * the reason.
 *
 * Signal: "notify::selected" (the place of a piece's cut in the plan, -1: none); none is selected
 * when the plan has changed. */
#define BS_TYPE_CUTTING_TABLE (bs_cutting_table_get_type ())
G_DECLARE_FINAL_TYPE (BsCuttingTable, bs_cutting_table, BS, CUTTING_TABLE, GtkWidget)

GtkWidget *bs_cutting_table_new (BsSession *session);

int bs_cutting_table_get_selected (BsCuttingTable *self);
void bs_cutting_table_select (BsCuttingTable *self, int cut);

G_END_DECLS
