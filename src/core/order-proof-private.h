/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-proof.h"

G_BEGIN_DECLS

/* What the two files of the proof share: rows and how they are built (order-proof-rows), what is
 * learnt from them (order-proof). */

typedef struct
{
  guint64 words[2];
} Set;

/* A row from the front up to one node. */
typedef struct
{
  Set used;       /* what it remembers to have used */
  gint32 value;   /* its cost, prices included */
  guint32 parent; /* the row without its last lamination */
  guint16 stand;
  guint8 orientation;
} Row;

struct _BsOrderProof
{
  BsOrderLayers *layers;
  gint32 prices; /* sum of the layers' */
  gint32 step;   /* from level to level */
  gint32 most;   /* rows that cannot end below this, prices included, are given up */
  Set counted;   /* candidates that every row remembers, and whose price it pays if unused */
  guint most_rows;
  Set *memory;  /* [stand] what a row that passes there goes on remembering */
  GArray *rows; /* Row, layer by layer, within each by stand */
  guint *first; /* [place x (n_stands + 1) + stand] its first row; of n_stands: the end */
  GArray *found[BS_N_ORIENTATIONS]; /* Row, those that reach a node */
};

typedef enum
{
  LEVEL_EMPTY,    /* no row ends below the level */
  LEVEL_FOUND,    /* some do */
  LEVEL_GIVEN_UP, /* too many rows, or asked to stop */
} Level;

static inline gboolean
set_has (const Set *self, guint i)
{
  return (self->words[i / 64] >> (i % 64) & 1) != 0;
}

static inline void
set_add (Set *self, guint i)
{
  self->words[i / 64] |= G_GUINT64_CONSTANT (1) << i % 64;
}

/* What is in the one and not in the other. */
static inline Set
set_without (const Set *self, const Set *other)
{
  return (Set){ { self->words[0] & ~other->words[0], self->words[1] & ~other->words[1] } };
}

/* What a row pays, in the end, for not having used these candidates, of those that are counted: the
 * price that was taken off for them; more than all when they are pinned. */
static inline gint32
price_counted (const BsOrderProof *self, const Set *set)
{
  gint32 sum = 0;

  for (guint word = 0; word < 2; word++)
    for (guint64 rest = set->words[word] & self->counted.words[word]; rest != 0; rest &= rest - 1)
      {
        guint i = word * 64 + (guint)__builtin_ctzll (rest);
        if (self->layers->table->rules->is_required[i])
          return BS_ORDER_NEVER;
        sum += self->layers->prices[i];
      }
  return sum;
}

static inline guint *
first_row (const BsOrderProof *self, guint place, guint stand)
{
  return &self->first[(gsize)place * (self->layers->n_stands + 1) + stand];
}

/* Builds all rows that may end below `most`. */
Level bs_order_proof_fill_level (BsOrderProof *self, const BsProgress *progress);

G_END_DECLS
