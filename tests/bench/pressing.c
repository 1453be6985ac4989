/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-advice.h"
#include "bench/median.h"
#include "shops.h"

#include <math.h>

#define RUNS 21
#define LENGTH 2400.0
#define MAX_LAMINATIONS 60
#define MAX_CLAMPS 12

/* Medians of pressing 2.4 m at 10 mm: from nothing, after one clamp is tightened or moved, and a
 * whole layout. Twelve clamps keep all lines closed; six let them open. */

typedef struct
{
  BsPressPiece pieces[MAX_LAMINATIONS];
  BsPressStack stack;
  BsPressClamp clamps[MAX_CLAMPS];
  guint n_clamps;
  BsPressing *pressing;
  guint n_calls;
} Job;

static void
set_up (Job *job, guint n, guint n_clamps, double bow, BsPressModel model)
{
  job->stack = bs_press_stack_default ();
  job->stack.model = model;
  job->stack.n_pieces = n;
  job->stack.pieces = job->pieces;
  job->n_clamps = n_clamps;
  for (guint i = 0; i < n; i++)
    job->pieces[i] = (BsPressPiece){
      i, 0.0, LENGTH, 40.0, 85.0, 12e3, 900.0, 800.0, bow * sin (5.0 * i), FALSE
    };
  for (guint i = 0; i < n_clamps; i++)
    job->clamps[i] = (BsPressClamp){ LENGTH / n_clamps * (i + 0.5), 5e3, 40.0 };
}

static void
press (Job *job)
{
  g_auto (BsPressResult) result = { 0 };

  if (!bs_pressing_solve (job->pressing, job->clamps, job->n_clamps, &result, NULL)
      || result.status != BS_PRESS_STATUS_SOLVED)
    g_error ("not solved");
}

static void
press_from_nothing (gpointer data)
{
  Job *job = data;

  g_clear_pointer (&job->pressing, bs_pressing_free);
  job->pressing = bs_pressing_new (&job->stack, NULL);
  press (job);
}

/* Back and forth by a tenth. */
static void
tighten (gpointer data)
{
  Job *job = data;

  job->clamps[2].force = job->n_calls++ % 2 == 0 ? 5500.0 : 5000.0;
  press (job);
}

/* Back and forth by 5 mm. */
static void
move (gpointer data)
{
  Job *job = data;

  job->clamps[2].x += job->n_calls++ % 2 == 0 ? 5.0 : -5.0;
  press (job);
}

static void
lay_out (gpointer data)
{
  Job *job = data;
  BsLayoutKind kind = { 30, 6e3, 3000.0, 40.0, 40.0 };
  BsLayoutProblem problem = { .stack = job->stack,
                              .n_kinds = 1,
                              .kinds = &kind,
                              .reach_needed = 40.0 * job->stack.n_pieces,
                              .least_mpa = 0.3,
                              .most_mpa = 7.0,
                              .bearing_mpa = 7.0,
                              .bearing_height = 85.0 };
  g_auto (BsLayout) layout = { 0 };

  if (!bs_layout_find (&problem, NULL, &layout, NULL) || layout.status != BS_LAYOUT_REACHED)
    g_error ("no layout");
}

static void
time_one (const char *name, guint n, guint n_clamps, double bow, BsPressModel model, guint runs)
{
  Job job = { .pressing = NULL };

  set_up (&job, n, n_clamps, bow, model);
  g_print ("%2u laminations, %-10s %-12s", n,
           model == BS_PRESS_MODEL_SQUEEZE ? "squeeze" : "timoshenko", name);
  g_print (" from nothing %7.2f ms", bench_median_ms (press_from_nothing, &job, runs));
  g_print (", tightened %6.2f ms", bench_median_ms (tighten, &job, runs));
  g_print (", moved %6.2f ms\n", bench_median_ms (move, &job, runs));
  bs_pressing_free (job.pressing);
}

/* What the window works out for a plan, in threads, while a clamp is moved: by the faster form at
 * each step, exactly when it rests, and then what would help. */

typedef struct
{
  BsPlan *plans[2]; /* one clamp stands 5 mm apart in them */
  guint n_calls;
} Hand;

static void
hand_init (Hand *self, guint n)
{
  for (guint k = 0; k < 2; k++)
    {
      BsPlan *plan = slab_new (n, LENGTH, 40.0, 85.0);

      shop_set_wood (plan, 0.6, 7.0)->moe_mpa = 11000.0;
      shop_add_clamps (plan, 40, 6000.0, 40.0 * n, 40.0);
      for (guint i = 0; i < MAX_CLAMPS; i++)
        bs_plan_place_clamp (plan, "clamp",
                             LENGTH / MAX_CLAMPS * (i + 0.5) + (i == 2 && k == 1 ? 5.0 : 0.0),
                             5000.0, i % 2 == 0);
      for (guint i = 0; i < n; i++)
        slab_at (plan, i)->bow = 0.5 * sin (5.0 * i);
      self->plans[k] = plan;
    }
  self->n_calls = 0;
}

static void
hand_clear (Hand *self)
{
  bs_plan_unref (self->plans[0]);
  bs_plan_unref (self->plans[1]);
}

static const BsPlan *
hand_move (Hand *self)
{
  return self->plans[self->n_calls++ % 2];
}

static void
press_plan (Hand *self, BsPressModel model)
{
  BsPressure *pressure = bs_pressure_new (hand_move (self), model);

  bs_pressure_explain (pressure);
  bs_pressure_free (pressure);
}

static void
follow (gpointer data)
{
  press_plan (data, BS_PRESS_MODEL_TIMOSHENKO);
}

static void
settle (gpointer data)
{
  press_plan (data, BS_PRESS_MODEL_SQUEEZE);
}

static void
advise (gpointer data)
{
  bs_clamp_advice_free (bs_clamp_advice_new (hand_move (data), NULL));
}

static void
time_hand (guint n)
{
  Hand hand;
  guint runs = n < 60 ? RUNS : 3;

  hand_init (&hand, n);
  g_print ("%2u laminations, 12 clamps, one moved: followed %6.2f ms", n,
           bench_median_ms (follow, &hand, runs));
  g_print (", exact with its range %7.2f ms", bench_median_ms (settle, &hand, runs));
  g_print (", what would help %8.1f ms\n", bench_median_ms (advise, &hand, 3));
  hand_clear (&hand);
}

int
main (void)
{
  static const guint sizes[] = { 12, 24, 60 };
  Job job = { .pressing = NULL };

  g_print ("pressing 2.4 m at 10 mm, median of %d runs (60 laminations: 5), %u processors\n", RUNS,
           g_get_num_processors ());
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (int model = BS_PRESS_MODEL_SQUEEZE; model <= BS_PRESS_MODEL_TIMOSHENKO; model++)
      {
        guint runs = sizes[i] < 60 ? RUNS : 5;

        time_one ("closed,", sizes[i], 12, 0.0, (BsPressModel)model, runs);
        time_one ("bowed 2 mm,", sizes[i], 12, 2.0, (BsPressModel)model, runs);
        time_one ("opening,", sizes[i], 6, 0.0, (BsPressModel)model, runs);
      }
  for (gsize i = 0; i < 2; i++)
    {
      set_up (&job, sizes[i], 12, 0.0, BS_PRESS_MODEL_SQUEEZE);
      g_print ("%2u laminations, layout for 0.3 MPa %7.1f ms\n", sizes[i],
               bench_median_ms (lay_out, &job, 5));
    }
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    time_hand (sizes[i]);
  return 0;
}
