/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits-private.h"

#include "core/limits.h"
#include "core/text.h"

/* Edits of the clamps of the last press. */

static const BsPlacedClamp *
get_clamp (const BsPlan *plan, guint place)
{
  return &g_array_index (plan->placed_clamps, BsPlacedClamp, place);
}

static gboolean
is_same (double a, double b)
{
  return a <= b && a >= b;
}

static double
limit (const BsLimit *self, double value)
{
  return CLAMP (value, self->least, self->most);
}

static guint
add_clamp (BsPlan *plan, const BsLayoutClamp *clamp)
{
  const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, clamp->kind);

  return bs_plan_place_clamp (plan, kind->id, limit (&bs_limits.placed_x, clamp->x),
                              limit (&bs_limits.placed_force, clamp->force), clamp->is_above);
}

BsPlan *
bs_edit_place_clamp (BsPlan *plan, const BsLayoutClamp *clamp, guint *placed_at)
{
  g_return_val_if_fail (clamp->kind < plan->shop.clamps->len, NULL);

  BsPlan *edited = bs_plan_copy (plan);
  guint place = add_clamp (edited, clamp);

  if (placed_at != NULL)
    *placed_at = place;
  return edited;
}

BsPlan *
bs_edit_move_clamp (BsPlan *plan, guint place, double x, guint *moved_to)
{
  g_return_val_if_fail (place < plan->placed_clamps->len, NULL);

  guint to = place;
  double at = limit (&bs_limits.placed_x, x);

  /* Where it stays put the neighbours decide; equal ones keep their order. */
  while (to > 0 && get_clamp (plan, to - 1)->x > at)
    to--;
  while (to + 1 < plan->placed_clamps->len && get_clamp (plan, to + 1)->x < at)
    to++;
  if (moved_to != NULL)
    *moved_to = to;
  if (is_same (get_clamp (plan, place)->x, at))
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  g_array_index (edited->placed_clamps, BsPlacedClamp, place).x = at;
  bs_plan_sort_clamps (edited);
  return edited;
}

BsPlan *
bs_edit_tighten_clamp (BsPlan *plan, guint place, double force_n)
{
  g_return_val_if_fail (place < plan->placed_clamps->len, NULL);

  double force = limit (&bs_limits.placed_force, force_n);

  if (is_same (get_clamp (plan, place)->force_n, force))
    return bs_plan_ref (plan);
  BsPlan *edited = bs_plan_copy (plan);
  g_array_index (edited->placed_clamps, BsPlacedClamp, place).force_n = force;
  return edited;
}

BsPlan *
bs_edit_turn_clamp (BsPlan *plan, guint place, gboolean is_above)
{
  g_return_val_if_fail (place < plan->placed_clamps->len, NULL);

  if (!get_clamp (plan, place)->is_above == !is_above)
    return bs_plan_ref (plan);
  BsPlan *edited = bs_plan_copy (plan);
  g_array_index (edited->placed_clamps, BsPlacedClamp, place).is_above = is_above;
  return edited;
}

BsPlan *
bs_edit_choose_clamp (BsPlan *plan, guint place, const char *kind)
{
  g_return_val_if_fail (place < plan->placed_clamps->len, NULL);
  g_return_val_if_fail (bs_plan_find_clamp_kind (plan, kind) >= 0, NULL);

  if (g_str_equal (get_clamp (plan, place)->kind, kind))
    return bs_plan_ref (plan);
  BsPlan *edited = bs_plan_copy (plan);
  bs_text_set (&g_array_index (edited->placed_clamps, BsPlacedClamp, place).kind, kind);
  return edited;
}

BsPlan *
bs_edit_take_off_clamp (BsPlan *plan, guint place)
{
  g_return_val_if_fail (place < plan->placed_clamps->len, NULL);

  BsPlan *edited = bs_plan_copy (plan);
  g_array_remove_index (edited->placed_clamps, place);
  return edited;
}

static gboolean
are_same (const BsPlan *a, const BsPlan *b)
{
  if (a->placed_clamps->len != b->placed_clamps->len)
    return FALSE;
  for (guint i = 0; i < a->placed_clamps->len; i++)
    {
      const BsPlacedClamp *first = get_clamp (a, i), *second = get_clamp (b, i);

      if (!g_str_equal (first->kind, second->kind) || !is_same (first->x, second->x)
          || !is_same (first->force_n, second->force_n) || first->is_above != second->is_above)
        return FALSE;
    }
  return TRUE;
}

BsPlan *
bs_edit_set_clamps (BsPlan *plan, const BsLayoutClamp *clamps, guint n)
{
  g_autoptr (BsPlan) edited = bs_plan_copy (plan);

  g_array_set_size (edited->placed_clamps, 0);
  for (guint i = 0; i < MIN (n, BS_MAX_PLACED_CLAMPS); i++)
    {
      g_return_val_if_fail (clamps[i].kind < plan->shop.clamps->len, NULL);
      add_clamp (edited, &clamps[i]);
    }
  return are_same (plan, edited) ? bs_plan_ref (plan) : g_steal_pointer (&edited);
}

static gboolean
are_in_order (const BsPlan *plan)
{
  for (guint i = 1; i < plan->placed_clamps->len; i++)
    if (get_clamp (plan, i)->x < get_clamp (plan, i - 1)->x)
      return FALSE;
  return TRUE;
}

BsPlan *
bs_edit_sort_clamps (BsPlan *plan)
{
  if (are_in_order (plan))
    return plan;

  g_autoptr (BsPlan) before = plan;
  BsPlan *edited = bs_plan_copy (before);
  bs_plan_sort_clamps (edited);
  return edited;
}
