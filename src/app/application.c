/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "app/application.h"

#include "app/appearance.h"
#include "app/command-line.h"
#include "app/resources.h"
#include "app/window.h"

struct _BsApplication
{
  GtkApplication parent_instance;

  BsAppearance *appearance;
};

G_DEFINE_FINAL_TYPE (BsApplication, bs_application, GTK_TYPE_APPLICATION)

/* Asks every window to close; each may refuse for its unsaved changes. */
static void
quit_action (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  g_autoptr (GList) windows
      = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (user_data)));

  for (GList *l = windows; l != NULL; l = l->next)
    if (BS_IS_WINDOW (l->data))
      gtk_window_close (GTK_WINDOW (l->data));
}

static void
load_style (void)
{
  g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (provider, BS_RESOURCES "/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (),
                                              GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

static void
bs_application_startup (GApplication *application)
{
  BsApplication *self = BS_APPLICATION (application);
  const GActionEntry entries[] = { { "quit", quit_action } };

  G_APPLICATION_CLASS (bs_application_parent_class)->startup (application);

  gtk_window_set_default_icon_name (APPLICATION_ID);
  load_style ();
  self->appearance = bs_appearance_new (gtk_settings_get_default ());
  g_autoptr (GAction) appearance = bs_appearance_create_action (self->appearance);
  g_action_map_add_action (G_ACTION_MAP (self), appearance);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}

static void
bs_application_activate (GApplication *application)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));

  if (window == NULL)
    window = GTK_WINDOW (bs_window_new (GTK_APPLICATION (application)));
  gtk_window_present (window);
}

static void
bs_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  for (int i = 0; i < n_files; i++)
    {
      BsWindow *window = bs_window_new (GTK_APPLICATION (application));

      gtk_window_present (GTK_WINDOW (window));
      bs_window_open (window, files[i]);
    }
}

/* Before any display is touched. */
static gboolean
bs_application_local_command_line (GApplication *application, char ***arguments, int *status)
{
  if (bs_command_line_run (*arguments, status))
    return TRUE;
  return G_APPLICATION_CLASS (bs_application_parent_class)
      ->local_command_line (application, arguments, status);
}

static void
bs_application_dispose (GObject *object)
{
  BsApplication *self = BS_APPLICATION (object);

  if (self->appearance != NULL)
    g_object_run_dispose (G_OBJECT (self->appearance));
  g_clear_object (&self->appearance);
  G_OBJECT_CLASS (bs_application_parent_class)->dispose (object);
}

static void
bs_application_class_init (BsApplicationClass *class)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_application_dispose;
  application_class->startup = bs_application_startup;
  application_class->activate = bs_application_activate;
  application_class->open = bs_application_open;
  application_class->local_command_line = bs_application_local_command_line;
}

static void
bs_application_init (BsApplication *self)
{
}

BsApplication *
bs_application_new (void)
{
  return g_object_new (BS_TYPE_APPLICATION, "application-id", APPLICATION_ID, "flags",
                       G_APPLICATION_HANDLES_OPEN, NULL);
}
