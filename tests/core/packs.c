/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/packs.h"

/* By the meaning of the words: two sets of neighbours may share none, or all of the smaller. */
static gboolean
fit_by_sets (const BsPack *a, const BsPack *b)
{
  int n_shared = 0;

  for (int place = a->first; place < a->first + a->count; place++)
    n_shared += place >= b->first && place < b->first + b->count;
  return n_shared == 0 || (a->count != b->count && n_shared == MIN (a->count, b->count));
}

static void
test_fit (void)
{
  for (int i = 0; i < 7 * 7 * 7 * 7; i++)
    {
      const BsPack a = { i % 7, 2 + i / 7 % 7 }, b = { i / 49 % 7, 2 + i / 343 };

      g_assert_cmpint (bs_packs_fit (&a, &b), ==, fit_by_sets (&a, &b));
    }
}

/* {0 1 2 3 4 5} of {0 1} and {2 3 4}, that of {3 4}; 6 and 7 are in none. */
static const BsPack nest[] = { { 0, 6 }, { 0, 2 }, { 2, 3 }, { 3, 2 } };

static void
test_find_joint (void)
{
  /* The glue line behind each place, and the pack that it is in. */
  static const int wanted[] = { 1, 0, 2, 3, 0, -1, -1 };
  g_autoptr (BsPlan) plan = bs_plan_new ();

  g_array_append_vals (plan->packs, nest, G_N_ELEMENTS (nest));
  for (int place = 0; place < (int)G_N_ELEMENTS (wanted); place++)
    {
      const BsPack *pack = bs_packs_find_joint (plan, place);

      if (wanted[place] < 0)
        g_assert_null (pack);
      else
        g_assert_true (pack == &g_array_index (plan->packs, BsPack, wanted[place]));
    }
}

static void
test_order (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();

  for (guint i = G_N_ELEMENTS (nest); i-- > 0;)
    g_array_append_val (plan->packs, nest[i]);
  g_assert_false (bs_packs_are (plan, nest, G_N_ELEMENTS (nest)));
  g_array_sort (plan->packs, bs_packs_compare);
  g_assert_true (bs_packs_are (plan, nest, G_N_ELEMENTS (nest)));
  g_assert_false (bs_packs_are (plan, nest, G_N_ELEMENTS (nest) - 1));
}

static void
test_is_nest (void)
{
  static const gboolean wanted[] = { TRUE, FALSE, TRUE, FALSE };
  g_autoptr (BsPlan) plan = bs_plan_new ();

  g_array_append_vals (plan->packs, nest, G_N_ELEMENTS (nest));
  for (guint i = 0; i < G_N_ELEMENTS (nest); i++)
    g_assert_cmpint (bs_packs_is_nest (plan, &nest[i]), ==, wanted[i]);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packs/fit", test_fit);
  g_test_add_func ("/packs/find-joint", test_find_joint);
  g_test_add_func ("/packs/order", test_order);
  g_test_add_func ("/packs/is-nest", test_is_nest);
  return g_test_run ();
}
