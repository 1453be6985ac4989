/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-knapsack.h"

#include "core/random.h"

/* All ways, one item after the other. */
static gint64
try_all (const BsKnapsackItem *items, guint n, gint32 room)
{
  gint64 best = 0;

  if (n == 0)
    return 0;
  for (int count = 0; count <= items->limit && count * items->size <= room; count++)
    best
        = MAX (best, count * items->value + try_all (items + 1, n - 1, room - count * items->size));
  return best;
}

static guint
draw_items (BsRandom *random, BsKnapsackItem *items)
{
  guint n = 1 + bs_random_below (random, 6);

  for (guint i = 0; i < n; i++)
    items[i] = (BsKnapsackItem){ 1 + (gint32)bs_random_below (random, 30),
                                 (int)bs_random_below (random, 4), bs_random_below (random, 100) };
  return n;
}

static void
check_counts (const BsKnapsackItem *items, guint n, const int *counts, gint32 room, gint64 value)
{
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpint (counts[i], >=, 0);
      g_assert_cmpint (counts[i], <=, items[i].limit);
      room -= counts[i] * items[i].size;
      value -= counts[i] * items[i].value;
    }
  g_assert_cmpint (room, >=, 0);
  g_assert_cmpint (value, ==, 0);
}

static void
test_search (void)
{
  BsRandom random = bs_random_init (3);

  for (guint k = 0; k < 3000; k++)
    {
      BsKnapsackItem items[6];
      guint n = draw_items (&random, items);
      gint32 room = 10 + (gint32)bs_random_below (&random, 60);
      int counts[6];
      gboolean is_best;
      gint64 value = bs_knapsack_search (items, n, room, 0, 100000, counts, &is_best);

      g_assert_true (is_best);
      g_assert_cmpint (value, ==, try_all (items, n, room));
      check_counts (items, n, counts, room, value);
    }
}

static void
test_table (void)
{
  BsRandom random = bs_random_init (4);

  for (guint k = 0; k < 3000; k++)
    {
      BsKnapsackItem items[6];
      guint n = draw_items (&random, items);
      gint32 room = 10 + (gint32)bs_random_below (&random, 60), rest = room;
      gint64 best[70] = { 0 };
      guint16 taken[6][70];
      int counts[6];

      for (guint i = 0; i < n; i++)
        bs_knapsack_add (best, taken[i], room, &items[i]);
      g_assert_cmpint (best[room], ==, try_all (items, n, room));
      for (guint i = n; i-- > 0;)
        {
          counts[i] = taken[i][rest];
          rest -= counts[i] * items[i].size;
        }
      check_counts (items, n, counts, room, best[room]);
    }
}

/* Three of size 4 and value 5 in a room of 10: two fit, value 10. */
static void
test_floor (void)
{
  BsKnapsackItem item = { 4, 3, 5 };
  int count;
  gboolean is_best;

  g_assert_cmpint (bs_knapsack_search (&item, 1, 10, 9, 100, &count, &is_best), ==, 10);
  g_assert_cmpint (count, ==, 2);
  g_assert_cmpint (bs_knapsack_search (&item, 1, 10, 10, 100, &count, &is_best), ==, 10);
  g_assert_cmpint (count, ==, 0);
  g_assert_true (is_best);
}

static void
test_limit_of_nodes_is_told (void)
{
  BsKnapsackItem items[30];
  int counts[30];
  gboolean is_best;

  for (int i = 0; i < 30; i++)
    items[i] = (BsKnapsackItem){ 101 + i, 1, 101 + i };
  bs_knapsack_search (items, 30, 1500, 0, 10, counts, &is_best);
  g_assert_false (is_best);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cutting-knapsack/search", test_search);
  g_test_add_func ("/cutting-knapsack/table", test_table);
  g_test_add_func ("/cutting-knapsack/floor", test_floor);
  g_test_add_func ("/cutting-knapsack/limit-of-nodes-is-told", test_limit_of_nodes_is_told);
  return g_test_run ();
}
