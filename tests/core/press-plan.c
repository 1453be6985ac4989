/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/press-plan.h"

#include "shops.h"

#include <math.h>

static BsPressPlan
press (const BsStack *stack)
{
  BsPressPlan self;
  g_autoptr (GError) error = NULL;

  g_assert_true (bs_press_plan_init (&self, stack, &error));
  g_assert_no_error (error);
  return self;
}

static void
check_bare (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsStack) stack = NULL;
  g_auto (BsPressPlan) self = { 0 };
  const BsPressPiece *piece;

  slab_at (plan, 3)->bow = 2.0;
  slab_at (plan, 4)->bow = NAN; /* not measured: none */
  stack = bs_stack_new (plan);
  self = press (stack);
  g_assert_cmpuint (self.pieces->len, ==, 10);
  g_assert_cmpuint (self.first_course, ==, 0);
  piece = &g_array_index (self.pieces, BsPressPiece, 3);
  g_assert_cmpuint (piece->course, ==, 3);
  g_assert_cmpfloat_with_epsilon (piece->e_along_mpa, 12100.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (piece->bow, 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (piece[1].bow, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (self.problem.reach_needed, 400.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (self.problem.least_mpa, 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (self.problem.most_mpa, 7.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (self.problem.bearing_mpa, 7.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (self.problem.stack.span_from, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (self.problem.stack.span_to, 1500.0, 1e-12);
}

/* Two cauls of 800 mm line 1500 mm of each face. */
static void
check_cauls (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (4);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_auto (BsPressPlan) self = press (stack);

  g_assert_cmpuint (self.first_course, ==, 1);
  g_assert_cmpuint (self.pieces->len, ==, 14);
  for (guint i = 0; i < 14; i++)
    {
      const BsPressPiece *piece = &g_array_index (self.pieces, BsPressPiece, i);

      g_assert_cmpint (piece->is_caul, ==, i < 2 || i > 11);
      g_assert_cmpfloat_with_epsilon (piece->length, piece->is_caul ? 750.0 : 1500.0, 1e-9);
    }
  g_assert_cmpfloat_with_epsilon (self.problem.reach_needed, 500.0, 1e-9);
  g_assert_true (isinf (self.problem.bearing_mpa));
}

/* Shifted laminations: only what all of them cover has to be pressed. */
static void
check_span (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsStack) stack = NULL;
  g_auto (BsPressPlan) self = { 0 };

  g_array_index (plan->order, BsPlacement, 4).start = 60.0;
  slab_at (plan, 6)->length = 1440.0;
  stack = bs_stack_new (plan);
  self = press (stack);
  g_assert_cmpfloat_with_epsilon (self.problem.stack.span_from, 60.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (self.problem.stack.span_to, 1440.0, 1e-9);
}

/* Rings at 45 degrees to the glue line are the softest: about half of radial by the mean ratios. */
static void
check_rings (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsStack) stack = NULL;
  g_auto (BsPressPlan) self = { 0 };

  slab_at (plan, 0)->pith_y = 5000.0;
  slab_at (plan, 0)->pith_z = 0.0;
  slab_at (plan, 1)->pith_y = 5000.0;
  slab_at (plan, 1)->pith_z = 5000.0;
  stack = bs_stack_new (plan);
  self = press (stack);
  g_assert_cmpfloat (1.8 * g_array_index (self.pieces, BsPressPiece, 1).e_across_mpa, <,
                     g_array_index (self.pieces, BsPressPiece, 0).e_across_mpa);
}

static void
check_refuses (void)
{
  g_autoptr (BsPlan) unknown = shop_new_pressed (0);
  g_autoptr (BsPlan) apart = shop_new_pressed (0);
  g_autoptr (BsPlan) single = slab_new (1, 1000.0, 40.0, 80.0);
  BsPlan *plans[] = { unknown, apart, single };

  g_clear_pointer (&slab_at (unknown, 2)->wood, g_ref_string_release);
  g_array_index (apart->order, BsPlacement, 9).start = 2000.0;
  for (guint i = 0; i < G_N_ELEMENTS (plans); i++)
    {
      g_autoptr (BsStack) stack = bs_stack_new (plans[i]);
      g_autoptr (GError) error = NULL;
      BsPressPlan self;

      g_assert_false (bs_press_plan_init (&self, stack, &error));
      g_assert_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK);
    }
}

/* The working shows the layout's number, within its range, and adds up: force / area is the mean.
 */
static void
check_working (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (4);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_auto (BsPressPlan) self = press (stack);
  g_auto (BsLayout) layout = { 0 };
  BsWorking why;

  g_assert_true (bs_layout_find (&self.problem, NULL, &layout, NULL));
  g_assert_cmpint (layout.status, ==, BS_LAYOUT_REACHED);
  bs_press_plan_explain (&self, stack, &layout, TRUE, &why);
  g_assert_cmpfloat_with_epsilon (why.value, layout.least_mpa, 1e-12);
  g_assert_cmpfloat (why.value, >=, 0.25 * 0.999);
  g_assert_cmpfloat (why.low, <, why.value);
  g_assert_cmpfloat (why.high, >, why.value);
  g_assert_cmpuint (why.n_terms, ==, 11);
  g_assert_cmpstr (why.terms[3].symbol, ==, "F");
  g_assert_cmpfloat_with_epsilon (why.terms[3].value / (1500.0 * 80.0), layout.mean_mpa, 1e-9);
}

/* Nothing reaches: the working says so and has no number. */
static void
check_working_without_clamps (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsStack) stack = NULL;
  g_auto (BsPressPlan) self = { 0 };
  g_auto (BsLayout) layout = { 0 };
  BsWorking why;

  ((BsClampKind *)g_ptr_array_index (plan->shop.clamps, 0))->reach = 300.0;
  stack = bs_stack_new (plan);
  self = press (stack);
  g_assert_true (bs_layout_find (&self.problem, NULL, &layout, NULL));
  bs_press_plan_explain (&self, stack, &layout, TRUE, &why);
  g_assert_true (isnan (why.value));
  g_assert_nonnull (g_strstr_len (why.explanation, -1, "reach"));
  g_assert_cmpuint (why.n_terms, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/press-plan/bare", check_bare);
  g_test_add_func ("/press-plan/cauls", check_cauls);
  g_test_add_func ("/press-plan/span", check_span);
  g_test_add_func ("/press-plan/rings", check_rings);
  g_test_add_func ("/press-plan/refuses", check_refuses);
  g_test_add_func ("/press-plan/working", check_working);
  g_test_add_func ("/press-plan/working-without-clamps", check_working_without_clamps);
  return g_test_run ();
}
