/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack-table-private.h"

#include <glib/gi18n.h>

#include "core/board-forecast.h"
#include "core/units.h"

/* What stands in the cells, and what becomes of what is typed into them. */

/* What was typed and could not be taken over. */
typedef struct
{
  char *text;
  char *sentence;
} Draft;

static void
free_draft (gpointer data)
{
  Draft *draft = data;

  g_free (draft->text);
  g_free (draft->sentence);
  g_free (draft);
}

GHashTable *
bs_rack_table_drafts_new (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, free_draft);
}

const BsBoard *
bs_rack_table_get_board_of (BsRackCell *cell)
{
  BsRackRow *row = bs_rack_cell_get_row (cell);

  return row != NULL ? bs_rack_row_get_board (row) : NULL;
}

static char *
make_key (const BsBoard *board, int column)
{
  return g_strdup_printf ("%d %s", column, board != NULL ? board->id : "");
}

static const Draft *
find_draft (BsRackTable *self, const BsBoard *board, int column)
{
  g_autofree char *key = make_key (board, column);

  return g_hash_table_lookup (self->drafts, key);
}

static char *
format_finish (const BsBoard *board, const BsPlan *plan)
{
  BsBoardForecast forecast = bs_board_forecast (board, plan);

  return bs_units_format_number (forecast.thickness, BS_QUANTITY_LENGTH, plan->units);
}

static char *
format_cell (BsRackTable *self, const BsBoard *board, int column)
{
  const BsPlan *plan = bs_session_get_plan (self->session);

  if (board == NULL)
    /* Translators: stands in the empty row at the end of a table, where typing adds a thing */
    return g_strdup (column == BS_BOARD_LABEL ? _ ("new") : "");
  return column == BS_RACK_FINISH ? format_finish (board, plan)
                                  : bs_board_format (board, (BsBoardColumn)column, plan);
}

static gboolean
is_text (int column)
{
  return column == BS_BOARD_LABEL || column == BS_BOARD_WOOD;
}

void
bs_rack_table_show_cell (BsRackTable *self, BsRackCell *cell)
{
  const BsBoard *board = bs_rack_table_get_board_of (cell);
  int column = bs_rack_cell_get_column (cell);
  const Draft *draft = find_draft (self, board, column);
  g_autofree char *text = format_cell (self, board, column);
  BsRackCellLook look = is_text (column) ? BS_RACK_CELL_PLAIN : BS_RACK_CELL_NUMBER;

  if (draft != NULL)
    look |= BS_RACK_CELL_WRONG;
  else if (board == NULL || column == BS_RACK_FINISH)
    look |= BS_RACK_CELL_FAINT;
  bs_rack_cell_show (cell, self->titles[column], draft != NULL ? draft->text : text, look,
                     draft != NULL ? draft->sentence : NULL);
}

BsRackCell *
bs_rack_table_get_focused (BsRackTable *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  GtkWidget *cell = focus != NULL ? gtk_widget_get_ancestor (focus, BS_TYPE_RACK_CELL) : NULL;

  return cell != NULL && gtk_widget_is_ancestor (cell, self->view) ? BS_RACK_CELL (cell) : NULL;
}

/* Under the table: why the cell with the focus is not taken over, else what the column means. */
void
bs_rack_table_show_status (BsRackTable *self)
{
  BsRackCell *cell = bs_rack_table_get_focused (self);
  const char *text = "";
  gboolean is_wrong = FALSE;

  if (cell != NULL)
    {
      int column = bs_rack_cell_get_column (cell);
      const Draft *draft = find_draft (self, bs_rack_table_get_board_of (cell), column);
      const char *hint = column == BS_RACK_FINISH
                             ? N_ ("Cut to the slab’s length, ripped and planed")
                             : bs_board_columns[column].hint;
      is_wrong = draft != NULL;
      text = is_wrong ? draft->sentence : hint != NULL ? _ (hint) : "";
    }
  gtk_label_set_text (GTK_LABEL (self->status), text);
  if (is_wrong)
    gtk_widget_add_css_class (self->status, "strong");
  else
    gtk_widget_remove_css_class (self->status, "strong");
}

/* Taking over what was typed. */

static void
keep_draft (BsRackTable *self, const BsBoard *board, int column, const char *text,
            const char *sentence)
{
  Draft *draft = g_new (Draft, 1);

  *draft = (Draft){ g_strdup (text), g_strdup (sentence) };
  g_hash_table_replace (self->drafts, make_key (board, column), draft);
}

void
bs_rack_table_drop_draft (BsRackTable *self, BsRackCell *cell)
{
  g_autofree char *key
      = make_key (bs_rack_table_get_board_of (cell), bs_rack_cell_get_column (cell));

  g_hash_table_remove (self->drafts, key);
  bs_rack_table_show_cell (self, cell);
}

static void
push_board (BsRackTable *self, BsBoard *board, BsBoardReader *reader, int column)
{
  g_autoptr (GPtrArray) boards = g_ptr_array_new ();
  g_autofree char *label
      = *board->id == '\0'
            ? g_strdup (_ ("Add a board"))
            /* Translators: %s is the name of a field, for instance Length */
            : g_strdup_printf (_ ("Change of “%s”"), _ (bs_board_columns[column].title));

  g_ptr_array_add (boards, board);
  g_autoptr (BsPlan) edited
      = bs_edit_put_boards (bs_session_get_plan (self->session), boards, reader->woods, G_MAXUINT);
  bs_session_push (self->session, edited, label, NULL);
}

gboolean
bs_rack_table_take_text (BsRackTable *self, BsRackCell *cell, const char *text)
{
  const BsPlan *plan = bs_session_get_plan (self->session);
  const BsBoard *present = bs_rack_table_get_board_of (cell);
  int column = bs_rack_cell_get_column (cell);
  g_auto (BsBoardReader) reader = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (BsBoard) board = present != NULL ? bs_board_copy (present) : bs_edit_next_board (plan);

  bs_board_reader_init (&reader, plan);
  if (!bs_board_read (board, (BsBoardColumn)column, text, &reader, &error))
    {
      keep_draft (self, present, column, text, error->message);
      bs_rack_table_show_cell (self, cell);
      bs_rack_table_show_status (self);
      return FALSE;
    }
  bs_rack_cell_end_edit (cell);
  bs_rack_table_drop_draft (self, cell);
  push_board (self, board, &reader, column);
  bs_rack_table_show_status (self);
  return TRUE;
}

/* What was not touched is not taken over: the text may be rounded. */
static gboolean
is_touched (BsRackTable *self, BsRackCell *cell, const char *typed)
{
  const BsBoard *board = bs_rack_table_get_board_of (cell);
  g_autofree char *present
      = board != NULL ? format_cell (self, board, bs_rack_cell_get_column (cell)) : g_strdup ("");
  g_autofree char *bare = g_strstrip (g_strdup (typed));

  return !g_str_equal (present, bare);
}

gboolean
bs_rack_table_end_edit (BsRackTable *self, BsRackCell *cell)
{
  g_autofree char *typed = g_strdup (bs_rack_cell_get_typed (cell));

  if (typed == NULL)
    return TRUE;
  if (is_touched (self, cell, typed))
    return bs_rack_table_take_text (self, cell, typed);
  bs_rack_cell_end_edit (cell);
  bs_rack_table_drop_draft (self, cell);
  bs_rack_table_show_status (self);
  return TRUE;
}
