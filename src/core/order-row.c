/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-row.h"

#include <string.h>

static void
update_until (BsOrderRow *self, guint from)
{
  const BsOrderTable *table = self->table;

  for (guint k = from; k < self->n; k++)
    self->until[k] = k == 0 ? table->first[self->order[0]]
                            : bs_order_four_step (
                                self->until[k - 1],
                                bs_order_table_arcs (table, self->order[k - 1], self->order[k]));
}

/* Seen from the left-hand one: the least cost of the arc and all behind it, by its orientation. */
static BsOrderFour
step_back (const BsOrderFour arcs[4], BsOrderFour after)
{
  return (BsOrderFour){
    bs_order_four_least (arcs[0] + after),
    bs_order_four_least (arcs[1] + after),
    bs_order_four_least (arcs[2] + after),
    bs_order_four_least (arcs[3] + after),
  };
}

static void
update_after (BsOrderRow *self, guint to)
{
  const BsOrderTable *table = self->table;

  for (guint k = to + 1; k-- > 0;)
    self->after[k]
        = k == self->n - 1
              ? table->last[self->order[k]]
              : step_back (bs_order_table_arcs (table, self->order[k], self->order[k + 1]),
                           self->after[k + 1]);
}

void
bs_order_row_set (BsOrderRow *self, const guint *order)
{
  memcpy (self->order, order, self->n * sizeof *order);
  for (guint i = 0; i < self->table->n_candidates; i++)
    self->place_of[i] = -1;
  for (guint k = 0; k < self->n; k++)
    self->place_of[order[k]] = (int)k;
  self->n_idle = 0;
  for (guint i = 0; i < self->table->n_candidates; i++)
    if (self->place_of[i] < 0)
      {
        self->place_of[i] = -1 - (int)self->n_idle;
        self->idle[self->n_idle++] = i;
      }
  update_until (self, 0);
  update_after (self, self->n - 1);
  self->cost = bs_order_four_least (self->until[self->n - 1] + self->after[self->n - 1]);
}

BsOrderRow *
bs_order_row_new (const BsOrderTable *table, const guint *order)
{
  BsOrderRow *self = g_new0 (BsOrderRow, 1);

  self->table = table;
  self->n = table->n_places;
  self->order = g_new (guint, self->n);
  self->idle = g_new (guint, table->n_candidates);
  self->place_of = g_new (int, table->n_candidates);
  self->until = g_new (BsOrderFour, self->n);
  self->after = g_new (BsOrderFour, self->n);
  self->proposal = g_new (guint, self->n);
  self->entering = -1;
  bs_order_row_set (self, order);
  return self;
}

void
bs_order_row_free (BsOrderRow *self)
{
  g_free (self->order);
  g_free (self->idle);
  g_free (self->place_of);
  g_free (self->until);
  g_free (self->after);
  g_free (self->proposal);
  g_free (self);
}

static void
begin_proposal (BsOrderRow *self, guint from, guint to)
{
  self->from = from;
  self->to = to;
  self->entering = -1;
}

void
bs_order_row_propose_shift (BsOrderRow *self, guint first, guint size, guint target,
                            gboolean is_reversed)
{
  const guint *order = self->order;
  guint *proposal = self->proposal;

  begin_proposal (self, MIN (first, target), MAX (first, target) + size - 1);
  for (guint k = first; k < target; k++)
    proposal[k] = order[k + size];
  for (guint k = target; k < first; k++)
    proposal[k + size] = order[k];
  for (guint i = 0; i < size; i++)
    proposal[target + i] = order[is_reversed ? first + size - 1 - i : first + i];
}

void
bs_order_row_propose_reverse (BsOrderRow *self, guint first, guint last)
{
  begin_proposal (self, first, last);
  for (guint k = first; k <= last; k++)
    self->proposal[k] = self->order[first + last - k];
}

void
bs_order_row_propose_swap (BsOrderRow *self, guint a, guint b)
{
  begin_proposal (self, MIN (a, b), MAX (a, b));
  memcpy (&self->proposal[self->from], &self->order[self->from],
          (self->to - self->from + 1) * sizeof *self->order);
  self->proposal[a] = self->order[b];
  self->proposal[b] = self->order[a];
}

void
bs_order_row_propose_exchange (BsOrderRow *self, guint place, guint target, guint idle)
{
  bs_order_row_propose_shift (self, place, 1, target, FALSE);
  self->proposal[target] = self->idle[idle];
  self->entering = (int)idle;
  self->leaving = self->order[place];
}

static guint
find_proposed (const BsOrderRow *self, guint place)
{
  return place >= self->from && place <= self->to ? self->proposal[place] : self->order[place];
}

static gboolean
stand_together (const BsOrderRow *self, guint place, guint partner)
{
  return (place > 0 && find_proposed (self, place - 1) == partner)
         || (place + 1 < self->n && find_proposed (self, place + 1) == partner);
}

gboolean
bs_order_row_is_allowed (const BsOrderRow *self)
{
  const BsOrderRules *rules = self->table->rules;

  if (self->entering >= 0 && rules->is_required[self->leaving])
    return FALSE;
  if (!rules->has_places && !rules->has_partners)
    return TRUE;
  for (guint k = self->from; k <= self->to; k++)
    {
      guint candidate = self->proposal[k];
      if (!bs_order_rules_allow (rules, k, candidate))
        return FALSE;
      for (guint side = 0; side < 2; side++)
        {
          int partner = rules->partners[candidate][side];
          if (partner != BS_ORDER_NOBODY && !stand_together (self, k, (guint)partner))
            return FALSE;
        }
    }
  return TRUE;
}

gint32
bs_order_row_price (const BsOrderRow *self)
{
  const BsOrderTable *table = self->table;
  const guint *proposal = self->proposal;
  guint k = self->from, next;
  BsOrderFour value;

  value = k == 0
              ? table->first[proposal[0]]
              : bs_order_four_step (self->until[k - 1],
                                    bs_order_table_arcs (table, self->order[k - 1], proposal[k]));
  for (k++; k <= self->to; k++)
    value = bs_order_four_step (value, bs_order_table_arcs (table, proposal[k - 1], proposal[k]));
  if (k == self->n)
    return bs_order_four_least (value + table->last[proposal[k - 1]]);
  next = self->order[k];
  value = bs_order_four_step (value, bs_order_table_arcs (table, proposal[k - 1], next));
  return bs_order_four_least (value + self->after[k]);
}

void
bs_order_row_take (BsOrderRow *self, gint32 cost)
{
  if (self->entering >= 0)
    {
      self->idle[self->entering] = self->leaving;
      self->place_of[self->leaving] = -1 - self->entering;
    }
  for (guint k = self->from; k <= self->to; k++)
    {
      self->order[k] = self->proposal[k];
      self->place_of[self->order[k]] = (int)k;
    }
  self->cost = cost;
  update_until (self, self->from);
  update_after (self, self->to);
}
