/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/rack-table-private.h"

#include <glib/gi18n.h>
#include <string.h>

#include "app/actions.h"
#include "app/boards-import.h"
#include "app/question.h"
#include "core/text.h"
#include "plan/boards-csv.h"

/* Many boards at once: add, strike out, copy, paste, files. */

static const BsPlan *
get_plan (BsRackTable *self)
{
  return bs_session_get_plan (self->session);
}

static void
put_boards (BsRackTable *self, const GPtrArray *boards, guint at, const char *label)
{
  g_autoptr (BsPlan) edited
      = bs_edit_put_boards (bs_session_get_plan (self->session), boards, NULL, at);

  bs_session_push (self->session, edited, label, NULL);
  bs_rack_table_go_to (self, MIN (at, get_plan (self)->boards->len - 1), BS_BOARD_LABEL);
}

static void
add_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsRackTable *self = BS_RACK_TABLE (widget);
  g_autoptr (GPtrArray) boards = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_board_unref);

  g_ptr_array_add (boards, bs_edit_next_board (get_plan (self)));
  put_boards (self, boards, get_plan (self)->boards->len, _ ("Add a board"));
}

/* As the board was bought: what was found and measured on it is its own. */
static BsBoard *
new_like (const BsBoard *board)
{
  BsBoard *more = bs_board_new ("");

  bs_text_set (&more->wood, board->wood);
  more->length = board->length;
  more->width = board->width;
  more->thickness = board->thickness;
  more->moisture_pct = board->moisture_pct;
  more->price_minor = board->price_minor;
  return more;
}

static void
more_action (GtkWidget *widget, const char *name, GVariant *count)
{
  BsRackTable *self = BS_RACK_TABLE (widget);
  const BsBoard *board = bs_rack_table_get_board (self);
  guint n = (guint)CLAMP (g_variant_get_int32 (count), 1, BS_MAX_BOARDS);
  g_autoptr (GPtrArray) boards = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_board_unref);
  guint place = 0;

  if (board == NULL)
    return;
  for (guint i = 0; i < n; i++)
    g_ptr_array_add (boards, new_like (board));
  while (get_plan (self)->boards->pdata[place] != board)
    place++;
  g_autofree char *label
      = g_strdup_printf (ngettext ("Add %u board like this", "Add %u boards like this", n), n);
  put_boards (self, boards, place + 1, label);
}

static void
strike_out_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsRackTable *self = BS_RACK_TABLE (widget);
  g_auto (GStrv) ids = bs_rack_table_dup_selected (self);
  guint n = g_strv_length (ids);
  g_autoptr (GtkBitset) rows
      = gtk_selection_model_get_selection (GTK_SELECTION_MODEL (self->selection));
  guint first = gtk_bitset_get_minimum (rows);

  if (n == 0)
    return;
  g_autofree char *label
      = g_strdup_printf (ngettext ("Strike out %u board", "Strike out %u boards", n), n);
  g_autoptr (BsPlan) edited
      = bs_edit_remove_boards (bs_session_get_plan (self->session), (const char *const *)ids);
  bs_session_push (self->session, edited, label, NULL);
  bs_rack_table_go_to (self, first, self->first_column);
}

/* The clipboard. */

static char *
write_rows (BsRackTable *self)
{
  g_auto (GStrv) ids = bs_rack_table_dup_selected (self);
  GString *text = g_string_new (NULL);

  for (char **id = ids; *id != NULL; id++)
    {
      const BsBoard *board = bs_plan_find_board (get_plan (self), *id);
      for (int column = 0; column < BS_RACK_FINISH; column++)
        {
          g_autofree char *cell = bs_board_format (board, (BsBoardColumn)column, get_plan (self));
          g_string_append_printf (text, "%s%s", column > 0 ? "\t" : "", cell);
        }
      g_string_append_c (text, '\n');
    }
  return g_string_free (text, FALSE);
}

/* A cell, or all of the rows when more than one is selected. */
static void
copy_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsRackTable *self = BS_RACK_TABLE (widget);
  BsRackCell *cell = bs_rack_table_get_focused (self);
  g_auto (GStrv) ids = bs_rack_table_dup_selected (self);
  g_autofree char *text = NULL;

  if (cell != NULL && g_strv_length (ids) < 2 && bs_rack_table_get_board_of (cell) != NULL
      && bs_rack_cell_get_column (cell) < BS_RACK_FINISH)
    text = bs_board_format (bs_rack_table_get_board_of (cell),
                            (BsBoardColumn)bs_rack_cell_get_column (cell), get_plan (self));
  else
    text = write_rows (self);
  gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
}

static void
boards_came (GtkWidget *widget, guint first)
{
  bs_rack_table_go_to (BS_RACK_TABLE (widget), first, BS_BOARD_LABEL);
}

static void
pasted_cb (GObject *clipboard, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (BsRackTable) self = user_data;
  g_autofree char *text = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (clipboard), result, NULL);
  BsRackCell *cell = bs_rack_table_get_focused (self);
  guint first = get_plan (self)->boards->len;
  int column = BS_BOARD_LABEL;

  if (text == NULL || gtk_widget_get_root (GTK_WIDGET (self)) == NULL)
    return;
  if (cell != NULL)
    {
      first = bs_rack_cell_get_position (cell);
      column = MIN (bs_rack_cell_get_column (cell), BS_RACK_FINISH - 1);
    }
  bs_boards_import_text (GTK_WIDGET (self), self->session, text, first, (BsBoardColumn)column,
                         boards_came);
}

static void
paste_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (widget), NULL, pasted_cb,
                                 g_object_ref (widget));
}

/* Files. */

static GtkFileChooserNative *
chooser_new (BsRackTable *self, const char *title, GtkFileChooserAction action)
{
  GtkRoot *window = gtk_widget_get_root (GTK_WIDGET (self));
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (title, GTK_WINDOW (window), action, NULL, NULL);

  gtk_file_filter_set_name (filter, _ ("Tables (CSV)"));
  gtk_file_filter_add_pattern (filter, "*.csv");
  gtk_file_filter_add_pattern (filter, "*.tsv");
  gtk_file_filter_add_pattern (filter, "*.txt");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  return chooser;
}

/* What was chosen; NULL: nothing. */
static GFile *
take_choice (GtkNativeDialog *chooser, int response)
{
  GFile *file = response == GTK_RESPONSE_ACCEPT
                    ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser))
                    : NULL;

  g_object_unref (chooser);
  return file;
}

static void
read_chosen_cb (GtkNativeDialog *chooser, int response, BsRackTable *self)
{
  g_autoptr (GFile) file = take_choice (chooser, response);

  if (file != NULL)
    bs_boards_import_file (GTK_WIDGET (self), self->session, file, boards_came);
}

static void
write_chosen_cb (GtkNativeDialog *chooser, int response, BsRackTable *self)
{
  g_autoptr (GFile) file = take_choice (chooser, response);
  g_autoptr (GError) error = NULL;

  if (file == NULL)
    return;
  /* With the mark of order: spreadsheets take it for some other encoding without. */
  g_autofree char *table = bs_boards_csv_write (get_plan (self));
  g_autofree char *text = g_strconcat ("\uFEFF", table, NULL);
  if (!g_file_replace_contents (file, text, strlen (text), NULL, FALSE, G_FILE_CREATE_NONE, NULL,
                                NULL, &error))
    bs_question_tell (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                      _ ("The table is not written"), error->message);
}

static void
read_table_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  GtkFileChooserNative *chooser = chooser_new (BS_RACK_TABLE (widget), _ ("Read a table of boards"),
                                               GTK_FILE_CHOOSER_ACTION_OPEN);

  g_signal_connect_object (chooser, "response", G_CALLBACK (read_chosen_cb), widget, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
write_table_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  GtkFileChooserNative *chooser = chooser_new (
      BS_RACK_TABLE (widget), _ ("Write a table of boards"), GTK_FILE_CHOOSER_ACTION_SAVE);

  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), _ ("boards.csv"));
  g_signal_connect_object (chooser, "response", G_CALLBACK (write_chosen_cb), widget, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

void
bs_rack_table_actions_class_init (GtkWidgetClass *class)
{
  gtk_widget_class_install_action (class, "board.add", NULL, add_action);
  gtk_widget_class_install_action (class, "board.more", "i", more_action);
  gtk_widget_class_install_action (class, "board.strike-out", NULL, strike_out_action);
  gtk_widget_class_install_action (class, "board.copy", NULL, copy_action);
  gtk_widget_class_install_action (class, "board.paste", NULL, paste_action);
  gtk_widget_class_install_action (class, "board.read-table", NULL, read_table_action);
  gtk_widget_class_install_action (class, "board.write-table", NULL, write_table_action);
}

/* Buttons. */

static void
more_clicked_cb (GtkSpinButton *count, GtkButton *button)
{
  gtk_widget_activate_action (GTK_WIDGET (button), "board.more", "i",
                              gtk_spin_button_get_value_as_int (count));
}

static GtkWidget *
menu_button_new (void)
{
  static const char *const names[]
      = { "board.copy", "board.paste", "board.read-table", "board.write-table" };
  g_autoptr (GMenu) menu = g_menu_new ();
  GtkWidget *button = gtk_menu_button_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    bs_actions_append (menu, names[i]);
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Tables"));
  gtk_menu_button_set_direction (GTK_MENU_BUTTON (button), GTK_ARROW_UP);
  return button;
}

GtkWidget *
bs_rack_table_buttons_new (BsRackTable *self)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *add = gtk_button_new_with_mnemonic (_ ("_Add a board"));
  GtkWidget *count = gtk_spin_button_new_with_range (1.0, 999.0, 1.0);
  GtkWidget *more = gtk_button_new_with_mnemonic (_ ("_More like this"));
  GtkWidget *strike_out = gtk_button_new_with_mnemonic (_ ("Strike it _out"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (add), "board.add");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (strike_out), "board.strike-out");
  gtk_accessible_update_property (GTK_ACCESSIBLE (count), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How many more"), -1);
  gtk_widget_set_tooltip_text (more, _ ("Adds as many boards as the number says, of the wood, the "
                                        "sizes, the moisture and the price of the selected one"));
  g_signal_connect_swapped (more, "clicked", G_CALLBACK (more_clicked_cb), count);
  gtk_box_append (GTK_BOX (buttons), add);
  gtk_box_append (GTK_BOX (buttons), count);
  gtk_box_append (GTK_BOX (buttons), more);
  gtk_box_append (GTK_BOX (buttons), strike_out);
  gtk_box_append (GTK_BOX (buttons), menu_button_new ());
  gtk_widget_add_css_class (buttons, "page-buttons");
  self->more = more;
  return buttons;
}

void
bs_rack_table_update_actions (BsRackTable *self)
{
  gboolean has_board = bs_rack_table_get_board (self) != NULL;

  gtk_widget_set_sensitive (self->more, has_board);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "board.more", has_board);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "board.strike-out", has_board);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "board.copy", has_board);
}
