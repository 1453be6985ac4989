/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-bound.h"

#include <string.h>

/* All found by trying. At 60 laminations the gap is some 2 % after 400 steps, whatever the cost of
 * the order at hand; with a patience of 12 it is 3 % for some, without inertia 5 %. */
#define LONGEST                                                                                    \
  1.5 /* a first step, as a part of the one that would close the gap were all straight */
#define PATIENCE 20   /* steps without a better bound before they are made shorter, */
#define SHORTER 0.7   /* by this */
#define SHORTEST 0.01 /* so short that nothing more is to be had */
#define INERTIA 0.7   /* of the last step's direction, kept in the next */
#define FIRST_GAP 0.1 /* of the cost: with a larger one hardly any arc can be taken away */
#define NEXT_GAP 0.8  /* of the gap at the last pruning, when the next one is worth its time */

typedef struct
{
  BsOrderLayers *layers;
  gint32 cost, bound;
  guint *row;
  double *direction;
  gint32 *best_prices;
  double length; /* of a step, as LONGEST */
  double next_gap;
} Ascent;

/* A candidate that must be used is used once; others may be left out, and then cost nothing. */
static gboolean
is_always_used (const BsOrderLayers *layers, guint candidate)
{
  const BsOrderTable *table = layers->table;

  return table->n_places == table->n_candidates || table->rules->is_required[candidate];
}

/* Uses too many of each candidate in the cheapest row, smoothed; returns the sum of squares. */
static double
find_direction (Ascent *self)
{
  const BsOrderTable *table = self->layers->table;
  g_autofree int *uses = g_new0 (int, table->n_candidates);
  double squares = 0.0;

  bs_order_layers_trace (self->layers, self->row);
  for (guint k = 0; k < table->n_places; k++)
    uses[self->row[k]]++;
  for (guint i = 0; i < table->n_candidates; i++)
    {
      gboolean is_idle
          = !is_always_used (self->layers, i) && uses[i] == 0 && self->layers->prices[i] == 0;
      int excess = is_idle ? 0 : uses[i] - 1;
      self->direction[i] = excess + INERTIA * self->direction[i];
      squares += excess * excess;
    }
  return squares;
}

static void
move_prices (Ascent *self, gint32 value, double squares)
{
  BsOrderLayers *layers = self->layers;
  gint32 most = BS_ORDER_NEVER / 4 / (gint32)layers->table->n_candidates;
  double step = self->length * (self->cost - value) / squares;

  for (guint i = 0; i < layers->table->n_candidates; i++)
    {
      double price = layers->prices[i] + step * self->direction[i];
      double least = is_always_used (layers, i) ? -most : 0.0;
      layers->prices[i] = (gint32)CLAMP (price, least, most);
    }
}

static void
take_bound (Ascent *self, gint32 value)
{
  BsOrderLayers *layers = self->layers;

  self->bound = value;
  memcpy (self->best_prices, layers->prices, layers->table->n_candidates * sizeof *layers->prices);
  if (self->cost - value < self->next_gap)
    {
      bs_order_layers_backward (layers);
      bs_order_layers_prune (layers, self->cost);
      self->next_gap = NEXT_GAP * (self->cost - value);
    }
}

/* Begins again from the best prices, with shorter steps. */
static void
turn_back (Ascent *self)
{
  guint n = self->layers->table->n_candidates;

  self->length *= SHORTER;
  memcpy (self->layers->prices, self->best_prices, n * sizeof *self->best_prices);
  memset (self->direction, 0, n * sizeof *self->direction);
}

static void
climb (Ascent *self, guint n_steps, const BsProgress *progress)
{
  guint idle = 0;

  for (guint i = 0; i < n_steps && bs_progress_report (progress, (double)i / n_steps); i++)
    {
      gint32 value = bs_order_layers_forward (self->layers);
      double squares;

      if (value > self->bound)
        {
          take_bound (self, value);
          idle = 0;
        }
      else if (++idle == PATIENCE)
        {
          turn_back (self);
          idle = 0;
          continue;
        }
      if (self->bound >= self->cost || self->length < SHORTEST)
        return;
      squares = find_direction (self);
      if (squares < 0.5)
        return; /* the row uses each one once: it is an order, and the bound is its cost */
      move_prices (self, value, squares);
    }
}

gint32
bs_order_bound (BsOrderLayers *layers, gint32 cost, guint n_steps, const BsProgress *progress)
{
  guint n = layers->table->n_candidates;
  Ascent self = {
    .layers = layers,
    .cost = cost,
    .bound = G_MININT32,
    .row = g_new (guint, layers->table->n_places),
    .direction = g_new0 (double, n),
    .best_prices = g_new0 (gint32, n),
    .length = LONGEST,
    .next_gap = FIRST_GAP * cost,
  };

  climb (&self, n_steps, progress);
  memcpy (layers->prices, self.best_prices, n * sizeof *self.best_prices);
  g_free (self.row);
  g_free (self.direction);
  g_free (self.best_prices);
  return MIN (self.bound, cost);
}
