/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <stdlib.h>
#include <time.h>

/* Median of the processor time of some runs: other work on the machine does not count. */

#define BENCH_RUNS 21

static inline double
bench_now_ms (void)
{
  return 1000.0 * (double)clock () / CLOCKS_PER_SEC;
}

static inline int
bench_compare (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static inline double
bench_median_ms (void (*work) (gpointer data), gpointer data)
{
  double times[BENCH_RUNS];

  for (int i = 0; i < BENCH_RUNS; i++)
    {
      double start = bench_now_ms ();
      work (data);
      times[i] = bench_now_ms () - start;
    }
  qsort (times, BENCH_RUNS, sizeof *times, bench_compare);
  return times[BENCH_RUNS / 2];
}
