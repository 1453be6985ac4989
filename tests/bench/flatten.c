/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-map.h"
#include "core/flatten-spread.h"
#include "core/flatten.h"
#include "bench/median.h"
#include "slabs.h"

#define RUNS 21

/* Medians of flattening one slab, of 2,000 drawn ones, and of the map of what comes off. */

static BsPlan *
warped_slab (guint n)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (n);
  BsPlan *plan = slab_new (n, 2400.0, 40.0, 85.0);

  for (guint i = 0; i < n; i++)
    {
      BsLamination *lamination = slab_at (plan, i);
      lamination->crook = g_rand_double_range (random, -3.0, 3.0);
      lamination->twist = g_rand_double_range (random, -4.0, 4.0);
      lamination->taper = g_rand_double_range (random, -1.0, 1.0);
      lamination->height = g_rand_double_range (random, 84.0, 86.0);
    }
  return plan;
}

static void
flatten_thousand_times (gpointer stack)
{
  BsFlattenResult result;

  for (int i = 0; i < 1000; i++)
    bs_flatten (stack, &result);
}

static void
draw_slabs (gpointer data)
{
  BsStack *stack = data;
  BsFlattenSpread spread = bs_flatten_spread_of (stack->plan);
  bs_flatten_odds (stack, &spread);
}

static void
map_slab (gpointer stack)
{
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, BS_FLATTEN_SHIMMED, 240, 120);
}

int
main (void)
{
  static const guint sizes[] = { 12, 24, 60 };

  g_print ("flattening, median of %d runs, %u processors\n", RUNS, g_get_num_processors ());
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (sizes[i]);
      g_autoptr (BsStack) stack = bs_stack_new (plan);
      g_print ("%2u laminations: thickness %.4f ms, 2000 draws %.1f ms, map 240 x 120 %.2f ms",
               sizes[i], bench_median_ms (flatten_thousand_times, stack, RUNS) / 1000.0,
               bench_median_ms (draw_slabs, stack, RUNS), bench_median_ms (map_slab, stack, RUNS));
      stack->plan->slab.flatten_work = BS_FLATTEN_SHOW_FACE_FIRST;
      g_print (", 2000 draws at rest %.1f ms\n", bench_median_ms (draw_slabs, stack, RUNS));
    }
  return 0;
}
