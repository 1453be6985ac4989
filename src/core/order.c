/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/order.h"

#include "core/order-bound.h"
#include "core/order-change.h"
#include "core/order-exact.h"
#include "core/order-proof.h"
#include "core/order-search.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Found by trying: one search of this many moves ends on average within 0.3 % of the best order
 * known, and 60 laminations take half a second. */
#define MOVES_BY_CUBE 12
#define LEAST_MOVES 20000
#define MOST_MOVES 8000000

/* Of the bound: more bring nothing up to 60, and from 100 on each takes long. */
#define STEPS 400
#define STEPS_SHORTEN_FROM 100.0
/* Of the proof: with 60 the level that cannot be gone through any more takes longest, and brings
 * nothing. */
#define ROWS 1000000
#define ROWS_SHORTEN_FROM 36.0

#define N_SEARCHES 2 /* one for each direction when there are two */

/* What a first search takes of the moves: a few milliseconds for a good order to look at. */
#define FIRST_PART 50

/* Parts of the whole work as progress tells it. */
static const double search_ends = 0.4, bound_ends = 0.6;

/* One planing direction. There are two of them unless turning the slab end for end makes them
 * equal; whatever is sought is sought in both. */
typedef struct
{
  BsOrderTable *table;
  BsOrderLayers *layers;
  BsOrderProof *proof;
  gint32 bound;
} Direction;

typedef struct
{
  const BsOrderProblem *problem;
  const BsOrderEffort *effort;
  BsOrderRules *rules;
  Direction directions[2];
  guint n_directions;
  guint *order; /* the best one, */
  gint32 cost;
  const BsOrderTable *best; /* and the direction that it is for */
  guint *trial;
  BsOrderImproved improved;
  gpointer data;
  const BsProgress *progress;
  double from, to; /* part of the whole that is being worked on */
  gboolean is_stopped;
} Solver;

BsOrderEffort
bs_order_effort_default (const BsOrderProblem *problem)
{
  guint64 n = problem->candidates->len;
  double shorter = MIN (1.0, STEPS_SHORTEN_FROM / (double)MAX (n, 1));
  double fewer = MIN (1.0, ROWS_SHORTEN_FROM / (double)MAX (n, 1));

  return (BsOrderEffort){
    .seed = 1,
    .n_moves = CLAMP (MOVES_BY_CUBE * n * n * n, LEAST_MOVES, MOST_MOVES),
    .n_steps = (guint)(STEPS * shorter * shorter * shorter),
    .most_rows = (guint)(ROWS * fewer * fewer),
  };
}

BsOrderResult *
bs_order_result_ref (BsOrderResult *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_result (gpointer data)
{
  BsOrderResult *self = data;
  g_free (self->places);
  g_free (self->changes);
}

void
bs_order_result_unref (BsOrderResult *self)
{
  g_atomic_rc_box_release_full (self, clear_result);
}

double
bs_order_result_gap (const BsOrderResult *self)
{
  return self->is_proved ? 0.0 : 1.0 - self->bound / (double)self->cost.total;
}

static gboolean
report_part (double done, gpointer data)
{
  Solver *self = data;

  self->is_stopped
      = self->is_stopped
        || !bs_progress_report (self->progress, self->from + done * (self->to - self->from));
  return !self->is_stopped;
}

/* Costs are never negative, so 0 is a bound to begin with. */
static gint32
find_bound (const Solver *self)
{
  gint32 bound = self->cost;

  for (guint i = 0; i < self->n_directions; i++)
    bound = MIN (bound, self->directions[i].bound);
  return bound;
}

static BsOrderResult *
make_result (const Solver *self)
{
  BsOrderResult *result = g_atomic_rc_box_new0 (BsOrderResult);
  guint n = self->rules->n_places;
  g_autofree BsOrientation *orientations = g_new (BsOrientation, n);

  bs_order_table_orient (self->best, self->order, orientations);
  result->n_places = n;
  result->places = g_new (BsOrderPlace, n);
  for (guint k = 0; k < n; k++)
    result->places[k] = (BsOrderPlace){ self->order[k], orientations[k] };
  result->cost = bs_order_cost (self->problem, result->places, n);
  result->bound = find_bound (self);
  result->is_proved = result->bound == result->cost.total;
  return result;
}

static void
tell (const Solver *self)
{
  if (self->improved != NULL)
    {
      g_autoptr (BsOrderResult) result = make_result (self);
      self->improved (result, self->data);
    }
}

/* Takes the order in trial when it is better. */
static void
take_trial (Solver *self, const BsOrderTable *table)
{
  gint32 cost = bs_order_table_orient (table, self->trial, NULL);

  if (self->best != NULL && cost >= self->cost)
    return;
  self->cost = cost;
  self->best = table;
  memcpy (self->order, self->trial, self->rules->n_places * sizeof *self->order);
}

static void
search (Solver *self, const BsOrderTable *table, guint64 seed, guint64 n_moves,
        const BsProgress *part)
{
  bs_order_search_start (table, self->trial);
  bs_order_search_anneal (table, seed, n_moves, 1.0, self->trial, part);
  take_trial (self, table);
}

static void
search_first (Solver *self, const BsProgress *part)
{
  for (guint i = 0; i < self->n_directions; i++)
    search (self, self->directions[i].table, self->effort->seed, self->effort->n_moves / FIRST_PART,
            part);
  tell (self);
}

static void
search_more (Solver *self, const BsProgress *part)
{
  for (guint i = 0; i < N_SEARCHES && !self->is_stopped; i++)
    {
      gint32 before = self->cost;
      self->from = search_ends * i / N_SEARCHES;
      self->to = search_ends * (i + 1) / N_SEARCHES;
      search (self, self->directions[i % self->n_directions].table, self->effort->seed + i,
              self->effort->n_moves, part);
      if (self->cost < before)
        tell (self);
    }
}

static void
solve_exactly (Solver *self, const BsProgress *part)
{
  gboolean is_done = TRUE;

  for (guint i = 0; i < self->n_directions && is_done; i++)
    {
      self->from = (double)i / self->n_directions;
      self->to = (double)(i + 1) / self->n_directions;
      is_done = bs_order_exact (self->directions[i].table, self->trial, part);
      if (is_done)
        take_trial (self, self->directions[i].table);
    }
  for (guint i = 0; i < self->n_directions && is_done; i++)
    self->directions[i].bound = self->cost;
}

static void
find_bounds (Solver *self, const BsProgress *part)
{
  for (guint i = 0; i < self->n_directions && !self->is_stopped; i++)
    {
      Direction *direction = &self->directions[i];
      self->from = search_ends + (bound_ends - search_ends) * i / self->n_directions;
      self->to = search_ends + (bound_ends - search_ends) * (i + 1) / self->n_directions;
      direction->layers = bs_order_layers_new (direction->table);
      direction->bound
          = MAX (0, bs_order_bound (direction->layers, self->cost, self->effort->n_steps, part));
    }
  tell (self);
}

/* Raises the bound of one direction to the next level. FALSE when that leads no further. */
static gboolean
raise_bound (Solver *self, Direction *direction, const BsProgress *part)
{
  gint32 cost = self->cost;
  gboolean goes_on;

  if (direction->proof == NULL)
    direction->proof
        = bs_order_proof_new (direction->layers, cost, direction->bound, self->effort->most_rows);
  goes_on = bs_order_proof_raise (direction->proof, self->trial, &cost, &direction->bound, part);
  if (cost < self->cost)
    take_trial (self, direction->table);
  return goes_on || direction->bound >= self->cost;
}

static Direction *
find_lowest (Solver *self)
{
  Direction *lowest = &self->directions[0];

  for (guint i = 1; i < self->n_directions; i++)
    if (self->directions[i].bound < lowest->bound)
      lowest = &self->directions[i];
  return lowest;
}

/* The bound of both together is the lower one; so that is what is raised. */
static void
prove (Solver *self, const BsProgress *part)
{
  gint32 start = find_bound (self);
  Direction *lowest = find_lowest (self);
  gboolean goes_on = TRUE;

  while (lowest->bound < self->cost && goes_on)
    {
      double done = (lowest->bound - start) / (double)(self->cost - start);
      self->from = self->to = bound_ends + done * (1.0 - bound_ends);
      goes_on = raise_bound (self, lowest, part);
      lowest = find_lowest (self);
      tell (self);
    }
}

static void
improve (Solver *self, const BsProgress *part)
{
  search_first (self, part);
  if (self->rules->n_candidates <= BS_ORDER_EXACT_MOST)
    {
      solve_exactly (self, part);
      return;
    }
  search_more (self, part);
  if (!self->is_stopped)
    find_bounds (self, part);
  if (!self->is_stopped && self->rules->n_candidates <= BS_ORDER_PROOF_MOST)
    prove (self, part);
}

static void
add_direction (Solver *self, int plane)
{
  self->directions[self->n_directions++].table
      = bs_order_table_new (self->problem, self->rules, plane);
}

static void
clear_solver (Solver *self)
{
  for (guint i = 0; i < self->n_directions; i++)
    {
      g_clear_pointer (&self->directions[i].proof, bs_order_proof_free);
      bs_order_table_free (self->directions[i].table);
      g_clear_pointer (&self->directions[i].layers, bs_order_layers_free);
    }
  bs_order_rules_free (self->rules);
  g_free (self->order);
  g_free (self->trial);
}

BsOrderResult *
bs_order_solve (const BsOrderProblem *problem, const BsOrderEffort *effort,
                BsOrderImproved improved, gpointer data, const BsProgress *progress, GError **error)
{
  BsOrderRules *rules = bs_order_rules_new (problem, error);
  Solver self
      = { problem, effort, rules, .improved = improved, .data = data, .progress = progress };
  BsProgress part = { report_part, &self };
  BsOrderResult *result;

  if (rules == NULL)
    return NULL;
  self.order = g_new (guint, rules->n_places);
  self.trial = g_new (guint, rules->n_places);
  add_direction (&self, 1);
  if (!self.directions[0].table->is_mirrored)
    add_direction (&self, -1);
  improve (&self, &part);
  result = make_result (&self);
  result->changes = g_new (BsOrderChange, result->n_places);
  bs_order_find_changes (self.best, result->places, result->changes);
  clear_solver (&self);
  return result;
}

void
bs_order_cost_explain (const BsOrderCost *cost, BsWorking *why)
{
  static const char *const symbols[BS_N_ORDER_TERMS]
      = { "s", "o", "p", "h", "c", "b", "e", "k", "m", "d" };

  bs_working_init (why, N_ ("What the order costs"),
                   N_ ("Points for everything about an order that one would rather not have. Only "
                       "the difference between two orders means something."),
                   "s + o + p + h + c + b + e + k + m + d", BS_QUANTITY_RATIO,
                   N_ ("Exact for what was measured and marked; how much each point counts follows "
                       "from your wishes."));
  why->value = cost->total / (double)BS_ORDER_POINT;
  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    {
      bs_working_add (why, bs_order_term_name ((BsOrderTerm)i), symbols[i],
                      cost->terms[i] / (double)BS_ORDER_POINT, BS_QUANTITY_RATIO,
                      N_ ("common practice, no source"));
      why->terms[i].explanation = bs_order_term_explanation ((BsOrderTerm)i);
    }
}
