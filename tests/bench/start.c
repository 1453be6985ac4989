/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gio/gio.h>

/* From starting the program to its first frame, against a bare window of GTK: start.c starts each
 * in turn, RUNS times, and reads the time that they print. Given a word, it is one of them. */
#include "app/application.h"
#include "app/window.h"

#define RUNS 15

static void
painted_cb (GdkFrameClock *clock, gpointer began)
{
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

  if (g_str_equal (which, "bare"))
    {
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

  double bare[RUNS], whole[RUNS];
  for (int i = 0; i < RUNS; i++)
    {
      bare[i] = start (argv[0], "bare");
      whole[i] = start (argv[0], "whole");
    }
  double of_bare = median (bare), of_whole = median (whole);
  g_print ("start to first frame: %.1f ms, a bare window %.1f ms, ratio %.2f\n", of_whole, of_bare,
           of_whole / of_bare);
  return 0;
}
