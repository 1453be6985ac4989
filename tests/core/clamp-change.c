/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-change.h"

#include <math.h>

#define N_CLAMPS 4
#define WANTED 0.3

static BsPressPiece pieces[4];
static BsPressClamp clamps[N_CLAMPS + 1];

static BsPressing *
make_pressing (void)
{
  BsPressStack stack = bs_press_stack_default ();

  for (guint i = 0; i < 4; i++)
    pieces[i] = (BsPressPiece){ i, 0.0, 800.0, 40.0, 80.0, 12e3, 900.0, 850.0, 0.0, FALSE };
  for (guint i = 0; i < N_CLAMPS; i++)
    clamps[i] = (BsPressClamp){ 100.0 + 200.0 * i, 5e3, 40.0 };
  stack.pieces = pieces;
  stack.n_pieces = 4;
  return bs_pressing_new (&stack, NULL);
}

/* Each says what the solver says when the clamps are changed so, in order of helpfulness. */
static void
check_true (void)
{
  g_autoptr (BsPressing) pressing = make_pressing ();
  g_autoptr (GArray) changes = bs_clamp_changes (pressing, clamps, N_CLAMPS, WANTED, NULL);
  guint n_of_kind[3] = { 0 };

  for (guint i = 0; i < changes->len; i++)
    {
      const BsClampChange *change = &g_array_index (changes, BsClampChange, i);
      gboolean is_more = change->kind == BS_CLAMP_CHANGE_ADD;
      guint at = is_more ? N_CLAMPS : change->clamp;
      BsPressClamp before = clamps[at];
      g_auto (BsPressResult) result = { 0 };

      n_of_kind[change->kind]++;
      clamps[at] = (BsPressClamp){ change->x, change->force, 40.0 };
      g_assert_true (
          bs_pressing_solve (pressing, clamps, N_CLAMPS + (is_more ? 1 : 0), &result, NULL));
      clamps[at] = before;
      g_assert_cmpfloat_with_epsilon (change->least_mpa, result.lines[result.weakest].least_mpa,
                                      1e-9);
      g_assert_cmpfloat_with_epsilon (change->greatest_mpa,
                                      result.lines[result.hardest].greatest_mpa, 1e-9);
      if (i > 0)
        g_assert_cmpfloat (change->less_than_wanted, >=,
                           g_array_index (changes, BsClampChange, i - 1).less_than_wanted - 1.0
                               - 1e-9);
    }
  g_assert_cmpuint (n_of_kind[BS_CLAMP_CHANGE_TIGHTEN], ==, N_CLAMPS);
  g_assert_cmpuint (n_of_kind[BS_CLAMP_CHANGE_MOVE], ==, G_GUINT64_CONSTANT (2) * N_CLAMPS);
  g_assert_cmpuint (n_of_kind[BS_CLAMP_CHANGE_ADD], ==, N_CLAMPS - 1);
}

/* 100 mm from the end one more at half the spacing beyond would stand on the very end: left out. */
static void
check_leaves_out_what_cannot_be (void)
{
  g_autoptr (BsPressing) pressing = make_pressing ();
  g_autoptr (GArray) changes = bs_clamp_changes (pressing, clamps, N_CLAMPS, WANTED, NULL);

  for (guint i = 0; i < changes->len; i++)
    {
      g_assert_cmpfloat (g_array_index (changes, BsClampChange, i).x, >, 0.0);
      g_assert_cmpfloat (g_array_index (changes, BsClampChange, i).x, <, 800.0);
    }
}

static gboolean
stop_at_third (double done, gpointer data)
{
  return ++*(guint *)data < 3;
}

static void
check_stops (void)
{
  g_autoptr (BsPressing) pressing = make_pressing ();
  guint n_reports = 0;
  BsProgress progress = { stop_at_third, &n_reports };

  g_assert_null (bs_clamp_changes (pressing, clamps, N_CLAMPS, WANTED, &progress));
  g_assert_cmpuint (n_reports, ==, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clamp-change/true", check_true);
  g_test_add_func ("/clamp-change/leaves-out-what-cannot-be", check_leaves_out_what_cannot_be);
  g_test_add_func ("/clamp-change/stops", check_stops);
  return g_test_run ();
}
