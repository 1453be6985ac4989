/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/lifting.h"

#include "core/mass.h"
#include "shops.h"

#include <math.h>

/* The equation against its tables: tests/published/lifting.c. */

/* Wide pieces: between 12 and 15 kg for one person is where care begins (planning figure). */
static void
test_default (void)
{
  BsLift lift = bs_lift_default ();

  g_assert_cmpfloat (bs_lift_limit (&lift), >, 12.0);
  g_assert_cmpfloat (bs_lift_limit (&lift), <, 15.0);
}

/* By hand for 12 kg each: 12, 16, 18, 24, 30, 36. */
static void
test_people (void)
{
  g_assert_cmpint (bs_lift_people (12.0, 12.0), ==, 1);
  g_assert_cmpint (bs_lift_people (12.1, 12.0), ==, 2);
  g_assert_cmpint (bs_lift_people (17.0, 12.0), ==, 3);
  g_assert_cmpint (bs_lift_people (36.0, 12.0), ==, 6);
  g_assert_cmpint (bs_lift_people (36.1, 12.0), ==, 0);
}

static void
test_farther_is_less (void)
{
  BsLift lift = bs_lift_default ();
  double before = INFINITY;

  for (int reach = 250; reach <= 630; reach += 10)
    {
      lift.horizontal = reach;
      g_assert_cmpfloat (bs_lift_limit (&lift), <, before);
      before = bs_lift_limit (&lift);
    }
}

/* At 12 % moisture 0.50 weighs 560 kg/m3. A board of 2000 x 150 x 50 mm is 8.4 kg; a lamination
 * 1200 x 40 x 45 is 1.2096 kg, the one of 50 mm 1.344 kg; a pack of three with it 3.7632 kg. */
static BsPlan *
new_plan (void)
{
  static const double lengths[] = { 2000.0, 1000.0 };
  BsPlan *plan = shop_new_perfect ();

  for (guint i = 0; i < 8; i++)
    slab_at (plan, i)->moisture_pct = 12.0;
  slab_at (plan, 4)->height = 50.0;
  bs_text_set (&slab_at (plan, 4)->label, "E");
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      BsBoard *board = bs_board_new (i == 0 ? "a" : "b");
      board->length = lengths[i];
      board->width = 150.0;
      board->thickness = 50.0;
      board->moisture_pct = 12.0;
      bs_text_set (&board->wood, "wood");
      bs_text_set (&board->label, i == 0 ? "A" : "B");
      g_ptr_array_add (plan->boards, board);
    }
  g_array_append_vals (plan->packs, &(BsPack){ .first = 0, .count = 2 }, 1);
  g_array_append_vals (plan->packs, &(BsPack){ .first = 3, .count = 3 }, 1);
  return plan;
}

static void
test_loads (void)
{
  g_autoptr (BsPlan) plan = new_plan ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsLoad loads[BS_N_LOAD_KINDS];

  bs_lift_loads (stack, 9.0, 99.0, loads);
  g_assert_cmpfloat_with_epsilon (loads[BS_LOAD_BOARD].kg, 8.4, 1e-9);
  g_assert_cmpstr (loads[BS_LOAD_BOARD].label, ==, "A");
  g_assert_cmpfloat_with_epsilon (loads[BS_LOAD_LAMINATION].kg, 1.344, 1e-9);
  g_assert_cmpstr (loads[BS_LOAD_LAMINATION].label, ==, "E");
  g_assert_cmpint (loads[BS_LOAD_LAMINATION].place, ==, 4);
  g_assert_cmpfloat_with_epsilon (loads[BS_LOAD_PACK].kg, 2.0 * 1.2096 + 1.344, 1e-9);
  g_assert_cmpint (loads[BS_LOAD_PACK].place, ==, 3);
  g_assert_cmpfloat_with_epsilon (loads[BS_LOAD_SLAB].kg, 9.0, 1e-12);
  g_assert_cmpint (loads[BS_LOAD_SLAB].people, ==, 1);
}

/* Two people halve the index and more: 4/3 of one's limit. */
static void
test_index (void)
{
  BsLift lift = bs_lift_default ();
  g_autoptr (BsPlan) plan = new_plan ();
  plan->shop.people = 2;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsLoad loads[BS_N_LOAD_KINDS];
  BsWorking why;

  bs_lift_loads (stack, 40.0, 12.0, loads);
  g_assert_cmpfloat_with_epsilon (loads[BS_LOAD_SLAB].index,
                                  40.0 / (bs_lift_limit (&lift) * 4.0 / 3.0), 1e-9);
  bs_lift_explain (&loads[BS_LOAD_SLAB], &lift, 2, &why);
  g_assert_cmpfloat_with_epsilon (why.value, loads[BS_LOAD_SLAB].index, 1e-12);

  double below = 1.0;
  for (guint i = 1; i <= 8; i++)
    below *= why.terms[i].value;
  g_assert_cmpfloat_with_epsilon (why.value, why.terms[0].value / below, 1e-9);
}

static void
test_nothing_known (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsLift lift = bs_lift_default ();
  BsLoad loads[BS_N_LOAD_KINDS];
  BsWorking why;

  bs_lift_loads (stack, NAN, 9.0, loads);
  for (guint i = 0; i < BS_N_LOAD_KINDS; i++)
    g_assert_true (isnan (loads[i].kg));
  bs_lift_explain (&loads[BS_LOAD_SLAB], &lift, 1, &why);
  g_assert_true (isnan (why.value));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lifting/default", test_default);
  g_test_add_func ("/lifting/people", test_people);
  g_test_add_func ("/lifting/farther-is-less", test_farther_is_less);
  g_test_add_func ("/lifting/loads", test_loads);
  g_test_add_func ("/lifting/index", test_index);
  g_test_add_func ("/lifting/nothing-known", test_nothing_known);
  return g_test_run ();
}
