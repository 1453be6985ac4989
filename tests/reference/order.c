/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order.h"

#include "core/order-bound.h"
#include "core/order-proof.h"
#include "core/order-search.h"

#include <stdio.h>

/* Answers order.py. Standard input holds problems as numbers in the order of read_problem (); for
 * each comes back a line "cost bound proof places...": the cost found, a bound after a few steps,
 * the cost that the proof ends at when it begins with a poor order, and "candidate orientation" for
 * each place. */

#define BOUND_STEPS 60
#define MOST_ROWS 1000000

static double
read_number (void)
{
  double number = 0.0;

  g_assert_cmpint (scanf ("%lf", &number), ==, 1);
  return number;
}

static guint
read_count (void)
{
  return (guint)read_number ();
}

static void
read_candidate (BsOrderProblem *problem)
{
  BsOrderCandidate candidate = { .defects = g_array_new (FALSE, TRUE, sizeof (BsOrderDefect)) };
  guint n_defects;

  candidate.length = read_number ();
  candidate.bow = read_number ();
  candidate.crook = read_number ();
  candidate.lightness = read_number ();
  candidate.moisture_pct = read_number ();
  candidate.heart_side = (int)read_number ();
  candidate.run_out_top = (int)read_number ();
  candidate.run_out_underside = (int)read_number ();
  n_defects = read_count ();
  for (guint i = 0; i < n_defects; i++)
    {
      BsOrderDefect defect = { .face = (BsFace)read_count () };
      defect.x_from = read_number ();
      defect.x_to = read_number ();
      defect.across = read_number ();
      defect.severity = read_number ();
      g_array_append_val (candidate.defects, defect);
    }
  g_array_append_val (problem->candidates, candidate);
}

static void
read_pin (BsOrderProblem *problem)
{
  BsOrderPin pin = { .kind = (BsOrderPinKind)read_count () };

  pin.candidate = read_count ();
  pin.place = read_count ();
  pin.other = read_count ();
  pin.face = (BsFace)read_count ();
  g_array_append_val (problem->pins, pin);
}

/* NULL at the end of the input. */
static BsOrderProblem *
read_problem (void)
{
  BsOrderProblem *problem = bs_order_problem_new ();
  guint n_candidates, n_pins;

  if (scanf ("%u", &n_candidates) != 1)
    {
      bs_order_problem_free (problem);
      return NULL;
    }
  problem->n_places = read_count ();
  problem->shows_front = read_count () != 0;
  problem->shows_back = read_count () != 0;
  for (guint i = 0; i < n_candidates; i++)
    read_candidate (problem);
  n_pins = read_count ();
  for (guint i = 0; i < n_pins; i++)
    read_pin (problem);
  return problem;
}

/* The least bound and proof of the two planing directions. */
static void
answer_bounds (const BsOrderProblem *problem)
{
  g_autoptr (BsOrderRules) rules = bs_order_rules_new (problem, NULL);
  g_autofree guint *order = g_new (guint, problem->n_places);
  gint32 least_bound = G_MAXINT32, least_proof = G_MAXINT32;

  for (int plane = -1; plane <= 1; plane += 2)
    {
      g_autoptr (BsOrderTable) table = bs_order_table_new (problem, rules, plane);
      g_autoptr (BsOrderLayers) layers = bs_order_layers_new (table);
      gint32 cost = bs_order_search_start (table, order);
      gint32 bound = bs_order_bound (layers, cost, BOUND_STEPS, NULL);
      least_bound = MIN (least_bound, bound);
      g_autoptr (BsOrderProof) proof = bs_order_proof_new (layers, cost, bound, MOST_ROWS);
      while (bs_order_proof_raise (proof, order, &cost, &bound, NULL))
        continue;
      g_assert_cmpint (bound, ==, cost);
      least_proof = MIN (least_proof, cost);
    }
  printf (" %d %d", least_bound, least_proof);
}

static void
answer (const BsOrderProblem *problem)
{
  BsOrderEffort effort = bs_order_effort_default (problem);
  g_autoptr (BsOrderResult) result = bs_order_solve (problem, &effort, NULL, NULL, NULL, NULL);

  g_assert_nonnull (result);
  g_assert_true (result->is_proved);
  printf ("%d", result->cost.total);
  answer_bounds (problem);
  for (guint k = 0; k < result->n_places; k++)
    printf (" %u %d", result->places[k].candidate, (int)result->places[k].orientation);
  printf ("\n");
}

int
main (void)
{
  BsOrderProblem *problem;

  while ((problem = read_problem ()) != NULL)
    {
      answer (problem);
      bs_order_problem_free (problem);
    }
  return 0;
}
