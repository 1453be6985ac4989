/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/boards-page.h"

#include "app/board-details.h"
#include "app/rack-line.h"
#include "app/rack-table-private.h"
#include "core/text.h"
#include "desk.h"

#include <string.h>

/* The page in a window of its own, with a rack of so many boards. */
typedef struct
{
  GtkWindow *window;
  BsSession *session;
  GtkWidget *page;
  BsRackTable *table;
} Rack;

static gboolean
is_mapped (gpointer data)
{
  const Rack *rack = data;

  return gtk_widget_get_width (rack->page) > 0;
}

static Rack
open_rack (int n_boards)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  BsWood *wood = bs_wood_new ("oak");

  bs_text_set (&wood->name, "Oak");
  g_ptr_array_add (plan->woods, wood);
  for (int i = 0; i < n_boards; i++)
    {
      g_autofree char *id = g_strdup_printf ("b%d", i + 1);
      BsBoard *board = bs_board_new (id);
      bs_text_set (&board->label, id);
      bs_text_set (&board->wood, "oak");
      board->length = 2000.0;
      board->width = 150.0;
      board->thickness = 50.8;
      g_ptr_array_add (plan->boards, board);
    }
  Rack rack = { .session = bs_session_new (plan) };
  rack.page = bs_boards_page_new (rack.session);
  rack.table = BS_RACK_TABLE (desk_find (rack.page, BS_TYPE_RACK_TABLE));
  rack.window = GTK_WINDOW (gtk_window_new ());
  gtk_window_set_default_size (rack.window, 1000, 700);
  gtk_window_set_child (rack.window, rack.page);
  gtk_window_present (rack.window);
  desk_wait (is_mapped, &rack);
  return rack;
}

/* Nothing of it stays behind. */
static void
close_rack (Rack *rack)
{
  gpointer page = rack->page, session = rack->session;

  g_object_add_weak_pointer (G_OBJECT (page), &page);
  g_object_add_weak_pointer (G_OBJECT (session), &session);
  gtk_window_destroy (rack->window);
  g_object_unref (rack->session);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_null (page);
  g_assert_null (session);
}

static const BsBoard *
get_board (const Rack *rack, guint i)
{
  const GPtrArray *boards = bs_session_get_plan (rack->session)->boards;

  g_assert_cmpuint (i, <, boards->len);
  return boards->pdata[i];
}

static guint
count_boards (const Rack *rack)
{
  return bs_session_get_plan (rack->session)->boards->len;
}

static BsRackCell *
go_to (Rack *rack, guint row, int column)
{
  bs_rack_table_go_to (rack->table, row, column);
  BsRackCell *cell = bs_rack_table_get_focused (rack->table);
  g_assert_nonnull (cell);
  g_assert_cmpint (bs_rack_cell_get_column (cell), ==, column);
  return cell;
}

static gboolean
type_into (Rack *rack, guint row, int column, const char *text)
{
  BsRackCell *cell = go_to (rack, row, column);

  bs_rack_cell_edit (cell, text);
  return bs_rack_table_end_edit (rack->table, cell);
}

static void
test_type (void)
{
  Rack rack = open_rack (2);

  g_assert_true (type_into (&rack, 0, BS_BOARD_WIDTH, "7 1/2\""));
  g_assert_cmpfloat_with_epsilon (get_board (&rack, 0)->width, 190.5, 1e-9);
  g_assert_true (type_into (&rack, 1, BS_BOARD_MOISTURE, "8,5 %"));
  g_assert_cmpfloat_with_epsilon (get_board (&rack, 1)->moisture_pct, 8.5, 1e-9);
  bs_history_undo (bs_session_get_history (rack.session));
  bs_history_undo (bs_session_get_history (rack.session));
  g_assert_false (bs_history_can_undo (bs_session_get_history (rack.session)));
  g_assert_cmpfloat_with_epsilon (get_board (&rack, 0)->width, 150.0, 1e-9);
  close_rack (&rack);
}

/* What is shown may be rounded: to leave it alone changes nothing. */
static void
test_untouched (void)
{
  Rack rack = open_rack (1);
  BsRackCell *cell = go_to (&rack, 0, BS_BOARD_THICKNESS);

  bs_rack_cell_edit (cell, NULL);
  g_assert_cmpstr (bs_rack_cell_get_typed (cell), ==, "8/4");
  g_assert_true (bs_rack_table_end_edit (rack.table, cell));
  g_assert_false (bs_history_can_undo (bs_session_get_history (rack.session)));
  close_rack (&rack);
}

static void
test_wrong (void)
{
  Rack rack = open_rack (2);

  g_assert_false (type_into (&rack, 0, BS_BOARD_LENGTH, "long"));
  g_assert_false (bs_history_can_undo (bs_session_get_history (rack.session)));
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (rack.table->status)), "long"));

  /* Whoever goes elsewhere finds it again. */
  BsRackCell *cell = bs_rack_table_get_focused (rack.table);
  bs_rack_cell_end_edit (cell);
  go_to (&rack, 1, BS_BOARD_WIDTH);
  g_assert_null (strstr (gtk_label_get_text (GTK_LABEL (rack.table->status)), "long"));
  cell = go_to (&rack, 0, BS_BOARD_LENGTH);
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (rack.table->status)), "long"));
  bs_rack_cell_edit (cell, NULL);
  g_assert_cmpstr (bs_rack_cell_get_typed (cell), ==, "long");
  bs_rack_cell_end_edit (cell);
  g_assert_true (type_into (&rack, 0, BS_BOARD_LENGTH, "8'"));
  g_assert_cmpfloat_with_epsilon (get_board (&rack, 0)->length, 2438.4, 1e-9);
  close_rack (&rack);
}

/* In the empty row any cell makes a board, like the last one; in an empty rack too. */
static void
test_new (void)
{
  Rack rack = open_rack (0);

  g_assert_true (type_into (&rack, 0, BS_BOARD_WIDTH, "220"));
  g_assert_cmpuint (count_boards (&rack), ==, 1);
  g_assert_cmpstr (get_board (&rack, 0)->wood, ==, "oak");
  g_assert_true (type_into (&rack, 1, BS_BOARD_LABEL, "B"));
  g_assert_cmpuint (count_boards (&rack), ==, 2);
  g_assert_cmpfloat_with_epsilon (get_board (&rack, 1)->width, 220.0, 1e-9);
  g_assert_cmpstr (get_board (&rack, 1)->label, ==, "B");
  close_rack (&rack);
}

static void
test_more (void)
{
  Rack rack = open_rack (3);

  go_to (&rack, 1, BS_BOARD_LABEL);
  gtk_widget_activate_action (GTK_WIDGET (rack.table), "board.more", "i", 12);
  g_assert_cmpuint (count_boards (&rack), ==, 15);
  g_assert_cmpstr (get_board (&rack, 1)->label, ==, "b2");
  g_assert_cmpstr (get_board (&rack, 14)->label, ==, "b3");
  bs_history_undo (bs_session_get_history (rack.session));
  g_assert_cmpuint (count_boards (&rack), ==, 3);
  close_rack (&rack);
}

static void
test_strike_out (void)
{
  Rack rack = open_rack (5);

  gtk_selection_model_select_range (GTK_SELECTION_MODEL (rack.table->selection), 1, 3, TRUE);
  gtk_widget_activate_action (GTK_WIDGET (rack.table), "board.strike-out", NULL);
  g_assert_cmpuint (count_boards (&rack), ==, 2);
  g_assert_cmpstr (get_board (&rack, 1)->label, ==, "b5");
  bs_history_undo (bs_session_get_history (rack.session));
  g_assert_cmpuint (count_boards (&rack), ==, 5);
  close_rack (&rack);
}

/* Far rows have no cells until they are gone to. */
static void
test_far (void)
{
  Rack rack = open_rack (500);

  g_assert_true (type_into (&rack, 480, BS_BOARD_WIDTH, "99"));
  g_assert_cmpfloat_with_epsilon (get_board (&rack, 480)->width, 99.0, 1e-9);
  g_assert_true (type_into (&rack, 500, BS_BOARD_LABEL, "last"));
  g_assert_cmpuint (count_boards (&rack), ==, 501);
  close_rack (&rack);
}

static guint
count_lines (GtkWidget *widget)
{
  guint n = BS_IS_RACK_LINE (widget);

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += count_lines (child);
  return n;
}

/* No row is lower than 16 pixels, so that no more than so many are in sight. */
static void
test_in_sight (void)
{
  Rack rack = open_rack (500);
  GtkWidget *view = rack.table->view;
  guint most = (guint)gtk_widget_get_height (view) / 16 + 2;

  g_assert_cmpuint (count_lines (view), <=, most);
  for (guint row = 0; row <= 500; row += 50)
    {
      BsRackCell *cell = go_to (&rack, row, BS_BOARD_WIDTH);
      g_assert_cmpuint (bs_rack_cell_get_position (cell), ==, row);
    }
  g_assert_cmpuint (count_lines (view), <=, most);
  close_rack (&rack);
}

static void
scroll_to (const Rack *rack, double share)
{
  GtkAdjustment *down = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (rack->table->view));
  double most = gtk_adjustment_get_upper (down) - gtk_adjustment_get_page_size (down);

  g_assert_cmpfloat (most, >, 0.0);
  gtk_adjustment_set_value (down, share * most);
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

/* What is being typed stays when the pointer's wheel takes it out of sight, and so does the place
 * that it is typed into. */
static void
test_scrolled_away (void)
{
  Rack rack = open_rack (500);
  BsRackCell *cell = go_to (&rack, 1, BS_BOARD_WIDTH);

  bs_rack_cell_edit (cell, "123");
  scroll_to (&rack, 1.0);
  g_assert_true (bs_rack_table_get_focused (rack.table) == cell);
  g_assert_cmpstr (bs_rack_cell_get_typed (cell), ==, "123");
  scroll_to (&rack, 0.5);
  g_assert_true (bs_rack_table_end_edit (rack.table, cell));
  g_assert_cmpfloat_with_epsilon (get_board (&rack, 1)->width, 123.0, 1e-9);
  go_to (&rack, 2, BS_BOARD_WIDTH);
  close_rack (&rack);
}

/* As in any list: alone, with Shift from the one before, with Ctrl beside the others. */
static void
test_select (void)
{
  Rack rack = open_rack (9);
  BsRackView *view = BS_RACK_VIEW (rack.table->view);

  bs_rack_view_select (view, 6, FALSE, FALSE);
  bs_rack_view_select (view, 3, FALSE, TRUE);
  g_auto (GStrv) from_3 = bs_rack_table_dup_selected (rack.table);
  g_autofree char *four = g_strjoinv (" ", from_3);
  g_assert_cmpstr (four, ==, "b4 b5 b6 b7");
  bs_rack_view_select (view, 8, FALSE, TRUE);
  bs_rack_view_select (view, 7, TRUE, FALSE);
  bs_rack_view_select (view, 0, TRUE, FALSE);
  g_auto (GStrv) apart = bs_rack_table_dup_selected (rack.table);
  g_autofree char *three = g_strjoinv (" ", apart);
  g_assert_cmpstr (three, ==, "b1 b7 b9");
  close_rack (&rack);
}

/* The empty row stays chosen, and what comes in its place by pasting or undoing is chosen then. */
static void
test_chosen (void)
{
  Rack rack = open_rack (2);
  GtkSelectionModel *rows = GTK_SELECTION_MODEL (rack.table->selection);

  go_to (&rack, 2, BS_BOARD_LABEL);
  g_assert_null (bs_rack_table_get_board (rack.table));
  g_assert_true (gtk_selection_model_is_selected (rows, 2));
  g_assert_true (type_into (&rack, 2, BS_BOARD_LABEL, "X"));
  g_assert_cmpstr (bs_rack_table_get_board (rack.table)->label, ==, "X");
  bs_history_undo (bs_session_get_history (rack.session));
  g_assert_cmpuint (bs_rack_cell_get_position (bs_rack_table_get_focused (rack.table)), ==, 2);
  g_assert_true (gtk_selection_model_is_selected (rows, 2));
  close_rack (&rack);
}

/* There is a board to look at from the first; without any, how to begin. */
static void
test_first (void)
{
  Rack rack = open_rack (2);
  GtkWidget *details = desk_find (rack.page, BS_TYPE_BOARD_DETAILS);

  g_assert_cmpstr (bs_rack_table_get_board (rack.table)->label, ==, "b1");
  g_assert_true (gtk_widget_get_visible (details));
  gtk_selection_model_select_all (GTK_SELECTION_MODEL (rack.table->selection));
  gtk_widget_activate_action (GTK_WIDGET (rack.table), "board.strike-out", NULL);
  g_assert_null (bs_rack_table_get_board (rack.table));
  g_assert_false (gtk_widget_get_visible (details));
  bs_history_undo (bs_session_get_history (rack.session));
  g_assert_nonnull (bs_rack_table_get_board (rack.table));
  g_assert_true (gtk_widget_get_visible (details));
  close_rack (&rack);
}

/* Whoever comes by Tab comes to a cell. */
static gboolean
has_cell (gpointer data)
{
  return bs_rack_table_get_focused (((Rack *)data)->table) != NULL;
}

static void
test_enter (void)
{
  Rack rack = open_rack (2);

  gtk_window_set_focus (rack.window, NULL);
  g_assert_true (gtk_widget_child_focus (rack.page, GTK_DIR_TAB_FORWARD));
  desk_wait (has_cell, &rack);
  close_rack (&rack);
}

typedef struct
{
  Rack *rack;
  guint n_boards;
} Count;

static gboolean
has_boards (gpointer data)
{
  const Count *count = data;

  return count_boards (count->rack) == count->n_boards;
}

static void
paste (Rack *rack, const char *text)
{
  gdk_clipboard_set_text (gtk_widget_get_clipboard (rack->page), text);
  gtk_widget_activate_action (GTK_WIDGET (rack->table), "board.paste", NULL);
}

static gboolean
has_77 (gpointer rack)
{
  return get_board (rack, 3)->width > 76.9 && get_board (rack, 3)->width < 77.1;
}

static void
test_paste (void)
{
  Rack rack = open_rack (1);
  Count count = { &rack, 3 };

  go_to (&rack, 1, BS_BOARD_LABEL);
  paste (&rack, "X\toak\t4/4\t120\nY\toak\t5/4\t130\n");
  desk_wait (has_boards, &count);
  g_assert_cmpfloat_with_epsilon (get_board (&rack, 1)->thickness, 25.4, 1e-9);
  g_assert_cmpstr (get_board (&rack, 2)->label, ==, "Y");
  bs_history_undo (bs_session_get_history (rack.session));
  g_assert_cmpuint (count_boards (&rack), ==, 1);
  close_rack (&rack);
}

/* What came in behind the others is gone to, far as it may be. */
static void
test_paste_far (void)
{
  Rack rack = open_rack (200);
  Count count = { &rack, 202 };

  go_to (&rack, 3, BS_BOARD_WIDTH);
  paste (&rack, "label,wood,thickness,width,length\nX,oak,25,120,2000\nY,oak,25,130,2000\n");
  desk_wait (has_boards, &count);
  g_assert_cmpstr (bs_rack_table_get_board (rack.table)->label, ==, "X");
  g_assert_cmpuint (bs_rack_cell_get_position (bs_rack_table_get_focused (rack.table)), ==, 200);

  /* Over boards that were there nothing is gone to. */
  go_to (&rack, 3, BS_BOARD_WIDTH);
  paste (&rack, "77\n");
  desk_wait (has_77, &rack);
  g_assert_cmpuint (bs_rack_cell_get_position (bs_rack_table_get_focused (rack.table)), ==, 3);
  close_rack (&rack);
}

/* The window that asks about broken rows: another one than the page's. */
static GtkWindow *
find_question (const Rack *rack)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
      if (window != rack->window && gtk_window_get_transient_for (window) == rack->window)
        return window;
    }
  return NULL;
}

static gboolean
is_asked (gpointer rack)
{
  return find_question (rack) != NULL;
}

static gboolean
is_answered (gpointer rack)
{
  return find_question (rack) == NULL;
}

/* Good rows are kept only if the person says so. */
static void
test_broken (gconstpointer keep)
{
  static const char table[] = "X\toak\t4/4\t120\nY\toak\tthick\t130\nZ\toak\t4/4\t-5\n";
  Rack rack = open_rack (1);

  go_to (&rack, 1, BS_BOARD_LABEL);
  paste (&rack, table);
  desk_wait (is_asked, &rack);
  g_assert_cmpuint (count_boards (&rack), ==, 1);
  GtkWindow *question = find_question (&rack);
  g_assert_cmpstr (gtk_window_get_title (question), ==, "2 rows cannot be taken over");
  if (GPOINTER_TO_INT (keep))
    gtk_widget_activate (gtk_window_get_default_widget (question));
  else
    gtk_window_close (question);
  desk_wait (is_answered, &rack);
  Count count = { &rack, GPOINTER_TO_INT (keep) ? 2 : 1 };
  desk_wait (has_boards, &count);
  close_rack (&rack);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/boards-page/type", test_type);
  g_test_add_func ("/boards-page/untouched", test_untouched);
  g_test_add_func ("/boards-page/wrong", test_wrong);
  g_test_add_func ("/boards-page/new", test_new);
  g_test_add_func ("/boards-page/more", test_more);
  g_test_add_func ("/boards-page/strike-out", test_strike_out);
  g_test_add_func ("/boards-page/far", test_far);
  g_test_add_func ("/boards-page/in-sight", test_in_sight);
  g_test_add_func ("/boards-page/scrolled-away", test_scrolled_away);
  g_test_add_func ("/boards-page/select", test_select);
  g_test_add_func ("/boards-page/chosen", test_chosen);
  g_test_add_func ("/boards-page/first", test_first);
  g_test_add_func ("/boards-page/enter", test_enter);
  g_test_add_func ("/boards-page/paste", test_paste);
  g_test_add_func ("/boards-page/paste-far", test_paste_far);
  g_test_add_data_func ("/boards-page/broken/go-back", GINT_TO_POINTER (FALSE), test_broken);
  g_test_add_data_func ("/boards-page/broken/keep", GINT_TO_POINTER (TRUE), test_broken);
  return g_test_run ();
}
