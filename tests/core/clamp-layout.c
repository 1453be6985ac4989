/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-layout.h"

#include <math.h>

#define N 8
#define LENGTH 1600.0

/* Eight laminations of 40 x 80 of a medium hardwood, 24 clamps of 6 kN and 20 of 3 kN. */
static BsPressPiece pieces[N];
static BsLayoutKind kinds[2];

static BsLayoutProblem
make_problem (double least_mpa)
{
  BsLayoutProblem problem = { .stack = bs_press_stack_default (),
                              .n_kinds = 2,
                              .kinds = kinds,
                              .reach_needed = N * 40.0,
                              .least_mpa = least_mpa,
                              .most_mpa = 5.0,
                              .bearing_mpa = 8.0,
                              .bearing_height = 80.0 };

  for (guint i = 0; i < N; i++)
    pieces[i] = (BsPressPiece){ i, 0.0, LENGTH, 40.0, 80.0, 12e3, 900.0, 850.0, 0.0, FALSE };
  kinds[0] = (BsLayoutKind){ 24, 6e3, 900.0, 40.0, 40.0 };
  kinds[1] = (BsLayoutKind){ 20, 3e3, 900.0, 35.0, 40.0 };
  problem.stack.pieces = pieces;
  problem.stack.n_pieces = N;
  return problem;
}

static BsLayout
find (const BsLayoutProblem *problem)
{
  g_autoptr (GError) error = NULL;
  BsLayout layout;

  g_assert_true (bs_layout_find (problem, NULL, &layout, &error));
  g_assert_no_error (error);
  return layout;
}

/* What every layout must keep to, whatever it reaches. */
static void
check_rules (const BsLayoutProblem *problem, const BsLayout *layout)
{
  guint used[2] = { 0, 0 };
  guint turns = 0;

  for (guint i = 0; i < layout->n_clamps; i++)
    {
      const BsLayoutClamp *clamp = &layout->clamps[i];
      const BsLayoutKind *kind = &problem->kinds[clamp->kind];

      used[clamp->kind]++;
      turns += clamp->turn;
      g_assert_cmpfloat (clamp->force, >, 0.0);
      g_assert_cmpfloat (clamp->force, <=, kind->max_force);
      g_assert_cmpfloat (clamp->force, <=,
                         problem->bearing_mpa * kind->head_width * kind->head_height + 1e-6);
      g_assert_cmpfloat (kind->reach, >=, problem->reach_needed);
      g_assert_cmpint (clamp->is_above, ==, i % 2 == 0);
      if (i > 0)
        g_assert_cmpfloat (clamp->x - layout->clamps[i - 1].x, >=, 35.0 - 1e-6);
    }
  g_assert_cmpuint (used[0], <=, kinds[0].count);
  g_assert_cmpuint (used[1], <=, kinds[1].count);
  g_assert_cmpuint (turns, ==, layout->n_clamps * (layout->n_clamps - 1) / 2);
}

/* Its pressures are those that the solver gives for its clamps, and one clamp fewer cannot do: not
 * the force that all together have, nor, by the solver, any even spread of them. */
static void
check_reached (void)
{
  BsLayoutProblem problem = make_problem (0.3);
  g_auto (BsLayout) layout = find (&problem);
  g_autofree BsPressClamp *clamps = bs_layout_press_clamps (&layout, &problem);
  g_autoptr (BsPressing) pressing = bs_pressing_new (&problem.stack, NULL);
  g_auto (BsPressResult) result = { 0 };

  g_assert_cmpint (layout.status, ==, BS_LAYOUT_REACHED);
  check_rules (&problem, &layout);
  g_assert_cmpuint (layout.n_clamps, >=, layout.fewest_by_force);
  g_assert_true (bs_pressing_solve (pressing, clamps, layout.n_clamps, &result, NULL));
  for (guint i = 0; i < result.n_lines; i++)
    {
      g_assert_cmpfloat (result.lines[i].least_mpa, >=, 0.3 * 0.999);
      g_assert_cmpfloat (result.lines[i].greatest_mpa, <=, 5.0);
    }
  for (int step = 0; step <= 8; step++)
    {
      double end = 0.2 + 0.05 * step;
      guint n = layout.n_clamps - 1;
      double spacing = LENGTH / (n - 1 + 2.0 * end);

      for (guint i = 0; i < n; i++)
        clamps[i] = (BsPressClamp){ spacing * (end + i), 6e3, 40.0 };
      bs_press_result_clear (&result);
      g_assert_true (bs_pressing_solve (pressing, clamps, n, &result, NULL));
      g_assert_cmpfloat (result.lines[result.weakest].least_mpa, <, 0.3);
    }
}

/* By hand: 0.3 MPa on 1600 x 80 mm takes 38.4 kN, seven clamps of 6 kN. All 24 and 20 have 204 kN,
 * which is 1.594 MPa. */
static void
check_by_force (void)
{
  BsLayoutProblem problem = make_problem (0.3);
  g_auto (BsLayout) layout = find (&problem);

  g_assert_cmpuint (layout.fewest_by_force, ==, 7);
  g_assert_cmpuint (layout.n_reaching, ==, 44);
  g_assert_cmpfloat_with_epsilon (layout.mean_possible_mpa, 1.59375, 1e-4);
}

/* 2 MPa is out of reach; then it says so, with every clamp at its most. */
static void
check_short (void)
{
  BsLayoutProblem problem = make_problem (2.0);
  g_auto (BsLayout) layout = find (&problem);

  g_assert_cmpint (layout.status, ==, BS_LAYOUT_SHORT);
  check_rules (&problem, &layout);
  g_assert_cmpuint (layout.fewest_by_force, ==, 0);
  g_assert_cmpfloat (layout.least_mpa, <, 2.0);
  g_assert_cmpfloat (layout.mean_mpa, <=, layout.mean_possible_mpa + 1e-9);
}

/* Soft wood under small heads: 1.5 MPa x 40 x 40 mm = 2.4 kN is all that a clamp may press. */
static void
check_bearing (void)
{
  BsLayoutProblem problem = make_problem (0.2);
  g_auto (BsLayout) layout = { 0 };

  problem.bearing_mpa = 1.5;
  layout = find (&problem);
  check_rules (&problem, &layout);
  for (guint i = 0; i < layout.n_clamps; i++)
    g_assert_cmpfloat (layout.clamps[i].force, <=, 2400.0 + 1e-6);
}

/* So few strong clamps that what presses enough crushes under the heads. */
static void
check_crushes (void)
{
  BsLayoutProblem problem = make_problem (0.1);
  g_auto (BsLayout) layout = { 0 };

  problem.most_mpa = 0.101;
  layout = find (&problem);
  g_assert_cmpint (layout.status, ==, BS_LAYOUT_CRUSHES);
  g_assert_cmpfloat (layout.least_mpa, >=, 0.0999);
  g_assert_cmpfloat (layout.greatest_mpa, >, 0.101);
}

static void
check_reach (void)
{
  BsLayoutProblem problem = make_problem (0.3);
  g_auto (BsLayout) layout = { 0 };

  problem.reach_needed = 1000.0;
  layout = find (&problem);
  g_assert_cmpint (layout.status, ==, BS_LAYOUT_NO_CLAMPS);
  g_assert_cmpuint (layout.n_clamps, ==, 0);
}

/* Cauls spread the pressure: never more clamps than without. */
static void
check_cauls_help (void)
{
  BsLayoutProblem problem = make_problem (0.3);
  BsPressPiece with_cauls[N + 2];
  g_auto (BsLayout) bare = find (&problem);
  g_auto (BsLayout) lined = { 0 };

  for (guint i = 0; i < N + 2; i++)
    {
      with_cauls[i] = pieces[0];
      with_cauls[i].course = i;
      if (i == 0 || i == N + 1)
        {
          with_cauls[i].thickness = 55.0;
          with_cauls[i].height = 60.0;
          with_cauls[i].e_across_mpa = 1300.0;
          with_cauls[i].is_caul = TRUE;
        }
    }
  problem.stack.pieces = with_cauls;
  problem.stack.n_pieces = N + 2;
  lined = find (&problem);
  g_assert_cmpint (lined.status, ==, BS_LAYOUT_REACHED);
  g_assert_cmpuint (lined.n_clamps, <, bare.n_clamps);
}

static gboolean
stop_at_half (double done, gpointer data)
{
  g_assert_cmpfloat (done, >=, 0.0);
  g_assert_cmpfloat (done, <=, 1.0);
  (*(guint *)data)++;
  return done < 0.5;
}

static void
check_stops (void)
{
  BsLayoutProblem problem = make_problem (0.3);
  guint n_reports = 0;
  BsProgress progress = { stop_at_half, &n_reports };
  g_auto (BsLayout) layout = { 0 };

  g_assert_true (bs_layout_find (&problem, &progress, &layout, NULL));
  g_assert_cmpint (layout.status, ==, BS_LAYOUT_STOPPED);
  g_assert_cmpuint (n_reports, >, 10);
}

static void
check_refuses (void)
{
  BsLayoutProblem problem = make_problem (0.3);
  g_autoptr (GError) error = NULL;
  g_auto (BsLayout) layout = { 0 };

  pieces[3].thickness = NAN;
  g_assert_false (bs_layout_find (&problem, NULL, &layout, &error));
  g_assert_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK);
}

/* The same problem gives the same layout. */
static void
check_deterministic (void)
{
  BsLayoutProblem problem = make_problem (0.35);
  g_auto (BsLayout) a = find (&problem);
  g_auto (BsLayout) b = find (&problem);

  g_assert_cmpuint (a.n_clamps, ==, b.n_clamps);
  for (guint i = 0; i < a.n_clamps; i++)
    {
      g_assert_cmpfloat (a.clamps[i].x, <=, b.clamps[i].x);
      g_assert_cmpfloat (a.clamps[i].x, >=, b.clamps[i].x);
      g_assert_cmpfloat (a.clamps[i].force, <=, b.clamps[i].force);
      g_assert_cmpfloat (a.clamps[i].force, >=, b.clamps[i].force);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clamp-layout/reached", check_reached);
  g_test_add_func ("/clamp-layout/by-force", check_by_force);
  g_test_add_func ("/clamp-layout/short", check_short);
  g_test_add_func ("/clamp-layout/bearing", check_bearing);
  g_test_add_func ("/clamp-layout/crushes", check_crushes);
  g_test_add_func ("/clamp-layout/reach", check_reach);
  g_test_add_func ("/clamp-layout/cauls-help", check_cauls_help);
  g_test_add_func ("/clamp-layout/stops", check_stops);
  g_test_add_func ("/clamp-layout/refuses", check_refuses);
  g_test_add_func ("/clamp-layout/deterministic", check_deterministic);
  return g_test_run ();
}
