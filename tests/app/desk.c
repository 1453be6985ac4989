/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "desk.h"

#include <locale.h>

#include "app/glue-up-canvas.h"

static GtkApplication *application; /* for the life of the test program, as GTK wants it */

void
desk_init (int *argc, char ***argv)
{
  g_test_init (argc, argv, NULL);
  (void)setlocale (LC_ALL, "C.UTF-8");
  gtk_disable_setlocale ();
  if (!gtk_init_check ())
    {
      g_print ("Bail out! There is no display: run this with tests/gui/display.sh\n");
      exit (1);
    }
}

void
desk_wait (DeskCondition condition, gpointer data)
{
  gint64 until = g_get_monotonic_time () + G_GINT64_CONSTANT (10) * G_USEC_PER_SEC;

  while (!condition (data))
    {
      g_assert_cmpint (g_get_monotonic_time (), <, until);
      g_main_context_iteration (NULL, FALSE);
      g_usleep (1000);
    }
}

/* The contents come after the first frame. */
static gboolean
shows_contents (gpointer window)
{
  GtkWidget *canvas = desk_find (window, BS_TYPE_GLUE_UP_CANVAS);

  return canvas != NULL && gtk_widget_get_mapped (canvas) && gtk_widget_get_width (canvas) > 0;
}

BsWindow *
desk_open (void)
{
  if (application == NULL)
    {
      application = g_object_new (BS_TYPE_APPLICATION, "flags", G_APPLICATION_NON_UNIQUE, NULL);
      g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
    }

  BsWindow *window = bs_window_new (application);
  gtk_window_present (GTK_WINDOW (window));
  desk_wait (shows_contents, window);
  return window;
}

static gboolean
is_gone (gpointer window)
{
  return *(gpointer *)window == NULL;
}

void
desk_close (BsWindow *window)
{
  gpointer weak = window;

  g_object_add_weak_pointer (G_OBJECT (window), &weak);
  gtk_window_destroy (GTK_WINDOW (window));
  desk_wait (is_gone, &weak);
}

static GtkWidget *
find (GtkWidget *below, gboolean (*is_it) (GtkWidget *widget, gconstpointer data),
      gconstpointer data)
{
  if (is_it (below, data))
    return below;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, is_it, data);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
is_of_type (GtkWidget *widget, gconstpointer data)
{
  return G_TYPE_CHECK_INSTANCE_TYPE (widget, *(const GType *)data);
}

GtkWidget *
desk_find (GtkWidget *below, GType type)
{
  return find (below, is_of_type, &type);
}

static gboolean
has_action (GtkWidget *widget, gconstpointer data)
{
  return GTK_IS_BUTTON (widget)
         && g_strcmp0 (gtk_actionable_get_action_name (GTK_ACTIONABLE (widget)), data) == 0;
}

GtkWidget *
desk_find_button (GtkWidget *below, const char *action)
{
  GtkWidget *button = find (below, has_action, action);

  g_assert_nonnull (button);
  return button;
}

GtkWidget *
desk_get_child (GtkWidget *parent, int i)
{
  GtkWidget *child = gtk_widget_get_first_child (parent);

  while (i-- > 0 && child != NULL)
    child = gtk_widget_get_next_sibling (child);
  g_assert_nonnull (child);
  return child;
}

char *
desk_get_order (BsWindow *window)
{
  const BsPlan *plan = bs_session_get_plan (bs_window_get_session (window));
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < plan->order->len; i++)
    {
      const BsPlacement *placement = &g_array_index (plan->order, BsPlacement, i);

      g_string_append_printf (text, "%s%s", i == 0 ? "" : " ",
                              bs_plan_find_lamination (plan, placement->lamination)->label);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}
