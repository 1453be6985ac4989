/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* Woods of the person's own, and figures of theirs for woods of the program's table:
 * docs/own-woods.md. */

/* $XDG_DATA_HOME/broadstave/woods.json; free with g_free. */
char *bs_own_tables_get_path (void);

/* All woods to choose from, by name: the program's with what the file says laid over them. A file
 * that is not there says nothing. One in which anything is wrong is refused whole: NULL with a
 * sentence (BS_DOCUMENT_ERROR); show it and go on with bs_tables_get_woods. Free with
 * g_ptr_array_unref. */
GPtrArray *bs_own_tables_load_woods (const char *filename, GError **error);

/* Writes a wood into the file, in place of the row of its id or after the others, which stay as
 * they are: of a wood of the program's only what differs from the program's table. The folder is
 * made where it is missing. A file in which anything is wrong is left as it is (BS_DOCUMENT_ERROR).
 */
gboolean bs_own_tables_keep_wood (const char *filename, const BsWood *wood, GError **error);

/* Takes the row of a wood out again; a file that has none stays. */
gboolean bs_own_tables_forget_wood (const char *filename, const char *id, GError **error);

G_END_DECLS
