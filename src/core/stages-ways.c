/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-ways.h"

void
bs_ways_init (BsWays *self)
{
  self->all = g_array_new (FALSE, FALSE, sizeof (BsWay));
  self->is_full = FALSE;
}

void
bs_ways_clear (BsWays *self)
{
  g_clear_pointer (&self->all, g_array_unref);
}

int
bs_ways_keep (BsWays *self, const BsWay *way)
{
  if (self->all->len >= BS_MAX_WAYS)
    {
      self->is_full = TRUE;
      return -1;
    }
  g_array_append_val (self->all, *way);
  return (int)self->all->len - 1;
}

static gboolean
is_no_worse (const BsWay *a, const BsWay *b)
{
  if (a->time_us > b->time_us || a->n_pieces > b->n_pieces || a->outer > b->outer)
    return FALSE;
  for (int i = 0; i < BS_WAY_ROUNDS; i++)
    if (a->clamps[i] > b->clamps[i])
      return FALSE;
  return TRUE;
}

void
bs_ways_add (BsWays *self, GArray **list, const BsWay *way)
{
  guint kept = 0;

  if (*list == NULL)
    *list = g_array_new (FALSE, FALSE, sizeof (int));
  for (guint i = 0; i < (*list)->len; i++)
    if (is_no_worse (bs_ways_get (self, g_array_index (*list, int, i)), way))
      return;

  int number = bs_ways_keep (self, way);
  if (number < 0)
    return;
  for (guint i = 0; i < (*list)->len; i++)
    {
      int other = g_array_index (*list, int, i);
      if (!is_no_worse (way, bs_ways_get (self, other)))
        g_array_index (*list, int, kept++) = other;
    }
  g_array_set_size (*list, kept);
  g_array_append_val (*list, number);
}
