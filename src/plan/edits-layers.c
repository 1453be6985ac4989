/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "plan/edits.h"

#include <glib/gi18n-lib.h>

#include "core/text.h"

/* The front half keeps the id; both know their size, wood and label alone. */
static BsPlan *
halve_lamination (BsPlan *plan, const char *id)
{
  const BsLamination *whole = bs_plan_find_lamination (plan, id);
  const int place = bs_plan_find_place (plan, id);
  g_autofree char *other = bs_plan_make_lamination_id (plan);
  const char *const ids[] = { id, other };
  BsPlan *edited = bs_plan_ref (plan);

  for (int half = 0; half < 2; half++)
    {
      g_autoptr (BsPlan) before = edited;
      g_autoptr (BsLamination) lamination = bs_lamination_new (ids[half]);
      g_autofree char *label
          = g_strdup_printf ("%s%c", whole->label != NULL ? whole->label : "", 'a' + half);

      bs_text_set (&lamination->label, label);
      bs_text_set (&lamination->wood, whole->wood);
      lamination->length = whole->length;
      lamination->thickness = whole->thickness / 2.0;
      lamination->height = whole->height;
      edited = bs_edit_put_lamination (before, lamination);
    }
  if (place < 0)
    return edited;
  g_autoptr (BsPlan) apart = edited;
  return bs_edit_bring_back (apart, other, place + 1);
}

/* Where a place of the old order begins in the new one, which has more laminations. */
static int
find_begin (const BsPlan *plan, const BsPlan *edited, int place)
{
  if (place == (int)plan->order->len)
    return (int)edited->order->len;
  return bs_plan_find_place (edited, g_array_index (plan->order, BsPlacement, place).lamination);
}

/* The packs of before, each with both halves of all that it had. */
static BsPlan *
keep_packs (const BsPlan *plan, BsPlan *edited)
{
  g_autoptr (GArray) packs = g_array_new (FALSE, FALSE, sizeof (BsPack));

  for (guint i = 0; i < plan->packs->len; i++)
    {
      BsPack pack = g_array_index (plan->packs, BsPack, i);
      const int end = find_begin (plan, edited, pack.first + pack.count);

      pack.first = find_begin (plan, edited, pack.first);
      pack.count = end - pack.first;
      g_array_append_val (packs, pack);
    }
  return bs_edit_set_packs (edited, (const BsPack *)packs->data, packs->len);
}

static BsPlan *
halve_part (BsPlan *plan, const char *id)
{
  g_autoptr (BsPart) part = bs_part_copy (bs_plan_find_part (plan, id));
  /* Translators: the name of a part that is glued of two layers. */
  g_autofree char *name
      = g_strdup_printf (_ ("%s, layer"), part->name != NULL ? part->name : part->id);

  bs_text_set (&part->name, name);
  part->count *= 2;
  part->thickness /= 2.0;
  return bs_edit_put_part (plan, part);
}

BsPlan *
bs_edit_halve_want (BsPlan *plan, const BsWant *want)
{
  g_return_val_if_fail (bs_want_can_be_layers (want, plan), NULL);

  if (!want->is_lamination)
    return halve_part (plan, g_ptr_array_index (want->pieces, 0));
  if (want->pieces->len == 0)
    {
      BsPlan *edited = bs_plan_copy (plan);

      edited->buying.lamination_size = want->thickness / 2.0;
      return edited;
    }

  BsPlan *edited = bs_plan_ref (plan);
  for (guint i = 0; i < want->pieces->len; i++)
    {
      g_autoptr (BsPlan) before = edited;

      edited = halve_lamination (before, g_ptr_array_index (want->pieces, i));
    }
  g_autoptr (BsPlan) halved = edited;
  return keep_packs (plan, halved);
}
