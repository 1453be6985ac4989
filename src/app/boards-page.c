/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/boards-page.h"

#include "app/board-details.h"
#include "app/rack-table.h"

#define TABLE_HEIGHT 340
#define DETAILS_HEIGHT 180 /* least */

struct _BsBoardsPage
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *table;   /* BsRackTable */
  GtkWidget *details; /* BsBoardDetails */
};

G_DEFINE_FINAL_TYPE (BsBoardsPage, bs_boards_page, GTK_TYPE_WIDGET)

static void
selection_changed_cb (BsBoardsPage *self)
{
  const BsBoard *board = bs_rack_table_get_board (BS_RACK_TABLE (self->table));

  bs_board_details_set_board (BS_BOARD_DETAILS (self->details), board != NULL ? board->id : NULL);
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

  self->table = bs_rack_table_new (session);
  self->details = bs_board_details_new (session);
  gtk_widget_add_css_class (self->details, "page");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->details);
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
  g_signal_connect_object (session, "changed", G_CALLBACK (selection_changed_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
