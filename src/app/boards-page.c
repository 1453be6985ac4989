/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/boards-page.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "app/board-details.h"
#include "app/page.h"
#include "app/rack-table.h"

#define TABLE_HEIGHT 340
#define DETAILS_HEIGHT 180 /* least */

struct _BsBoardsPage
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *table;   /* BsRackTable */
  GtkWidget *details; /* BsBoardDetails */
  GtkWidget *begin;   /* in their place while no board is chosen */
  GtkWidget *heading; /* GtkLabel, of the beginning */
};

G_DEFINE_FINAL_TYPE (BsBoardsPage, bs_boards_page, GTK_TYPE_WIDGET)

static void
selection_changed_cb (BsBoardsPage *self)
{
  const BsBoard *board = bs_rack_table_get_board (BS_RACK_TABLE (self->table));

  bs_board_details_set_board (BS_BOARD_DETAILS (self->details), board != NULL ? board->id : NULL);
  gtk_widget_set_visible (self->details, board != NULL);
  gtk_widget_set_visible (self->begin, board == NULL);
}

static void
session_changed_cb (BsBoardsPage *self, BsSession *session)
{
  gboolean is_empty = bs_session_get_plan (session)->boards->len == 0;

  gtk_label_set_text (GTK_LABEL (self->heading),
                      is_empty ? _ ("There are no boards in the rack yet.") : _ ("A new board"));
  selection_changed_cb (self);
}

/* How boards come into the rack. */

static const struct
{
  const char *text;
  const char *action; /* of the table, or NULL */
} ways[] = {
  { N_ ("Type into the empty row: what is written on the wood, Tab, the wood, Tab, its sizes. "
        "Enter "
        "begins the next row. A size may carry its unit: 2.44 m, 8', 7 1/2\"; a thickness may be "
        "8/4."),
    NULL },
  { N_ ("Paste rows that were copied from a spreadsheet, in the order of the columns above or with "
        "their titles."),
    "board.paste" },
  { N_ ("Read a table from a file. What cannot be read is listed before anything is taken over."),
    "board.read-table" },
  { N_ ("Nothing is bought yet? Buying works out which boards the slab takes."), NULL },
};

static void
way_clicked_cb (BsBoardsPage *self, GtkButton *button)
{
  gtk_widget_activate_action (self->table, g_object_get_data (G_OBJECT (button), "action"), NULL);
}

/* The button does what the table can. */
static GtkWidget *
way_button_new (BsBoardsPage *self, const char *action)
{
  GtkWidget *button = gtk_button_new_with_label (_ (bs_actions_find (action)->title));

  g_object_set_data (G_OBJECT (button), "action", (gpointer)action);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (way_clicked_cb), self);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  return button;
}

static GtkWidget *
begin_new (BsBoardsPage *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  self->heading = bs_page_text_new (NULL, "strong");
  gtk_box_append (GTK_BOX (column), self->heading);
  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      GtkWidget *text = bs_page_text_new (_ (ways[i].text), NULL);
      gtk_label_set_max_width_chars (GTK_LABEL (text), 80);
      gtk_widget_set_halign (text, GTK_ALIGN_START);
      gtk_box_append (GTK_BOX (column), text);
      if (ways[i].action != NULL)
        gtk_box_append (GTK_BOX (column), way_button_new (self, ways[i].action));
    }
  gtk_widget_add_css_class (column, "page");
  return column;
}

static void
bs_boards_page_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (bs_boards_page_parent_class)->dispose (object);
}

static void
bs_boards_page_class_init (BsBoardsPageClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_boards_page_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
}

static void
bs_boards_page_init (BsBoardsPage *self)
{
}

GtkWidget *
bs_boards_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsBoardsPage *self = g_object_new (BS_TYPE_BOARDS_PAGE, NULL);
  GtkWidget *halves = gtk_paned_new (GTK_ORIENTATION_VERTICAL);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *below = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->table = bs_rack_table_new (session);
  self->details = bs_board_details_new (session);
  gtk_widget_add_css_class (self->details, "page");
  self->begin = begin_new (self);
  gtk_box_append (GTK_BOX (below), self->details);
  gtk_box_append (GTK_BOX (below), self->begin);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), below);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_AUTOMATIC,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), DETAILS_HEIGHT);
  gtk_paned_set_start_child (GTK_PANED (halves), self->table);
  gtk_paned_set_end_child (GTK_PANED (halves), scroller);
  gtk_paned_set_shrink_start_child (GTK_PANED (halves), FALSE);
  gtk_paned_set_shrink_end_child (GTK_PANED (halves), FALSE);
  gtk_paned_set_position (GTK_PANED (halves), TABLE_HEIGHT);
  gtk_widget_set_parent (halves, GTK_WIDGET (self));
  g_signal_connect_object (self->table, "selection-changed", G_CALLBACK (selection_changed_cb),
                           self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed_cb), self,
                           G_CONNECT_SWAPPED);
  session_changed_cb (self, session);
  return GTK_WIDGET (self);
}
