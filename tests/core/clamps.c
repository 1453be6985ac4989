/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamps.h"

#include "shops.h"

#include <math.h>

static const BsLayoutClamp *
get (const GArray *clamps, guint i)
{
  return &g_array_index (clamps, BsLayoutClamp, i);
}

/* The clamps of a plan by a hand rule that asks for ten of them and for so much force. */
static GArray *
list (const BsPlan *plan, double force_n)
{
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autoptr (GArray) positions = g_array_new (FALSE, FALSE, sizeof (double));
  BsClampRule rule = results->clamps;

  for (guint i = 0; i < 10; i++)
    {
      double x = 60.0 + 120.0 * i;

      g_array_append_val (positions, x);
    }
  rule.positions = positions;
  rule.force_n = force_n;
  return bs_clamps_new (results->stack, &rule);
}

static double
sum (const GArray *clamps)
{
  double force = 0.0;

  for (guint i = 0; i < clamps->len; i++)
    force += get (clamps, i)->force;
  return force;
}

/* Ten clamps share 54 kN: 5.4 kN each. */
static void
test_rule (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (GArray) clamps = list (plan, 54000.0);

  g_assert_cmpuint (clamps->len, ==, 10);
  for (guint i = 0; i < clamps->len; i++)
    {
      g_assert_cmpuint (get (clamps, i)->kind, ==, 0);
      g_assert_cmpfloat_with_epsilon (get (clamps, i)->x, 60.0 + 120.0 * i, 1e-9);
      g_assert_cmpfloat_with_epsilon (get (clamps, i)->force, 5400.0, 1e-9);
      g_assert_cmpint (get (clamps, i)->is_above, ==, i % 2 == 0);
    }
}

typedef struct
{
  const char *path;
  double weak_n, force_n; /* greatest force of six of the twelve; force of the rule */
  double weakest, strongest;
} ShareRow;

/* Ten clamps are used: six strong ones of 6 kN, at places 0, 2, 4, 6, 8 and 1, and four weak ones.
 * Shares by hand: a weak one takes no more than it can, the strong ones share what is left. */
static const ShareRow share_rows[] = {
  { "equal", 5500.0, 50000.0, 5000.0, 5000.0 },
  { "weak-ones-at-their-most", 3000.0, 42000.0, 3000.0, 5000.0 }, /* (42 - 12) / 6 */
  { "all-at-their-most", 3000.0, 60000.0, 3000.0, 6000.0 },
};

static void
test_share (gconstpointer data)
{
  const ShareRow *row = data;
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsClampKind *weak = shop_add_clamps (plan, 6, row->weak_n, 600.0, 50.0);
  g_autoptr (GArray) clamps = NULL;
  double weakest = INFINITY, strongest = 0.0;

  g_ref_string_release (weak->id);
  weak->id = g_ref_string_new ("weak");
  ((BsClampKind *)g_ptr_array_index (plan->shop.clamps, 0))->count = 6;
  clamps = list (plan, row->force_n);
  g_assert_cmpuint (clamps->len, ==, 10);
  for (guint i = 0; i < clamps->len; i++)
    {
      gboolean is_strong = i % 2 == 0 || i == 1;

      g_assert_cmpuint (get (clamps, i)->kind, ==, is_strong ? 0 : 1);
      weakest = fmin (weakest, get (clamps, i)->force);
      strongest = fmax (strongest, get (clamps, i)->force);
    }
  g_assert_cmpfloat_with_epsilon (weakest, row->weakest, 1e-9);
  g_assert_cmpfloat_with_epsilon (strongest, row->strongest, 1e-9);
  g_assert_cmpfloat_with_epsilon (sum (clamps), 4.0 * row->weakest + 6.0 * row->strongest, 1e-6);
}

/* Placed clamps take the rule's place, as they are. */
static void
test_placed (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (GArray) clamps = NULL;

  bs_plan_place_clamp (plan, "clamp", 900.0, 1000.0, FALSE);
  bs_plan_place_clamp (plan, "clamp", 100.0, 2000.0, TRUE);
  bs_plan_place_clamp (plan, "clamp", 480.0, 3000.0, FALSE);
  clamps = list (plan, 54000.0);
  g_assert_cmpuint (clamps->len, ==, 3);
  g_assert_cmpfloat_with_epsilon (get (clamps, 0)->x, 100.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (get (clamps, 1)->force, 3000.0, 1e-12);
  g_assert_true (get (clamps, 0)->is_above);
  g_assert_false (get (clamps, 2)->is_above);

  /* From the middle, 500 mm, outwards. */
  g_assert_cmpuint (get (clamps, 1)->turn, ==, 0);
  g_assert_cmpuint (get (clamps, 0)->turn, ==, 1);
  g_assert_cmpuint (get (clamps, 2)->turn, ==, 2);
}

/* None reaches: still those that the rule counts, of the kind that would have to. */
static void
test_too_short (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (GArray) clamps = NULL;

  ((BsClampKind *)g_ptr_array_index (plan->shop.clamps, 0))->reach = 200.0;
  clamps = list (plan, 54000.0);
  g_assert_cmpuint (clamps->len, ==, 10);
}

static void
test_none (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (GArray) clamps = NULL;

  g_ptr_array_set_size (plan->shop.clamps, 0);
  clamps = list (plan, 54000.0);
  g_assert_cmpuint (clamps->len, ==, 0);
}

/* A thread of 12 x 3 (mean diameter 10.5) with a collar of 4 mm takes 1.911 N mm a newton:
 * docs/pressing-model.md, The screw. */
static void
test_torque (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);

  kind->screw_mean_diameter = NAN;
  kind->screw_lead = 3.0;
  g_assert_true (isnan (bs_clamps_torque (kind, 5000.0)));
  kind->screw_mean_diameter = 10.5;
  g_assert_cmpfloat_with_epsilon (bs_clamps_torque (kind, 5000.0), 5000.0 * 1.911, 5000.0 * 0.002);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clamps/rule", test_rule);
  for (gsize i = 0; i < G_N_ELEMENTS (share_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/clamps/share/", share_rows[i].path, NULL);
      g_test_add_data_func (path, &share_rows[i], test_share);
    }
  g_test_add_func ("/clamps/placed", test_placed);
  g_test_add_func ("/clamps/too-short", test_too_short);
  g_test_add_func ("/clamps/none", test_none);
  g_test_add_func ("/clamps/torque", test_torque);
  return g_test_run ();
}
