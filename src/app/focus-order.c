/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/focus-order.h"

static GtkWidget *
get_next (GtkWidget *widget, GtkWidget *child, gboolean is_back)
{
  if (child == NULL)
    return is_back ? gtk_widget_get_last_child (widget) : gtk_widget_get_first_child (widget);
  return is_back ? gtk_widget_get_prev_sibling (child) : gtk_widget_get_next_sibling (child);
}

gboolean
bs_focus_in_order (GtkWidget *widget, GtkDirectionType direction)
{
  const GtkWidgetClass *usual = g_type_class_peek (GTK_TYPE_WIDGET);
  const gboolean is_back = direction == GTK_DIR_TAB_BACKWARD;
  GtkWidget *child = gtk_widget_get_focus_child (widget);

  if (!is_back && direction != GTK_DIR_TAB_FORWARD)
    return usual->focus (widget, direction);
  if (child == NULL)
    child = get_next (widget, NULL, is_back);
  while (child != NULL && !gtk_widget_child_focus (child, direction))
    child = get_next (widget, child, is_back);
  return child != NULL;
}

/* The cell or the row before it that has something to focus. */
static gboolean
focus_before (GtkWidget *widget)
{
  do
    widget = gtk_widget_get_prev_sibling (widget);
  while (widget != NULL && !gtk_widget_child_focus (widget, GTK_DIR_TAB_BACKWARD));
  return widget != NULL;
}

/* A row that is entered from behind begins with its last cell. */
static gboolean
focus_row_before (GtkWidget *row)
{
  GtkWidget *before = gtk_widget_get_prev_sibling (row);
  GtkWidget *last = before != NULL ? gtk_widget_get_last_child (before) : NULL;

  return last != NULL
         && (gtk_widget_child_focus (last, GTK_DIR_TAB_BACKWARD) || focus_before (last));
}

static gboolean
cell_key_cb (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state,
             GtkWidget *table)
{
  GtkWidget *row = gtk_widget_get_focus_child (gtk_widget_get_last_child (table));
  GtkWidget *cell = row != NULL ? gtk_widget_get_focus_child (row) : NULL;

  if (key != GDK_KEY_ISO_Left_Tab || (state & GDK_CONTROL_MASK) != 0 || cell == NULL)
    return GDK_EVENT_PROPAGATE;
  return focus_before (cell) || focus_row_before (row)
         || gtk_widget_grab_focus (gtk_widget_get_ancestor (table, GTK_TYPE_SCROLLED_WINDOW));
}

void
bs_focus_back_through_cells (GtkWidget *table)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_return_if_fail (GTK_IS_COLUMN_VIEW (table));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (cell_key_cb), table, 0);
  gtk_widget_add_controller (table, keys);
}

void
bs_focus_leave (GtkWidget *widget, GtkWidget *page)
{
  g_return_if_fail (GTK_IS_WIDGET (widget));
  g_return_if_fail (gtk_widget_is_ancestor (widget, page));

  while ((gtk_widget_get_state_flags (widget) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0
         && gtk_widget_child_focus (page, GTK_DIR_TAB_FORWARD))
    ;
}
