/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages.h"

#include <stdlib.h>

/* Medians of finding a plan in stages, the balanced one and its proof among it. */

#define RUNS 11
#define MAX_LAMINATIONS 120

typedef struct
{
  const char *name;
  int n;
  int clamps;
  int planer_width; /* 0: packs are not planed */
  double total_s;
} Job;

static const Job jobs[] = {
  { "24, planed packs", 24, 12, 300, 600.0 },
  { "40, planed packs", 40, 12, 300, 600.0 },
  { "60, planed packs", 60, 24, 300, 900.0 },
  { "60, planed packs, short glue", 60, 12, 200, 420.0 },
  { "60, free packs", 60, 24, 0, 600.0 },
  { "60, free packs, many clamps", 60, 60, 0, 420.0 },
  { "60, cannot be done", 60, 24, 100, 200.0 },
  { "120, planed packs", 120, 60, 300, 900.0 },
};

static int
compare_times (const void *a, const void *b)
{
  gint64 x = *(const gint64 *)a, y = *(const gint64 *)b;
  return (x > y) - (x < y);
}

static void
time_job (const Job *job)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);
  double widths[MAX_LAMINATIONS];
  BsStagesInput input = bs_stages_input_default ();
  gint64 times[RUNS];
  int n_rounds = 0;
  gboolean is_proved = FALSE;

  for (int i = 0; i < job->n; i++)
    widths[i] = g_rand_int_range (random, 20, 41);
  input.n = job->n;
  input.widths = widths;
  input.length = 2400.0;
  input.height = 85.0;
  input.total_s = input.closed_s = job->total_s;
  input.planes_packs = job->planer_width > 0;
  input.planer_width = job->planer_width;
  input.clamps = input.pack_clamps = job->clamps;
  input.max_opening = 5000.0;
  input.people = 2;

  for (int i = 0; i < RUNS; i++)
    {
      gint64 start = g_get_monotonic_time ();
      g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
      times[i] = g_get_monotonic_time () - start;
      n_rounds = stages->shortest != NULL ? stages->shortest->n_rounds : 0;
      is_proved = stages->is_proved;
    }
  qsort (times, RUNS, sizeof *times, compare_times);
  g_print ("%-32s %8.2f ms, %d rounds%s\n", job->name, (double)times[RUNS / 2] / 1000.0, n_rounds,
           is_proved ? "" : ", search given up");
}

int
main (void)
{
  g_print ("stages, medians of %d runs, %u processors\n", RUNS, g_get_num_processors ());
  for (gsize i = 0; i < G_N_ELEMENTS (jobs); i++)
    time_job (&jobs[i]);
  return 0;
}
