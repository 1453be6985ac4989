/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "plan/board-columns.h"
#include "plan/csv.h"

G_BEGIN_DECLS

/* The first row of a table of boards: which cell is which column, and the unit of numbers that name
 * none. "length", "Length", "length (mm)", "length_mm" and "Length, in" are all the length. */

typedef struct
{
  int column; /* BsBoardColumn, or -1: not to be read */
  char *unit; /* put after bare numbers, or NULL */
} BsBoardsHeading;

/* BsBoardsHeading, one for each cell. What is not known, stands there twice, or is of another
 * currency is not to be read; `tell` is called for each such cell with a sentence that is the
 * callee's. */
typedef void (*BsBoardsTell) (char *sentence, gpointer data);
GArray *bs_boards_header_read (const BsCsvRow *row, const BsPlan *plan, BsBoardsTell tell,
                               gpointer data);

/* Whether a cell is the heading of some column. */
gboolean bs_boards_header_knows (const char *cell, const BsPlan *plan);

/* Whether all columns that a board cannot do without are there; else FALSE with a sentence. */
gboolean bs_boards_header_check (const GArray *headings, GError **error);

/* The heading of a column with its unit, as written to files: "length (mm)". The caller's. */
char *bs_boards_header_write (BsBoardColumn column, const BsPlan *plan);

G_END_DECLS
