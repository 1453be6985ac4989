/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cupping.h"

#include "shops.h"

#include <math.h>

/* Exact boards against geometry worked apart: tests/published/movement.c. */

#define RADIAL (-0.006)
#define TANGENTIAL (-0.015)

/* A wood that shrinks alike all round stays flat, wherever it comes from in the log. */
static void
test_alike_stays_flat (void)
{
  for (int y = -100; y <= 100; y += 25)
    for (int z = -100; z <= 100; z += 25)
      g_assert_cmpfloat_with_epsilon (bs_cupping_board (120.0, y, z, -0.01, -0.01), 0.0, 1e-9);
}

static void
test_quartersawn_stays_flat (void)
{
  g_assert_cmpfloat_with_epsilon (bs_cupping_board (120.0, 500.0, 0.0, RADIAL, TANGENTIAL), 0.0,
                                  1e-9);
}

/* Turned over it cups the other way; seen from the other end alike; wetted the other way, all but
 * the square of what it moves. */
static void
test_symmetry (void)
{
  double down = bs_cupping_board (120.0, 30.0, -80.0, RADIAL, TANGENTIAL);

  g_assert_cmpfloat (down, <, 0.0);
  g_assert_cmpfloat_with_epsilon (bs_cupping_board (120.0, 30.0, 80.0, RADIAL, TANGENTIAL), -down,
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (bs_cupping_board (120.0, -30.0, -80.0, RADIAL, TANGENTIAL), down,
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (bs_cupping_board (120.0, 30.0, -80.0, -RADIAL, -TANGENTIAL),
                                  -down, 0.03 * fabs (down));
}

/* (t - r) w^2 / 4 h for narrow boards: 0.009 x 400 / 400. */
static void
test_narrow (void)
{
  g_assert_cmpfloat_with_epsilon (bs_cupping_board (20.0, 0.0, -100.0, RADIAL, TANGENTIAL), -0.009,
                                  0.0002);
}

/* Nearer the pith it cups more. */
static void
test_near_the_pith (void)
{
  for (int away = 20; away <= 400; away += 20)
    g_assert_cmpfloat (bs_cupping_board (100.0, 0.0, -away, RADIAL, TANGENTIAL), <,
                       bs_cupping_board (100.0, 0.0, -away - 20.0, RADIAL, TANGENTIAL));
}

/* Eight laminations on flat, 40 mm wide, glued at 9 % and alike but for the side of their hearts.
 */
static BsPlan *
new_plan (const int hearts[8])
{
  BsPlan *plan = shop_new_perfect ();
  BsWood *wood = plan->woods->pdata[0];

  plan->slab.layup = BS_LAYUP_ON_FLAT;
  wood->coef_radial = 0.0015;
  wood->coef_tangential = 0.0035;
  for (guint i = 0; i < 8; i++)
    {
      slab_at (plan, i)->pith_y = 0.0;
      slab_at (plan, i)->pith_z = hearts[i] * 60.0;
    }
  return plan;
}

/* n equal arcs that go on as one have n^2 times the height of one: the slab's width is n times, and
 * the height of an arc goes with the square. By turns no spot lies farther off than one board. */
static void
test_same_side_and_alternating (void)
{
  static const int down[8] = { -1, -1, -1, -1, -1, -1, -1, -1 };
  static const int by_turns[8] = { -1, 1, -1, 1, -1, 1, -1, 1 };
  g_autoptr (BsPlan) same_plan = new_plan (down);
  g_autoptr (BsPlan) turns_plan = new_plan (by_turns);
  g_autoptr (BsStack) same_stack = bs_stack_new (same_plan);
  g_autoptr (BsStack) turns_stack = bs_stack_new (turns_plan);
  BsCupping same, turns;

  bs_cupping_slab (same_stack, 6.0, 11.0, &same);
  bs_cupping_slab (turns_stack, 6.0, 11.0, &turns);
  double one = same.greatest_board;

  g_assert_true (same.is_on_flat);
  g_assert_cmpfloat_with_epsilon (same.as_laid.cup, 64.0 * one, 64.0 * 1e-9);
  g_assert_cmpfloat_with_epsilon (same.as_laid.waves, fabs (64.0 * one), 1e-9);
  g_assert_cmpfloat_with_epsilon (same.same_side.cup, same.as_laid.cup, 1e-12);
  g_assert_cmpfloat (turns.as_laid.waves, <=, 8.0 * fabs (one));
  g_assert_cmpfloat_with_epsilon (turns.alternating.waves, turns.as_laid.waves, 1e-12);

  /* Each compares itself with the other. */
  g_assert_cmpfloat_with_epsilon (same.alternating.waves, turns.as_laid.waves, 1e-12);
  g_assert_cmpfloat_with_epsilon (turns.same_side.waves, same.as_laid.waves, 1e-12);
}

/* Two boards, one up and one down, make an S: the joint lies on the line between the slab's edges,
 * and each middle lies its own cup off that line, one under and one over it. */
static void
test_two_by_turns (void)
{
  static const int hearts[8] = { -1, 1, -1, 1, -1, 1, -1, 1 };
  g_autoptr (BsPlan) plan = new_plan (hearts);
  g_array_set_size (plan->order, 2);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCupping cupping;

  bs_cupping_slab (stack, 6.0, 11.0, &cupping);
  g_assert_cmpfloat_with_epsilon (cupping.as_laid.waves, 2.0 * fabs (cupping.greatest_board), 1e-9);
}

/* The season that is farther from gluing counts. */
static void
test_season (void)
{
  static const int down[8] = { -1, -1, -1, -1, -1, -1, -1, -1 };
  g_autoptr (BsPlan) plan = new_plan (down);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsCupping dry, damp;

  bs_cupping_slab (stack, 6.0, 10.0, &dry);
  bs_cupping_slab (stack, 8.0, 13.0, &damp);
  g_assert_cmpfloat_with_epsilon (dry.moisture_pct, 6.0, 1e-12);
  g_assert_cmpfloat (dry.as_laid.cup, <, 0.0);
  g_assert_cmpfloat_with_epsilon (damp.moisture_pct, 13.0, 1e-12);
  g_assert_cmpfloat (damp.as_laid.cup, >, 0.0);
}

/* The profile is what the cup was measured on: it begins and ends on the line, and its spots are
 * the edges and middles of the laminations. */
static void
test_profile (void)
{
  static const int down[8] = { -1, -1, 1, -1, 1, 1, -1, -1 };
  g_autoptr (BsPlan) plan = new_plan (down);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (GArray) profile = bs_cupping_profile (stack, 6.0, BS_CUP_AS_LAID);
  double highest = 0.0, lowest = 0.0;
  BsCupping cupping;

  bs_cupping_slab (stack, 6.0, 9.0, &cupping);
  g_assert_cmpuint (profile->len, ==, 17);
  for (guint i = 0; i < profile->len; i++)
    {
      const BsCupSpot *spot = &g_array_index (profile, BsCupSpot, i);
      g_assert_cmpfloat_with_epsilon (spot->y, 20.0 * i, 1e-9);
      highest = MAX (highest, spot->z);
      lowest = MIN (lowest, spot->z);
    }
  g_assert_cmpfloat_with_epsilon (g_array_index (profile, BsCupSpot, 16).z, 0.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (highest - lowest, cupping.as_laid.waves, 1e-12);
}

static void
test_not_told (void)
{
  static const int down[8] = { -1, -1, -1, -1, -1, -1, -1, -1 };
  g_autoptr (BsPlan) plan = new_plan (down);
  BsCupping cupping;
  BsWorking why;

  slab_at (plan, 2)->pith_y = NAN;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  bs_cupping_slab (stack, 6.0, 11.0, &cupping);
  bs_cupping_explain (&cupping, &why);
  g_assert_cmpuint (cupping.n_no_rings, ==, 1);
  g_assert_cmpfloat_with_epsilon (why.value, cupping.as_laid.cup, 1e-12);

  bs_text_set (&slab_at (plan, 1)->wood, "nobody");
  g_autoptr (BsStack) nobody = bs_stack_new (plan);
  bs_cupping_slab (nobody, 6.0, 11.0, &cupping);
  bs_cupping_explain (&cupping, &why);
  g_assert_true (isnan (cupping.as_laid.cup));
  g_assert_true (isnan (why.value));

  plan->slab.layup = BS_LAYUP_ON_EDGE;
  bs_cupping_slab (stack, 6.0, 11.0, &cupping);
  bs_cupping_explain (&cupping, &why);
  g_assert_false (cupping.is_on_flat);
  g_assert_true (isnan (why.value));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cupping/alike-stays-flat", test_alike_stays_flat);
  g_test_add_func ("/cupping/quartersawn-stays-flat", test_quartersawn_stays_flat);
  g_test_add_func ("/cupping/symmetry", test_symmetry);
  g_test_add_func ("/cupping/narrow", test_narrow);
  g_test_add_func ("/cupping/near-the-pith", test_near_the_pith);
  g_test_add_func ("/cupping/same-side-and-alternating", test_same_side_and_alternating);
  g_test_add_func ("/cupping/two-by-turns", test_two_by_turns);
  g_test_add_func ("/cupping/season", test_season);
  g_test_add_func ("/cupping/profile", test_profile);
  g_test_add_func ("/cupping/not-told", test_not_told);
  return g_test_run ();
}
