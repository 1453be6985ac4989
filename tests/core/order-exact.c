/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-exact.h"

#include "checks/order-random.h"

/* Both planing directions by sets against all orders and orientations, one by one. */
static void
test_tries_all (void)
{
  BsRandom random = bs_random_init (41);
  guint n_kept = 0;

  for (guint i = 0; i < 120; i++)
    {
      guint m = 1 + bs_random_below (&random, 5), n = 1 + bs_random_below (&random, MIN (m, 4));
      g_autoptr (BsOrderProblem) problem = order_random_problem (&random, m, n);
      g_autoptr (BsOrderRules) rules = NULL;
      gint32 least = G_MAXINT32;

      order_random_pins (&random, problem, i % 3);
      rules = bs_order_rules_new (problem, NULL);
      if (rules == NULL)
        continue;
      for (int plane = -1; plane <= 1; plane += 2)
        {
          g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, plane);
          guint order[4];
          g_assert_true (bs_order_exact (table, order, NULL));
          least = MIN (least, bs_order_table_orient (table, order, NULL));
        }
      g_assert_cmpint (least, ==, order_try_all (problem));
      n_kept++;
    }
  g_assert_cmpuint (n_kept, >, 60);
}

/* Pins that no order keeps are told by the rules, and no others. (With laminations to spare, both
 * faces of one pinned up is refused as well, though it might stay in the rack.) */
static void
test_rules_refuse_what_cannot_be_kept (void)
{
  BsRandom random = bs_random_init (42);
  guint n_refused = 0;

  for (guint i = 0; i < 150; i++)
    {
      guint n = 1 + bs_random_below (&random, 4);
      g_autoptr (BsOrderProblem) problem = order_random_problem (&random, n, n);
      g_autoptr (BsOrderRules) rules = NULL;

      order_random_pins (&random, problem, 2);
      rules = bs_order_rules_new (problem, NULL);
      g_assert_cmpint (rules == NULL, ==, order_try_all (problem) == G_MAXINT32);
      n_refused += rules == NULL ? 1 : 0;
    }
  g_assert_cmpuint (n_refused, >, 20);
}

static gboolean
refuse (double done, gpointer data)
{
  return FALSE;
}

static void
test_stops (void)
{
  BsRandom random = bs_random_init (43);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, 12, 12);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
  g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, 1);
  BsProgress progress = { refuse, NULL };
  guint order[12] = { 99 };

  g_assert_false (bs_order_exact (table, order, &progress));
  g_assert_cmpuint (order[0], ==, 99);
}

static void
test_refuses_too_many (void)
{
  BsRandom random = bs_random_init (44);
  g_autoptr (BsOrderProblem) problem = order_random_problem (&random, 17, 17);
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
  g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, 1);
  guint order[17];

  g_test_expect_message (NULL, G_LOG_LEVEL_CRITICAL, "*BS_ORDER_EXACT_MOST*");
  g_assert_false (bs_order_exact (table, order, NULL));
  g_test_assert_expected_messages ();
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order-exact/tries-all", test_tries_all);
  g_test_add_func ("/order-exact/rules-refuse-what-cannot-be-kept",
                   test_rules_refuse_what_cannot_be_kept);
  g_test_add_func ("/order-exact/stops", test_stops);
  g_test_add_func ("/order-exact/refuses-too-many", test_refuses_too_many);
  return g_test_run ();
}
