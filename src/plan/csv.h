/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Tables as text: RFC 4180 and what spreadsheets make of it. Cells lie between separators, rows
 * between line ends of any kind; a cell in quotation marks may hold all of these, a doubled mark
 * within it is one. A mark that does not begin its cell is a mark (4 1/2" needs no quoting). An
 * empty line is a row with one empty cell.
 *
 * A reader of its own: of libcsv, the one in Debian, the last release is of 2013; it does not tell
 * on which line a row began, and what is quoted amiss costs it the rest of the file. */

typedef enum
{
  BS_CSV_FINE,
  BS_CSV_NEVER_CLOSED, /* a quotation mark; the row ends with its line and is not to be used */
  BS_CSV_AFTER_QUOTE,  /* something stands between a closing mark and the separator; not to be used
                        * either */
} BsCsvState;

typedef struct
{
  guint line; /* of the text, on which the row begins, from 1 */
  BsCsvState state;
  GPtrArray *cells; /* char *, never NULL */
} BsCsvRow;

/* Bytes of a file as UTF-8 without its mark of order: UTF-8, or UTF-16 where such a mark says so.
 * NULL with a sentence (BS_CSV_ERROR) that names the line for what is neither. The caller's. */
char *bs_csv_decode (const char *bytes, gsize size, GError **error);

/* What separates the cells of the first line: a tab, else a semicolon, else a comma. */
char bs_csv_find_separator (const char *text);

/* BsCsvRow, freed with g_ptr_array_unref. */
GPtrArray *bs_csv_read (const char *text, char separator);

/* Appends a cell, in quotation marks where it takes them. Separators and line ends are the
 * caller's. */
void bs_csv_append (GString *text, const char *cell, char separator);

#define BS_CSV_ERROR (bs_csv_error_quark ())
GQuark bs_csv_error_quark (void);

typedef enum
{
  BS_CSV_ERROR_ENCODING,
} BsCsvError;

G_END_DECLS
