/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/results.h"

#include "shops.h"

#include <stdio.h>
#include <stdlib.h>

/* Evaluating a plan of 60 crooked laminations after a change of order. */

#define N_LAMINATIONS 60
#define N_RUNS 301

static int
compare_doubles (const void *a, const void *b)
{
  double first = *(const double *)a;
  double second = *(const double *)b;
  return (first > second) - (first < second);
}

static BsPlan *
warped_plan (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (60);
  BsPlan *plan = slab_new (N_LAMINATIONS, 2400.0, 40.0, 85.0);

  shop_set_wood (plan, 0.64, 7.0);
  shop_add_clamps (plan, 30, 6000.0, 3000.0, 40.0);
  shop_add_cauls (plan, 2, 2400.0, 40.0, 80.0);
  for (guint i = 0; i < N_LAMINATIONS; i++)
    {
      BsLamination *lamination = slab_at (plan, i);
      lamination->crook = g_rand_double_range (random, -3.0, 3.0);
      lamination->bow = g_rand_double_range (random, -3.0, 3.0);
      lamination->twist = g_rand_double_range (random, -2.0, 2.0);
      lamination->moisture_pct = g_rand_double_range (random, 7.0, 12.0);
      lamination->run_out_top = g_rand_int_range (random, -1, 2);
      lamination->pith_y = g_rand_double_range (random, -100.0, 100.0);
      lamination->pith_z = g_rand_double_range (random, -100.0, 100.0);
    }
  return plan;
}

static void
swap_neighbours (BsPlan *plan, guint place)
{
  BsPlacement *placement = &g_array_index (plan->order, BsPlacement, place);
  BsPlacement former = placement[0];

  placement[0] = placement[1];
  placement[1] = former;
}

int
main (void)
{
  g_autoptr (BsPlan) plan = warped_plan ();
  double times[N_RUNS];

  for (guint i = 0; i < N_RUNS; i++)
    {
      g_autoptr (BsPlan) edited = bs_plan_copy (plan);
      swap_neighbours (edited, i % (N_LAMINATIONS - 1));
      gint64 start = g_get_monotonic_time ();
      g_autoptr (BsResults) results = bs_evaluate (edited);
      times[i] = (double)(g_get_monotonic_time () - start) / 1e3;
    }
  qsort (times, N_RUNS, sizeof *times, compare_doubles);
  printf ("evaluate, %d laminations: median %.3f ms, nine in ten within %.3f ms, %u processors\n",
          N_LAMINATIONS, times[N_RUNS / 2], times[N_RUNS * 9 / 10], g_get_num_processors ());
  return 0;
}
