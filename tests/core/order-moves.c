/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-moves.h"

/* A plan of laminations a to h, with those of `order` in the slab; capitals are turned over. */
static BsPlan *
new_plan (const char *order)
{
  BsPlan *plan = bs_plan_new ();

  for (int id = 'a'; id <= 'h'; id++)
    g_ptr_array_add (plan->laminations, bs_lamination_new ((const char[]){ (char)id, '\0' }));
  for (guint i = 0; order[i] != '\0'; i++)
    bs_plan_insert_placement (
        plan, (int)i, (const char[]){ g_ascii_tolower (order[i]), '\0' },
        g_ascii_isupper (order[i]) ? BS_ORIENTATION_OVER : BS_ORIENTATION_AS_MARKED, 0.0);
  return plan;
}

/* Which move: '-' for one that stays, 'm' for one that is moved, 'r' from the rack. */
typedef struct
{
  const char *before, *after;
  const char *moves;
  const char *turned; /* 'o' where one is turned over */
} Row;

static const Row rows[] = {
  { "abcd", "abcd", "----", "...." },
  { "abcd", "bcda", "---m", "...." }, /* one goes to the back */
  { "abcd", "dabc", "m---", "...." },
  { "abcdef", "abedcf", "--mm--", "......" }, /* of three in reverse any one may stay: the first */
  { "abcd", "aBcd", "----", ".o.." },
  { "aBcd", "abcd", "----", ".o.." },
  { "abcd", "abgd", "--r-", "...." },
  { "abcd", "abGd", "--r-", "..o." },
  { "", "ab", "rr", ".." },
  { "abcd", "", "", "" },
};

static void
test_moves (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) before = new_plan (row->before);
  g_autoptr (BsPlan) after = new_plan (row->after);
  g_autofree BsOrderMove *moves = bs_order_moves_new (before, after);
  guint n_moved = 0, n_wanted = 0;

  for (guint k = 0; row->after[k] != '\0'; k++)
    {
      g_assert_true ((moves[k].from < 0) == (row->moves[k] == 'r'));
      g_assert_true ((moves[k].turn == BS_ORIENTATION_OVER) == (row->turned[k] == 'o'));
      n_moved += moves[k].is_moved ? 1 : 0;
      n_wanted += row->moves[k] != '-' ? 1 : 0;
    }
  g_assert_cmpuint (n_moved, ==, n_wanted);
}

/* The largest set of places whose laminations keep their sequence, by looking at all sets. */
static guint
count_stayers (const BsOrderMove *moves, guint n)
{
  guint most = 0;

  for (guint set = 0; set < 1u << n; set++)
    {
      int last = -1;
      guint size = 0;
      gboolean is_row = TRUE;

      for (guint k = 0; k < n; k++)
        if ((set >> k & 1) != 0)
          {
            is_row = is_row && moves[k].from > last;
            last = moves[k].from;
            size++;
          }
      if (is_row)
        most = MAX (most, size);
    }
  return most;
}

static void
test_fewest (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (5);

  for (int run = 0; run < 200; run++)
    {
      char order[] = "abcdefgh";
      guint n_moved = 0;

      for (guint i = 7; i > 0; i--)
        {
          guint j = (guint)g_rand_int_range (random, 0, (gint32)i + 1);
          char other = order[j];
          order[j] = order[i];
          order[i] = other;
        }
      g_autoptr (BsPlan) before = new_plan ("abcdefgh");
      g_autoptr (BsPlan) after = new_plan (order);
      g_autofree BsOrderMove *moves = bs_order_moves_new (before, after);
      for (guint k = 0; k < 8; k++)
        n_moved += moves[k].is_moved ? 1 : 0;
      g_assert_cmpuint (n_moved, ==, 8 - count_stayers (moves, 8));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path
          = g_strdup_printf ("/order-moves/%s-to-%s", rows[i].before, rows[i].after);
      g_test_add_data_func (path, &rows[i], test_moves);
    }
  g_test_add_func ("/order-moves/fewest", test_fewest);
  return g_test_run ();
}
