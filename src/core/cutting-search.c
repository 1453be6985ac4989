/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-search.h"

#include "core/cutting-bound.h"
#include "core/cutting-exact.h"
#include "core/cutting-fill.h"
#include "core/cutting-sums.h"
#include "core/random.h"

#include <math.h>
#include <string.h>

/* Rounds of column generation; the usual order takes 10 to 150. */
#define BOUND_ROUNDS 4000
#define DIVE_ROUNDS 60

/* Plans before the bound, which give the linear programme its first patterns. */
#define FIRST_PLANS 4

#define FIRST_DIVES 6

/* A proof for a whole order, and for a few boards of it. */
static const BsCutExactLimits whole_limits = { 60000, 20000000, 2000000 };
static const BsCutExactLimits few_limits = { 3000, 100000, 20000 };

typedef struct
{
  const BsCutModel *model;
  const BsCutEffort *effort;
  BsCutOutcome *outcome;
  void (*better) (const BsCutOutcome *outcome, gpointer data);
  gpointer data;
  BsCutOracle *oracle;
  BsCutMaster *master;
  BsCutFiller *filler;
  BsRandom random;
  int *all_demand, *all_supply;
  BsCutDuals duals; /* of the whole order */
  double done;
} Search;

static gboolean
keep_going (Search *self)
{
  return bs_progress_report (&self->effort->progress, self->done);
}

/* Takes the solution. */
static gboolean
offer (Search *self, BsCutSolution *solution)
{
  BsCutOutcome *outcome = self->outcome;

  bs_cut_solution_trim (solution, self->model, self->all_demand);
  if (outcome->best != NULL && bs_cut_solution_compare (solution, outcome->best) >= 0)
    {
      bs_cut_solution_free (solution);
      return FALSE;
    }
  g_clear_pointer (&outcome->best, bs_cut_solution_free);
  outcome->best = solution;
  if (self->better != NULL)
    self->better (outcome, self->data);
  return TRUE;
}

static gboolean
is_price_proven (const Search *self)
{
  return self->outcome->best->n_missing == 0 && self->outcome->best->price <= self->outcome->bound;
}

static double
pick_inertia (Search *self)
{
  return 0.5 + 0.5 * bs_random_uniform (&self->random);
}

static void
fill_once (Search *self)
{
  g_autofree int *demand = g_memdup2 (self->all_demand, self->model->n_types * sizeof (int));
  g_autofree int *supply = g_memdup2 (self->all_supply, self->model->n_stock * sizeof (int));
  BsCutSolution *solution = bs_cut_solution_new ();

  bs_cut_filler_run (self->filler, demand, supply, pick_inertia (self), solution);
  for (guint i = 0; i < solution->patterns->len; i++)
    bs_cut_master_add (self->master, solution->patterns->pdata[i]);
  offer (self, solution);
}

/* No price can be paid but sums of board prices. */
static gint64
next_sum_of_prices (const BsCutModel *model, gint64 bound, gint64 most)
{
  BsCutSums sums;
  gint64 next;

  bs_cut_sums_init (&sums, model, most);
  next = bs_cut_sums_next (&sums, bound);
  bs_cut_sums_clear (&sums);
  return MIN (next, most);
}

static void
find_bound (Search *self)
{
  BsCutOutcome *outcome = self->outcome;
  const BsCutDuals *duals;

  bs_cut_master_set (self->master, self->all_demand, self->all_supply);
  bs_cut_master_solve (self->master, BOUND_ROUNDS, &self->effort->progress);
  duals = bs_cut_master_get_duals (self->master);
  self->duals = *duals;
  self->duals.values = g_memdup2 (duals->values, self->model->n_types * sizeof (gint64));
  self->duals.rents = g_memdup2 (duals->rents, self->model->n_stock * sizeof (gint64));
  outcome->bound = bs_cut_master_get_bound (self->master);
  if (outcome->best->n_missing == 0)
    outcome->bound = next_sum_of_prices (self->model, outcome->bound, outcome->best->price);
  if (self->better != NULL)
    self->better (outcome, self->data);
}

static gboolean
can_take (const Search *self, const BsCutPattern *pattern, const int *demand, const int *supply)
{
  if (supply[self->model->sheets[pattern->sheet].stock] == 0)
    return FALSE;
  for (guint t = 0; t < self->model->n_types; t++)
    if (pattern->count[t] > demand[t])
      return FALSE;
  return TRUE;
}

static void
take (Search *self, BsCutPattern *pattern, int *demand, int *supply, BsCutSolution *solution)
{
  guint stock = self->model->sheets[pattern->sheet].stock;

  for (guint t = 0; t < self->model->n_types; t++)
    demand[t] -= pattern->count[t];
  if (supply[stock] != BS_CUT_UNLIMITED)
    supply[stock]--;
  bs_cut_solution_add (solution, self->model, pattern);
}

/* Takes every pattern that the programme uses at least once, or if there is none the one that it
 * uses most, now and then the second. */
static gboolean
take_used (Search *self, int *demand, int *supply, BsCutSolution *solution)
{
  guint n = bs_cut_master_get_n_patterns (self->master), first = G_MAXUINT, second = G_MAXUINT;
  double most = 1e-6, next = 1e-6;
  gboolean any = FALSE;

  for (guint i = 0; i < n; i++)
    {
      double use = bs_cut_master_get_use (self->master, i);
      BsCutPattern *pattern = bs_cut_master_get_pattern (self->master, i);

      for (; use > 1.0 - 1e-6 && can_take (self, pattern, demand, supply); use -= 1.0)
        {
          take (self, pattern, demand, supply, solution);
          any = TRUE;
        }
      if (use <= next || !can_take (self, pattern, demand, supply))
        continue;
      next = use;
      second = i;
      if (next > most)
        {
          next = most;
          most = use;
          second = first;
          first = i;
        }
    }
  if (any || first == G_MAXUINT)
    return any;
  if (second != G_MAXUINT && bs_random_below (&self->random, 4) == 0)
    first = second;
  take (self, bs_cut_master_get_pattern (self->master, first), demand, supply, solution);
  return TRUE;
}

/* Finishes a plan: fills what is left, and looks for the best way to do so when it is little. */
static void
finish (Search *self, int *demand, int *supply, BsCutSolution *solution)
{
  g_autofree int *rest = g_memdup2 (demand, self->model->n_types * sizeof (int));
  g_autofree int *left = g_memdup2 (supply, self->model->n_stock * sizeof (int));
  BsCutSolution *tail = bs_cut_solution_new ();

  bs_cut_filler_run (self->filler, rest, left, pick_inertia (self), tail);
  if (tail->n_missing == 0 && tail->patterns->len > 1 && tail->patterns->len <= 8)
    bs_cut_exact_solve (self->model, self->oracle, demand, supply, &self->duals, BS_CUT_BEST,
                        few_limits, &self->effort->progress, &tail);
  for (guint i = 0; i < tail->patterns->len; i++)
    bs_cut_solution_add (solution, self->model, tail->patterns->pdata[i]);
  bs_cut_solution_free (tail);
}

/* Follows the linear programme: takes what it is sure of, solves it for the rest, and so on. */
static void
dive (Search *self)
{
  g_autofree int *demand = g_memdup2 (self->all_demand, self->model->n_types * sizeof (int));
  g_autofree int *supply = g_memdup2 (self->all_supply, self->model->n_stock * sizeof (int));
  BsCutSolution *solution = bs_cut_solution_new ();

  for (;;)
    {
      bs_cut_master_set (self->master, demand, supply);
      bs_cut_master_solve (self->master, DIVE_ROUNDS, &self->effort->progress);
      if (self->outcome->best->n_missing == 0
          && solution->price + bs_cut_master_get_bound (self->master) > self->outcome->best->price)
        break;
      if (!take_used (self, demand, supply, solution) || !keep_going (self))
        break;
    }
  finish (self, demand, supply, solution);
  offer (self, solution);
}

/* How much a board costs more than its parts are worth. */
static gint64
loss_of (const Search *self, const BsCutPattern *pattern)
{
  guint stock = self->model->sheets[pattern->sheet].stock;
  gint64 loss = self->model->stock[stock].price * self->duals.scale + self->duals.rents[stock];

  for (guint t = 0; t < self->model->n_types; t++)
    loss -= pattern->count[t] * self->duals.values[t];
  return loss;
}

/* Takes a few boards out of the best plan, bad ones rather than good ones, and looks for the best
 * way to cut their parts. */
static void
replace_few (Search *self)
{
  const BsCutModel *model = self->model;
  const BsCutSolution *best = self->outcome->best;
  g_autofree int *demand = g_new0 (int, model->n_types + 1);
  g_autofree int *supply = g_memdup2 (self->all_supply, model->n_stock * sizeof (int));
  g_autoptr (BsCutSolution) rest = bs_cut_solution_copy (best);
  BsCutSolution *few = bs_cut_solution_new ();
  guint n = 2 + bs_random_below (&self->random, 3);

  for (guint k = 0; k < n && rest->patterns->len > 0; k++)
    {
      guint chosen = bs_random_below (&self->random, rest->patterns->len);
      guint other = bs_random_below (&self->random, rest->patterns->len);

      if (loss_of (self, rest->patterns->pdata[other])
          > loss_of (self, rest->patterns->pdata[chosen]))
        chosen = other;
      bs_cut_solution_add (few, model, rest->patterns->pdata[chosen]);
      bs_cut_solution_remove (rest, model, chosen);
    }
  for (guint i = 0; i < few->patterns->len; i++)
    for (guint t = 0; t < model->n_types; t++)
      demand[t] += ((const BsCutPattern *)few->patterns->pdata[i])->count[t];
  for (guint i = 0; i < rest->patterns->len; i++)
    {
      guint stock = model->sheets[((const BsCutPattern *)rest->patterns->pdata[i])->sheet].stock;
      if (supply[stock] != BS_CUT_UNLIMITED)
        supply[stock]--;
    }
  bs_cut_exact_solve (model, self->oracle, demand, supply, &self->duals, BS_CUT_BEST, few_limits,
                      &self->effort->progress, &few);
  for (guint i = 0; i < few->patterns->len; i++)
    bs_cut_solution_add (rest, model, few->patterns->pdata[i]);
  bs_cut_solution_free (few);
  offer (self, g_steal_pointer (&rest));
}

static gboolean
prove_goal (Search *self, BsCutGoal goal)
{
  BsCutSolution *solution = bs_cut_solution_copy (self->outcome->best);
  gboolean is_proven
      = bs_cut_exact_solve (self->model, self->oracle, self->all_demand, self->all_supply,
                            &self->duals, goal, whole_limits, &self->effort->progress, &solution);

  if (is_proven)
    self->outcome->bound = solution->price;
  if (is_proven && goal != BS_CUT_CHEAPER)
    self->outcome->is_best = TRUE;
  if (!offer (self, solution) && is_proven && self->better != NULL)
    self->better (self->outcome, self->data);
  return is_proven;
}

/* First that there is no lower price, then that there is no better plan of that price. */
static void
prove (Search *self)
{
  if (self->outcome->best->patterns->len <= 3)
    prove_goal (self, BS_CUT_BEST);
  else if (is_price_proven (self) || prove_goal (self, BS_CUT_CHEAPER))
    prove_goal (self, BS_CUT_BEST_OF_PRICE);
}

static void
run (Search *self)
{
  guint rounds = self->effort->rounds;

  for (guint i = 0; i < FIRST_PLANS; i++)
    fill_once (self);
  find_bound (self);
  bs_cut_filler_set_values (self->filler, self->duals.values, self->duals.scale);
  for (guint i = 0; i < FIRST_PLANS && keep_going (self); i++)
    fill_once (self);
  for (guint i = 0; i < FIRST_DIVES && !is_price_proven (self) && keep_going (self); i++)
    dive (self);
  if (keep_going (self))
    prove (self);
  for (guint i = 0; i < rounds && !self->outcome->is_best; i++)
    {
      self->done = (double)i / rounds;
      if (!keep_going (self))
        return;
      if (i % 16 == 15 && !is_price_proven (self))
        dive (self);
      else if (i % 4 == 3)
        fill_once (self);
      else
        replace_few (self);
    }
}

void
bs_cut_search (const BsCutModel *model, const BsCutEffort *effort, BsCutOutcome *outcome,
               void (*better) (const BsCutOutcome *outcome, gpointer data), gpointer data)
{
  g_autofree int *demand = g_new0 (int, model->n_types + 1);
  g_autofree int *supply = g_new0 (int, model->n_stock + 1);
  Search self = {
    .model = model,
    .effort = effort,
    .outcome = outcome,
    .better = better,
    .data = data,
    .random = bs_random_init (effort->seed),
    .all_demand = demand,
    .all_supply = supply,
  };

  *outcome = (BsCutOutcome){ 0 };
  if (model->n_types == 0)
    {
      outcome->best = bs_cut_solution_new ();
      outcome->is_best = TRUE;
      return;
    }
  for (guint t = 0; t < model->n_types; t++)
    demand[t] = model->types[t].demand;
  for (guint i = 0; i < model->n_stock; i++)
    supply[i] = model->stock[i].supply;
  self.oracle = bs_cut_oracle_new (model);
  self.master = bs_cut_master_new (model, self.oracle);
  self.filler = bs_cut_filler_new (model, self.oracle);
  run (&self);
  bs_cut_filler_free (self.filler);
  bs_cut_master_free (self.master);
  bs_cut_master_leave_thread ();
  bs_cut_oracle_free (self.oracle);
  g_free (self.duals.values);
  g_free (self.duals.rents);
}
