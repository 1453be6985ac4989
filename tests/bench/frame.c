/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/examples.h"
#include "app/window.h"

#include <gtk/gtk.h>

/* What the program does for one frame while one of 60 laminations is carried over the slab and back
 * with the pointer, at 1600 x 1000: all work between two waits of the main loop, so also the
 * events, the preview and its results, not only the drawing. xdotool moves the pointer. */

#define SIXTY 2
#define LEAST_US 300 /* less is a look at the clock, not a frame */

typedef struct
{
  GArray *frames; /* gint64, µs */
  gint64 woke;
  gboolean is_carrying;
} Meter;

static Meter meter;

static int
poll_and_measure (GPollFD *fds, guint n, int timeout)
{
  gint64 now = g_get_monotonic_time ();

  if (meter.is_carrying && timeout != 0 && now - meter.woke > LEAST_US)
    {
      gint64 took = now - meter.woke;
      g_array_append_val (meter.frames, took);
      meter.woke = now;
    }
  int ready = g_poll (fds, n, timeout);
  if (timeout != 0)
    meter.woke = g_get_monotonic_time ();
  return ready;
}

static int
compare_times (const void *a, const void *b)
{
  gint64 x = *(const gint64 *)a, y = *(const gint64 *)b;
  return (x > y) - (x < y);
}

static double
part_ms (double part)
{
  guint index = (guint)(part * (meter.frames->len - 1));

  return (double)g_array_index (meter.frames, gint64, index) / 1000.0;
}

static void
carried_cb (GObject *subprocess, GAsyncResult *result, gpointer application)
{
  g_autoptr (GError) error = NULL;

  if (!g_subprocess_wait_check_finish (G_SUBPROCESS (subprocess), result, &error))
    g_error ("xdotool: %s", error->message);
  meter.is_carrying = FALSE;
  g_array_sort (meter.frames, compare_times);
  g_print ("frame while carrying, 60 laminations, 1600 x 1000: %u frames, median %.2f ms, "
           "95 %% %.2f ms, most %.2f ms\n",
           meter.frames->len, part_ms (0.5), part_ms (0.95), part_ms (1.0));
  g_application_quit (G_APPLICATION (application));
}

/* Down on the tenth lamination, over the slab in 160 steps and back. */
static gboolean
carry (gpointer application)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;

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

  GSubprocess *pointer
      = g_subprocess_newv ((const char *const *)words->pdata, G_SUBPROCESS_FLAGS_NONE, &error);
  if (pointer == NULL)
    g_error ("%s", error->message);
  meter.is_carrying = TRUE;
  meter.woke = g_get_monotonic_time ();
  g_subprocess_wait_check_async (pointer, NULL, carried_cb, application);
  g_object_unref (pointer);
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
  g_autoptr (GtkApplication) application = gtk_application_new (NULL, G_APPLICATION_NON_UNIQUE);

  meter.frames = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_main_context_set_poll_func (g_main_context_default (), poll_and_measure);
  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), NULL);
  return g_application_run (G_APPLICATION (application), 0, NULL);
}
