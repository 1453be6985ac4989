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

/* Five counts of 11 bits, each with a bit to spare above it. */
#define COUNT_BITS 12
#define SPARE_BITS G_GUINT64_CONSTANT (0x800800800800800)

static guint64
pack_counts (const BsWay *way)
{
  guint64 packed = (guint64)way->n_pieces << COUNT_BITS | (guint64)way->outer;

  for (int i = 0; i < BS_WAY_ROUNDS; i++)
    packed = packed << COUNT_BITS | (guint64)way->clamps[i];
  return packed;
}

/* All counts are compared at once: with the spare bits set, no subtraction borrows from the next
 * count, and a spare bit falls where the count of a is greater. */
static inline gboolean
is_no_worse (const BsWayEntry *a, const BsWayEntry *b)
{
  return a->time_us <= b->time_us
         && (((b->counts | SPARE_BITS) - a->counts) & SPARE_BITS) == SPARE_BITS;
}

void
bs_ways_add (BsWays *self, GArray **list, const BsWay *way)
{
  BsWayEntry added = { .time_us = way->time_us, .counts = pack_counts (way) };
  guint kept = 0;

  if (*list == NULL)
    *list = g_array_new (FALSE, FALSE, sizeof (BsWayEntry));
  BsWayEntry *entries = (BsWayEntry *)(gpointer)(*list)->data;
  for (guint i = 0; i < (*list)->len; i++)
    if (is_no_worse (&entries[i], &added))
      return;

  added.number = bs_ways_keep (self, way);
  if (added.number < 0)
    return;
  for (guint i = 0; i < (*list)->len; i++)
    if (!is_no_worse (&added, &entries[i]))
      entries[kept++] = entries[i];
  g_array_set_size (*list, kept);
  g_array_append_val (*list, added);
}
