/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/pressing.h"

#include <math.h>

/* Relations that hold whatever the numbers: balance, mirrors, more force. Stacks are drawn at
 * random from a fixed seed. */

#define MAX_PIECES 14
#define MAX_CLAMPS 8
#define LENGTH 1200.0

typedef struct
{
  BsPressPiece pieces[MAX_PIECES];
  BsPressClamp clamps[MAX_CLAMPS];
  guint n_pieces, n_clamps;
} Case;

/* Every third stack has a course of two pieces, every fourth cauls; most are bowed. */
static Case
draw_case (GRand *rand, guint number)
{
  Case self = { .n_clamps = (guint)g_rand_int_range (rand, 3, MAX_CLAMPS + 1) };
  guint n_courses = (guint)g_rand_int_range (rand, 2, 9);

  for (guint course = 0; course < n_courses; course++)
    {
      BsPressPiece piece = {
        .course = course,
        .length = LENGTH,
        .thickness = g_rand_double_range (rand, 20.0, 60.0),
        .height = g_rand_double_range (rand, 60.0, 100.0),
        .e_along_mpa = g_rand_double_range (rand, 8e3, 15e3),
        .e_across_mpa = g_rand_double_range (rand, 300.0, 1400.0),
        .shear_mpa = g_rand_double_range (rand, 500.0, 1200.0),
        .bow = number % 2 == 0 ? g_rand_double_range (rand, -2.0, 2.0) : 0.0,
        .is_caul = number % 4 == 1 && (course == 0 || course + 1 == n_courses),
      };

      if (number % 3 == 1 && course == n_courses / 2)
        {
          piece.length = 700.0;
          self.pieces[self.n_pieces++] = piece;
          piece.start = 700.0;
          piece.length = LENGTH - 700.0;
        }
      self.pieces[self.n_pieces++] = piece;
    }
  for (guint i = 0; i < self.n_clamps; i++)
    self.clamps[i] = (BsPressClamp){ .x = LENGTH * (i + 0.5) / self.n_clamps,
                                     .force = g_rand_double_range (rand, 1e3, 8e3),
                                     .head = 40.0 };
  return self;
}

static BsPressResult
solve (const Case *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPressing) pressing = NULL;
  BsPressStack stack = bs_press_stack_default ();
  BsPressResult result;

  stack.pieces = self->pieces;
  stack.n_pieces = self->n_pieces;
  pressing = bs_pressing_new (&stack, &error);
  g_assert_no_error (error);
  g_assert_true (bs_pressing_solve (pressing, self->clamps, self->n_clamps, &result, &error));
  g_assert_cmpint (result.status, ==, BS_PRESS_STATUS_SOLVED);
  return result;
}

/* The stack seen from its other end: x runs the other way. */
static Case
seen_from_right (const Case *self)
{
  Case other = *self;

  for (guint i = 0; i < self->n_pieces; i++)
    other.pieces[i].start = LENGTH - self->pieces[i].start - self->pieces[i].length;
  for (guint i = 0; i + 1 < self->n_pieces; i++)
    if (other.pieces[i].course == other.pieces[i + 1].course)
      {
        BsPressPiece piece = other.pieces[i];

        other.pieces[i] = other.pieces[i + 1];
        other.pieces[i + 1] = piece;
      }
  for (guint i = 0; i < self->n_clamps; i++)
    other.clamps[i].x = LENGTH - self->clamps[i].x;
  return other;
}

/* The stack seen from behind: front and back change, and so do the signs of the bows. */
static Case
seen_from_behind (const Case *self)
{
  Case other = *self;
  guint n_courses = self->pieces[self->n_pieces - 1].course + 1;

  for (guint i = 0; i < self->n_pieces; i++)
    {
      BsPressPiece *piece = &other.pieces[i];

      *piece = self->pieces[self->n_pieces - 1 - i];
      piece->course = n_courses - 1 - piece->course;
      piece->bow = -piece->bow;
    }
  for (guint i = 0; i + 1 < self->n_pieces; i++)
    if (other.pieces[i].course == other.pieces[i + 1].course)
      {
        BsPressPiece piece = other.pieces[i];

        other.pieces[i] = other.pieces[i + 1];
        other.pieces[i + 1] = piece;
      }
  return other;
}

#define N_CASES 24

static void
check_balance (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);

  for (guint number = 0; number < N_CASES; number++)
    {
      Case self = draw_case (rand, number);
      g_auto (BsPressResult) result = solve (&self);

      g_assert_cmpfloat (result.imbalance, <, 1e-6);
    }
}

/* No line pulls, and none is both pressed and open. */
static void
check_contact (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (2);
  guint n_open = 0;

  for (guint number = 0; number < N_CASES; number++)
    {
      Case self = draw_case (rand, number);
      g_auto (BsPressResult) result = solve (&self);

      for (guint i = 0; i < result.n_lines; i++)
        for (guint j = 0; j < result.lines[i].n_points; j++)
          {
            const BsPressPoint *point = &result.lines[i].points[j];

            g_assert_cmpfloat (point->pressure_mpa, >=, 0.0);
            g_assert_cmpfloat (point->opening, >=, 0.0);
            g_assert_true (point->pressure_mpa <= 0.0 || point->opening <= 1e-9);
            n_open += point->opening > 0.0;
          }
    }
  g_assert_cmpuint (n_open, >, 0);
}

static void
check_mirror (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);

  for (guint number = 0; number < N_CASES; number++)
    {
      Case self = draw_case (rand, number), other = seen_from_right (&self);
      g_auto (BsPressResult) a = solve (&self);
      g_auto (BsPressResult) b = solve (&other);

      for (guint i = 0; i < a.n_lines; i++)
        for (guint j = 0; j < a.lines[i].n_points; j++)
          g_assert_cmpfloat_with_epsilon (
              a.lines[i].points[j].pressure_mpa,
              b.lines[i].points[a.lines[i].n_points - 1 - j].pressure_mpa, 1e-6);
    }
}

static void
check_reversal (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);

  for (guint number = 0; number < N_CASES; number++)
    {
      Case self = draw_case (rand, number), other = seen_from_behind (&self);
      g_auto (BsPressResult) a = solve (&self);
      g_auto (BsPressResult) b = solve (&other);

      for (guint i = 0; i < a.n_lines; i++)
        for (guint j = 0; j < a.lines[i].n_points; j++)
          g_assert_cmpfloat_with_epsilon (a.lines[i].points[j].pressure_mpa,
                                          b.lines[a.n_lines - 1 - i].points[j].pressure_mpa, 1e-6);
    }
}

/* A stack of straight laminations that stays closed: all clamps tightened alike press harder
 * everywhere, in proportion. */
static void
check_more_force (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  guint n_closed = 0;

  for (guint number = 1; number < 2 * N_CASES; number += 2)
    {
      Case self = draw_case (rand, number), more = self;
      g_auto (BsPressResult) a = { 0 };
      g_auto (BsPressResult) b = { 0 };

      for (guint i = 0; i < more.n_clamps; i++)
        more.clamps[i].force *= 1.25;
      a = solve (&self);
      b = solve (&more);
      for (guint i = 0; i < a.n_lines; i++)
        for (guint j = 0; j < a.lines[i].n_points; j++)
          {
            double before = a.lines[i].points[j].pressure_mpa;

            n_closed += before > 0.0;
            g_assert_cmpfloat_with_epsilon (b.lines[i].points[j].pressure_mpa, 1.25 * before, 1e-6);
          }
    }
  g_assert_cmpuint (n_closed, >, 0);
}

/* A solver that has been used for other clamps gives what a new one gives. */
static void
check_used_solver (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (6);

  for (guint number = 0; number < N_CASES; number++)
    {
      Case self = draw_case (rand, number);
      BsPressStack stack = bs_press_stack_default ();
      g_autoptr (BsPressing) pressing = NULL;
      g_auto (BsPressResult) fresh = { 0 };
      g_auto (BsPressResult) used = { 0 };

      stack.pieces = self.pieces;
      stack.n_pieces = self.n_pieces;
      pressing = bs_pressing_new (&stack, NULL);
      g_assert_true (bs_pressing_solve (pressing, self.clamps, 1, &used, NULL));
      bs_press_result_clear (&used);
      g_assert_true (bs_pressing_solve (pressing, self.clamps, self.n_clamps, &used, NULL));
      fresh = solve (&self);
      for (guint i = 0; i < fresh.n_lines; i++)
        for (guint j = 0; j < fresh.lines[i].n_points; j++)
          g_assert_cmpfloat_with_epsilon (fresh.lines[i].points[j].pressure_mpa,
                                          used.lines[i].points[j].pressure_mpa, 1e-7);
    }
}

/* Where nothing opens the responses to single clamps and to the bows add up. */
static void
check_responses_add_up (void)
{
  BsPressPiece pieces[3];
  BsPressClamp clamps[4];
  BsPressStack stack = bs_press_stack_default ();
  g_autoptr (BsPressing) pressing = NULL;
  g_autofree double *sum = NULL, *part = NULL;
  g_auto (BsPressResult) result = { 0 };
  guint n;

  for (guint i = 0; i < 3; i++)
    pieces[i] = (BsPressPiece){ i, 0.0, 800.0, 40.0, 80.0, 12e3, 900.0, 800.0, 0.1 * i, FALSE };
  for (guint i = 0; i < 4; i++)
    clamps[i] = (BsPressClamp){ 100.0 + 200.0 * i, 8e3 + 500.0 * i, 150.0 };
  stack.pieces = pieces;
  stack.n_pieces = 3;
  pressing = bs_pressing_new (&stack, NULL);
  n = bs_pressing_n_points (pressing);
  sum = g_new0 (double, n);
  part = g_new0 (double, n);
  for (guint clamp = 0; clamp <= 4; clamp++)
    {
      g_assert_true (
          bs_pressing_glued_response (pressing, clamp < 4 ? &clamps[clamp] : NULL, part));
      for (guint i = 0; i < n; i++)
        sum[i] += part[i];
    }
  g_assert_true (bs_pressing_solve (pressing, clamps, 4, &result, NULL));
  g_assert_cmpuint (n, ==, result.lines[0].n_points + result.lines[1].n_points);
  for (guint i = 0; i < n; i++)
    {
      guint of_first = result.lines[0].n_points;
      const BsPressPoint *point
          = i < of_first ? &result.lines[0].points[i] : &result.lines[1].points[i - of_first];

      g_assert_cmpfloat (point->pressure_mpa, >, 0.0);
      g_assert_cmpfloat_with_epsilon (point->pressure_mpa, sum[i], 1e-9);
    }
}

/* At the closing force the widest gap is the one that is allowed. */
static void
check_closing_force (void)
{
  BsPressPiece pieces[2];
  BsPressClamp clamps[4];
  BsPressStack stack = bs_press_stack_default ();
  g_autoptr (BsPressing) pressing = NULL;
  g_auto (BsPressResult) result = { 0 };
  double closing;

  for (guint i = 0; i < 2; i++)
    pieces[i] = (BsPressPiece){ i, 0.0, 1600.0, 30.0, 80.0, 12e3, 900.0, 800.0, 4.0 * i, FALSE };
  for (guint i = 0; i < 4; i++)
    clamps[i] = (BsPressClamp){ 200.0 + 400.0 * i, 500.0, 40.0 };
  stack.pieces = pieces;
  stack.n_pieces = 2;
  pressing = bs_pressing_new (&stack, NULL);
  closing = bs_pressing_closing_force (pressing, clamps, 4, 0.05);
  g_assert_cmpfloat (closing, >, 0.0);
  g_assert_true (isfinite (closing));
  for (guint i = 0; i < 4; i++)
    clamps[i].force = closing / 4.0;
  g_assert_true (bs_pressing_solve (pressing, clamps, 4, &result, NULL));
  g_assert_cmpfloat_with_epsilon (result.lines[0].widest_opening, 0.05, 0.002);
  pieces[1].bow = 0.0;
  g_clear_pointer (&pressing, bs_pressing_free);
  pressing = bs_pressing_new (&stack, NULL);
  g_assert_cmpfloat (bs_pressing_closing_force (pressing, clamps, 4, 0.05), <=, 0.0);
}

/* Heads that touch, half as strong on the right: lengths below and above a limit add up to the
 * line's part that counts, and none lies below 0. */
static void
check_lengths_beyond (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  Case self = draw_case (rand, 1);
  g_auto (BsPressResult) result = solve (&self);

  for (guint i = 0; i < result.n_lines; i++)
    {
      const BsPressLine *line = &result.lines[i];
      double limit = (line->least_mpa + line->greatest_mpa) / 2.0;
      double below = bs_press_line_length_below (line, limit);
      double above = bs_press_line_length_above (line, limit);

      g_assert_cmpfloat (below, >, 0.0);
      g_assert_cmpfloat (above, >, 0.0);
      g_assert_cmpfloat_with_epsilon (below + above, line->to - line->from, 1e-6);
      g_assert_cmpfloat (bs_press_line_length_below (line, 0.0), <=, 0.0);
      g_assert_cmpfloat_with_epsilon (line->from, 10.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (line->to, LENGTH - 10.0, 1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pressing/balance", check_balance);
  g_test_add_func ("/pressing/contact", check_contact);
  g_test_add_func ("/pressing/mirror", check_mirror);
  g_test_add_func ("/pressing/reversal", check_reversal);
  g_test_add_func ("/pressing/more-force", check_more_force);
  g_test_add_func ("/pressing/used-solver", check_used_solver);
  g_test_add_func ("/pressing/responses-add-up", check_responses_add_up);
  g_test_add_func ("/pressing/closing-force", check_closing_force);
  g_test_add_func ("/pressing/lengths-beyond", check_lengths_beyond);
  return g_test_run ();
}
