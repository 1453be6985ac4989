/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stage-times.h"

G_BEGIN_DECLS

/* The ways to have something that the search behind core/stages keeps. */

/* Rounds before the last one that ways tell apart. Each more is a number more in which one way may
 * be better than another, and so many more ways to keep. */
#define BS_WAY_ROUNDS 3

/* Greatest number of pieces, or of clamps in a round, that a way can count. */
#define BS_WAY_MOST 2047

#define BS_WAY_SINGLE (-1) /* the round of a piece that is a lamination, joined in none */

/* A way to have something: either a piece, or a row of pieces that are to be joined. Ways are kept
 * in one array and name each other by number; a row names the row it goes on and the piece it adds.
 */
typedef struct
{
  gint64 time_us;               /* of a row: with the placing of its own pieces */
  gint16 clamps[BS_WAY_ROUNDS]; /* at work in each round, all stages together */
  gint16 first, end;            /* the laminations */
  gint16 round;                 /* of a piece: when it was joined; BS_WAY_SINGLE */
  gint16 n_pieces;              /* of a row */
  gint16 outer;                 /* of a row: clamps for its first piece */
  int row;                      /* of a row: what it goes on; of a piece: what it joins */
  int piece;                    /* of a row: the piece it adds */
} BsWay;

/* So many are kept at most: some 20 MB. */
#define BS_MAX_WAYS 400000

/* A way in a list, with what it is compared by close at hand. */
typedef struct
{
  gint64 time_us;
  guint64 counts; /* pieces, outer and clamps, packed */
  int number;
} BsWayEntry;

typedef struct
{
  GArray *all;      /* BsWay; their numbers are their places here */
  gboolean is_full; /* some could not be kept */
} BsWays;

void bs_ways_init (BsWays *self);
void bs_ways_clear (BsWays *self);

static inline const BsWay *
bs_ways_get (const BsWays *self, int number)
{
  return &g_array_index (self->all, BsWay, number);
}

/* Keeps a way; returns its number, -1 when there is no room. */
int bs_ways_keep (BsWays *self, const BsWay *way);

static inline int
bs_way_list_get (const GArray *list, guint i)
{
  return g_array_index (list, BsWayEntry, i).number;
}

/* Keeps a way in a list (of BsWayEntry, made when NULL), unless one that is there is no worse in
 * anything that may matter later; drops from the list those that it makes useless. */
void bs_ways_add (BsWays *self, GArray **list, const BsWay *way);

G_END_DECLS
