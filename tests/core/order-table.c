/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-table.h"

#include "checks/order-random.h"

/* Every combination of orientations of one order, priced one by one. */
static gint32
try_orientations (const BsOrderProblem *problem, const BsOrderTable *table, const guint *order)
{
  guint n = problem->n_places;
  BsOrderPlace places[5] = { 0 };
  gint32 least = G_MAXINT32;

  for (guint all = 0; all < 1u << 2 * n; all++)
    {
      BsOrderTerms terms = { 0 };
      for (guint k = 0; k < n; k++)
        {
          places[k] = (BsOrderPlace){ order[k], (BsOrientation)(all >> 2 * k & 3) };
          bs_order_cost_inside (problem, places[k], table->plane, terms);
        }
      for (guint k = 0; k + 1 < n; k++)
        bs_order_cost_joint (problem, places[k], places[k + 1], terms);
      bs_order_cost_front (problem, places[0], terms);
      bs_order_cost_back (problem, places[n - 1], terms);
      least = MIN (least, bs_order_terms_sum (terms));
    }
  return least;
}

static void
test_orient_tries_all (void)
{
  BsRandom random = bs_random_init (21);

  for (guint i = 0; i < 60; i++)
    {
      guint n = 1 + bs_random_below (&random, 5);
      g_autoptr (BsOrderProblem) problem = order_random_problem (&random, n + 1, n);
      g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
      g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, i % 2 == 0 ? 1 : -1);
      g_autofree BsOrderPlace *places = order_random_order (&random, problem);
      guint order[5] = { 0 };

      for (guint k = 0; k < n; k++)
        order[k] = places[k].candidate;
      g_assert_cmpint (bs_order_table_orient (table, order, NULL), ==,
                       try_orientations (problem, table, order));
    }
}

/* The orientations that come with a cost have that cost, priced from nothing. */
static void
test_orientations_have_the_cost (void)
{
  BsRandom random = bs_random_init (22);

  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (BsOrderProblem) problem = order_random_problem (&random, 20, 15);
      g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
      g_autofree BsOrderPlace *places = order_random_order (&random, problem);
      guint order[15];
      BsOrientation orientations[15];
      gint32 cost = G_MAXINT32;

      for (guint k = 0; k < 15; k++)
        order[k] = places[k].candidate;
      for (int plane = -1; plane <= 1; plane += 2)
        {
          g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, plane);
          gint32 found = bs_order_table_orient (table, order, orientations);
          for (guint k = 0; k < 15; k++)
            places[k].orientation = orientations[k];
          g_assert_cmpint (bs_order_cost (problem, places, 15).total, <=, found);
          if (bs_order_cost (problem, places, 15).plane == plane)
            g_assert_cmpint (bs_order_cost (problem, places, 15).total, ==, found);
          cost = MIN (cost, found);
        }
      g_assert_cmpint (bs_order_cost (problem, places, 15).total, >=, cost);
    }
}

/* Turning the slab end for end leaves every cost as it is unless just one of the outer faces shows,
 * or the laminations do not lie in the middle of one another. */
static void
test_mirrored (void)
{
  BsRandom random = bs_random_init (23);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, 8, 8);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);

  for (guint shows = 0; shows < 4; shows++)
    {
      problem->shows_front = (shows & 1) != 0;
      problem->shows_back = (shows & 2) != 0;
      g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, 1);
      g_assert_cmpint (table->is_mirrored, ==, shows == 0 || shows == 3);
    }
}

static void
test_not_mirrored_with_places (void)
{
  BsRandom random = bs_random_init (24);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, 8, 8);
  BsOrderPin pin = { .kind = BS_ORDER_PIN_PLACE, .candidate = 3, .place = 2 };
  g_autoptr (BsOrderRules) rules = NULL;
  g_autoptr (BsOrderTable) table = NULL;

  problem->shows_front = problem->shows_back = FALSE;
  g_array_append_val (problem->pins, pin);
  rules = bs_order_rules_new (problem, NULL);
  table = bs_order_table_new (problem, rules, 1);
  g_assert_false (table->is_mirrored);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order-table/orient-tries-all", test_orient_tries_all);
  g_test_add_func ("/order-table/orientations-have-the-cost", test_orientations_have_the_cost);
  g_test_add_func ("/order-table/mirrored", test_mirrored);
  g_test_add_func ("/order-table/not-mirrored-with-places", test_not_mirrored_with_places);
  return g_test_run ();
}
