/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/median.h"

static int
compare_times (gconstpointer a, gconstpointer b)
{
  const gint64 first = *(const gint64 *)a;
  const gint64 second = *(const gint64 *)b;
  return (first > second) - (first < second);
}

double
bench_median_ms (void (*work) (gpointer data), gpointer data, guint runs)
{
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < runs; i++)
    {
      const gint64 start = g_get_monotonic_time ();
      work (data);
      const gint64 time = g_get_monotonic_time () - start;
      g_array_append_val (times, time);
    }
  g_array_sort (times, compare_times);
  const guint middle = runs / 2;
  return (double)g_array_index (times, gint64, middle) / 1000.0;
}
