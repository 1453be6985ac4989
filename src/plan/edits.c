/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edits-private.h"

#include "core/packs.h"
#include "core/text.h"

/* Edits of the order and its packs; those of sections and lists are in edits-parts.c. */

static BsPlacement *
get_placement (const BsPlan *plan, int place)
{
  return &g_array_index (plan->order, BsPlacement, place);
}

static gboolean
has_place (const BsPlan *plan, int place)
{
  return place >= 0 && place < (int)plan->order->len;
}

static gboolean
pack_holds (const BsPack *pack, int place)
{
  return place >= pack->first && place < pack->first + pack->count;
}

/* A pack that is too small is none, and a pack of another alone is that other. */
static void
tidy_packs (GArray *packs)
{
  g_array_sort (packs, bs_packs_compare);
  for (guint i = packs->len; i-- > 0;)
    {
      const BsPack *pack = &g_array_index (packs, BsPack, i);

      if (pack->count < 2
          || (i > 0 && bs_packs_compare (pack, &g_array_index (packs, BsPack, i - 1)) == 0))
        g_array_remove_index (packs, i);
    }
}

static void
shrink_pack (BsPack *pack, int place)
{
  if (pack->first > place)
    pack->first--;
  else if (pack_holds (pack, place))
    pack->count--;
}

static void
grow_pack (BsPack *pack, int place)
{
  if (pack->first >= place)
    pack->first++;
  else if (pack_holds (pack, place))
    pack->count++;
}

/* A lamination went from one place to another. What moves within a pack stays in it, to its very
 * ends. */
static void
move_in_packs (GArray *packs, int from, int to)
{
  for (guint i = 0; i < packs->len; i++)
    {
      BsPack *pack = &g_array_index (packs, BsPack, i);

      if (pack_holds (pack, from) && pack_holds (pack, to))
        continue;
      shrink_pack (pack, from);
      if (pack->count >= 2)
        grow_pack (pack, to);
    }
  tidy_packs (packs);
}

BsPlan *
bs_edit_move (BsPlan *plan, int from, int to)
{
  g_return_val_if_fail (has_place (plan, from) && has_place (plan, to), NULL);

  if (from == to)
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  const BsPlacement moved = *get_placement (edited, from);

  bs_text_share (moved.lamination);
  bs_text_share (moved.unknown);
  g_array_remove_index (edited->order, (guint)from);
  g_array_insert_val (edited->order, (guint)to, moved);
  move_in_packs (edited->packs, from, to);
  return edited;
}

BsPlan *
bs_edit_turn (BsPlan *plan, int place, BsOrientation turn)
{
  g_return_val_if_fail (has_place (plan, place), NULL);

  if (turn == BS_ORIENTATION_AS_MARKED)
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  get_placement (edited, place)->orientation ^= turn;
  return edited;
}

BsPlan *
bs_edit_set_start (BsPlan *plan, int place, double start)
{
  g_return_val_if_fail (has_place (plan, place) && start >= 0.0, NULL);

  const double present = get_placement (plan, place)->start;
  if (present <= start && present >= start)
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  get_placement (edited, place)->start = start;
  return edited;
}

void
bs_edit_take_out (BsPlan *plan, int place)
{
  g_array_remove_index (plan->order, (guint)place);
  for (guint i = 0; i < plan->packs->len; i++)
    shrink_pack (&g_array_index (plan->packs, BsPack, i), place);
  tidy_packs (plan->packs);
}

BsPlan *
bs_edit_set_aside (BsPlan *plan, int place)
{
  g_return_val_if_fail (has_place (plan, place), NULL);

  BsPlan *edited = bs_plan_copy (plan);
  bs_edit_take_out (edited, place);
  return edited;
}

BsPlan *
bs_edit_bring_back (BsPlan *plan, const char *lamination, int place)
{
  g_return_val_if_fail (bs_plan_find_lamination (plan, lamination) != NULL, NULL);
  g_return_val_if_fail (bs_plan_find_place (plan, lamination) < 0, NULL);
  g_return_val_if_fail (place == (int)plan->order->len || has_place (plan, place), NULL);

  BsPlan *edited = bs_plan_copy (plan);
  bs_plan_insert_placement (edited, place, lamination, BS_ORIENTATION_AS_MARKED, 0.0);
  for (guint i = 0; i < edited->packs->len; i++)
    grow_pack (&g_array_index (edited->packs, BsPack, i), place);
  return edited;
}

static gboolean
is_same_order (const BsPlan *plan, const BsPlacement *order, guint n)
{
  if (plan->order->len != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    {
      const BsPlacement *present = get_placement (plan, (int)i);
      const gboolean is_same_start
          = present->start <= order[i].start && present->start >= order[i].start;
      if (!g_str_equal (present->lamination, order[i].lamination)
          || present->orientation != order[i].orientation || !is_same_start)
        return FALSE;
    }
  return TRUE;
}

BsPlan *
bs_edit_set_order (BsPlan *plan, const BsPlacement *order, guint n)
{
  if (is_same_order (plan, order, n))
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  g_array_set_size (edited->packs, 0);
  g_array_set_size (edited->order, 0);
  for (guint i = 0; i < n; i++)
    {
      const int place = bs_plan_find_place (plan, order[i].lamination);

      g_warn_if_fail (bs_plan_find_place (edited, order[i].lamination) < 0);
      bs_plan_insert_placement (edited, (int)i, order[i].lamination, order[i].orientation,
                                order[i].start);
      if (place >= 0)
        bs_text_set (&get_placement (edited, (int)i)->unknown,
                     get_placement (plan, place)->unknown);
    }
  return edited;
}

BsPlan *
bs_edit_set_packs (BsPlan *plan, const BsPack *packs, guint n)
{
  if (bs_packs_are (plan, packs, n))
    return bs_plan_ref (plan);

  BsPlan *edited = bs_plan_copy (plan);
  g_array_set_size (edited->packs, 0);
  for (guint i = 0; i < n; i++)
    {
      const BsPack pack = { .first = packs[i].first, .count = packs[i].count };

      g_warn_if_fail (pack.count >= 2 && pack.first + pack.count <= (int)plan->order->len);
      g_array_append_val (edited->packs, pack);
    }
  return edited;
}
