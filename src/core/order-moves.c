/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-moves.h"

/* Those that can stay are a longest row of laminations that stand in the same sequence before and
 * after: for each place, the longest such row that ends there. */
static void
mark_stayers (BsOrderMove *moves, guint n)
{
  g_autofree guint *length = g_new0 (guint, MAX (n, 1));
  g_autofree int *previous = g_new (int, MAX (n, 1));
  int last = -1;

  for (guint k = 0; k < n; k++)
    {
      previous[k] = -1;
      if (moves[k].from < 0)
        continue;
      length[k] = 1;
      for (guint i = 0; i < k; i++)
        if (moves[i].from >= 0 && moves[i].from < moves[k].from && length[i] + 1 > length[k])
          {
            length[k] = length[i] + 1;
            previous[k] = (int)i;
          }
      if (last < 0 || length[k] > length[last])
        last = (int)k;
    }
  for (; last >= 0; last = previous[last])
    moves[last].is_moved = FALSE;
}

BsOrderMove *
bs_order_moves_new (const BsPlan *before, const BsPlan *after)
{
  guint n = after->order->len;
  BsOrderMove *moves = g_new0 (BsOrderMove, n);

  for (guint k = 0; k < n; k++)
    {
      const BsPlacement *placement = &g_array_index (after->order, BsPlacement, k);
      int from = bs_plan_find_place (before, placement->lamination);
      BsOrientation lay = from >= 0 ? g_array_index (before->order, BsPlacement, from).orientation
                                    : BS_ORIENTATION_AS_MARKED;

      moves[k] = (BsOrderMove){ from, TRUE, lay ^ placement->orientation };
    }
  mark_stayers (moves, n);
  return moves;
}
