/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "plan/board-columns.h"

G_BEGIN_DECLS

/* Boards as a table of text, in files and on the clipboard: docs/boards-csv.md. */

/* What cannot be taken over. */
typedef struct
{
  guint line;         /* of the text, from 1 */
  const char *column; /* its title (static, translated), or NULL: the row as a whole */
  char *sentence;     /* what was found and what is expected */
} BsBoardsProblem;

typedef struct
{
  GPtrArray *boards;   /* BsBoard, of the rows that are whole; their ids are to be given */
  GPtrArray *woods;    /* BsWood: the plan's, then what the boards need besides */
  GPtrArray *problems; /* BsBoardsProblem, by line */
  guint n_broken;      /* rows that are left out */
} BsBoardsTable;

/* Reads the bytes of a file. Rows that are broken are left out and told in the problems. NULL with
 * a sentence (BS_CSV_ERROR or BS_DOCUMENT_ERROR) for what is no such table. Pure: may run in a
 * thread. */
BsBoardsTable *bs_boards_csv_read (const char *bytes, gsize size, const BsPlan *plan,
                                   GError **error);

/* Reads cells in the order of the columns (plan/board-columns.h), the first one in `column`, over
 * the boards from `first` on and, beyond the last one, into new ones that are else like the last
 * before them. Boards that were there keep their ids. What begins with the table's header is read
 * by it into new boards alone. */
BsBoardsTable *bs_boards_paste (const char *text, const BsPlan *plan, guint first,
                                BsBoardColumn column, GError **error);

void bs_boards_table_free (BsBoardsTable *self);

/* The boards with their header. Sizes in the plan's unit; the decimal mark of the locale, and
 * semicolons where that is a comma. The caller's. */
char *bs_boards_csv_write (const BsPlan *plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsBoardsTable, bs_boards_table_free)

G_END_DECLS
