/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-influence.h"

#include <math.h>

#define LENGTH 1000.0

static BsPressPiece pieces[5];

static BsPressStack
make_stack (void)
{
  BsPressStack stack = bs_press_stack_default ();

  for (guint i = 0; i < 5; i++)
    pieces[i] = (BsPressPiece){ i, 0.0, LENGTH, 40.0, 80.0, 12e3, 900.0, 850.0, 0.05 * i, FALSE };
  stack.pieces = pieces;
  stack.n_pieces = 5;
  return stack;
}

/* Where nothing opens the sums are the pressures of the solver: same least, same greatest. */
static void
check_sums (void)
{
  BsPressStack stack = make_stack ();
  g_autoptr (BsClampInfluence) influence = bs_clamp_influence_new (&stack, 40.0, NULL, NULL);
  g_autoptr (BsPressing) pressing = bs_pressing_new (&stack, NULL);
  g_autofree double *pressure
      = g_memdup2 (influence->of_bows, sizeof (double) * influence->n_spots);
  BsPressClamp clamps[10];
  g_auto (BsPressResult) result = { 0 };
  double least = INFINITY, greatest = 0.0;

  for (guint i = 0; i < 10; i++)
    {
      clamps[i] = (BsPressClamp){ 50.0 + 100.0 * i, 5e3, 40.0 };
      bs_clamp_influence_add (influence, clamps[i].x, clamps[i].force, pressure);
    }
  g_assert_true (bs_pressing_solve (pressing, clamps, 10, &result, NULL));
  for (guint i = 0; i < influence->n_spots; i++)
    {
      least = fmin (least, pressure[i]);
      greatest = fmax (greatest, pressure[i]);
    }
  g_assert_cmpfloat (least, >, 0.0);
  g_assert_cmpfloat_with_epsilon (least, result.lines[result.weakest].least_mpa, 1e-6);
  g_assert_cmpfloat_with_epsilon (greatest, result.lines[result.hardest].greatest_mpa, 1e-6);
  g_assert_cmpfloat_with_epsilon (influence->area, LENGTH * 80.0, 1e-6);
}

/* A head stays on both faces; 4 lines of 99 spots: nodes from 10 to 990. */
static void
check_places (void)
{
  BsPressStack stack = make_stack ();
  g_autoptr (BsClampInfluence) influence = bs_clamp_influence_new (&stack, 40.0, NULL, NULL);

  g_assert_cmpfloat_with_epsilon (influence->from, 20.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (influence->to, 980.0, 1e-9);
  g_assert_cmpuint (influence->n_spots, ==, 396 /* 4 lines of 99 */);
}

static void
check_refuses_wide_head (void)
{
  BsPressStack stack = make_stack ();
  g_autoptr (GError) error = NULL;

  g_assert_null (bs_clamp_influence_new (&stack, 1000.0, NULL, &error));
  g_assert_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_CLAMP);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clamp-influence/sums", check_sums);
  g_test_add_func ("/clamp-influence/places", check_places);
  g_test_add_func ("/clamp-influence/refuses-wide-head", check_refuses_wide_head);
  return g_test_run ();
}
