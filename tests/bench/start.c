/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gio/gio.h>

/* From starting the program to its first frame, against a bare window of GTK: start.c starts each
 * in turn, RUNS times, and reads the time that they print. Given a word, it is one of them. */
#include "app/application.h"
#include "app/window.h"

#define RUNS 15

static gboolean with_word, with_contents;

static gboolean
shows_slab (GtkWidget *widget)
{
  if (g_str_equal (G_OBJECT_TYPE_NAME (widget), "BsGlueUpCanvas"))
    return gtk_widget_get_mapped (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (shows_slab (child))
      return TRUE;
  return FALSE;
}

static void
painted_cb (GdkFrameClock *clock, gpointer began)
{
  if (with_contents && !shows_slab (g_list_model_get_item (gtk_window_get_toplevels (), 0)))
    return;
  g_print ("%.3f\n", (double)(g_get_monotonic_time () - *(gint64 *)began) / 1000.0);
  _Exit (0);
}

static void
realized_cb (GtkWidget *window, gpointer began)
{
  g_signal_connect (gtk_widget_get_frame_clock (window), "after-paint", G_CALLBACK (painted_cb),
                    began);
}

static void
bare_cb (GtkApplication *application, gpointer began)
{
  GtkWidget *window = gtk_application_window_new (application);

  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 800);
  if (with_word)
    gtk_window_set_child (GTK_WINDOW (window), gtk_label_new ("Broadstave"));
  g_signal_connect (window, "realize", G_CALLBACK (realized_cb), began);
  gtk_window_present (GTK_WINDOW (window));
}

static void
added_cb (GtkApplication *application, GtkWindow *window, gpointer began)
{
  g_signal_connect (window, "realize", G_CALLBACK (realized_cb), began);
}

static int
be_one (const char *which, gint64 began)
{
  g_autoptr (GtkApplication) application = NULL;

  with_contents = g_str_equal (which, "contents");
  if (g_str_equal (which, "bare") || g_str_equal (which, "word"))
    {
      with_word = g_str_equal (which, "word");
      application = gtk_application_new (NULL, G_APPLICATION_NON_UNIQUE);
      g_signal_connect (application, "activate", G_CALLBACK (bare_cb), &began);
    }
  else
    {
      application = GTK_APPLICATION (bs_application_new ());
      g_signal_connect (application, "window-added", G_CALLBACK (added_cb), &began);
    }
  return g_application_run (G_APPLICATION (application), 0, NULL);
}

static double
start (const char *program, const char *which)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *output = NULL;
  g_autoptr (GSubprocess) process
      = g_subprocess_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error, program, which, NULL);

  if (process == NULL
      || !g_subprocess_communicate_utf8 (process, NULL, NULL, &output, NULL, &error))
    g_error ("%s", error->message);
  return g_ascii_strtod (output, NULL);
}

static int
compare_times (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static double
median (double *times)
{
  qsort (times, RUNS, sizeof times[0], compare_times);
  return times[RUNS / 2];
}

int
main (int argc, char **argv)
{
  gint64 began = g_get_monotonic_time ();

  if (argc == 2)
    return be_one (argv[1], began);

  double bare[RUNS], word[RUNS], whole[RUNS], contents[RUNS];
  for (int i = 0; i < RUNS; i++)
    {
      bare[i] = start (argv[0], "bare");
      word[i] = start (argv[0], "word");
      whole[i] = start (argv[0], "whole");
      contents[i] = start (argv[0], "contents");
    }
  double of_bare = median (bare), of_word = median (word), of_whole = median (whole);
  g_print ("start to first frame: %.1f ms, with the contents %.1f ms; a bare window %.1f ms (ratio "
           "%.2f), a window with a word in it %.1f ms (ratio %.2f)\n",
           of_whole, median (contents), of_bare, of_whole / of_bare, of_word, of_whole / of_word);
  return 0;
}
