/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-proof-private.h"

#include <string.h>

/* Of each candidate's likely neighbours, so many are remembered from the start. */
#define FIRST_MEMORY 8

/* The gap is closed in so many steps: the number of rows grows steeply with the level, and what is
 * learnt at a low one saves them at the next. */
#define N_LEVELS 12

/* The row as stands and as candidates. */
static void
read_row (const BsOrderProof *self, guint index, guint *stands, guint *candidates)
{
  for (guint k = self->layers->table->n_places; k-- > 0;)
    {
      const Row *row = &g_array_index (self->rows, Row, index);
      stands[k] = row->stand;
      candidates[k] = self->layers->candidate_of[row->stand];
      index = row->parent;
    }
}

/* Tells the stands between two uses of one candidate to remember it. TRUE when there are none. */
static gboolean
learn_repeats (BsOrderProof *self, const guint *stands, const guint *candidates)
{
  gboolean is_order = TRUE;

  for (guint k = 1; k < self->layers->table->n_places; k++)
    for (guint before = k; before-- > 0;)
      if (candidates[before] == candidates[k])
        {
          for (guint between = before; between <= k; between++)
            set_add (&self->memory[stands[between]], candidates[k]);
          is_order = FALSE;
          break;
        }
  return is_order;
}

/* The bound takes all prices off, also those of candidates that the order leaves out: from now on
 * these are counted. FALSE when the order leaves out one that is pinned. */
static gboolean
learn_unused (BsOrderProof *self, const guint *candidates)
{
  const BsOrderLayers *layers = self->layers;
  const gboolean *is_required = layers->table->rules->is_required;
  gboolean is_complete = TRUE;
  Set used = { { 0 } };

  for (guint k = 0; k < layers->table->n_places; k++)
    set_add (&used, candidates[k]);
  for (guint i = 0; i < layers->table->n_candidates; i++)
    if (!set_has (&used, i) && (layers->prices[i] != 0 || is_required[i]))
      {
        set_add (&self->counted, i);
        for (guint stand = 0; stand < layers->n_stands; stand++)
          set_add (&self->memory[stand], i);
        is_complete = is_complete && !is_required[i];
      }
  return is_complete;
}

static void
take_order (const BsOrderProof *self, const guint *candidates, guint *order, gint32 *cost)
{
  const BsOrderTable *table = self->layers->table;
  gint32 found = bs_order_table_orient (table, candidates, NULL);

  if (found < *cost)
    {
      *cost = found;
      memcpy (order, candidates, table->n_places * sizeof *order);
    }
}

/* Goes through the rows that end below the level, learns from them, and takes an order that is
 * better than the one known. Returns the least that any of them ends at. */
static gint32
learn (BsOrderProof *self, guint *order, gint32 *cost)
{
  const BsOrderTable *table = self->layers->table;
  g_autofree guint *stands = g_new (guint, table->n_places);
  g_autofree guint *candidates = g_new (guint, table->n_places);
  const Set counted = self->counted;
  gint32 least = G_MAXINT32;

  for (guint i = *first_row (self, table->n_places - 1, 0); i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);
      Set lacks = set_without (&counted, &row->used);
      BsOrderFour last = table->last[self->layers->candidate_of[row->stand]];

      least = MIN (least, row->value + last[row->orientation] + price_counted (self, &lacks));
      read_row (self, i, stands, candidates);
      if (learn_repeats (self, stands, candidates))
        {
          if (learn_unused (self, candidates))
            take_order (self, candidates, order, cost);
        }
    }
  return least;
}

static void
start_memory (BsOrderProof *self)
{
  const BsOrderLayers *layers = self->layers;
  const BsOrderTable *table = layers->table;
  g_autofree gint32 *costs = g_new (gint32, table->n_candidates);

  for (guint stand = 0; stand < layers->n_stands; stand++)
    {
      guint j = layers->candidate_of[stand];
      for (guint i = 0; i < table->n_candidates; i++)
        {
          const BsOrderFour *arcs = bs_order_table_arcs (table, i, j);
          costs[i] = bs_order_four_least (bs_order_four_min (bs_order_four_min (arcs[0], arcs[1]),
                                                             bs_order_four_min (arcs[2], arcs[3])))
                     + layers->prices[i];
        }
      set_add (&self->memory[stand], j);
      costs[j] = G_MAXINT32;
      for (guint n = 0; n < FIRST_MEMORY; n++)
        {
          guint best = 0;
          for (guint i = 1; i < table->n_candidates; i++)
            if (costs[i] < costs[best])
              best = i;
          if (costs[best] < G_MAXINT32)
            set_add (&self->memory[stand], best);
          costs[best] = G_MAXINT32;
        }
    }
}

BsOrderProof *
bs_order_proof_new (BsOrderLayers *layers, gint32 cost, gint32 bound, guint most_rows)
{
  g_return_val_if_fail (layers->table->n_candidates <= BS_ORDER_PROOF_MOST, NULL);

  BsOrderProof *self = g_new0 (BsOrderProof, 1);
  gsize n_places = layers->table->n_places;

  self->layers = layers;
  self->prices = bs_order_layers_sum_prices (layers);
  self->step = MAX ((cost - bound) / N_LEVELS, 1);
  self->most_rows = most_rows;
  self->memory = g_new0 (Set, layers->n_stands);
  self->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  self->first = g_new (guint, n_places * (layers->n_stands + 1));
  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    self->found[o] = g_array_new (FALSE, FALSE, sizeof (Row));
  bs_order_layers_forward (layers);
  bs_order_layers_backward (layers);
  bs_order_layers_prune (layers, cost);
  start_memory (self);
  return self;
}

void
bs_order_proof_free (BsOrderProof *self)
{
  g_free (self->memory);
  g_free (self->first);
  g_array_unref (self->rows);
  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    g_array_unref (self->found[o]);
  g_free (self);
}

gboolean
bs_order_proof_raise (BsOrderProof *self, guint *order, gint32 *cost, gint32 *bound,
                      const BsProgress *progress)
{
  gint32 target = MIN (*cost, *bound + self->step), least;

  if (*bound >= *cost)
    return FALSE;
  self->most = target + self->prices;
  switch (bs_order_proof_fill_level (self, progress))
    {
    case LEVEL_EMPTY:
      *bound = target;
      break;
    case LEVEL_FOUND:
      least = learn (self, order, cost) - self->prices;
      *bound = MIN (CLAMP (least, *bound, target), *cost);
      break;
    case LEVEL_GIVEN_UP:
    default:
      return FALSE;
    }
  return *bound < *cost;
}
