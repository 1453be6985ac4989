/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-search.h"

#include "checks/order-random.h"

#include <string.h>

#define N_CANDIDATES 20
#define N_PLACES 18

typedef struct
{
  guint order[N_PLACES];
  gint32 start, cost;
} Found;

static Found
search (const BsOrderTable *table, guint64 seed, guint64 n_moves, const BsProgress *progress)
{
  Found found;

  found.start = bs_order_search_start (table, found.order);
  g_assert_cmpint (found.start, ==, bs_order_table_orient (table, found.order, NULL));
  found.cost = bs_order_search_anneal (table, seed, n_moves, 1.0, found.order, progress);
  g_assert_cmpint (found.cost, ==, bs_order_table_orient (table, found.order, NULL));
  return found;
}

static void
test_same_seed_same_order (void)
{
  BsRandom random = bs_random_init (51);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, N_CANDIDATES, N_PLACES);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
  g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, 1);
  Found one = search (table, 7, 20000, NULL), other = search (table, 7, 20000, NULL);

  g_assert_cmpmem (one.order, sizeof one.order, other.order, sizeof other.order);
}

/* Whatever the start, the end is no worse; over 20 problems it is better by a tenth at least. */
static void
test_improves (void)
{
  BsRandom random = bs_random_init (52);
  double before = 0.0, after = 0.0;

  for (guint i = 0; i < 20; i++)
    {
      g_autoptr (BsOrderProblem) problem = order_random_problem (&random, N_CANDIDATES, N_PLACES);
      g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
      g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, 1);
      Found found = search (table, i, 20000, NULL);

      g_assert_cmpint (found.cost, <=, found.start);
      before += found.start;
      after += found.cost;
    }
  g_assert_cmpfloat (after, <, 0.9 * before);
}

static void
test_keeps_pins (void)
{
  BsRandom random = bs_random_init (53);
  guint n_kept = 0;

  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (BsOrderProblem) problem = order_random_problem (&random, N_CANDIDATES, N_PLACES);
      g_autoptr (BsOrderRules) rules = NULL;
      g_autoptr (BsOrderTable) table = NULL;
      BsOrderPlace places[N_PLACES];
      BsOrientation orientations[N_PLACES];
      Found found;

      order_random_pins (&random, problem, 1 + i % 6);
      rules = bs_order_rules_new (problem, NULL);
      if (rules == NULL)
        continue;
      table = bs_order_table_new (problem, rules, 1);
      found = search (table, i, 5000, NULL);
      bs_order_table_orient (table, found.order, orientations);
      for (guint k = 0; k < N_PLACES; k++)
        places[k] = (BsOrderPlace){ found.order[k], orientations[k] };
      g_assert_true (order_keeps_pins (problem, places));
      n_kept++;
    }
  g_assert_cmpuint (n_kept, >, 40);
}

static gboolean
refuse (double done, gpointer data)
{
  return FALSE;
}

/* Stopped before the first move, it hands the start back. */
static void
test_stops (void)
{
  BsRandom random = bs_random_init (54);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, N_CANDIDATES, N_PLACES);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
  g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, 1);
  BsProgress progress = { refuse, NULL };
  Found found = search (table, 7, 20000, &progress);

  g_assert_cmpint (found.cost, ==, found.start);
}

static void
test_one_lamination (void)
{
  BsRandom random = bs_random_init (55);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, 1, 1);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
  g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, 1);
  guint order[1];

  bs_order_search_start (table, order);
  g_assert_cmpint (bs_order_search_anneal (table, 1, 1000, 1.0, order, NULL), ==,
                   bs_order_table_orient (table, order, NULL));
  g_assert_cmpuint (order[0], ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order-search/same-seed-same-order", test_same_seed_same_order);
  g_test_add_func ("/order-search/improves", test_improves);
  g_test_add_func ("/order-search/keeps-pins", test_keeps_pins);
  g_test_add_func ("/order-search/stops", test_stops);
  g_test_add_func ("/order-search/one-lamination", test_one_lamination);
  return g_test_run ();
}
