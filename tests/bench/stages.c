/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/schedule.h"
#include "bench/median.h"
#include "shops.h"

#define RUNS 21
#define SCHEDULE_RUNS 5

/* Medians of finding a plan in stages, the balanced one and its proof among it; and of the whole
 * schedule of a slab of 60 laminations 2.5 m long that takes packs, with clamps counted by the hand
 * rule, and by the layouts of the presses shown. */

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

static BsPlan *
counter_new (void)
{
  BsPlan *plan = slab_new (60, 2500.0, 20.0, 66.0);
  BsWood *wood = shop_set_wood (plan, 0.60, 7.0);

  wood->moe_mpa = 12000.0;
  wood->is_hardwood = TRUE;
  plan->adhesive.open_s = 240.0;
  plan->adhesive.total_s = 510.0;
  plan->adhesive.min_pressure_mpa = 0.6;
  plan->shop.people = 2;
  for (guint i = 0; i < 60; i++)
    slab_at (plan, i)->bow = i % 3 - 1.0;
  shop_add_clamps (plan, 60, 9000.0, 1500.0, 45.0);
  return plan;
}

static void
schedule_by_rule (gpointer plan)
{
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
}

static void
schedule_by_layout (gpointer plan)
{
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, NULL);
}

static void
time_schedule (void)
{
  g_autoptr (BsPlan) plan = counter_new ();
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, NULL);
  const BsStagesPlan *presses = bs_schedule_get_presses (schedule);

  g_print ("schedule of 60: %u presses, by the hand rule %.2f ms, with layouts %.0f ms\n",
           presses != NULL ? presses->stages->len : 0,
           bench_median_ms (schedule_by_rule, plan, RUNS),
           bench_median_ms (schedule_by_layout, plan, SCHEDULE_RUNS));
}

int
main (void)
{
  g_print ("stages, median of %d runs, %u processors\n", RUNS, g_get_num_processors ());
  for (gsize i = 0; i < G_N_ELEMENTS (jobs); i++)
    time_job (&jobs[i]);
  time_schedule ();
  return 0;
}
