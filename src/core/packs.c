/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/packs.h"

static int
get_end (const BsPack *self)
{
  return self->first + self->count;
}

static gboolean
is_apart (const BsPack *a, const BsPack *b)
{
  return get_end (a) <= b->first || get_end (b) <= a->first;
}

/* Whole, and is larger. */
static gboolean
holds (const BsPack *self, const BsPack *other)
{
  return self->first <= other->first && get_end (self) >= get_end (other)
         && self->count > other->count;
}

gboolean
bs_packs_fit (const BsPack *a, const BsPack *b)
{
  return is_apart (a, b) || holds (a, b) || holds (b, a);
}

int
bs_packs_compare (gconstpointer a, gconstpointer b)
{
  const BsPack *x = a, *y = b;

  return x->first != y->first ? x->first - y->first : y->count - x->count;
}

gboolean
bs_packs_are (const BsPlan *plan, const BsPack *packs, guint n)
{
  if (plan->packs->len != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (bs_packs_compare (&g_array_index (plan->packs, BsPack, i), &packs[i]) != 0)
      return FALSE;
  return TRUE;
}

const BsPack *
bs_packs_find_joint (const BsPlan *plan, int place)
{
  const BsPack joint = { .first = place, .count = 2 };
  const BsPack *found = NULL;

  for (guint i = 0; i < plan->packs->len; i++)
    {
      const BsPack *pack = &g_array_index (plan->packs, BsPack, i);

      if (holds (pack, &joint) || bs_packs_compare (pack, &joint) == 0)
        found = pack; /* those within it come later */
    }
  return found;
}

gboolean
bs_packs_is_nest (const BsPlan *plan, const BsPack *pack)
{
  for (guint i = 0; i < plan->packs->len; i++)
    if (holds (pack, &g_array_index (plan->packs, BsPack, i)))
      return TRUE;
  return FALSE;
}
