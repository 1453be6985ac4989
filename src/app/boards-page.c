/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/boards-page.h"

#include "app/rack-table.h"

struct _BsBoardsPage
{
  GtkWidget parent_instance;

  /* children */
  GtkWidget *table; /* BsRackTable */

  /* owned */
  BsSession *session;
};

G_DEFINE_FINAL_TYPE (BsBoardsPage, bs_boards_page, GTK_TYPE_WIDGET)

static void
bs_boards_page_dispose (GObject *object)
{
  BsBoardsPage *self = BS_BOARDS_PAGE (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_boards_page_parent_class)->dispose (object);
}

static void
bs_boards_page_class_init (BsBoardsPageClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_boards_page_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BOX_LAYOUT);
}

static void
bs_boards_page_init (BsBoardsPage *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
bs_boards_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsBoardsPage *self = g_object_new (BS_TYPE_BOARDS_PAGE, NULL);
  self->session = g_object_ref (session);
  self->table = bs_rack_table_new (session);
  gtk_widget_set_vexpand (self->table, TRUE);
  gtk_widget_set_parent (self->table, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}
