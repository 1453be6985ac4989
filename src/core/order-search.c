/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-search.h"

#include "core/order-row.h"
#include "core/random.h"

#include <math.h>
#include <string.h>

/* Temperatures as a part of the start's cost for each lamination, found by trying: hotter loses time,
 * and a start at a sixth of this ends 2 to 5 % dearer. */
#define HOT 0.12
#define COLD 0.012

#define LOG_BLOCKS 8 /* the temperature falls in 2^8 steps, so that its factor needs only square roots */
#define LONGEST_SHIFT 3
#define N_QUANTILES 1024

typedef struct
{
  BsOrderRow *row;
  BsRandom random;
  double quantiles[N_QUANTILES]; /* of the exponential distribution with mean 1 */
} Search;

/* -ln x for 0 < x < 1, from the four basic operations so that it is the same on every machine:
 * ln m = 2 artanh ((m - 1) / (m + 1)) as a series, after halvings of x. */
static double
negative_log (double x)
{
  static const double log_2 = 0.6931471805599453;
  int exponent;
  double m = frexp (x, &exponent), z = (m - 1.0) / (m + 1.0), power = z, sum = 0.0;

  for (int i = 1; i < 40; i += 2)
    {
      sum += power / i;
      power *= z * z;
    }
  return -exponent * log_2 - 2.0 * sum;
}

static void
propose_shift (Search *self)
{
  BsOrderRow *row = self->row;
  const BsOrderRules *rules = row->table->rules;
  guint size = 1 + bs_random_below (&self->random, MIN (LONGEST_SHIFT, row->n));
  guint first = bs_random_below (&self->random, row->n - size + 1);
  guint target;

  /* pinned neighbours go along */
  while (first > 0
         && bs_order_rules_are_partners (rules, row->order[first - 1], row->order[first]))
    {
      first--;
      size++;
    }
  while (first + size < row->n
         && bs_order_rules_are_partners (rules, row->order[first + size - 1],
                                         row->order[first + size]))
    size++;
  target = bs_random_below (&self->random, row->n - size + 1);
  bs_order_row_propose_shift (row, first, size, target,
                              target == first || (bs_random_next (&self->random) & 1) != 0);
}

static void
propose (Search *self)
{
  BsOrderRow *row = self->row;
  guint percent = bs_random_below (&self->random, 100);
  guint a, b;

  if (row->n_idle > 0 && percent >= 75)
    {
      bs_order_row_propose_exchange (row, bs_random_below (&self->random, row->n),
                                     bs_random_below (&self->random, row->n_idle));
      return;
    }
  if (percent >= 30)
    {
      propose_shift (self);
      return;
    }
  a = bs_random_below (&self->random, row->n);
  b = bs_random_below (&self->random, row->n);
  if (percent >= 15)
    bs_order_row_propose_swap (row, a, b);
  else
    bs_order_row_propose_reverse (row, MIN (a, b), MAX (a, b));
}

static void
anneal_block (Search *self, guint64 n_moves, double temperature)
{
  BsOrderRow *row = self->row;

  for (guint64 i = 0; i < n_moves; i++)
    {
      double quantile = self->quantiles[bs_random_below (&self->random, N_QUANTILES)];
      gint32 most = row->cost + (gint32)(temperature * quantile), cost;

      propose (self);
      if (!bs_order_row_is_allowed (row))
        continue;
      cost = bs_order_row_price (row);
      if (cost <= most)
        bs_order_row_take (row, cost);
    }
}

static gboolean
take_if_better (BsOrderRow *row)
{
  gint32 cost;

  if (!bs_order_row_is_allowed (row))
    return FALSE;
  cost = bs_order_row_price (row);
  if (cost >= row->cost)
    return FALSE;
  bs_order_row_take (row, cost);
  return TRUE;
}

static gboolean
polish_shifts (BsOrderRow *row)
{
  gboolean is_better = FALSE;

  for (guint size = 1; size <= MIN (LONGEST_SHIFT, row->n); size++)
    for (guint first = 0; first + size <= row->n; first++)
      for (guint target = 0; target + size <= row->n; target++)
        for (int is_reversed = 0; is_reversed < 2; is_reversed++)
          {
            bs_order_row_propose_shift (row, first, size, target, is_reversed);
            is_better |= take_if_better (row);
          }
  return is_better;
}

static gboolean
polish_exchanges (BsOrderRow *row)
{
  gboolean is_better = FALSE;

  for (guint k = 0; k < row->n; k++)
    for (guint i = 0; i < row->n_idle; i++)
      {
        bs_order_row_propose_exchange (row, k, i);
        is_better |= take_if_better (row);
      }
  return is_better;
}

static void
polish (BsOrderRow *row, const BsProgress *progress)
{
  gboolean is_better = TRUE;

  while (is_better && bs_progress_report (progress, 1.0))
    {
      is_better = polish_shifts (row);
      is_better |= polish_exchanges (row);
    }
}

gint32
bs_order_search_anneal (const BsOrderTable *table, guint64 seed, guint64 n_moves, double heat,
                        guint *order, const BsProgress *progress)
{
  const guint n_blocks = 1u << LOG_BLOCKS;
  g_autoptr (BsOrderRow) row = bs_order_row_new (table, order);
  Search self = { .row = row, .random = bs_random_init (seed) };
  double temperature = heat * HOT * row->cost / row->n;
  double factor = COLD / HOT / heat;
  gint32 least = row->cost;

  for (guint i = 0; i < N_QUANTILES; i++)
    self.quantiles[i] = negative_log ((i + 0.5) / N_QUANTILES);
  for (guint i = 0; i < LOG_BLOCKS; i++)
    factor = sqrt (factor);
  for (guint i = 0; i < n_blocks && bs_progress_report (progress, (double)i / n_blocks); i++)
    {
      anneal_block (&self, n_moves / n_blocks, temperature);
      temperature *= factor;
      if (row->cost < least)
        {
          least = row->cost;
          memcpy (order, row->order, row->n * sizeof *order);
        }
    }
  bs_order_row_set (row, order);
  polish (row, progress);
  memcpy (order, row->order, row->n * sizeof *order);
  return row->cost;
}

/* The cheapest arc from the lamination before, whichever way both are turned. */
static guint
find_best_follower (const BsOrderTable *table, int before, const gboolean *is_free)
{
  gint32 least = G_MAXINT32;
  guint best = 0;

  for (guint j = 0; j < table->n_candidates; j++)
    {
      BsOrderFour price = table->first[j];
      if (!is_free[j])
        continue;
      if (before != BS_ORDER_NOBODY)
        {
          const BsOrderFour *arcs = bs_order_table_arcs (table, (guint)before, j);
          price = bs_order_four_min (bs_order_four_min (arcs[0], arcs[1]),
                                     bs_order_four_min (arcs[2], arcs[3]));
        }
      if (bs_order_four_least (price) < least)
        {
          least = bs_order_four_least (price);
          best = j;
        }
    }
  return best;
}

gint32
bs_order_search_start (const BsOrderTable *table, guint *order)
{
  const BsOrderRules *rules = table->rules;
  g_autofree gboolean *is_free = g_new (gboolean, table->n_candidates);
  int before = BS_ORDER_NOBODY;

  for (guint i = 0; i < table->n_candidates; i++)
    is_free[i] = !rules->is_required[i];
  for (guint k = 0; k < table->n_places; k++)
    {
      order[k] = rules->start[k] != BS_ORDER_NOBODY ? (guint)rules->start[k]
                                                    : find_best_follower (table, before, is_free);
      is_free[order[k]] = FALSE;
      before = (int)order[k];
    }
  return bs_order_table_orient (table, order, NULL);
}
