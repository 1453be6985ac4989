/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-layers.h"

static const BsOrderReach nowhere = {
  .best = { BS_ORDER_NEVER, BS_ORDER_NEVER, BS_ORDER_NEVER, BS_ORDER_NEVER },
  .via = { -1, -1, -1, -1 },
  .second = { BS_ORDER_NEVER, BS_ORDER_NEVER, BS_ORDER_NEVER, BS_ORDER_NEVER },
};

/* The stand's partners before and behind it. Two stands of one candidate see them in turn. */
typedef struct
{
  int before, behind;
} Sides;

static Sides
find_sides (const BsOrderLayers *self, guint stand)
{
  guint candidate = self->candidate_of[stand];
  const int *partners = self->table->rules->partners[candidate];
  gboolean is_backward = stand > 0 && self->candidate_of[stand - 1] == candidate;

  return is_backward ? (Sides){ partners[1], partners[0] } : (Sides){ partners[0], partners[1] };
}

/* The rest of a row of partners must read the same way; that is so when each stands where the other
 * one expects it. */
static gboolean
may_follow (const BsOrderLayers *self, guint left, guint right)
{
  guint i = self->candidate_of[left], j = self->candidate_of[right];
  int behind = find_sides (self, left).behind, before = find_sides (self, right).before;

  if (i == j)
    return FALSE;
  return (behind == BS_ORDER_NOBODY && before == BS_ORDER_NOBODY
          && !bs_order_rules_are_partners (self->table->rules, i, j))
         || (behind == (int)j && before == (int)i);
}

static gboolean
may_stand (const BsOrderLayers *self, guint place, guint stand)
{
  if (!bs_order_rules_allow (self->table->rules, place, self->candidate_of[stand]))
    return FALSE;
  if (place == 0 && find_sides (self, stand).before != BS_ORDER_NOBODY)
    return FALSE;
  return place + 1 < self->table->n_places || find_sides (self, stand).behind == BS_ORDER_NOBODY;
}

static guint64 *
arcs_into (const BsOrderLayers *self, guint place, guint right)
{
  return &self->arcs[bs_order_layers_index (self, place, right) * self->n_words];
}

static void
lay_arcs (BsOrderLayers *self)
{
  for (guint place = 1; place < self->table->n_places; place++)
    for (guint right = 0; right < self->n_stands; right++)
      for (guint left = 0; may_stand (self, place, right) && left < self->n_stands; left++)
        if (may_stand (self, place - 1, left) && may_follow (self, left, right))
          arcs_into (self, place, right)[left / 64] |= G_GUINT64_CONSTANT (1) << left % 64;
}

BsOrderLayers *
bs_order_layers_new (const BsOrderTable *table)
{
  BsOrderLayers *self = g_new0 (BsOrderLayers, 1);
  gsize n_nodes;

  self->table = table;
  self->candidate_of = g_new (guint, 2 * (gsize)table->n_candidates);
  for (guint i = 0; i < table->n_candidates; i++)
    {
      self->candidate_of[self->n_stands++] = i;
      if (table->rules->partners[i][0] != BS_ORDER_NOBODY)
        self->candidate_of[self->n_stands++] = i;
    }
  self->n_words = (self->n_stands + 63) / 64;
  n_nodes = (gsize)table->n_places * self->n_stands;
  self->prices = g_new0 (gint32, table->n_candidates);
  self->arcs = g_new0 (guint64, n_nodes * self->n_words);
  self->reach = g_new (BsOrderReach, n_nodes);
  self->leave = g_new (BsOrderReach, n_nodes);
  lay_arcs (self);
  return self;
}

void
bs_order_layers_free (BsOrderLayers *self)
{
  g_free (self->candidate_of);
  g_free (self->prices);
  g_free (self->arcs);
  g_free (self->reach);
  g_free (self->leave);
  g_free (self);
}

gint32
bs_order_layers_sum_prices (const BsOrderLayers *self)
{
  gint32 sum = 0;

  for (guint i = 0; i < self->table->n_candidates; i++)
    sum += self->prices[i];
  return sum;
}

/* Counts in one more way to the node; each candidate comes once, so the second best is by way of
 * another one than the best. */
static inline void
add_way (BsOrderReach *reach, BsOrderFour value, guint candidate)
{
  BsOrderFour is_better = value < reach->best;
  BsOrderFour worse = (reach->best & is_better) | (value & ~is_better);

  reach->second = bs_order_four_min (reach->second, worse);
  reach->best = (value & is_better) | (reach->best & ~is_better);
  reach->via = ((gint32)candidate & is_better) | (reach->via & ~is_better);
}

static BsOrderReach
reach_stand (const BsOrderLayers *self, guint place, guint right)
{
  const guint64 *arcs = arcs_into (self, place, right);
  guint j = self->candidate_of[right];
  BsOrderReach reach = nowhere;

  for (guint word = 0; word < self->n_words; word++)
    for (guint64 rest = arcs[word]; rest != 0; rest &= rest - 1)
      {
        guint left = word * 64 + (guint)__builtin_ctzll (rest);
        guint i = self->candidate_of[left];
        const BsOrderReach *before = &self->reach[bs_order_layers_index (self, place - 1, left)];
        BsOrderFour value = bs_order_four_step (bs_order_reach_except (before, j),
                                                bs_order_table_arcs (self->table, i, j));
        add_way (&reach, value, i);
      }
  reach.best += self->prices[j];
  reach.second += self->prices[j];
  return reach;
}

static BsOrderReach
reach_first (const BsOrderLayers *self, guint stand)
{
  guint j = self->candidate_of[stand];
  BsOrderReach reach = nowhere;

  if (may_stand (self, 0, stand))
    reach.best = self->table->first[j] + self->prices[j];
  return reach;
}

gint32
bs_order_layers_forward (BsOrderLayers *self)
{
  const BsOrderTable *table = self->table;
  gint32 least = BS_ORDER_NEVER;

  for (guint stand = 0; stand < self->n_stands; stand++)
    self->reach[stand] = reach_first (self, stand);
  for (guint place = 1; place < table->n_places; place++)
    for (guint stand = 0; stand < self->n_stands; stand++)
      self->reach[bs_order_layers_index (self, place, stand)] = reach_stand (self, place, stand);
  for (guint stand = 0; stand < self->n_stands; stand++)
    {
      guint place = table->n_places - 1;
      BsOrderFour end = self->reach[bs_order_layers_index (self, place, stand)].best
                        + table->last[self->candidate_of[stand]];
      least = MIN (least, bs_order_four_least (end));
    }
  return least - bs_order_layers_sum_prices (self);
}

/* Counts in the way that leaves a stand by an arc, by the orientation of the stand. */
static void
leave_by (BsOrderLayers *self, guint place, guint left, guint right)
{
  guint i = self->candidate_of[left], j = self->candidate_of[right];
  const BsOrderFour *arcs = bs_order_table_arcs (self->table, i, j);
  const BsOrderReach *behind = &self->leave[bs_order_layers_index (self, place + 1, right)];
  BsOrderFour rest = bs_order_reach_except (behind, i) + self->prices[j];
  BsOrderFour value = {
    bs_order_four_least (arcs[0] + rest),
    bs_order_four_least (arcs[1] + rest),
    bs_order_four_least (arcs[2] + rest),
    bs_order_four_least (arcs[3] + rest),
  };

  add_way (&self->leave[bs_order_layers_index (self, place, left)], value, j);
}

void
bs_order_layers_backward (BsOrderLayers *self)
{
  const BsOrderTable *table = self->table;
  guint last = table->n_places - 1;

  for (guint stand = 0; stand < self->n_stands; stand++)
    {
      BsOrderReach *leave = &self->leave[bs_order_layers_index (self, last, stand)];
      *leave = nowhere;
      if (may_stand (self, last, stand))
        leave->best = table->last[self->candidate_of[stand]];
    }
  for (guint place = last; place-- > 0;)
    {
      for (guint stand = 0; stand < self->n_stands; stand++)
        self->leave[bs_order_layers_index (self, place, stand)] = nowhere;
      for (guint right = 0; right < self->n_stands; right++)
        for (guint word = 0; word < self->n_words; word++)
          for (guint64 rest = arcs_into (self, place + 1, right)[word]; rest != 0; rest &= rest - 1)
            leave_by (self, place, word * 64 + (guint)__builtin_ctzll (rest), right);
    }
}

/* Least cost of a row, prices included, that takes an arc. */
static gint32
price_arc (const BsOrderLayers *self, guint place, guint left, guint right)
{
  guint i = self->candidate_of[left], j = self->candidate_of[right];
  const BsOrderReach *before = &self->reach[bs_order_layers_index (self, place - 1, left)];
  const BsOrderReach *behind = &self->leave[bs_order_layers_index (self, place, right)];
  BsOrderFour value = bs_order_four_step (bs_order_reach_except (before, j),
                                          bs_order_table_arcs (self->table, i, j));

  return bs_order_four_least (value + bs_order_reach_except (behind, i)) + self->prices[j];
}

gsize
bs_order_layers_prune (BsOrderLayers *self, gint32 cost)
{
  gint32 most = cost + bs_order_layers_sum_prices (self);
  gsize n_left = 0;

  for (guint place = 1; place < self->table->n_places; place++)
    for (guint right = 0; right < self->n_stands; right++)
      for (guint word = 0; word < self->n_words; word++)
        {
          guint64 *arcs = &arcs_into (self, place, right)[word];
          for (guint64 rest = *arcs; rest != 0; rest &= rest - 1)
            {
              guint bit = (guint)__builtin_ctzll (rest);
              if (price_arc (self, place, word * 64 + bit, right) >= most)
                *arcs &= ~(G_GUINT64_CONSTANT (1) << bit);
              else
                n_left++;
            }
        }
  return n_left;
}

typedef struct
{
  guint stand, orientation;
  gint32 value; /* of reach that is to be explained */
  guint behind; /* candidate at the place behind, or n_candidates */
} Step;

static Step
find_end (const BsOrderLayers *self)
{
  const BsOrderTable *table = self->table;
  Step end = { .behind = table->n_candidates };
  gint32 least = G_MAXINT32;

  for (guint stand = 0; stand < self->n_stands; stand++)
    for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
      {
        gint32 value
            = self->reach[bs_order_layers_index (self, table->n_places - 1, stand)].best[o];
        gint32 cost = value + table->last[self->candidate_of[stand]][o];
        if (cost < least)
          {
            least = cost;
            end.stand = stand;
            end.orientation = o;
            end.value = value;
          }
      }
  return end;
}

/* Which node before explains the value of this one. */
static Step
step_back (const BsOrderLayers *self, guint place, Step step)
{
  guint j = self->candidate_of[step.stand];
  gint32 value = step.value - self->prices[j];

  for (guint left = 0; left < self->n_stands; left++)
    {
      guint i = self->candidate_of[left];
      const BsOrderReach *before = &self->reach[bs_order_layers_index (self, place - 1, left)];
      BsOrderFour ways = bs_order_reach_except (before, j);

      if (i == step.behind
          || (arcs_into (self, place, step.stand)[left / 64] >> left % 64 & 1) == 0)
        continue;
      for (guint a = 0; a < BS_N_ORIENTATIONS; a++)
        if (ways[a] + bs_order_table_arcs (self->table, i, j)[a][step.orientation] == value)
          return (Step){ left, a, ways[a], j };
    }
  g_assert_not_reached ();
}

void
bs_order_layers_trace (const BsOrderLayers *self, guint *row)
{
  Step step = find_end (self);

  for (guint place = self->table->n_places - 1; place > 0; place--)
    {
      row[place] = self->candidate_of[step.stand];
      step = step_back (self, place, step);
    }
  row[0] = self->candidate_of[step.stand];
}
