/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/clamp-edits.h"

#include "plan/edits.h"

static const BsLayoutClamp *
get_clamp (const BsResults *results, guint i)
{
  return &g_array_index (results->set_clamps, BsLayoutClamp, i);
}

BsPlan *
bs_clamp_edits_begin (BsPlan *plan, const BsResults *results)
{
  if (plan->placed_clamps->len > 0)
    return bs_plan_ref (plan);
  return bs_edit_set_clamps (plan, (const BsLayoutClamp *)(void *)results->set_clamps->data,
                             results->set_clamps->len);
}

/* The first kind that reaches and has one left over; else that of the first clamp, or the first. */
static guint
choose_kind (const BsPlan *plan, const BsResults *results)
{
  for (guint i = 0; i < plan->shop.clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, i);
      int used = 0;

      for (guint j = 0; j < results->set_clamps->len; j++)
        used += get_clamp (results, j)->kind == i;
      if (kind->reach >= results->clamps.reach_needed && used < kind->count)
        return i;
    }
  return results->set_clamps->len > 0 ? get_clamp (results, 0)->kind : 0;
}

/* Where the one before the new one is; -1: none. The ends count as half a gap. */
static int
find_widest_gap (const BsResults *results, double *x)
{
  guint n = results->set_clamps->len;
  double length = results->stack->length, widest = 0.0;
  int before = -1;

  *x = length / 2.0;
  for (guint i = 0; i <= n && n > 0; i++)
    {
      double from = i > 0 ? get_clamp (results, i - 1)->x : -get_clamp (results, 0)->x;
      double to = i < n ? get_clamp (results, i)->x : 2.0 * length - get_clamp (results, n - 1)->x;

      if (to - from <= widest)
        continue;
      widest = to - from;
      before = (int)i - 1;
      *x = i == 0 ? to / 2.0 : i == n ? (from + length) / 2.0 : (from + to) / 2.0;
    }
  return before;
}

BsPlan *
bs_clamp_edits_add (BsPlan *plan, const BsResults *results, guint *placed_at)
{
  g_autoptr (BsPlan) begun = bs_clamp_edits_begin (plan, results);
  guint n = results->set_clamps->len;
  BsLayoutClamp clamp = { .is_above = TRUE };

  if (plan->shop.clamps->len == 0)
    return bs_plan_ref (plan);
  clamp.kind = choose_kind (plan, results);
  int before = find_widest_gap (results, &clamp.x);
  if (before >= 0)
    clamp.is_above = !get_clamp (results, (guint)before)->is_above;

  double most
      = ((const BsClampKind *)g_ptr_array_index (plan->shop.clamps, clamp.kind))->max_force_n;
  clamp.force = n > 0 ? 0.0 : most;
  for (guint i = 0; i < n; i++)
    clamp.force += get_clamp (results, i)->force / n;
  clamp.force = MIN (clamp.force, most);
  return bs_edit_place_clamp (begun, &clamp, placed_at);
}
