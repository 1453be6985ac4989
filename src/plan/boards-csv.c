/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/boards-csv.h"

#include "config.h"
#include "core/money.h"
#include "core/units.h"
#include "plan/boards-header.h"
#include "plan/document.h"
#include "plan/edits.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#define MOST_MB 16

static void
free_problem (gpointer data)
{
  BsBoardsProblem *problem = data;

  g_free (problem->sentence);
  g_free (problem);
}

static BsBoardsTable *
new_table (void)
{
  BsBoardsTable *table = g_new0 (BsBoardsTable, 1);

  table->boards = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_board_unref);
  table->problems = g_ptr_array_new_with_free_func (free_problem);
  return table;
}

void
bs_boards_table_free (BsBoardsTable *self)
{
  g_ptr_array_unref (self->boards);
  g_ptr_array_unref (self->problems);
  g_clear_pointer (&self->woods, g_ptr_array_unref);
  g_free (self);
}

/* Reading: one table, row after row. */

typedef struct
{
  BsBoardsTable *table;
  const BsPlan *plan;
  const GArray *headings; /* BsBoardsHeading */
  BsBoardReader reader;
  guint line;
} Reading;

/* Takes the sentence over. */
static void
tell (Reading *reading, const char *column, char *sentence)
{
  BsBoardsProblem *problem = g_new (BsBoardsProblem, 1);

  *problem = (BsBoardsProblem){ reading->line, column, sentence };
  g_ptr_array_add (reading->table->problems, problem);
}

static void
tell_header (char *sentence, gpointer data)
{
  tell (data, NULL, sentence);
}

/* A number that names no unit gets the column's. */
static char *
with_unit (const char *cell, const char *unit)
{
  g_autofree char *bare = g_strstrip (g_strdup (cell));
  gboolean is_plain = *bare != '\0' && strspn (bare, "+-0123456789.,") == strlen (bare);

  return is_plain && unit != NULL ? g_strconcat (bare, " ", unit, NULL) : g_steal_pointer (&bare);
}

static gboolean
read_cells (Reading *reading, const BsCsvRow *row, BsBoard *board)
{
  gboolean is_whole = TRUE;

  for (guint i = 0; i < reading->headings->len; i++)
    {
      const BsBoardsHeading *heading = &g_array_index (reading->headings, BsBoardsHeading, i);
      g_autoptr (GError) error = NULL;

      if (heading->column < 0)
        continue;
      g_autofree char *text
          = with_unit (i < row->cells->len ? row->cells->pdata[i] : "", heading->unit);
      if (bs_board_read (board, (BsBoardColumn)heading->column, text, &reading->reader, &error))
        continue;
      tell (reading, _ (bs_board_columns[heading->column].title), g_strdup (error->message));
      is_whole = FALSE;
    }
  return is_whole;
}

static gboolean
is_empty (const BsCsvRow *row)
{
  for (guint i = 0; i < row->cells->len; i++)
    if (((char *)row->cells->pdata[i])[strspn (row->cells->pdata[i], " ")] != '\0')
      return FALSE;
  return TRUE;
}

/* More cells than there are columns, not counting empty ones at the end. */
static guint
count_surplus (const Reading *reading, const BsCsvRow *row)
{
  guint n = row->cells->len;

  while (n > reading->headings->len && *(char *)row->cells->pdata[n - 1] == '\0')
    n--;
  return n > reading->headings->len ? n - reading->headings->len : 0;
}

/* What is wrong with a row before its cells are read, or NULL. */
static char *
find_fault (const Reading *reading, const BsCsvRow *row)
{
  guint surplus = count_surplus (reading, row);

  if (row->state == BS_CSV_NEVER_CLOSED)
    return g_strdup (_ ("A quotation mark is opened and never closed. Expected is another one at "
                        "the end of the cell."));
  if (row->state == BS_CSV_AFTER_QUOTE)
    return g_strdup (_ ("Something stands between a closing quotation mark and the next separator. "
                        "Expected is nothing; a mark within a cell is written twice."));
  if (surplus > 0)
    return g_strdup_printf (
        ngettext ("The row has %u cell more than there are columns. Expected is "
                  "one for each; a cell that holds the separator must stand in "
                  "quotation marks.",
                  "The row has %u cells more than there are columns. Expected is "
                  "one for each; a cell that holds the separator must stand in "
                  "quotation marks.",
                  surplus),
        surplus);
  return NULL;
}

/* Reads a row over a board, which is taken over and kept if all of the row is good. */
static void
read_row (Reading *reading, const BsCsvRow *row, BsBoard *board)
{
  char *fault = find_fault (reading, row);

  reading->line = row->line;
  if (fault != NULL)
    tell (reading, NULL, fault);
  if (fault == NULL && read_cells (reading, row, board))
    {
      g_ptr_array_add (reading->table->boards, board);
      return;
    }
  reading->table->n_broken++;
  bs_board_unref (board);
}

/* FALSE, with a problem, when the plan holds no more of them. */
static gboolean
has_room (Reading *reading, const BsCsvRow *row)
{
  if (reading->plan->boards->len + reading->table->boards->len < BS_MAX_BOARDS)
    return TRUE;
  reading->line = row->line;
  tell (reading, NULL,
        g_strdup_printf (_ ("A plan holds %d boards; this row and all after it are left out."),
                         BS_MAX_BOARDS));
  return FALSE;
}

static void
read_rows (Reading *reading, const GPtrArray *rows, guint from)
{
  for (guint i = from; i < rows->len; i++)
    {
      const BsCsvRow *row = rows->pdata[i];

      if (is_empty (row))
        continue;
      if (!has_room (reading, row))
        {
          reading->table->n_broken += rows->len - i;
          return;
        }
      read_row (reading, row, bs_board_new (""));
    }
}

static BsBoardsTable *
read_table (const GPtrArray *rows, const BsPlan *plan, GError **error)
{
  g_autoptr (BsBoardsTable) table = new_table ();
  Reading reading = { .table = table, .plan = plan };
  guint header = 0;

  while (header < rows->len && is_empty (rows->pdata[header]))
    header++;
  if (header == rows->len)
    {
      g_set_error_literal (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_FORMAT,
                           _ ("Nothing is written in it. Expected is a line with the names of the "
                              "columns, and then a line for each board."));
      return NULL;
    }
  reading.line = ((BsCsvRow *)rows->pdata[header])->line;
  g_autoptr (GArray) headings
      = bs_boards_header_read (rows->pdata[header], plan, tell_header, &reading);
  if (!bs_boards_header_check (headings, error))
    return NULL;
  reading.headings = headings;
  bs_board_reader_init (&reading.reader, plan);
  read_rows (&reading, rows, header + 1);
  table->woods = g_steal_pointer (&reading.reader.woods);
  return g_steal_pointer (&table);
}

BsBoardsTable *
bs_boards_csv_read (const char *bytes, gsize size, const BsPlan *plan, GError **error)
{
  if (size > (gsize)MOST_MB << 20)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                   _ ("It is larger than %d MB. Expected is a table of at most %d boards."),
                   MOST_MB, BS_MAX_BOARDS);
      return NULL;
    }
  g_autofree char *text = bs_csv_decode (bytes, size, error);
  if (text == NULL)
    return NULL;
  g_autoptr (GPtrArray) rows = bs_csv_read (text, bs_csv_find_separator (text));
  return read_table (rows, plan, error);
}

/* Pasting. */

/* Where the comma is the decimal mark, one does not separate. */
static char
find_separator (const char *text)
{
  char separator = bs_csv_find_separator (text);

  return separator == ',' && *localeconv ()->decimal_point == ',' ? '\t' : separator;
}

static gboolean
is_header (const BsCsvRow *row, const BsPlan *plan)
{
  guint n_known = 0;

  for (guint i = 0; i < row->cells->len; i++)
    n_known += bs_boards_header_knows (row->cells->pdata[i], plan);
  return n_known > 1 && 2 * n_known >= row->cells->len;
}

static GArray *
list_columns (BsBoardColumn column)
{
  GArray *headings = g_array_new (FALSE, FALSE, sizeof (BsBoardsHeading));

  for (guint i = column; i < BS_N_BOARD_COLUMNS; i++)
    {
      BsBoardsHeading heading = { (int)i, NULL };
      g_array_append_val (headings, heading);
    }
  return headings;
}

/* Cells that are not there leave the board as it is. */
static void
read_pasted_row (Reading *reading, const BsCsvRow *row, BsBoard *board)
{
  GArray present = *reading->headings;
  Reading narrow = *reading;

  present.len = MIN (present.len, row->cells->len);
  narrow.headings = &present;
  if (row->cells->len > reading->headings->len)
    narrow.headings = reading->headings;
  read_row (&narrow, row, board);
}

static void
read_pasted (Reading *reading, const GPtrArray *rows, guint first)
{
  const GPtrArray *boards = reading->plan->boards;

  for (guint i = 0; i < rows->len; i++)
    {
      const BsCsvRow *row = rows->pdata[i];
      guint at = first + i;

      if (is_empty (row))
        continue;
      if (at < boards->len)
        {
          read_pasted_row (reading, row, bs_board_copy (boards->pdata[at]));
          continue;
        }
      if (!has_room (reading, row))
        {
          reading->table->n_broken += rows->len - i;
          return;
        }
      read_pasted_row (reading, row, bs_edit_next_board (reading->plan));
    }
}

BsBoardsTable *
bs_boards_paste (const char *text, const BsPlan *plan, guint first, BsBoardColumn column,
                 GError **error)
{
  g_autoptr (GPtrArray) rows = bs_csv_read (text, find_separator (text));

  if (rows->len == 0 || is_header (rows->pdata[0], plan))
    return read_table (rows, plan, error);

  BsBoardsTable *table = new_table ();
  g_autoptr (GArray) headings = list_columns (column);
  Reading reading = { .table = table, .plan = plan, .headings = headings };
  bs_board_reader_init (&reading.reader, plan);
  read_pasted (&reading, rows, first);
  table->woods = g_steal_pointer (&reading.reader.woods);
  return table;
}

/* Writing. */

/* With as many places as are measured, and never three of them, which could be read as thousands.
 */
static char *
write_number (double value, const BsLimit *limit, BsUnitSystem units)
{
  gboolean is_inch = limit->quantity == BS_QUANTITY_LENGTH && units == BS_UNIT_SYSTEM_INCH;
  char *text
      = g_strdup_printf (is_inch ? "%.4f" : "%.2f", is_inch ? value / BS_MM_PER_INCH : value);
  gsize length = strlen (text);
  gsize places = is_inch ? 4 : 2;

  for (gsize i = 0; i < places && text[length - 1] == '0'; i++)
    text[--length] = '\0';
  if (text[length - 1] == *localeconv ()->decimal_point)
    text[length - 1] = '\0';
  if (strlen (text) > 4 && strchr ("0123456789", text[strlen (text) - 4]) == NULL)
    {
      char *longer = g_strconcat (text, "0", NULL);
      g_free (text);
      return longer;
    }
  return text;
}

static char *
write_cell (const BsBoard *board, BsBoardColumn column, const BsPlan *plan)
{
  const BsBoardColumnInfo *info = &bs_board_columns[column];

  if (column == BS_BOARD_WOOD) /* to be read in any language */
    {
      const BsWood *wood = bs_plan_find_wood (plan, board->wood);
      return g_strdup (wood == NULL ? "" : wood->name != NULL ? wood->name : wood->id);
    }
  if (info->limit == NULL)
    return bs_board_format (board, column, plan);
  double value = G_STRUCT_MEMBER (double, board, info->offset);
  return isnan (value) ? g_strdup ("") : write_number (value, info->limit, plan->units);
}

char *
bs_boards_csv_write (const BsPlan *plan)
{
  char separator = *localeconv ()->decimal_point == ',' ? ';' : ',';
  GString *text = g_string_new (NULL);

  for (guint row = 0; row <= plan->boards->len; row++)
    {
      for (guint i = 0; i < BS_N_BOARD_COLUMNS; i++)
        {
          g_autofree char *cell
              = row == 0 ? bs_boards_header_write ((BsBoardColumn)i, plan)
                         : write_cell (plan->boards->pdata[row - 1], (BsBoardColumn)i, plan);
          if (i > 0)
            g_string_append_c (text, separator);
          bs_csv_append (text, cell, separator);
        }
      g_string_append (text, "\r\n");
    }
  return g_string_free (text, FALSE);
}
