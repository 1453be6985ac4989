/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-exact.h"

#include "core/cutting-options.h"

#include <string.h>

/* What a plan costs, in the order of importance. */
typedef struct
{
  gint64 price, net_area, score;
} Cost;

typedef struct
{
  const BsCutModel *model;
  const BsCutOptions *options;
  const BsCutDuals *duals;
  guint n;
  GArray **of_type;      /* for each type the options that hold it (guint), least loss first */
  guint *priority;       /* types in the order in which they are covered */
  gint64 *least_net;     /* what a part of each type takes of the net area at least */
  guint8 *state;         /* length, open demand of each type, boards left of each limited stock */
  guint *place_of_stock; /* in state; 0: not limited */
  guint n_state;
  gint64 floor;     /* total of the duals for the whole demand and supply */
  GHashTable *seen; /* state -> Cost of the best way there */
  Cost best;
  GArray *path, *best_path; /* guint, options */
  gboolean has_best;
  guint nodes_left;
  const BsProgress *progress;
  gboolean is_stopped;
} Search;

static int
compare_costs (const Cost *a, const Cost *b)
{
  if (a->price != b->price)
    return a->price < b->price ? -1 : 1;
  if (a->net_area != b->net_area)
    return a->net_area < b->net_area ? -1 : 1;
  return a->score > b->score ? -1 : a->score < b->score;
}

static guint
hash_state (gconstpointer key)
{
  const guint8 *bytes = key;
  guint hash = 2166136261U;

  for (guint i = 0; i < bytes[0]; i++)
    hash = (hash ^ bytes[i]) * 16777619U;
  return hash;
}

static gboolean
equal_states (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, *(const guint8 *)a) == 0;
}

/* FALSE when this state was reached before at no greater cost. */
static gboolean
is_new (Search *self, const Cost *cost)
{
  Cost *known = g_hash_table_lookup (self->seen, self->state);

  if (known == NULL)
    {
      g_hash_table_insert (self->seen, g_memdup2 (self->state, self->n_state),
                           g_memdup2 (cost, sizeof *cost));
      return TRUE;
    }
  if (compare_costs (known, cost) <= 0)
    return FALSE;
  *known = *cost;
  return TRUE;
}

/* Whether some way on from here can still be better than the best known. loss: by how much the
 * price of any such way lies above the floor at least. */
static gboolean
can_improve (const Search *self, const Cost *cost, gint64 loss)
{
  gint64 scale = self->duals->scale;
  gint64 price = self->floor + loss <= 0 ? 0 : (self->floor + loss + scale - 1) / scale;
  gint64 net = cost->net_area;

  if (price != self->best.price)
    return price < self->best.price;
  for (guint t = 0; t < self->n; t++)
    net += self->state[1 + t] * self->least_net[t];
  return net <= self->best.net_area;
}

static void search (Search *self, const Cost *cost, gint64 loss);

/* Takes an option and goes on. */
static void
take (Search *self, guint index, const Cost *cost, gint64 loss)
{
  const BsCutOption *option = &g_array_index (self->options->options, BsCutOption, index);
  const guint8 *counts = bs_cut_options_counts (self->options, option);
  guint stock = self->model->sheets[option->sheet].stock;
  guint8 *left = self->place_of_stock[stock] > 0 ? &self->state[self->place_of_stock[stock]] : NULL;
  guint8 before[256];
  Cost after = { cost->price + self->model->stock[stock].price, cost->net_area + option->net_area,
                 cost->score + option->score };

  if (left != NULL && *left == 0)
    return;
  loss += option->loss;
  memcpy (before, self->state, self->n + 1);
  for (guint t = 0; t < self->n; t++)
    {
      guint8 used = MIN (counts[t], self->state[1 + t]);
      self->state[1 + t] -= used;
      loss += (counts[t] - used) * self->duals->values[t];
    }
  if (left != NULL)
    (*left)--;
  if (can_improve (self, &after, loss))
    {
      g_array_append_val (self->path, index);
      search (self, &after, loss);
      g_array_set_size (self->path, self->path->len - 1);
    }
  if (left != NULL)
    (*left)++;
  memcpy (self->state, before, self->n + 1);
}

static void
search (Search *self, const Cost *cost, gint64 loss)
{
  guint type = G_MAXUINT;

  if (self->nodes_left == 0 || self->is_stopped)
    {
      self->is_stopped = TRUE;
      return;
    }
  if (self->nodes_left-- % 8192 == 0 && !bs_progress_report (self->progress, 0.0))
    self->is_stopped = TRUE;
  for (guint i = 0; i < self->n && type == G_MAXUINT; i++)
    if (self->state[1 + self->priority[i]] > 0)
      type = self->priority[i];
  if (type == G_MAXUINT)
    {
      if (compare_costs (cost, &self->best) < 0)
        {
          self->best = *cost;
          self->has_best = TRUE;
          g_array_set_size (self->best_path, 0);
          g_array_append_vals (self->best_path, self->path->data, self->path->len);
        }
      return;
    }
  if (!is_new (self, cost))
    return;
  for (guint i = 0; i < self->of_type[type]->len && !self->is_stopped; i++)
    {
      guint index = g_array_index (self->of_type[type], guint, i);
      Cost at_least = *cost;

      /* The rest of the list loses more. */
      at_least.net_area = G_MININT64 / 2;
      if (!can_improve (self, &at_least,
                        loss + g_array_index (self->options->options, BsCutOption, index).loss))
        break;
      take (self, index, cost, loss);
    }
}

static int
compare_losses (gconstpointer a, gconstpointer b, gpointer data)
{
  const GArray *options = data;
  guint left = *(const guint *)a, right = *(const guint *)b;
  const BsCutOption *x = &g_array_index (options, BsCutOption, left);
  const BsCutOption *y = &g_array_index (options, BsCutOption, right);

  if (x->loss != y->loss)
    return x->loss < y->loss ? -1 : 1;
  return left < right ? -1 : left > right;
}

/* Files the options by type; the type with the fewest is covered first. */
static void
file_options (Search *self, const int *demand)
{
  GArray *options = self->options->options;

  for (guint t = 0; t < self->n; t++)
    {
      guint i = t;

      self->of_type[t] = g_array_new (FALSE, FALSE, sizeof (guint));
      for (guint k = 0; k < options->len; k++)
        {
          const BsCutOption *option = &g_array_index (options, BsCutOption, k);
          if (bs_cut_options_counts (self->options, option)[t] > 0)
            g_array_append_val (self->of_type[t], k);
        }
      g_array_sort_with_data (self->of_type[t], compare_losses, options);
      for (; i > 0 && self->of_type[self->priority[i - 1]]->len > self->of_type[t]->len; i--)
        self->priority[i] = self->priority[i - 1];
      self->priority[i] = t;
    }
}

/* Boards whose supply may run out get a place in the state. FALSE when the state would be too long.
 */
static gboolean
fill_state (Search *self, const int *demand, const int *supply)
{
  int n_parts = 0;

  for (guint t = 0; t < self->n; t++)
    {
      if (demand[t] > G_MAXUINT8)
        return FALSE;
      n_parts += demand[t];
      self->state[1 + t] = (guint8)demand[t];
    }
  self->n_state = 1 + self->n;
  for (guint i = 0; i < self->model->n_stock; i++)
    if (supply[i] != BS_CUT_UNLIMITED && supply[i] < n_parts && supply[i] > 0)
      {
        if (self->n_state >= G_MAXUINT8 || supply[i] > G_MAXUINT8)
          return FALSE;
        self->place_of_stock[i] = self->n_state;
        self->state[self->n_state++] = (guint8)supply[i];
      }
  self->state[0] = (guint8)self->n_state;
  return TRUE;
}

static gint64
total_of (const BsCutModel *model, const BsCutDuals *duals, const int *demand, const int *supply)
{
  gint64 total = 0;

  for (guint t = 0; t < model->n_types; t++)
    total += duals->values[t] * demand[t];
  for (guint i = 0; i < model->n_stock; i++)
    if (supply[i] != BS_CUT_UNLIMITED)
      total -= duals->rents[i] * supply[i];
  return total;
}

static void
run (Search *self, const int *demand, BsCutSolution **best)
{
  BsCutSolution *solution;

  self->seen = g_hash_table_new_full (hash_state, equal_states, g_free, g_free);
  self->path = g_array_new (FALSE, FALSE, sizeof (guint));
  self->best_path = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint t = 0; t < self->n; t++)
    self->least_net[t]
        = (gint64)(self->model->types[t].gross[0] * self->model->types[t].gross[1] * 100.0);
  file_options (self, demand);
  search (self, &(Cost){ 0, 0, 0 }, 0);
  if (self->has_best)
    {
      solution = bs_cut_solution_new ();
      for (guint i = 0; i < self->best_path->len; i++)
        {
          guint index = g_array_index (self->best_path, guint, i);
          BsCutPattern *pattern = bs_cut_options_pattern (
              self->options, &g_array_index (self->options->options, BsCutOption, index));
          bs_cut_solution_add (solution, self->model, pattern);
          bs_cut_pattern_unref (pattern);
        }
      bs_cut_solution_trim (solution, self->model, demand);
      bs_cut_solution_free (*best);
      *best = solution;
    }
  for (guint t = 0; t < self->n; t++)
    g_array_unref (self->of_type[t]);
  g_array_unref (self->path);
  g_array_unref (self->best_path);
  g_hash_table_unref (self->seen);
}

gboolean
bs_cut_exact_solve (const BsCutModel *model, BsCutOracle *oracle, const int *demand,
                    const int *supply, const BsCutDuals *duals, BsCutExactLimits limits,
                    const BsProgress *progress, BsCutSolution **best)
{
  guint n = model->n_types;
  g_autofree GArray **of_type = g_new0 (GArray *, n + 1);
  g_autofree guint *priority = g_new0 (guint, n + 1);
  g_autofree gint64 *least_net = g_new0 (gint64, n + 1);
  g_autofree guint8 *state = g_new0 (guint8, n + 256);
  g_autofree guint *place_of_stock = g_new0 (guint, model->n_stock + 1);
  g_autoptr (BsCutOptions) options = NULL;
  Search self = { .model = model,
                  .duals = duals,
                  .n = n,
                  .of_type = of_type,
                  .priority = priority,
                  .least_net = least_net,
                  .state = state,
                  .place_of_stock = place_of_stock,
                  .nodes_left = limits.nodes,
                  .progress = progress };

  self.floor = total_of (model, duals, demand, supply);
  self.best = (Cost){ (*best)->price, (*best)->net_area, (*best)->score };
  if ((*best)->n_missing > 0 || n > 200 || !fill_state (&self, demand, supply))
    return FALSE;
  options = bs_cut_options_new (model, oracle, demand, supply, duals,
                                self.best.price * duals->scale - self.floor, limits.options,
                                limits.option_nodes);
  if (options == NULL)
    return FALSE;
  self.options = options;
  run (&self, demand, best);
  return !self.is_stopped;
}
