/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/window-private.h"

#include <glib/gi18n.h>

#include "app/examples.h"
#include "app/fold.h"
#include "app/resources.h"
#include "app/settings.h"

G_DEFINE_FINAL_TYPE (BsWindow, bs_window, GTK_TYPE_APPLICATION_WINDOW)

void
bs_window_update_title (BsWindow *self)
{
  BsHistory *history = bs_session_get_history (self->session);
  const BsPlan *plan = bs_session_get_plan (self->session);
  gboolean has_name = plan->name != NULL && plan->name[0] != '\0';
  const char *name = has_name ? plan->name : _ ("A plan without a name");
  g_autofree char *file = bs_window_get_file_name (self);
  const char *where = file != NULL ? file : _ ("not in a file yet");
  g_autofree char *title = NULL;

  if (bs_history_is_modified (history))
    /* Translators: the window's title: the plan's name, and the name of its file. */
    title = g_strdup_printf (_ ("%s (%s, changed)"), name, where);
  else
    title = g_strdup_printf (_ ("%s (%s)"), name, where);
  gtk_window_set_title (GTK_WINDOW (self), title);
}

static void
history_changed_cb (BsWindow *self)
{
  g_assert (BS_IS_WINDOW (self));

  bs_window_update_title (self);
  bs_window_update_actions (self);
}

/* Size, as it was last time. */

static void
restore_size (BsWindow *self)
{
  GSettings *settings = bs_settings_get ();

  if (settings == NULL)
    return;
  gtk_window_set_default_size (GTK_WINDOW (self), g_settings_get_int (settings, "window-width"),
                               g_settings_get_int (settings, "window-height"));
  if (g_settings_get_boolean (settings, "window-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
}

static void
keep_size (BsWindow *self)
{
  GSettings *settings = bs_settings_get ();
  int width, height;

  if (settings == NULL)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set_boolean (settings, "window-maximized",
                          gtk_window_is_maximized (GTK_WINDOW (self)));
  if (width > 0 && height > 0)
    {
      g_settings_set_int (settings, "window-width", width);
      g_settings_set_int (settings, "window-height", height);
    }
}

static void
guarded_cb (GObject *object, GAsyncResult *result, gpointer user_data)
{
  BsWindow *self = BS_WINDOW (object);

  if (!bs_window_guard_finish (self, result))
    return;
  self->is_closing = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static gboolean
bs_window_close_request (GtkWindow *window)
{
  BsWindow *self = BS_WINDOW (window);

  if (!self->is_closing && bs_history_is_modified (bs_session_get_history (self->session)))
    {
      bs_window_guard_async (self, guarded_cb, NULL);
      return TRUE;
    }
  keep_size (self);
  return GTK_WINDOW_CLASS (bs_window_parent_class)->close_request (window);
}

/* The window shows itself as soon as it can, and its contents in the next frame: the fonts alone
 * take longer to find than the window to appear. */

static gboolean
furnish (gpointer user_data)
{
  BsWindow *self = user_data;

  self->furnish_source = 0;
  bs_readout_set_session (self->readout, self->session);
  bs_findings_list_set_session (self->findings, self->session);
  bs_window_places_init (self);
  gtk_widget_set_visible (self->contents, TRUE);
  bs_window_go_to (self, "glue-up");
  return G_SOURCE_REMOVE;
}

static void
first_frame_cb (GdkFrameClock *clock, BsWindow *self)
{
  g_signal_handlers_disconnect_by_func (clock, first_frame_cb, self);
  self->furnish_source = g_idle_add_full (G_PRIORITY_HIGH_IDLE, furnish, self, NULL);
}

static void
bs_window_realize (GtkWidget *widget)
{
  BsWindow *self = BS_WINDOW (widget);

  GTK_WIDGET_CLASS (bs_window_parent_class)->realize (widget);
  if (!gtk_widget_get_visible (self->contents) && self->furnish_source == 0)
    g_signal_connect_object (gtk_widget_get_frame_clock (widget), "after-paint",
                             G_CALLBACK (first_frame_cb), self, 0);
}

static void
bs_window_dispose (GObject *object)
{
  BsWindow *self = BS_WINDOW (object);

  g_clear_handle_id (&self->furnish_source, g_source_remove);
  if (self->chooser != NULL)
    gtk_native_dialog_destroy (GTK_NATIVE_DIALOG (self->chooser));
  g_clear_object (&self->chooser);
  g_clear_object (&self->edit_menu);
  g_clear_object (&self->file);
  g_clear_object (&self->page_setup);
  g_clear_object (&self->print_settings);
  g_clear_object (&self->recent_menu);
  G_OBJECT_CLASS (bs_window_parent_class)->dispose (object);
  g_clear_object (&self->session);
}

static void
bs_window_class_init (BsWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_window_dispose;
  widget_class->realize = bs_window_realize;
  GTK_WINDOW_CLASS (class)->close_request = bs_window_close_request;

  g_type_ensure (BS_TYPE_FINDINGS_LIST);
  g_type_ensure (BS_TYPE_FOLD);
  g_type_ensure (BS_TYPE_READOUT);
  gtk_widget_class_set_template_from_resource (widget_class, BS_RESOURCES "/window.ui");
  gtk_widget_class_bind_template_child (widget_class, BsWindow, contents);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, findings);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, menu);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, places);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, sidebar);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, readout);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, redo);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, redo_label);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, undo);
  gtk_widget_class_bind_template_child (widget_class, BsWindow, undo_label);

  bs_window_actions_class_init (widget_class);
  bs_window_file_class_init (widget_class);
  bs_window_places_class_init (widget_class);
  bs_window_print_class_init (widget_class);
}

static void
bs_window_init (BsWindow *self)
{
  g_autoptr (BsPlan) plan = bs_examples_load (0);

  self->session = bs_session_new (plan);
  gtk_widget_init_template (GTK_WIDGET (self));
  bs_window_print_init (self);
  self->recent_menu = g_menu_new ();
  bs_window_actions_init (self);
  g_signal_connect_object (bs_session_get_history (self->session), "changed",
                           G_CALLBACK (history_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "changed", G_CALLBACK (bs_window_update_actions), self,
                           G_CONNECT_SWAPPED);
  restore_size (self);
  history_changed_cb (self);
}

BsWindow *
bs_window_new (GtkApplication *application)
{
  return g_object_new (BS_TYPE_WINDOW, "application", application, NULL);
}

BsSession *
bs_window_get_session (BsWindow *self)
{
  g_return_val_if_fail (BS_IS_WINDOW (self), NULL);

  return self->session;
}
