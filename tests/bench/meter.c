/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "meter.h"

#include <time.h>

#define FRAME_US 16667 /* at 60 a second */
#define LEAST_US 300   /* less is a look at the clock, not a frame */

static struct
{
  GArray *frames;       /* gint64, µs by the clock */
  GArray *work;         /* of these, what the main thread had a processor for */
  gint64 woke, woke_at; /* by the clock, and by the processor */
  gboolean is_running;
  const char *title;
  GSourceFunc next;
} meter;

static gint64
get_processor_time (void)
{
  struct timespec now = { 0 };

  (void)clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (gint64)now.tv_sec * G_USEC_PER_SEC + now.tv_nsec / 1000;
}

static int
poll_and_measure (GPollFD *fds, guint n, int timeout)
{
  gint64 now = g_get_monotonic_time ();

  if (meter.is_running && timeout != 0 && now - meter.woke > LEAST_US)
    {
      gint64 took = now - meter.woke, worked = get_processor_time () - meter.woke_at;
      g_array_append_val (meter.frames, took);
      g_array_append_val (meter.work, worked);
    }
  int ready = g_poll (fds, n, timeout);
  if (timeout != 0)
    {
      meter.woke = g_get_monotonic_time ();
      meter.woke_at = get_processor_time ();
    }
  return ready;
}

static int
compare_times (const void *a, const void *b)
{
  gint64 x = *(const gint64 *)a, y = *(const gint64 *)b;
  return (x > y) - (x < y);
}

static void
print_times (const char *name, GArray *times)
{
  static const double parts[] = { 0.5, 0.95, 1.0 };
  double ms[G_N_ELEMENTS (parts)];

  g_array_sort (times, compare_times);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    ms[i] = (double)g_array_index (times, gint64, (guint)(parts[i] * (times->len - 1))) / 1000.0;
  guint n_late = 0;
  for (guint i = 0; i < times->len; i++)
    n_late += g_array_index (times, gint64, i) > FRAME_US;
  g_print ("  %s: median %.2f ms, 95 %% %.2f ms, most %.2f ms, %u longer than %.1f ms\n", name,
           ms[0], ms[1], ms[2], n_late, FRAME_US / 1000.0);
}

static void
ended_cb (GObject *subprocess, GAsyncResult *result, gpointer application)
{
  g_autoptr (GError) error = NULL;

  if (!g_subprocess_wait_check_finish (G_SUBPROCESS (subprocess), result, &error))
    g_error ("xdotool: %s", error->message);
  meter.is_running = FALSE;
  g_print ("%s: %u frames\n", meter.title, meter.frames->len);
  print_times ("by the clock", meter.frames);
  print_times ("processor time of the main thread", meter.work);
  if (meter.next != NULL)
    g_idle_add (meter.next, application);
  else
    g_application_quit (G_APPLICATION (application));
}

void
meter_init (void)
{
  meter.frames = g_array_new (FALSE, FALSE, sizeof (gint64));
  meter.work = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_main_context_set_poll_func (g_main_context_default (), poll_and_measure);
}

void
meter_run (GApplication *application, const char *title, GPtrArray *words, GSourceFunc next)
{
  g_autoptr (GPtrArray) owned = words;
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) command
      = g_subprocess_newv ((const char *const *)words->pdata, G_SUBPROCESS_FLAGS_NONE, &error);

  if (command == NULL)
    g_error ("%s", error->message);
  g_array_set_size (meter.frames, 0);
  g_array_set_size (meter.work, 0);
  meter.title = title;
  meter.next = next;
  meter.is_running = TRUE;
  meter.woke = g_get_monotonic_time ();
  meter.woke_at = get_processor_time ();
  g_subprocess_wait_check_async (command, NULL, ended_cb, application);
}
