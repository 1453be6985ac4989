/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* One row: the most valuable choice of things whose sizes sum to no more than a room. */

typedef struct
{
  gint32 size;
  int limit; /* how many of it at most */
  gint64 value;
} BsKnapsackItem;

/* By depth-first search in order of value for size, which is fast where few things fit in the room.
 * Looks only for more than `floor`. counts: how many of each to take. Returns their value, or the
 * floor; is_best: whether there is no more, which is not known when there were more than n_nodes to
 * look at. */
gint64 bs_knapsack_search (const BsKnapsackItem *items, guint n, gint32 room, gint64 floor,
                           guint n_nodes, int *counts, gboolean *is_best);

/* Improves a table of the best values for rooms 0 to room by some copies of one more item; taken:
 * how many of it are in each of them. Steps: room x copies. */
void bs_knapsack_add (gint64 *best, guint16 *taken, gint32 room, const BsKnapsackItem *item);

G_END_DECLS
