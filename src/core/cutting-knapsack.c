/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-knapsack.h"

#include <stdlib.h>
#include <string.h>

typedef struct
{
  BsKnapsackItem item;
  guint index;
} Ranked;

typedef struct
{
  const Ranked *items;
  guint n;
  gint32 least_size; /* of all */
  int *taken, *best_taken;
  gint64 best;
  guint n_nodes;
} Search;

static int
compare_ratio (gconstpointer a, gconstpointer b)
{
  const Ranked *left = a, *right = b;
  double difference
      = (double)left->item.value * right->item.size - (double)right->item.value * left->item.size;

  if (difference > 0.0 || difference < 0.0)
    return difference > 0.0 ? -1 : 1;
  return left->index < right->index ? -1 : 1;
}

/* Whether item i and those behind it can add enough: the room filled with the best of them, the
 * last one in part. */
static gboolean
can_improve (const Search *self, guint i, gint32 room, gint64 value)
{
  const gint32 whole_room = room;

  for (; i < self->n; i++)
    {
      const BsKnapsackItem *item = &self->items[i].item;
      gint64 fit;

      if (item->size > whole_room)
        continue;
      fit = MIN (item->limit, room / item->size);
      value += fit * item->value;
      room -= (gint32)fit * item->size;
      if (value > self->best)
        return TRUE;
      if (fit < item->limit)
        return value + (gint64)((double)item->value * room / item->size) + 1 > self->best;
    }
  return value > self->best;
}

static void
search (Search *self, guint i, gint32 room, gint64 value)
{
  if (value > self->best)
    {
      self->best = value;
      memcpy (self->best_taken, self->taken, self->n * sizeof (int));
    }
  for (; i < self->n && room >= self->least_size; i++)
    {
      const BsKnapsackItem *item = &self->items[i].item;
      int fit = MIN (item->limit, room / item->size);

      if (fit == 0)
        continue;
      if (self->n_nodes == 0 || !can_improve (self, i, room, value))
        return;
      self->n_nodes--;
      for (int count = fit; count > 0; count--)
        {
          self->taken[i] = count;
          search (self, i + 1, room - count * item->size, value + count * item->value);
        }
      self->taken[i] = 0;
    }
}

gint64
bs_knapsack_search (const BsKnapsackItem *items, guint n, gint32 room, gint64 floor, guint n_nodes,
                    int *counts, gboolean *is_best)
{
  g_autofree Ranked *ranked = g_new (Ranked, n + 1);
  g_autofree int *taken = g_new0 (int, n + 1);
  g_autofree int *best_taken = g_new0 (int, n + 1);
  Search self = { ranked, 0, G_MAXINT32, taken, best_taken, floor, n_nodes };

  for (guint i = 0; i < n; i++)
    if (items[i].value > 0 && items[i].limit > 0 && items[i].size <= room)
      {
        self.least_size = MIN (self.least_size, items[i].size);
        ranked[self.n++] = (Ranked){ items[i], i };
      }
  qsort (ranked, self.n, sizeof (Ranked), compare_ratio);
  search (&self, 0, room, 0);
  *is_best = self.n_nodes > 0;
  memset (counts, 0, n * sizeof (int));
  for (guint i = 0; i < self.n; i++)
    counts[ranked[i].index] = best_taken[i];
  return self.best;
}

void
bs_knapsack_add (gint64 *best, guint16 *taken, gint32 room, const BsKnapsackItem *item)
{
  memset (taken, 0, ((gsize)room + 1) * sizeof *taken);
  /* From the top, so that the smaller rooms are still without this item. */
  for (gint32 w = room; w >= item->size; w--)
    {
      gint64 most = best[w];
      gint32 rest = w;
      guint16 count = 0;

      for (int k = 1; k <= item->limit && k <= G_MAXUINT16; k++)
        {
          rest -= item->size;
          if (rest < 0)
            break;
          if (best[rest] + k * item->value > most)
            {
              most = best[rest] + k * item->value;
              count = (guint16)k;
            }
        }
      best[w] = most;
      taken[w] = count;
    }
}
