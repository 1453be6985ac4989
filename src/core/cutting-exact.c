/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-exact.h"

#include "core/cutting-options.h"
#include "core/cutting-sums.h"

#include <string.h>

/* The state is a string of bytes with its length in front: types, then stock of limited supply. */
#define MAX_TYPES 200

/* What a plan costs, in the order of importance. */
typedef struct
{
  gint64 price, net_area, score;
} Cost;

/* What the search asks for most. */
typedef struct
{
  gint64 loss, price;
} Fact;

typedef struct
{
  const BsCutModel *model;
  const BsCutOptions *options;
  Fact *facts; /* of each option */
  const BsCutDuals *duals;
  guint n;
  GArray **of_type;      /* for each type the options that hold it (guint), least loss first */
  guint *priority;       /* types in the order in which they are covered */
  gint64 *least_net;     /* what a part of each type takes of the net area at least */
  guint8 *state;         /* length, open demand of each type, boards left of each limited stock */
  guint *place_of_stock; /* in state; 0: not limited */
  guint n_state;
  guint n_words;  /* counts eight to a word, so that all are compared at once */
  guint64 *words; /* of each option */
  BsCutGoal goal;
  BsCutSums sums;
  gint64 cheapest;  /* price of a board */
  gint64 floor;     /* total of the duals for the whole demand and supply */
  GHashTable *seen; /* states, with the cost of the best way there */
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

/* FALSE when this state was reached before at no greater cost. The table's entries are a state with
 * its cost in front. */
static gboolean
is_new (Search *self, const Cost *cost)
{
  guint8 *entry = g_hash_table_lookup (self->seen, self->state);

  if (entry == NULL)
    {
      entry = g_malloc (sizeof *cost + self->n_state);
      memcpy (entry + sizeof *cost, self->state, self->n_state);
      g_hash_table_add (self->seen, entry + sizeof *cost);
    }
  else
    {
      Cost known;
      memcpy (&known, entry - sizeof known, sizeof known);
      if (compare_costs (&known, cost) <= 0)
        return FALSE;
      entry -= sizeof known;
    }
  memcpy (entry, cost, sizeof *cost);
  return TRUE;
}

static void
free_entry (gpointer state)
{
  g_free ((guint8 *)state - sizeof (Cost));
}

/* Whether some way on from here can still be better than the best known. loss: by how much the
 * price of any such way lies above the floor at least. */
static gboolean
can_improve (const Search *self, const Cost *cost, gint64 loss)
{
  gint64 scale = self->duals->scale;
  gint64 price = self->floor + loss <= 0 ? 0 : (self->floor + loss + scale - 1) / scale;
  gint64 net = cost->net_area;
  gint64 rest = bs_cut_sums_next (&self->sums, price - cost->price);

  if (rest == G_MAXINT64)
    return FALSE;
  price = cost->price + rest;
  if (self->goal == BS_CUT_CHEAPER)
    return price < self->best.price;
  if (self->goal == BS_CUT_BEST_OF_PRICE
      && bs_cut_sums_next (&self->sums, self->best.price - cost->price)
             != self->best.price - cost->price)
    return FALSE;
  if (price != self->best.price)
    return price < self->best.price;
  for (guint t = 0; t < self->n; t++)
    net += self->state[1 + t] * self->least_net[t];
  return net <= self->best.net_area;
}

/* The high bit of each count, which is free since counts are below 128. */
#define HIGH_BITS G_GUINT64_CONSTANT (0x8080808080808080)

static void
pack (const guint8 *counts, guint n, guint64 *words)
{
  for (guint t = 0; t < n; t++)
    words[t / 8] |= (guint64)counts[t] << 8 * (t % 8);
}

/* Whether an option holds all that is open. */
static gboolean
covers (const Search *self, guint index, const guint64 *open)
{
  const guint64 *words = &self->words[(gsize)index * self->n_words];

  for (guint w = 0; w < self->n_words; w++)
    if ((((words[w] | HIGH_BITS) - open[w]) & HIGH_BITS) != HIGH_BITS)
      return FALSE;
  return TRUE;
}

/* To go through so many patterns counts as one step. */
#define OPTIONS_A_STEP 64

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
  Cost after = { cost->price + self->model->stock[stock].price, cost->net_area, cost->score };

  if (left != NULL && *left == 0)
    return;
  if (self->goal != BS_CUT_CHEAPER)
    {
      after.net_area += option->net_area;
      after.score += option->score;
    }
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
count_step (Search *self)
{
  if (self->nodes_left == 0
      || (self->nodes_left-- % 8192 == 0 && !bs_progress_report (self->progress, 0.0)))
    self->is_stopped = TRUE;
}

static void
search (Search *self, const Cost *cost, gint64 loss)
{
  guint64 open[MAX_TYPES / 8 + 1] = { 0 };
  guint type = G_MAXUINT;

  count_step (self);
  if (self->is_stopped)
    return;
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
  pack (self->state + 1, self->n, open);
  for (guint i = 0; i < self->of_type[type]->len && !self->is_stopped; i++)
    {
      guint index = g_array_index (self->of_type[type], guint, i);
      const Fact *fact = &self->facts[index];
      gint64 budget = self->best.price - (self->goal == BS_CUT_CHEAPER ? 1 : 0);

      /* Of boards that are paid no pattern loses anything, and the list is long. */
      if (i % OPTIONS_A_STEP == OPTIONS_A_STEP - 1)
        count_step (self);
      if (self->floor + loss + fact->loss > budget * self->duals->scale)
        break; /* and the rest of the list loses more */
      /* When no other board can be paid for, this one has to take all. */
      if (budget - cost->price - fact->price < self->cheapest && !covers (self, index, open))
        continue;
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
      if (demand[t] > G_MAXINT8)
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

  self->seen = g_hash_table_new_full (hash_state, equal_states, free_entry, NULL);
  self->path = g_array_new (FALSE, FALSE, sizeof (guint));
  self->best_path = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint t = 0; t < self->n; t++)
    self->least_net[t]
        = (gint64)(self->model->types[t].gross[0] * self->model->types[t].gross[1] * 100.0);
  file_options (self, demand);
  self->n_words = (self->n + 7) / 8;
  self->words = g_new0 (guint64, (gsize)self->n_words * self->options->options->len + 1);
  self->cheapest = G_MAXINT64;
  self->facts = g_new0 (Fact, self->options->options->len + 1);
  for (guint k = 0; k < self->options->options->len; k++)
    {
      const BsCutOption *option = &g_array_index (self->options->options, BsCutOption, k);
      gint64 price = self->model->stock[self->model->sheets[option->sheet].stock].price;

      pack (bs_cut_options_counts (self->options, option), self->n,
            &self->words[(gsize)k * self->n_words]);
      self->facts[k] = (Fact){ option->loss, price };
      self->cheapest = MIN (self->cheapest, price);
    }
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
  g_free (self->words);
  g_free (self->facts);
  g_array_unref (self->path);
  g_array_unref (self->best_path);
  g_hash_table_unref (self->seen);
}

/* Kinds of boards that cannot be in any plan of a price that is looked for. */
static gboolean *
find_left_out (const Search *self)
{
  const BsCutModel *model = self->model;
  gboolean *is_left_out = g_new0 (gboolean, model->n_stock + 1);
  gint64 scale = self->duals->scale;
  gint64 least = self->floor <= 0 ? 0 : (self->floor + scale - 1) / scale;

  for (guint i = 0; i < model->n_stock; i++)
    {
      gint64 price = model->stock[i].price, best = self->best.price;
      gint64 from = self->goal == BS_CUT_BEST_OF_PRICE ? best : least;
      gint64 rest = bs_cut_sums_next (&self->sums, from - price);

      is_left_out[i]
          = rest > best - price || (self->goal == BS_CUT_CHEAPER && rest == best - price);
    }
  return is_left_out;
}

gboolean
bs_cut_exact_solve (const BsCutModel *model, BsCutOracle *oracle, const int *demand,
                    const int *supply, const BsCutDuals *duals, BsCutGoal goal,
                    BsCutExactLimits limits, const BsProgress *progress, BsCutSolution **best)
{
  guint n = model->n_types;
  g_autofree GArray **of_type = g_new0 (GArray *, n + 1);
  g_autofree guint *priority = g_new0 (guint, n + 1);
  g_autofree gint64 *least_net = g_new0 (gint64, n + 1);
  g_autofree guint8 *state = g_new0 (guint8, n + 256);
  g_autofree guint *place_of_stock = g_new0 (guint, model->n_stock + 1);
  g_autofree gboolean *is_left_out = NULL;
  g_autoptr (BsCutOptions) options = NULL;
  BsCutOptionsWanted wanted;
  Search self = {
    .model = model,
    .duals = duals,
    .n = n,
    .of_type = of_type,
    .priority = priority,
    .least_net = least_net,
    .state = state,
    .place_of_stock = place_of_stock,
    .goal = goal,
    .nodes_left = limits.nodes,
    .progress = progress,
  };

  if ((*best)->n_missing > 0 || n > MAX_TYPES || !fill_state (&self, demand, supply))
    return FALSE;
  self.floor = total_of (model, duals, demand, supply);
  self.best = (Cost){ (*best)->price, (*best)->net_area, (*best)->score };
  if (goal == BS_CUT_CHEAPER)
    self.best.net_area = G_MININT64; /* of the same price none is better */
  bs_cut_sums_init (&self.sums, model, self.best.price);
  is_left_out = find_left_out (&self);
  wanted = (BsCutOptionsWanted){
    .demand = demand,
    .supply = supply,
    .is_left_out = is_left_out,
    .duals = duals,
    .most_loss = (self.best.price - (goal == BS_CUT_CHEAPER ? 1 : 0)) * duals->scale - self.floor,
    .only_full = goal == BS_CUT_CHEAPER,
    .most_options = limits.options,
    .most_nodes = limits.option_nodes,
  };
  options = bs_cut_options_new (model, oracle, &wanted);
  if (options != NULL)
    {
      self.options = options;
      run (&self, demand, best);
    }
  bs_cut_sums_clear (&self.sums);
  return options != NULL && !self.is_stopped;
}
