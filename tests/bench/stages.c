/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages.h"
#include "bench/median.h"

#define RUNS 21

/* Medians of finding a plan in stages, the balanced one and its proof among it. */

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
  { "24, planed packs", 24, 24, 300, 900.0 },
  { "40, planed packs", 40, 24, 300, 900.0 },
  { "60, planed packs", 60, 36, 300, 900.0 },
  { "60, planed packs, few clamps", 60, 24, 300, 900.0 },
  { "60, planed packs, many clamps", 60, 72, 300, 900.0 },
  { "60, free packs", 60, 24, 0, 600.0 },
  { "60, free packs, many clamps", 60, 60, 0, 420.0 },
  { "60, cannot be done", 60, 24, 100, 200.0 },
  { "120, planed packs", 120, 60, 300, 900.0 },
};

static void
solve (gpointer input)
{
  g_autoptr (BsStages) stages = bs_stages_solve (input, NULL);
}

static void
time_job (const Job *job)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1);
  double widths[MAX_LAMINATIONS];
  BsStagesInput input = bs_stages_input_default ();

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

  g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
  g_print ("%-32s %8.2f ms, %d rounds%s\n", job->name, bench_median_ms (solve, &input, RUNS),
           stages->shortest != NULL ? stages->shortest->n_rounds : 0,
           stages->is_proved ? "" : ", not proved");
}

int
main (void)
{
  g_print ("stages, median of %d runs, %u processors\n", RUNS, g_get_num_processors ());
  for (gsize i = 0; i < G_N_ELEMENTS (jobs); i++)
    time_job (&jobs[i]);
  return 0;
}
