/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/window-private.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "app/examples.h"
#include "app/keys-window.h"

static void
undo_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  bs_history_undo (bs_session_get_history (BS_WINDOW (widget)->session));
}

static void
redo_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  bs_history_redo (bs_session_get_history (BS_WINDOW (widget)->session));
}

/* At the place where the slab is put in order. */
static void
propose_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsWindow *self = BS_WINDOW (widget);

  bs_window_go_to (self, "glue-up");
  GtkWidget *frame = gtk_stack_get_visible_child (self->places);
  if (frame != NULL)
    gtk_widget_activate_action (gtk_widget_get_first_child (frame), "order.open", NULL);
}

static void
close_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  gtk_window_close (GTK_WINDOW (widget));
}

static void
shortcuts_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  gtk_window_present (bs_keys_window_new (GTK_WINDOW (widget)));
}

static void
about_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  gtk_show_about_dialog (GTK_WINDOW (widget), "program-name", "Broadstave", "version",
                         PACKAGE_VERSION, "logo-icon-name", APPLICATION_ID, "license-type",
                         GTK_LICENSE_GPL_3_0, "copyright", _ ("The Broadstave developers"),
                         "comments",
                         _ ("Plans a laminated solid-wood slab. The numbers help to decide; the "
                            "maker’s data sheets, local "
                            "rules and licensed practice come before them."),
                         NULL);
}

/* "Undo", or "Undo: Move B to place 4". */
static char *
write_title (const char *action, const char *label)
{
  const char *title = _ (bs_actions_find (action)->title);

  if (label == NULL)
    return g_strdup (title);
  /* Translators: "Undo", and what would be undone. */
  return g_strdup_printf (_ ("%s: %s"), title, label);
}

static void
update_step (BsWindow *self, GtkButton *button, const char *action, const char *label)
{
  g_autofree char *text = write_title (action, label);
  g_autoptr (GMenuItem) item = g_menu_item_new (text, action);

  /* A tooltip that is set asks the display where the pointer is and waits for the answer. */
  if (g_strcmp0 (gtk_widget_get_tooltip_text (GTK_WIDGET (button)), text) != 0)
    {
      gtk_widget_set_tooltip_text (GTK_WIDGET (button), text);
      gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, text,
                                      -1);
    }
  g_menu_item_set_attribute (item, "accel", "s", bs_actions_find (action)->keys[0]);
  g_menu_append_item (self->edit_menu, item);
}

void
bs_window_update_actions (BsWindow *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  BsHistory *history = bs_session_get_history (self->session);
  gboolean is_free = !bs_session_has_preview (self->session);

  gtk_widget_action_set_enabled (widget, "win.undo", is_free && bs_history_can_undo (history));
  gtk_widget_action_set_enabled (widget, "win.redo", is_free && bs_history_can_redo (history));
  gtk_widget_action_set_enabled (
      widget, "win.save", is_free && (self->file == NULL || bs_history_is_modified (history)));
  gtk_widget_action_set_enabled (widget, "win.save-as", is_free);
  gtk_widget_action_set_enabled (widget, "win.open", is_free);
  if (!is_free)
    return;
  g_menu_remove_all (self->edit_menu);
  update_step (self, self->undo, "win.undo", bs_history_get_undo_label (history));
  update_step (self, self->redo, "win.redo", bs_history_get_redo_label (history));
}

static GMenu *
section_new (const char *const *actions)
{
  GMenu *section = g_menu_new ();

  for (; *actions != NULL; actions++)
    bs_actions_append (section, *actions);
  return section;
}

static void
append_section (GMenu *menu, const char *const *actions)
{
  g_autoptr (GMenu) section = section_new (actions);

  g_menu_append_section (menu, NULL, G_MENU_MODEL (section));
}

static GMenu *
examples_menu_new (void)
{
  GMenu *menu = g_menu_new ();

  for (guint i = 0; i < bs_examples_get_n (); i++)
    {
      const char *name = bs_examples_get_title (i);
      g_autofree char *action = g_strdup_printf ("win.example(uint32 %u)", i);

      g_menu_append (menu, name, action);
    }
  return menu;
}

static GMenu *
appearance_menu_new (void)
{
  GMenu *menu = g_menu_new ();

  g_menu_append (menu, _ ("As the desktop"), "app.appearance::system");
  g_menu_append (menu, _ ("Light"), "app.appearance::light");
  g_menu_append (menu, _ ("Dark"), "app.appearance::dark");
  return menu;
}

static GMenu *
menu_new (BsWindow *self)
{
  static const char *const save[] = { "win.save", "win.save-as", NULL };
  static const char *const order[] = { "win.propose", NULL };
  static const char *const paper[]
      = { "win.preview", "win.print", "win.page-setup", "win.workings", "win.export", NULL };
  static const char *const last[] = { "win.shortcuts", "win.about", "win.close", "app.quit", NULL };
  GMenu *menu = g_menu_new ();
  g_autoptr (GMenu) open = g_menu_new ();
  g_autoptr (GMenu) examples = examples_menu_new ();
  g_autoptr (GMenu) view = g_menu_new ();
  g_autoptr (GMenu) appearance = appearance_menu_new ();

  bs_actions_append (open, "win.begin");
  bs_actions_append (open, "win.open");
  g_menu_append_submenu (open, _ ("Opened lately"), G_MENU_MODEL (self->recent_menu));
  g_menu_append_submenu (open, _ ("Begin with an example"), G_MENU_MODEL (examples));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (open));
  append_section (menu, save);
  g_menu_append_section (menu, NULL, G_MENU_MODEL (self->edit_menu));
  append_section (menu, order);
  append_section (menu, paper);
  g_menu_append_submenu (view, _ ("Light or dark"), G_MENU_MODEL (appearance));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (view));
  append_section (menu, last);
  return menu;
}

/* Not before it is opened: a menu is many widgets. */
static void
create_menu_cb (GtkMenuButton *button, gpointer user_data)
{
  BsWindow *self = user_data;

  if (gtk_menu_button_get_popover (button) != NULL)
    return;
  bs_window_load_recent (self);
  g_autoptr (GMenu) menu = menu_new (self);
  gtk_menu_button_set_menu_model (button, G_MENU_MODEL (menu));
}

void
bs_window_actions_class_init (GtkWidgetClass *class)
{
  gtk_widget_class_install_action (class, "win.undo", NULL, undo_action);
  gtk_widget_class_install_action (class, "win.redo", NULL, redo_action);
  gtk_widget_class_install_action (class, "win.propose", NULL, propose_action);
  gtk_widget_class_install_action (class, "win.close", NULL, close_action);
  gtk_widget_class_install_action (class, "win.shortcuts", NULL, shortcuts_action);
  gtk_widget_class_install_action (class, "win.about", NULL, about_action);
}

void
bs_window_actions_init (BsWindow *self)
{
  self->edit_menu = g_menu_new ();
  gtk_label_set_text (self->undo_label, _ (bs_actions_find ("win.undo")->title));
  gtk_label_set_text (self->redo_label, _ (bs_actions_find ("win.redo")->title));
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (self->menu))),
      GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Menu"), -1);
  gtk_menu_button_set_create_popup_func (self->menu, create_menu_cb, self, NULL);
  bs_actions_add_shortcuts (GTK_WIDGET (self), "win.");
  bs_actions_add_shortcuts (GTK_WIDGET (self), "app.");
}
