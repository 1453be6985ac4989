/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "core/plan.h"

G_BEGIN_DECLS

/* The woods to choose from: the program's table with the person's own file laid over it
 * (plan/own-tables.h). Where that file cannot be used there is a sentence that says why, and the
 * program's table alone. Signal: "changed". */
#define BS_TYPE_WOOD_TABLE (bs_wood_table_get_type ())
G_DECLARE_FINAL_TYPE (BsWoodTable, bs_wood_table, BS, WOOD_TABLE, GObject)

/* The one table of this program, read when it is first asked for. Borrowed. */
BsWoodTable *bs_wood_table_get (void);

/* NULL when there is no wood of that id. Borrowed until "changed". */
BsWood *bs_wood_table_find (BsWoodTable *self, const char *id);

/* All woods by their names in the person's language, each as the plan has it where it does, with
 * those that only the plan has. Free with g_ptr_array_unref. */
GPtrArray *bs_wood_table_list (BsWoodTable *self, const BsPlan *plan);

/* Why the person's file was not used, a whole sentence; NULL when it was, or there is none. */
const char *bs_wood_table_get_problem (BsWoodTable *self);

/* Whether the person's file says something of a wood. */
gboolean bs_wood_table_is_kept (BsWoodTable *self, const char *id);

/* Writes to the person's file and reads it again. */
gboolean bs_wood_table_keep (BsWoodTable *self, const BsWood *wood, GError **error);
gboolean bs_wood_table_forget (BsWoodTable *self, const char *id, GError **error);

G_END_DECLS
