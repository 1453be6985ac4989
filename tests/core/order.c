/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order.h"

#include "checks/order-file.h"
#include "checks/order-random.h"

#include <math.h>
#include <string.h>

/* What is known of each problem in tests/data: found there by sets of laminations, or by annealing
 * and proved by labels, in other programs. Only of the last one the best order is not known. */
typedef struct
{
  const char *name;
  gboolean is_proved;
} FileRow;

static const FileRow files[] = {
  { "order-c1.json", TRUE },  { "order-c2.json", TRUE }, { "order-c3.json", TRUE },
  { "order-c4.json", TRUE },  { "order-c5.json", TRUE }, { "order-c6.json", TRUE },
  { "order-c7.json", FALSE },
};

static BsOrderResult *
solve (const BsOrderProblem *problem)
{
  BsOrderEffort effort = bs_order_effort_default (problem);
  g_autoptr (GError) error = NULL;
  BsOrderResult *result = bs_order_solve (problem, &effort, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  return result;
}

/* The costs in the files are those of our terms. */
static void
test_file_cost (gconstpointer data)
{
  const FileRow *row = data;
  g_autoptr (OrderFile) file = order_file_read (row->name);
  BsOrderCost cost = bs_order_cost (file->problem, file->places, file->problem->n_places);

  g_assert_cmpint (cost.total, ==, file->cost);
  g_assert_cmpint (cost.plane, ==, file->plane);
}

/* The best known cost where that is proved; else within 1 % of it, with a gap of 3 % at most. */
static void
test_file_solve (gconstpointer data)
{
  const FileRow *row = data;
  g_autoptr (OrderFile) file = order_file_read (row->name);
  g_autoptr (BsOrderResult) result = solve (file->problem);

  g_assert_true (order_keeps_pins (file->problem, result->places));
  if (row->is_proved)
    {
      g_assert_cmpint (result->cost.total, ==, file->cost);
      g_assert_true (result->is_proved);
      return;
    }
  g_assert_cmpfloat (result->cost.total, <=, 1.01 * file->cost);
  g_assert_cmpint (result->bound, <=, file->cost);
  g_assert_cmpfloat (bs_order_result_gap (result), <=, 0.03);
}

/* Random problems of a size that the sets of order-exact no longer answer. */
static BsOrderProblem *
new_problem (guint64 seed, guint n_pins)
{
  BsRandom random = bs_random_init (seed);
  BsOrderProblem *problem = order_random_problem (&random, 20, 18);

  order_random_pins (&random, problem, n_pins);
  return problem;
}

static void
test_cost_is_that_of_the_order (void)
{
  for (guint64 seed = 0; seed < 10; seed++)
    {
      g_autoptr (BsOrderProblem) problem = new_problem (7100 + seed, 0);
      g_autoptr (BsOrderResult) result = solve (problem);
      BsOrderCost cost = bs_order_cost (problem, result->places, result->n_places);

      g_assert_cmpint (cost.total, ==, result->cost.total);
      g_assert_cmpint (bs_order_terms_sum (result->cost.terms), ==, result->cost.total);
      g_assert_cmpint (result->bound, <=, result->cost.total);
      g_assert_cmpint (result->is_proved, ==, result->bound == result->cost.total);
      g_assert_cmpint (fabs (bs_order_result_gap (result)) < 1e-12, ==, result->is_proved);
    }
}

static void
test_same_seed_same_result (void)
{
  g_autoptr (BsOrderProblem) problem = new_problem (72, 2);
  g_autoptr (BsOrderResult) one = solve (problem), other = solve (problem);

  g_assert_cmpmem (one->places, one->n_places * sizeof *one->places, other->places,
                   other->n_places * sizeof *other->places);
  g_assert_cmpmem (&one->cost, sizeof one->cost, &other->cost, sizeof other->cost);
  g_assert_cmpint (one->bound, ==, other->bound);
  g_assert_cmpmem (one->changes, one->n_places * sizeof *one->changes, other->changes,
                   other->n_places * sizeof *other->changes);
}

static void
test_keeps_pins (void)
{
  guint n_kept = 0;

  for (guint64 seed = 0; seed < 40; seed++)
    {
      g_autoptr (BsOrderProblem) problem = new_problem (7300 + seed, 1 + (guint)(seed % 5));
      BsOrderEffort effort = bs_order_effort_default (problem);
      g_autoptr (GError) error = NULL;
      g_autoptr (BsOrderResult) result
          = bs_order_solve (problem, &effort, NULL, NULL, NULL, &error);

      if (result == NULL)
        {
          g_assert_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN);
          continue;
        }
      g_assert_true (order_keeps_pins (problem, result->places));
      n_kept++;
    }
  g_assert_cmpuint (n_kept, >, 20);
}

/* Pins only take orders away: with them it costs no less. */
static void
test_pins_cost_no_less (void)
{
  for (guint64 seed = 0; seed < 10; seed++)
    {
      g_autoptr (BsOrderProblem) problem = new_problem (7400 + seed, 0);
      g_autoptr (BsOrderResult) free_result = solve (problem), pinned = NULL;
      BsOrderPin pin = { .kind = BS_ORDER_PIN_PLACE, .candidate = 5, .place = 0 };

      g_array_append_val (problem->pins, pin);
      pinned = solve (problem);
      g_assert_cmpint (pinned->cost.total, >=, free_result->bound);
    }
}

typedef struct
{
  guint n_results;
  gint32 cost, bound;
  double done;
  guint n_reports, most_reports;
} Watch;

static void
watch_improved (BsOrderResult *result, gpointer data)
{
  Watch *self = data;

  if (self->n_results++ > 0)
    {
      g_assert_cmpint (result->cost.total, <=, self->cost);
      g_assert_cmpint (result->bound, >=, self->bound);
    }
  self->cost = result->cost.total;
  self->bound = result->bound;
}

static gboolean
watch_report (double done, gpointer data)
{
  Watch *self = data;

  g_assert_cmpfloat (done, >=, 0.0);
  g_assert_cmpfloat (done, <=, 1.0);
  self->done = MAX (self->done, done);
  return ++self->n_reports < self->most_reports;
}

/* Each result is no worse than the one before, and the last one is what is returned. */
static void
test_results_only_improve (void)
{
  g_autoptr (BsOrderProblem) problem = new_problem (75, 0);
  BsOrderEffort effort = bs_order_effort_default (problem);
  Watch watch = { .most_reports = G_MAXUINT };
  BsProgress progress = { watch_report, &watch };
  g_autoptr (BsOrderResult) result
      = bs_order_solve (problem, &effort, watch_improved, &watch, &progress, NULL);

  g_assert_cmpuint (watch.n_results, >=, 2);
  g_assert_cmpint (result->cost.total, ==, watch.cost);
  g_assert_cmpint (result->bound, ==, watch.bound);
  g_assert_cmpfloat (watch.done, >, 0.3);
}

/* Stopped at any of its questions, it asks hardly more and returns an order that keeps the pins,
 * with a bound that holds. */
static void
test_stops_anywhere (void)
{
  g_autoptr (BsOrderProblem) problem = new_problem (76, 0);
  g_autoptr (BsOrderResult) best = solve (problem);
  BsOrderEffort effort = bs_order_effort_default (problem);
  Watch whole = { .most_reports = G_MAXUINT };
  BsProgress count = { watch_report, &whole };
  g_autoptr (BsOrderResult) counted = bs_order_solve (problem, &effort, NULL, NULL, &count, NULL);

  g_assert_cmpint (counted->cost.total, ==, best->cost.total);
  g_assert_true (best->is_proved);
  for (guint i = 1; i < 30; i++)
    {
      Watch watch = { .most_reports = 1 + whole.n_reports * i / 30 };
      BsProgress progress = { watch_report, &watch };
      g_autoptr (BsOrderResult) result
          = bs_order_solve (problem, &effort, NULL, NULL, &progress, NULL);

      g_assert_true (order_keeps_pins (problem, result->places));
      g_assert_cmpint (result->cost.total, >=, best->cost.total);
      g_assert_cmpint (result->bound, <=, best->cost.total);
      g_assert_cmpuint (watch.n_reports, ==, watch.most_reports);
      g_assert_nonnull (result->changes);
    }
}

/* A change tells what it would cost more: done by hand, with the best orientations, it does. */
static void
test_changes (void)
{
  g_autoptr (BsOrderProblem) problem = new_problem (77, 0);
  g_autoptr (BsOrderResult) result = solve (problem);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);

  for (guint k = 0; k < result->n_places; k++)
    {
      const BsOrderChange *change = &result->changes[k];
      g_autofree BsOrderPlace *places
          = g_memdup2 (result->places, result->n_places * sizeof *places);

      g_assert_cmpint (change->kind, !=, BS_ORDER_CHANGE_NONE);
      g_assert_cmpint (change->extra, >=, 0); /* the order is the best one */
      if (change->kind == BS_ORDER_CHANGE_EXCHANGE)
        {
          places[k].candidate = change->candidate;
          g_assert_true (order_keeps_pins (problem, places));
        }
      if (change->kind == BS_ORDER_CHANGE_TURN)
        {
          g_assert_cmpint (change->orientation, !=, places[k].orientation);
          places[k].orientation = change->orientation;
        }
      /* the others turned as suits best: no dearer than leaving them as they are */
      if (change->kind != BS_ORDER_CHANGE_MOVE)
        g_assert_cmpint (result->cost.total + change->extra, <=,
                         bs_order_cost (problem, places, result->n_places).total);
    }
}

static void
test_pinned_changes (void)
{
  g_autoptr (BsOrderProblem) problem = NULL;
  g_autoptr (BsOrderResult) result = NULL;
  BsRandom random = bs_random_init (78);
  BsOrderPin pins[] = { { .kind = BS_ORDER_PIN_PLACE, .candidate = 0, .place = 0 },
                        { .kind = BS_ORDER_PIN_PLACE, .candidate = 1, .place = 1 },
                        { .kind = BS_ORDER_PIN_PLACE, .candidate = 2, .place = 2 } };

  problem = order_random_problem (&random, 3, 3);
  g_array_append_vals (problem->pins, pins, G_N_ELEMENTS (pins));
  result = solve (problem);
  for (guint k = 0; k < 3; k++)
    g_assert_cmpint (result->changes[k].kind, ==, BS_ORDER_CHANGE_TURN);
}

static void
test_refuses_contradictions (void)
{
  g_autoptr (BsOrderProblem) problem = new_problem (79, 0);
  BsOrderEffort effort = bs_order_effort_default (problem);
  g_autoptr (GError) error = NULL;

  problem->n_places = 21;
  g_assert_null (bs_order_solve (problem, &effort, NULL, NULL, NULL, &error));
  g_assert_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_TOO_FEW);
}

static void
test_explains (void)
{
  g_autoptr (OrderFile) file = order_file_read ("order-c3.json");
  BsOrderCost cost = bs_order_cost (file->problem, file->places, file->problem->n_places);
  BsWorking why;
  double sum = 0.0;

  bs_order_cost_explain (&cost, &why);
  g_assert_cmpuint (why.n_terms, ==, BS_N_ORDER_TERMS);
  for (guint i = 0; i < why.n_terms; i++)
    sum += why.terms[i].value;
  g_assert_cmpfloat_with_epsilon (why.value, 34.2, 1e-9);
  g_assert_cmpfloat_with_epsilon (sum, 34.2, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *cost = g_strconcat ("/order/file-cost/", files[i].name, NULL);
      g_autofree char *found = g_strconcat ("/order/file-solve/", files[i].name, NULL);
      g_test_add_data_func (cost, &files[i], test_file_cost);
      g_test_add_data_func (found, &files[i], test_file_solve);
    }
  g_test_add_func ("/order/cost-is-that-of-the-order", test_cost_is_that_of_the_order);
  g_test_add_func ("/order/same-seed-same-result", test_same_seed_same_result);
  g_test_add_func ("/order/keeps-pins", test_keeps_pins);
  g_test_add_func ("/order/pins-cost-no-less", test_pins_cost_no_less);
  g_test_add_func ("/order/results-only-improve", test_results_only_improve);
  g_test_add_func ("/order/stops-anywhere", test_stops_anywhere);
  g_test_add_func ("/order/changes", test_changes);
  g_test_add_func ("/order/pinned-changes", test_pinned_changes);
  g_test_add_func ("/order/refuses-contradictions", test_refuses_contradictions);
  g_test_add_func ("/order/explains", test_explains);
  return g_test_run ();
}
