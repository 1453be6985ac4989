/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order.h"

#include "checks/order-file.h"
#include "checks/order-random.h"

#include <stdlib.h>
#include <time.h>

#define RUNS 7

/* How long until a gap is known, until it is closed, and until the end; with the cost against the
 * best known. Medians of RUNS runs, in time of the processor, so that a busy machine does not
 * count.
 */

typedef struct
{
  const BsOrderProblem *problem;
  BsOrderEffort effort;
  double start_ms;
  double first_ms, bound_ms; /* first order; first gap of at most `gap` */
  double gap;
} Timing;

static double
get_ms (void)
{
  return 1000.0 * (double)clock () / CLOCKS_PER_SEC;
}

static void
note (BsOrderResult *result, gpointer data)
{
  Timing *self = data;
  double ms = get_ms () - self->start_ms;

  if (self->first_ms <= 0.0)
    self->first_ms = ms;
  if (self->bound_ms <= 0.0 && bs_order_result_gap (result) <= self->gap)
    self->bound_ms = ms;
}

static int
compare (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return x < y ? -1 : x > y ? 1 : 0;
}

static void
time_problem (const char *name, const BsOrderProblem *problem, gint32 best, double gap)
{
  double first[RUNS], bound[RUNS], end[RUNS];
  gint32 cost = 0;
  double left = 0.0;

  for (guint i = 0; i < RUNS; i++)
    {
      Timing timing = { problem, bs_order_effort_default (problem), get_ms (), 0, 0, gap };
      g_autoptr (BsOrderResult) result
          = bs_order_solve (problem, &timing.effort, note, &timing, NULL, NULL);
      end[i] = get_ms () - timing.start_ms;
      first[i] = timing.first_ms;
      bound[i] = timing.bound_ms > 0.0 ? timing.bound_ms : end[i];
      cost = result->cost.total;
      left = bs_order_result_gap (result);
    }
  qsort (first, RUNS, sizeof *first, compare);
  qsort (bound, RUNS, sizeof *bound, compare);
  qsort (end, RUNS, sizeof *end, compare);
  g_print (
      "%-16s first %7.1f ms, gap <= %.1f %% after %7.1f ms, end %7.1f ms with a gap of %.2f %%",
      name, first[RUNS / 2], 100.0 * gap, bound[RUNS / 2], end[RUNS / 2], 100.0 * left);
  if (best > 0)
    g_print (", cost %+.2f %%", 100.0 * (cost / (double)best - 1.0));
  g_print ("\n");
}

static void
time_file (const char *name, double gap)
{
  g_autoptr (OrderFile) file = order_file_read (name);

  time_problem (name, file->problem, file->cost, gap);
}

static void
time_random (guint n_candidates, guint n_places, guint64 seed, double gap)
{
  BsRandom random = bs_random_init (seed);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, n_candidates, n_places);
  g_autofree char *name = g_strdup_printf ("%u of %u #%u", n_places, n_candidates, (guint)seed);

  time_problem (name, problem, 0, gap);
}

int
main (void)
{
  static const char *const files[] = { "order-c4.json", "order-c5.json", "order-c6.json" };

  g_print ("order, median of %d runs, %u processors\n", RUNS, g_get_num_processors ());
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    time_file (files[i], 0.015);
  time_file ("order-c7.json", 0.03);
  for (guint64 seed = 1; seed <= 3; seed++)
    time_random (16, 16, seed, 0.015);
  for (guint64 seed = 1; seed <= 6; seed++)
    time_random (24, 24, seed, 0.015);
  for (guint64 seed = 1; seed <= 3; seed++)
    time_random (24, 20, seed, 0.015);
  for (guint64 seed = 1; seed <= 3; seed++)
    time_random (40, 40, seed, 0.03);
  for (guint64 seed = 1; seed <= 3; seed++)
    time_random (60, 60, seed, 0.03);
  return 0;
}
