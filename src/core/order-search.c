/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-search.h"

#include "core/order-row.h"
#include "core/random.h"

#include <math.h>
#include <string.h>

/* Temperatures as a part of the start's cost for each lamination, and the share of moves that bring
 * likely neighbours together; all found by trying. At 60 laminations and 4 million moves these end
 * 0.2 % above the best order known on average; without likely neighbours it was 0.5 %, with a third
 * of the lower temperature 1.5 %. */
#define HOT 0.15
#define COLD 0.06
#define PERCENT_BESIDE 70
#define MOST_NEAR 8

#define LOG_BLOCKS                                                                                 \
  8 /* the temperature falls in 2^8 steps, so that its factor needs only square roots */
#define LONGEST_SHIFT 3
#define N_QUANTILES 1024

typedef struct
{
  BsOrderRow *row;
  BsRandom random;
  double quantiles[N_QUANTILES]; /* of the exponential distribution with mean 1 */
  guint n_near;
  guint *near; /* [candidate x n_near] those that go best beside it */
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

static gint32
find_least (const BsOrderFour arcs[4])
{
  return bs_order_four_least (bs_order_four_min (bs_order_four_min (arcs[0], arcs[1]),
                                                 bs_order_four_min (arcs[2], arcs[3])));
}

static void
find_near (Search *self, const BsOrderTable *table)
{
  guint n = table->n_candidates;
  g_autofree gint32 *costs = g_new (gint32, n);

  self->n_near = MIN (MOST_NEAR, n - 1);
  self->near = g_new (guint, MAX (n * self->n_near, 1));
  for (guint i = 0; i < n; i++)
    {
      for (guint j = 0; j < n; j++)
        costs[j] = j == i ? G_MAXINT32
                          : MIN (find_least (bs_order_table_arcs (table, i, j)),
                                 find_least (bs_order_table_arcs (table, j, i)));
      for (guint rank = 0; rank < self->n_near; rank++)
        {
          guint best = 0;
          for (guint j = 1; j < n; j++)
            if (costs[j] < costs[best])
              best = j;
          self->near[i * self->n_near + rank] = best;
          costs[best] = G_MAXINT32;
        }
    }
}

/* Turns the stretch between two laminations together with one of them, so that they meet. */
static void
propose_meeting (BsOrderRow *row, guint a, guint b, gboolean is_first_turned)
{
  guint from = MIN (a, b), to = MAX (a, b);

  if (is_first_turned)
    bs_order_row_propose_reverse (row, from, to - 1);
  else
    bs_order_row_propose_reverse (row, from + 1, to);
}

/* Brings a likely neighbour beside a lamination: from the rack, by turning the stretch between, or
 * with one or two that stand beside it now. FALSE when the dice fall outside the row. */
static gboolean
propose_beside (Search *self)
{
  BsOrderRow *row = self->row;
  guint here = bs_random_below (&self->random, row->n);
  guint rank = bs_random_below (&self->random, self->n_near);
  guint guest = self->near[row->order[here] * self->n_near + rank];
  guint size = 1 + bs_random_below (&self->random, LONGEST_SHIFT);
  guint64 dice = bs_random_next (&self->random);
  gboolean is_behind = dice & 1, leads = (dice >> 1) & 1;
  int place = row->place_of[guest], first, target;

  if (place < 0)
    {
      guint side = is_behind ? here + 1 : here - 1; /* wraps below 0 */
      guint leaving = (dice >> 2) & 1 ? side : bs_random_below (&self->random, row->n);
      if (side >= row->n || leaving == here)
        return FALSE;
      bs_order_row_propose_exchange (row, leaving, side, (guint)(-1 - place));
      return TRUE;
    }
  if (((dice >> 2) & 3) == 0)
    {
      propose_meeting (row, here, (guint)place, is_behind);
      return TRUE;
    }
  first = leads ? place : place - (int)size + 1;
  if (first < 0 || first + size > row->n || ((int)here >= first && here < first + size))
    return FALSE;
  target = (int)here < first ? (int)here : (int)(here - size);
  bs_order_row_propose_shift (row, (guint)first, size, (guint)(is_behind ? target + 1 : target),
                              is_behind != leads);
  return TRUE;
}

/* Moves one to three laminations elsewhere; pinned neighbours go along. */
static void
propose_shift (Search *self)
{
  BsOrderRow *row = self->row;
  const BsOrderRules *rules = row->table->rules;
  guint size = 1 + bs_random_below (&self->random, MIN (LONGEST_SHIFT, row->n));
  guint first = bs_random_below (&self->random, row->n - size + 1);
  guint target;

  while (first > 0 && bs_order_rules_are_partners (rules, row->order[first - 1], row->order[first]))
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
propose_any (Search *self)
{
  BsOrderRow *row = self->row;
  guint percent = bs_random_below (&self->random, 100);
  guint a = bs_random_below (&self->random, row->n);
  guint b = bs_random_below (&self->random, row->n);

  if (row->n_idle > 0 && percent < 25)
    bs_order_row_propose_exchange (row, a, percent < 13 ? a : b,
                                   bs_random_below (&self->random, row->n_idle));
  else if (percent < 70)
    propose_shift (self);
  else if (percent < 85)
    bs_order_row_propose_swap (row, a, b);
  else
    bs_order_row_propose_reverse (row, MIN (a, b), MAX (a, b));
}

static void
propose (Search *self)
{
  gboolean is_beside = self->n_near > 0 && bs_random_below (&self->random, 100) < PERCENT_BESIDE;

  if (!is_beside || !propose_beside (self))
    propose_any (self);
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

  for (guint i = 0; i < row->n_idle; i++)
    for (guint place = 0; place < row->n; place++)
      for (guint target = 0; target < row->n; target++)
        {
          bs_order_row_propose_exchange (row, place, target, i);
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
  find_near (&self, table);
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
  g_free (self.near);
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
      gint32 cost = before == BS_ORDER_NOBODY
                        ? bs_order_four_least (table->first[j])
                        : find_least (bs_order_table_arcs (table, (guint)before, j));
      if (is_free[j] && cost < least)
        {
          least = cost;
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
