/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/application.h"
#include "app/examples.h"
#include "app/window.h"
#include "meter.h"

#include <gtk/gtk.h>

/* What the program does for one frame while one of 60 laminations is carried over the slab and back
 * with the pointer, at 1600 x 1000. xdotool moves the pointer. */

#define SIXTY 2
/* Down on the tenth lamination, over the slab in 160 steps and back. */
static gboolean
carry (gpointer application)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_add (words, g_strdup ("xdotool"));
  for (int i = 0; i <= 320; i++)
    {
      int x = 400 + (i <= 160 ? i : 320 - i) * 5;
      g_autofree char *move = g_strdup_printf ("mousemove,%d,600,sleep,0.016", x);
      g_auto (GStrv) parts = g_strsplit (move, ",", -1);

      for (char **part = parts; *part != NULL; part++)
        g_ptr_array_add (words, g_strdup (*part));
      if (i == 0)
        {
          g_ptr_array_add (words, g_strdup ("mousedown"));
          g_ptr_array_add (words, g_strdup ("1"));
        }
    }
  g_ptr_array_add (words, g_strdup ("mouseup"));
  g_ptr_array_add (words, g_strdup ("1"));
  g_ptr_array_add (words, NULL);

  meter_run (application, "frame while carrying, 60 laminations, 1600 x 1000",
             g_steal_pointer (&words), NULL);
  return G_SOURCE_REMOVE;
}

static void
activate_cb (GtkApplication *application)
{
  BsWindow *window = bs_window_new (application);
  g_autoptr (BsPlan) plan = bs_examples_load (SIXTY);

  bs_session_open (bs_window_get_session (window), plan);
  gtk_window_set_decorated (GTK_WINDOW (window), FALSE);
  gtk_window_fullscreen (GTK_WINDOW (window));
  gtk_window_present (GTK_WINDOW (window));
  g_timeout_add (1500, carry, application);
}

int
main (void)
{
  g_autoptr (GtkApplication) application = GTK_APPLICATION (bs_application_new ()); /* its style */

  meter_init ();
  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), NULL);
  return g_application_run (G_APPLICATION (application), 0, NULL);
}
