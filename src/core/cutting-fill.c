/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-fill.h"

#include <string.h>

/* Patterns that are worked out before one is taken: the value that the oracle promises may be more
 * than what the open demand allows. */
#define CANDIDATES 3

/* How much of its price a board costs by its area alone, so that of equal prices the smaller wins.
 */
#define AREA_SHARE 1e-3

#define SCALE ((gint64)1 << 20)

BsCutFiller *
bs_cut_filler_new (const BsCutModel *model, BsCutOracle *oracle)
{
  BsCutFiller *self = g_new0 (BsCutFiller, 1);
  double price_of_area = 0.0, cheapest = G_MAXDOUBLE;

  self->model = model;
  self->oracle = oracle;
  self->costs = g_new (double, model->n_sheets + 1);
  self->fair = g_new (gint64, model->n_types + 1);
  self->values = g_new (gint64, model->n_types + 1);
  self->scale = SCALE;
  for (guint i = 0; i < model->n_stock; i++)
    price_of_area
        = MAX (price_of_area, (double)model->stock[i].price / (double)model->stock[i].area);
  if (price_of_area <= 0.0)
    price_of_area = 1e-4; /* all is paid: an area costs what it takes */
  for (guint k = 0; k < model->n_sheets; k++)
    {
      const BsCutBoards *boards = &model->stock[model->sheets[k].stock];
      self->costs[k] = (double)boards->price + AREA_SHARE * price_of_area * (double)boards->area;
      cheapest = MIN (cheapest, self->costs[k] / (double)boards->area);
    }
  for (guint t = 0; t < model->n_types; t++)
    {
      double area = model->types[t].gross[0] * model->types[t].gross[1] * 100.0;
      self->fair[t] = (gint64)(MAX (area, 1.0) * cheapest * (double)SCALE) + 1;
      self->values[t] = self->fair[t];
    }
  return self;
}

void
bs_cut_filler_free (BsCutFiller *self)
{
  if (self == NULL)
    return;
  g_free (self->costs);
  g_free (self->fair);
  g_free (self->values);
  g_free (self);
}

void
bs_cut_filler_set_values (BsCutFiller *self, const gint64 *values, gint64 scale)
{
  /* A trace of the area keeps parts in that cost nothing beside others. */
  for (guint t = 0; t < self->model->n_types; t++)
    {
      self->fair[t]
          = (gint64)((double)values[t] / (double)scale * (double)self->scale) + self->fair[t] / 50;
      self->values[t] = self->fair[t];
    }
}

static gint64
value_of (const BsCutFiller *self, const BsCutPattern *pattern, const gint64 *values)
{
  gint64 value = 0;

  for (guint t = 0; t < self->model->n_types; t++)
    value += pattern->count[t] * values[t];
  return value;
}

static gboolean
covers (const BsCutFiller *self, const BsCutPattern *pattern, const int *demand)
{
  for (guint t = 0; t < self->model->n_types; t++)
    if (pattern->count[t] < demand[t])
      return FALSE;
  return TRUE;
}

/* The sheets that promise most for their cost, best first, or with `is_last` the cheapest that may
 * hold all; how many. */
static guint
find_candidates (BsCutFiller *self, const int *demand, const int *supply, gboolean is_last,
                 guint *found)
{
  const BsCutModel *model = self->model;
  double ranks[CANDIDATES];
  gint64 all = 0;
  guint n = 0;

  for (guint t = 0; t < model->n_types; t++)
    all += demand[t] * self->values[t];
  bs_cut_oracle_set (self->oracle, self->values, demand);
  for (guint k = 0; k < model->n_sheets; k++)
    {
      gint64 value;
      double rank;
      guint i;

      if (supply[model->sheets[k].stock] == 0)
        continue;
      value = bs_cut_oracle_most (self->oracle, k);
      rank = is_last ? -self->costs[k] : (double)value / self->costs[k];
      if (value <= 0 || (is_last && value < all) || (n == CANDIDATES && rank <= ranks[n - 1]))
        continue;
      value = bs_cut_oracle_value (self->oracle, k);
      if (value <= 0 || (is_last && value < all))
        continue;
      rank = is_last ? rank : (double)value / self->costs[k];
      if (n == CANDIDATES && rank <= ranks[n - 1])
        continue;
      for (i = MIN (n, CANDIDATES - 1); i > 0 && ranks[i - 1] < rank; i--)
        {
          ranks[i] = ranks[i - 1];
          found[i] = found[i - 1];
        }
      ranks[i] = rank;
      found[i] = k;
      n = MIN (n + 1, CANDIDATES);
    }
  return n;
}

/* One board that takes all that is left, if there is one. */
static BsCutPattern *
find_last (BsCutFiller *self, const int *demand, const int *supply)
{
  guint found[CANDIDATES];
  guint n = find_candidates (self, demand, supply, TRUE, found);

  for (guint i = 0; i < n; i++)
    {
      BsCutPattern *pattern = bs_cut_oracle_fill (self->oracle, found[i], self->values, demand);
      if (covers (self, pattern, demand))
        return pattern;
      bs_cut_pattern_unref (pattern);
    }
  return NULL;
}

static BsCutPattern *
find_best (BsCutFiller *self, const int *demand, const int *supply)
{
  guint found[CANDIDATES];
  guint n = find_candidates (self, demand, supply, FALSE, found);
  BsCutPattern *best = NULL;
  double best_ratio = 0.0;

  for (guint i = 0; i < n; i++)
    {
      BsCutPattern *pattern = bs_cut_oracle_fill (self->oracle, found[i], self->values, demand);
      double ratio = (double)value_of (self, pattern, self->values) / self->costs[found[i]];

      if (ratio > best_ratio)
        {
          g_clear_pointer (&best, bs_cut_pattern_unref);
          best = pattern;
          best_ratio = ratio;
        }
      else
        bs_cut_pattern_unref (pattern);
    }
  return best;
}

/* About x^0.02, by the number of binary digits only: the same on every machine. */
static double
favour_large (gint64 x)
{
  return 1.0 + 0.0139 * (double)g_bit_storage ((gulong)MAX (x, 1));
}

/* Parts of a board that is used badly are worth more next time. */
static void
correct_values (BsCutFiller *self, const BsCutPattern *pattern, double inertia)
{
  double use = (double)value_of (self, pattern, self->fair)
               / (self->costs[pattern->sheet] * (double)self->scale);

  use = CLAMP (use, 0.01, 2.0);
  for (guint t = 0; t < self->model->n_types; t++)
    if (pattern->count[t] > 0)
      {
        double n = pattern->count[t];
        double fair = (double)self->fair[t] * favour_large (self->fair[t]);
        self->values[t]
            = 1 + (gint64)((inertia * (double)self->values[t] + n * fair / use) / (inertia + n));
      }
}

void
bs_cut_filler_run (BsCutFiller *self, int *demand, int *supply, double inertia,
                   BsCutSolution *solution)
{
  const BsCutModel *model = self->model;

  bs_cut_oracle_set_quick (self->oracle, TRUE);
  for (;;)
    {
      BsCutPattern *pattern;
      int n_open = 0;

      for (guint t = 0; t < model->n_types; t++)
        n_open += demand[t];
      if (n_open == 0)
        break;
      pattern = find_last (self, demand, supply);
      if (pattern == NULL)
        pattern = find_best (self, demand, supply);
      if (pattern == NULL)
        break;
      for (guint t = 0; t < model->n_types; t++)
        demand[t] -= pattern->count[t];
      if (supply[model->sheets[pattern->sheet].stock] != BS_CUT_UNLIMITED)
        supply[model->sheets[pattern->sheet].stock]--;
      correct_values (self, pattern, inertia);
      bs_cut_solution_add (solution, model, pattern);
      bs_cut_pattern_unref (pattern);
    }
  solution->n_missing = 0;
  for (guint t = 0; t < model->n_types; t++)
    solution->n_missing += demand[t];
}
