/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-change.h"

#include "core/order-row.h"

static void
take_if_less (BsOrderChange *best, BsOrderChange change)
{
  if (best->kind == BS_ORDER_CHANGE_NONE || change.extra < best->extra)
    *best = change;
}

static void
try_moves (BsOrderRow *row, guint place, BsOrderChange *best)
{
  for (guint target = 0; target < row->n; target++)
    {
      bs_order_row_propose_shift (row, place, 1, target, FALSE);
      if (target != place && bs_order_row_is_allowed (row))
        take_if_less (best, (BsOrderChange){ .kind = BS_ORDER_CHANGE_MOVE,
                                             .place = target,
                                             .extra = bs_order_row_price (row) - row->cost });
    }
}

static void
try_turns (const BsOrderRow *row, guint place, BsOrientation orientation, BsOrderChange *best)
{
  BsOrderFour cost = row->until[place] + row->after[place];

  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    if (o != orientation && (row->table->rules->ways[row->order[place]] & (1u << o)) != 0)
      take_if_less (best, (BsOrderChange){ .kind = BS_ORDER_CHANGE_TURN,
                                           .orientation = (BsOrientation)o,
                                           .extra = cost[o] - row->cost });
}

static void
try_exchanges (BsOrderRow *row, guint place, BsOrderChange *best)
{
  for (guint i = 0; i < row->n_idle; i++)
    {
      bs_order_row_propose_exchange (row, place, place, i);
      if (bs_order_row_is_allowed (row))
        take_if_less (best, (BsOrderChange){ .kind = BS_ORDER_CHANGE_EXCHANGE,
                                             .candidate = row->idle[i],
                                             .extra = bs_order_row_price (row) - row->cost });
    }
}

void
bs_order_find_changes (const BsOrderTable *table, const BsOrderPlace *places,
                       BsOrderChange *changes)
{
  g_autofree guint *order = g_new (guint, table->n_places);
  g_autoptr (BsOrderRow) row = NULL;

  for (guint k = 0; k < table->n_places; k++)
    order[k] = places[k].candidate;
  row = bs_order_row_new (table, order);
  for (guint k = 0; k < table->n_places; k++)
    {
      changes[k] = (BsOrderChange){ .kind = BS_ORDER_CHANGE_NONE };
      try_moves (row, k, &changes[k]);
      try_turns (row, k, places[k].orientation, &changes[k]);
      try_exchanges (row, k, &changes[k]);
    }
}
