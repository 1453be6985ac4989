/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-exact.h"

/* Sets are bit masks of candidates. value[set x n + j] is the least cost of laying just this set
 * with j as the last one, in each of its orientations. */
typedef struct
{
  const BsOrderTable *table;
  guint32 partners[BS_ORDER_EXACT_MOST];
  guint32 required;
  BsOrderFour *value;
} Exact;

#define SETS_PER_REPORT 512

static const BsOrderFour never = { BS_ORDER_NEVER, BS_ORDER_NEVER, BS_ORDER_NEVER, BS_ORDER_NEVER };

static BsOrderFour *
value_of (const Exact *self, guint32 set, guint last)
{
  return &self->value[(gsize)set * self->table->n_candidates + last];
}

/* Those of `before` after which j may come: when partners of j have been laid, just that one. */
static guint32
find_predecessors (const Exact *self, guint32 before, guint j)
{
  guint32 laid = self->partners[j] & before;

  if (laid == 0)
    return before;
  return (laid & (laid - 1)) == 0 ? laid : 0;
}

static BsOrderFour
price_last (const Exact *self, guint32 set, guint j)
{
  guint32 before = set & ~(1u << j);
  BsOrderFour best = never;

  for (guint32 rest = find_predecessors (self, before, j); rest != 0; rest &= rest - 1)
    {
      guint i = (guint)__builtin_ctz (rest);
      if ((self->partners[i] & ~set) == 0)
        best = bs_order_four_min (best,
                                  bs_order_four_step (*value_of (self, before, i),
                                                      bs_order_table_arcs (self->table, i, j)));
    }
  return best;
}

static gboolean
fill (Exact *self, const BsProgress *progress)
{
  const BsOrderTable *table = self->table;
  guint32 n_sets = 1u << table->n_candidates;

  for (guint32 set = 1; set < n_sets; set++)
    {
      guint size = (guint)__builtin_popcount (set);

      if (set % SETS_PER_REPORT == 0 && !bs_progress_report (progress, (double)set / n_sets))
        return FALSE;
      if (size > table->n_places)
        continue;
      for (guint32 rest = set; rest != 0; rest &= rest - 1)
        {
          guint j = (guint)__builtin_ctz (rest);
          if (!bs_order_rules_allow (table->rules, size - 1, j))
            *value_of (self, set, j) = never;
          else
            *value_of (self, set, j) = size == 1 ? table->first[j] : price_last (self, set, j);
        }
    }
  return TRUE;
}

static guint32
find_best_end (const Exact *self, guint *last)
{
  const BsOrderTable *table = self->table;
  gint32 least = G_MAXINT32;
  guint32 best = 0;

  for (guint32 set = 1; set < 1u << table->n_candidates; set++)
    {
      if ((guint)__builtin_popcount (set) != table->n_places || (self->required & ~set) != 0)
        continue;
      for (guint32 rest = set; rest != 0; rest &= rest - 1)
        {
          guint j = (guint)__builtin_ctz (rest);
          gint32 cost = bs_order_four_least (*value_of (self, set, j) + table->last[j]);
          if (cost < least)
            {
              least = cost;
              best = set;
              *last = j;
            }
        }
    }
  return best;
}

static guint
find_orientation (BsOrderFour value)
{
  guint best = 0;

  for (guint o = 1; o < BS_N_ORIENTATIONS; o++)
    if (value[o] < value[best])
      best = o;
  return best;
}

/* Walks back from the best end, asking at each place which lamination before explains the value. */
static void
trace (const Exact *self, guint *order)
{
  const BsOrderTable *table = self->table;
  guint j = 0, b;
  guint32 set = find_best_end (self, &j);

  b = find_orientation (*value_of (self, set, j) + table->last[j]);
  for (guint k = table->n_places - 1; k > 0; k--)
    {
      /* NOLINTNEXTLINE(clang-analyzer-core.uninitialized.Assign): it cannot follow vectors */
      gint32 value = (*value_of (self, set, j))[b];
      guint32 before = set & ~(1u << j), rest = find_predecessors (self, before, j);
      gboolean is_found = FALSE;

      order[k] = j;
      for (; rest != 0 && !is_found; rest &= rest - 1)
        {
          guint i = (guint)__builtin_ctz (rest);
          for (guint a = 0; a < BS_N_ORIENTATIONS && !is_found; a++)
            if ((self->partners[i] & ~set) == 0
                && (*value_of (self, before, i))[a] + bs_order_table_arcs (table, i, j)[a][b]
                       == value)
              {
                order[k - 1] = i;
                b = a;
                is_found = TRUE;
              }
        }
      g_assert (is_found);
      set = before;
      j = order[k - 1];
    }
  order[0] = j;
}

gboolean
bs_order_exact (const BsOrderTable *table, guint *order, const BsProgress *progress)
{
  guint n = table->n_candidates;
  Exact self = { .table = table };
  gboolean is_done;

  g_return_val_if_fail (n <= BS_ORDER_EXACT_MOST, FALSE);

  for (guint i = 0; i < n; i++)
    {
      for (guint side = 0; side < 2; side++)
        if (table->rules->partners[i][side] != BS_ORDER_NOBODY)
          self.partners[i] |= 1u << table->rules->partners[i][side];
      if (table->rules->is_required[i])
        self.required |= 1u << i;
    }
  self.value = g_new (BsOrderFour, ((gsize)1 << n) * n);
  is_done = fill (&self, progress);
  if (is_done)
    trace (&self, order);
  g_free (self.value);
  return is_done;
}
