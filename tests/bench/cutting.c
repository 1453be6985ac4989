/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/cutting-file.h"
#include "yards.h"

#include <stdlib.h>

/* Times of cutting and buying: open one-dimensional instances, small orders until they are proved,
 * and purchases until they are within 2 % of their bound. */

#define SMALL_ORDERS 100
#define PURCHASES 20
#define NEAR 0.02

static const char *const row_names[] = {
  "falk_t60_00",       "falk_t60_01",       "falk_t120_00",     "falk_u250_00",
  "falk_u250_01",      "falk_u500_01",      "Schwerin1_BPP1",   "Schwerin2_BPP2",
  "Waescher_TEST0044", "Waescher_TEST0049", "Scholl1_N1C1W1_A", "Scholl1_N2C2W2_B",
  "Scholl2_N1W1B1R0",  "Scholl2_N2W2B2R3",  "Hard28_BPP14",     "Scholl3_HARD0",
};

typedef struct
{
  gint64 start;
  double best_s; /* when the last better plan was known */
  double near_s; /* when the gap was small, < 0: not yet */
  double proven_s;
} Watch;

static double
seconds_since (gint64 start)
{
  return (double)(g_get_monotonic_time () - start) / 1e6;
}

static void
better_cb (const BsCutPlan *plan, gpointer data)
{
  Watch *watch = data;

  watch->best_s = seconds_since (watch->start);
  if (watch->near_s < 0.0 && bs_cut_plan_gap (plan) <= NEAR)
    watch->near_s = watch->best_s;
  if (watch->proven_s < 0.0 && plan->is_price_least)
    watch->proven_s = watch->best_s;
}

static gboolean
stop_when_proven (double done, gpointer data)
{
  return ((const Watch *)data)->proven_s < 0.0;
}

static BsCutPlan *
solve (const CuttingFile *file, guint rounds, gboolean price_only, Watch *watch)
{
  BsCutEffort effort = { .seed = 1, .rounds = rounds, .better = better_cb, .data = watch };

  if (price_only)
    effort.progress = (BsProgress){ stop_when_proven, watch };
  *watch = (Watch){ g_get_monotonic_time (), 0.0, -1.0, -1.0 };
  return bs_cutting_solve (&file->cutting, &effort, NULL);
}

static int
compare_times (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return (x > y) - (x < y);
}

static void
time_rows (const char *folder)
{
  double total = 0.0;
  guint n_proven = 0;

  for (guint i = 0; i < G_N_ELEMENTS (row_names); i++)
    {
      g_autofree char *name = g_strconcat (row_names[i], ".txt", NULL);
      g_autoptr (CuttingFile) file = cutting_row_read (folder, name);
      Watch watch;
      g_autoptr (BsCutPlan) plan = solve (file, 0, TRUE, &watch);
      double time = seconds_since (watch.start);

      total += time;
      n_proven += plan->is_price_least;
      g_print ("  %-18s %3d boards, bound %3d, %7.1f ms\n", row_names[i], (int)plan->price_minor,
               (int)plan->bound_minor, 1000.0 * time);
    }
  g_print ("one dimension: %u of %u proved, %.2f s in all\n", n_proven,
           (guint)G_N_ELEMENTS (row_names), total);
}

static void
time_small_orders (gboolean has_defects)
{
  double times[SMALL_ORDERS];
  guint n_proven = 0;

  for (guint i = 0; i < SMALL_ORDERS; i++)
    {
      g_autoptr (CuttingFile) file = cutting_draw (i + 1, 8, 30, 9, has_defects);
      Watch watch;
      g_autoptr (BsCutPlan) plan = solve (file, 0, FALSE, &watch);

      times[i] = seconds_since (watch.start);
      n_proven += plan->is_best;
    }
  qsort (times, SMALL_ORDERS, sizeof *times, compare_times);
  g_print ("orders of 8 types, 30 parts, 9 boards%s: %u of %d proved best, median %.0f ms, "
           "ninth of ten %.0f ms, worst %.0f ms\n",
           has_defects ? ", a third with defects" : "", n_proven, SMALL_ORDERS,
           1000.0 * times[SMALL_ORDERS / 2], 1000.0 * times[SMALL_ORDERS * 9 / 10],
           1000.0 * times[SMALL_ORDERS - 1]);
}

static void
time_purchases (void)
{
  double times[PURCHASES], worst_gap = 0.0;
  guint n_near = 0, n_proven = 0;

  for (guint i = 0; i < PURCHASES; i++)
    {
      g_autoptr (CuttingFile) file = cutting_draw_purchase (i + 1);
      Watch watch;
      g_autoptr (BsCutPlan) plan = solve (file, 100, FALSE, &watch);

      times[i] = watch.near_s < 0.0 ? G_MAXDOUBLE : watch.near_s;
      n_near += watch.near_s >= 0.0;
      n_proven += plan->is_price_least;
      worst_gap = MAX (worst_gap, bs_cut_plan_gap (plan));
    }
  qsort (times, PURCHASES, sizeof *times, compare_times);
  g_print ("purchases of 60 laminations and 40 other parts from 12 offers: %u of %d within 2 %%, "
           "after %.0f ms (median), %.0f ms (worst); at the end %u proved, worst gap %.2f %%\n",
           n_near, PURCHASES, 1000.0 * times[PURCHASES / 2], 1000.0 * times[PURCHASES - 1],
           n_proven, 100.0 * worst_gap);
}

/* A plan of 60 laminations and 40 other parts in seven sizes, and twelve offers of which a third
 * may be picked from: from the plan to the purchase. */
static BsPlan *
shop_plan (BsUnitSystem units)
{
  BsPlan *plan = yard_plan (60, 2010.0, 36.0, 80.0);
  const double lengths[] = { 500.0, 640.0, 760.0, 815.0, 900.0, 1120.0, 1300.0 };
  const double widths[] = { 60.0, 75.0, 90.0, 45.0, 110.0, 120.0, 70.0 };
  const int counts[] = { 8, 4, 6, 8, 4, 6, 4 };

  plan->units = units;
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      g_autofree char *name = g_strdup_printf ("part-%u", i);
      yard_part (plan, name, counts[i], lengths[i], widths[i], 36.0);
    }
  for (guint width = 0; width < 4; width++)
    for (guint length = 0; length < 3; length++)
      {
        BsOffer *offer = units == BS_UNIT_SYSTEM_INCH
                             ? yard_offer (plan, FEET (8.0 + 2.0 * length), INCHES (5.0 + width),
                                           INCHES (2.0), 820 + 15 * width + 11 * length)
                             : yard_offer (plan, 2440.0 + 610.0 * length, 125.0 + 35.0 * width,
                                           52.0, 190000 + 5000 * width + 3500 * length);
        offer->price_unit
            = units == BS_UNIT_SYSTEM_INCH ? BS_PRICE_BOARD_FOOT : BS_PRICE_CUBIC_METRE;
        offer->may_pick = width == 3;
        if (width >= 2)
          offer->width_most = offer->width_least + 60.0;
      }
  return plan;
}

static void
purchase_cb (gpointer result, gpointer data)
{
  g_autoptr (BsPurchase) purchase = result;

  better_cb (purchase->cuts, data);
}

static void
time_plan (BsUnitSystem units, const char *name)
{
  g_autoptr (BsPlan) plan = shop_plan (units);
  Watch watch = { g_get_monotonic_time (), 0.0, -1.0, -1.0 };
  BsProgress progress = { .better = purchase_cb, .data = &watch };
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, BS_PURCHASE_ROUNDS, &progress);

  g_print (
      "from a plan in %s with 60 laminations and 40 other parts, %u kinds of boards: within 2 %% "
      "after %.0f ms, proved after %.0f ms, ended after %.0f ms\n",
      name, purchase->stock->len, 1000.0 * watch.near_s, 1000.0 * watch.proven_s,
      1000.0 * seconds_since (watch.start));
}

int
main (void)
{
  const char *folder = g_getenv ("BROADSTAVE_BENCHMARKS");

  g_print ("cutting and buying, %u processors\n", g_get_num_processors ());
  if (folder != NULL)
    time_rows (folder);
  else
    g_print ("one dimension: BROADSTAVE_BENCHMARKS is not set\n");
  time_small_orders (FALSE);
  time_small_orders (TRUE);
  time_purchases ();
  time_plan (BS_UNIT_SYSTEM_METRIC, "millimetres");
  time_plan (BS_UNIT_SYSTEM_INCH, "inches");
  return 0;
}
