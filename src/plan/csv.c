/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/csv.h"

#include "config.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define UTF_8_MARK "\xEF\xBB\xBF"

GQuark
bs_csv_error_quark (void)
{
  return g_quark_from_static_string ("bs-csv-error-quark");
}

/* Files. */

static guint
count_lines (const char *text, const char *end)
{
  guint n = 1;

  for (const char *p = text; p < end; p++)
    n += *p == '\n' || (*p == '\r' && p[1] != '\n');
  return n;
}

static char *
decode_utf_16 (const char *bytes, gsize size, GError **error)
{
  gsize length = 0;
  g_autofree char *text = g_convert (bytes, (gssize)size, "UTF-8", "UTF-16", NULL, &length, NULL);

  if (text != NULL && strlen (text) == length)
    return g_steal_pointer (&text);
  g_set_error_literal (error, BS_CSV_ERROR, BS_CSV_ERROR_ENCODING,
                       _ ("The file says that it is UTF-16 text and is not. Write it once more as "
                          "CSV in UTF-8."));
  return NULL;
}

char *
bs_csv_decode (const char *bytes, gsize size, GError **error)
{
  const char *end = NULL;

  if (size >= 2 && (memcmp (bytes, "\xFF\xFE", 2) == 0 || memcmp (bytes, "\xFE\xFF", 2) == 0))
    return decode_utf_16 (bytes, size, error);
  if (size >= 3 && memcmp (bytes, UTF_8_MARK, 3) == 0)
    {
      bytes += 3;
      size -= 3;
    }
  if (!g_utf8_validate (bytes, (gssize)size, &end))
    {
      g_set_error (error, BS_CSV_ERROR, BS_CSV_ERROR_ENCODING,
                   _ ("Line %u has bytes that are not UTF-8 text. Write the file once more as CSV "
                      "in UTF-8."),
                   count_lines (bytes, end));
      return NULL;
    }
  return g_strndup (bytes, size);
}

char
bs_csv_find_separator (const char *text)
{
  gsize line = strcspn (text, "\r\n");

  if (memchr (text, '\t', line) != NULL)
    return '\t';
  return memchr (text, ';', line) != NULL ? ';' : ',';
}

/* Rows. */

typedef struct
{
  const char *at;
  guint line;
  char separator;
} Reader;

static gboolean
is_line_end (char c)
{
  return c == '\n' || c == '\r' || c == '\0';
}

static gboolean
ends_cell (const Reader *reader, char c)
{
  return c == reader->separator || is_line_end (c);
}

/* Over CR LF, CR or LF, and none at the end of the text. */
static void
skip_line_end (Reader *reader)
{
  if (*reader->at == '\0')
    return;
  reader->at += reader->at[0] == '\r' && reader->at[1] == '\n' ? 2 : 1;
  reader->line++;
}

static char *
read_bare (Reader *reader)
{
  const char *start = reader->at;

  while (!ends_cell (reader, *reader->at))
    reader->at++;
  return g_strndup (start, (gsize)(reader->at - start));
}

/* After its opening mark, up to its closing one; FALSE when there is none. Lines are counted. */
static gboolean
read_quoted (Reader *reader, GString *cell)
{
  for (; *reader->at != '\0'; reader->at++)
    {
      char c = *reader->at;

      if (c == '"' && reader->at[1] != '"')
        {
          reader->at++;
          return TRUE;
        }
      if (c == '"')
        reader->at++;
      reader->line += c == '\n' || (c == '\r' && reader->at[1] != '\n');
      g_string_append_c (cell, c);
    }
  return FALSE;
}

static char *
read_cell (Reader *reader, BsCsvState *state)
{
  if (*reader->at != '"')
    return read_bare (reader);

  const Reader before = *reader;
  GString *cell = g_string_new (NULL);
  reader->at++;
  if (!read_quoted (reader, cell))
    {
      /* Only the line of the mark is lost, not all that follows. */
      *reader = before;
      *state = BS_CSV_NEVER_CLOSED;
      g_string_free (cell, TRUE);
      return read_bare (reader);
    }
  if (!ends_cell (reader, *reader->at))
    {
      g_autofree char *rest = read_bare (reader);
      *state = BS_CSV_AFTER_QUOTE;
      g_string_append (cell, rest);
    }
  return g_string_free (cell, FALSE);
}

static BsCsvRow *
read_row (Reader *reader)
{
  BsCsvRow *row = g_new (BsCsvRow, 1);
  *row = (BsCsvRow){ reader->line, BS_CSV_FINE, g_ptr_array_new_with_free_func (g_free) };

  for (;;)
    {
      g_ptr_array_add (row->cells, read_cell (reader, &row->state));
      if (is_line_end (*reader->at))
        break;
      reader->at++;
    }
  skip_line_end (reader);
  return row;
}

static void
free_row (gpointer data)
{
  BsCsvRow *row = data;

  g_ptr_array_unref (row->cells);
  g_free (row);
}

GPtrArray *
bs_csv_read (const char *text, char separator)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (free_row);
  Reader reader = { .at = text, .line = 1, .separator = separator };

  while (*reader.at != '\0')
    g_ptr_array_add (rows, read_row (&reader));
  return rows;
}

void
bs_csv_append (GString *text, const char *cell, char separator)
{
  gboolean needs_marks = *cell == '"' || strpbrk (cell, "\r\n") != NULL
                         || strchr (cell, separator) != NULL || strchr (cell, '"') != NULL;

  if (!needs_marks)
    {
      g_string_append (text, cell);
      return;
    }
  g_string_append_c (text, '"');
  for (const char *p = cell; *p != '\0'; p++)
    {
      if (*p == '"')
        g_string_append_c (text, '"');
      g_string_append_c (text, *p);
    }
  g_string_append_c (text, '"');
}
