/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-proof.h"

#include <stdlib.h>
#include <string.h>

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

/* Of each candidate's likely neighbours, so many are remembered from the start. */
#define FIRST_MEMORY 8

/* The gap is closed in so many steps: the number of rows grows steeply with the level, and what is
 * learnt at a low one saves them at the next. */
#define N_LEVELS 12

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

/* The least that the rest of a row can cost, by the relaxation, without the candidates that it
 * remembers to have used. */
static inline BsOrderFour
find_rest (const BsOrderReach *leave, const Set *used)
{
  BsOrderFour rest = leave->best;

  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    if (leave->via[o] >= 0 && set_has (used, (guint)leave->via[o]))
      rest[o] = leave->second[o];
  return rest;
}

static void
extend_row (BsOrderProof *self, guint place, guint index, guint right)
{
  const BsOrderLayers *layers = self->layers;
  const Row *row = &g_array_index (self->rows, Row, index);
  guint i = layers->candidate_of[row->stand], j = layers->candidate_of[right];
  BsOrderFour value, end;
  Set used;

  if (set_has (&row->used, j))
    return;
  value = bs_order_table_arcs (layers->table, i, j)[row->orientation]
          + (row->value + layers->prices[j]);
  end = value
        + find_rest (&layers->leave[bs_order_layers_index (layers, place, right)], &row->used);
  if (bs_order_four_least (end) >= self->most)
    return;
  used = row->used;
  used.words[0] &= self->memory[right].words[0];
  used.words[1] &= self->memory[right].words[1];
  set_add (&used, i);
  set_add (&used, j);
  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    if (end[o] < self->most)
      {
        Row longer = { used, value[o], index, (guint16)right, (guint8)o };
        g_array_append_val (self->found[o], longer);
      }
}

/* Cheapest first; the rest only fixes the order. */
static int
compare_rows (const void *a, const void *b)
{
  const Row *x = a, *y = b;

  if (x->value != y->value)
    return x->value < y->value ? -1 : 1;
  return x->parent < y->parent ? -1 : x->parent > y->parent ? 1 : 0;
}

/* What a row pays, in the end, for not having used these candidates, of those that are counted: the
 * price that was taken off for them; more than all when they are pinned. */
static gint32
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

/* Whether the cheaper row ends no dearer whatever follows: it can be followed by all that the other
 * can, and pays for the counted ones that it lacks. */
static inline gboolean
is_needless (const BsOrderProof *self, const Row *row, const Row *cheaper)
{
  Set hindrances = set_without (&cheaper->used, &row->used), lacks;

  if ((hindrances.words[0] | hindrances.words[1]) != 0)
    return FALSE;
  lacks = set_without (&row->used, &cheaper->used);
  return cheaper->value + price_counted (self, &lacks) <= row->value;
}

/* Keeps of the rows that reach one node those that no cheaper one, remembering no more, makes
 * needless. */
static void
keep_best (BsOrderProof *self, GArray *found)
{
  guint first = self->rows->len;

  if (found->len > 0)
    qsort (found->data, found->len, sizeof (Row), compare_rows);
  for (guint i = 0; i < found->len; i++)
    {
      const Row *row = &g_array_index (found, Row, i);
      gboolean is_needed = TRUE;

      for (guint j = first; j < self->rows->len && is_needed; j++)
        is_needed = !is_needless (self, row, &g_array_index (self->rows, Row, j));
      if (is_needed)
        g_array_append_vals (self->rows, row, 1);
    }
  g_array_set_size (found, 0);
}

static guint *
first_row (const BsOrderProof *self, guint place, guint stand)
{
  return &self->first[(gsize)place * (self->layers->n_stands + 1) + stand];
}

static void
reach_stand (BsOrderProof *self, guint place, guint right)
{
  const BsOrderLayers *layers = self->layers;
  const guint64 *arcs
      = &layers->arcs[bs_order_layers_index (layers, place, right) * layers->n_words];

  for (guint word = 0; word < layers->n_words; word++)
    for (guint64 rest = arcs[word]; rest != 0; rest &= rest - 1)
      {
        guint left = word * 64 + (guint)__builtin_ctzll (rest);
        for (guint i = *first_row (self, place - 1, left);
             i < *first_row (self, place - 1, left + 1); i++)
          extend_row (self, place, i, right);
      }
  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    keep_best (self, self->found[o]);
}

static void
start_rows (BsOrderProof *self)
{
  const BsOrderLayers *layers = self->layers;

  for (guint stand = 0; stand < layers->n_stands; stand++)
    {
      guint i = layers->candidate_of[stand];
      *first_row (self, 0, stand) = self->rows->len;
      for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
        {
          Row row = { .value = layers->reach[stand].best[o],
                      .parent = G_MAXUINT32,
                      .stand = (guint16)stand,
                      .orientation = (guint8)o };
          set_add (&row.used, i);
          if (row.value + layers->leave[stand].best[o] < self->most)
            g_array_append_val (self->rows, row);
        }
    }
  *first_row (self, 0, layers->n_stands) = self->rows->len;
}

typedef enum
{
  LEVEL_EMPTY,    /* no row ends below the level */
  LEVEL_FOUND,    /* some do */
  LEVEL_GIVEN_UP, /* too many rows, or asked to stop */
} Level;

static Level
fill_level (BsOrderProof *self, const BsProgress *progress)
{
  const BsOrderLayers *layers = self->layers;

  g_array_set_size (self->rows, 0);
  start_rows (self);
  for (guint place = 1; place < layers->table->n_places; place++)
    {
      for (guint stand = 0; stand < layers->n_stands; stand++)
        {
          *first_row (self, place, stand) = self->rows->len;
          if (self->rows->len > self->most_rows
              || !bs_progress_report (progress, (double)place / layers->table->n_places))
            return LEVEL_GIVEN_UP;
          reach_stand (self, place, stand);
        }
      *first_row (self, place, layers->n_stands) = self->rows->len;
    }
  return *first_row (self, layers->table->n_places - 1, 0) == self->rows->len ? LEVEL_EMPTY
                                                                              : LEVEL_FOUND;
}

/* The row as stands and as candidates. */
static void
read_row (const BsOrderProof *self, guint index, guint *stands, guint *candidates)
{
  for (guint k = self->layers->table->n_places; k-- > 0;)
    {
      const Row *row = &g_array_index (self->rows, Row, index);
      stands[k] = row->stand;
      candidates[k] = self->layers->candidate_of[row->stand];
      index = row->parent;
    }
}

/* Tells the stands between two uses of one candidate to remember it. TRUE when there are none. */
static gboolean
learn_repeats (BsOrderProof *self, const guint *stands, const guint *candidates)
{
  gboolean is_order = TRUE;

  for (guint k = 1; k < self->layers->table->n_places; k++)
    for (guint before = k; before-- > 0;)
      if (candidates[before] == candidates[k])
        {
          for (guint between = before; between <= k; between++)
            set_add (&self->memory[stands[between]], candidates[k]);
          is_order = FALSE;
          break;
        }
  return is_order;
}

/* The bound takes all prices off, also those of candidates that the order leaves out: from now on
 * these are counted. FALSE when the order leaves out one that is pinned. */
static gboolean
learn_unused (BsOrderProof *self, const guint *candidates)
{
  const BsOrderLayers *layers = self->layers;
  const gboolean *is_required = layers->table->rules->is_required;
  gboolean is_complete = TRUE;
  Set used = { { 0 } };

  for (guint k = 0; k < layers->table->n_places; k++)
    set_add (&used, candidates[k]);
  for (guint i = 0; i < layers->table->n_candidates; i++)
    if (!set_has (&used, i) && (layers->prices[i] != 0 || is_required[i]))
      {
        set_add (&self->counted, i);
        for (guint stand = 0; stand < layers->n_stands; stand++)
          set_add (&self->memory[stand], i);
        is_complete = is_complete && !is_required[i];
      }
  return is_complete;
}

static void
take_order (const BsOrderProof *self, const guint *candidates, guint *order, gint32 *cost)
{
  const BsOrderTable *table = self->layers->table;
  gint32 found = bs_order_table_orient (table, candidates, NULL);

  if (found < *cost)
    {
      *cost = found;
      memcpy (order, candidates, table->n_places * sizeof *order);
    }
}

/* Goes through the rows that end below the level, learns from them, and takes an order that is
 * better than the one known. Returns the least that any of them ends at. */
static gint32
learn (BsOrderProof *self, guint *order, gint32 *cost)
{
  const BsOrderTable *table = self->layers->table;
  g_autofree guint *stands = g_new (guint, table->n_places);
  g_autofree guint *candidates = g_new (guint, table->n_places);
  const Set counted = self->counted;
  gint32 least = G_MAXINT32;

  for (guint i = *first_row (self, table->n_places - 1, 0); i < self->rows->len; i++)
    {
      const Row *row = &g_array_index (self->rows, Row, i);
      Set lacks = set_without (&counted, &row->used);
      BsOrderFour last = table->last[self->layers->candidate_of[row->stand]];

      least = MIN (least, row->value + last[row->orientation] + price_counted (self, &lacks));
      read_row (self, i, stands, candidates);
      if (learn_repeats (self, stands, candidates))
        {
          if (learn_unused (self, candidates))
            take_order (self, candidates, order, cost);
        }
    }
  return least;
}

static void
start_memory (BsOrderProof *self)
{
  const BsOrderLayers *layers = self->layers;
  const BsOrderTable *table = layers->table;
  g_autofree gint32 *costs = g_new (gint32, table->n_candidates);

  for (guint stand = 0; stand < layers->n_stands; stand++)
    {
      guint j = layers->candidate_of[stand];
      for (guint i = 0; i < table->n_candidates; i++)
        {
          const BsOrderFour *arcs = bs_order_table_arcs (table, i, j);
          costs[i] = bs_order_four_least (bs_order_four_min (bs_order_four_min (arcs[0], arcs[1]),
                                                             bs_order_four_min (arcs[2], arcs[3])))
                     + layers->prices[i];
        }
      set_add (&self->memory[stand], j);
      costs[j] = G_MAXINT32;
      for (guint n = 0; n < FIRST_MEMORY; n++)
        {
          guint best = 0;
          for (guint i = 1; i < table->n_candidates; i++)
            if (costs[i] < costs[best])
              best = i;
          if (costs[best] < G_MAXINT32)
            set_add (&self->memory[stand], best);
          costs[best] = G_MAXINT32;
        }
    }
}

BsOrderProof *
bs_order_proof_new (BsOrderLayers *layers, gint32 cost, gint32 bound, guint most_rows)
{
  g_return_val_if_fail (layers->table->n_candidates <= BS_ORDER_PROOF_MOST, NULL);

  BsOrderProof *self = g_new0 (BsOrderProof, 1);
  gsize n_places = layers->table->n_places;

  self->layers = layers;
  self->prices = bs_order_layers_sum_prices (layers);
  self->step = MAX ((cost - bound) / N_LEVELS, 1);
  self->most_rows = most_rows;
  self->memory = g_new0 (Set, layers->n_stands);
  self->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  self->first = g_new (guint, n_places * (layers->n_stands + 1));
  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    self->found[o] = g_array_new (FALSE, FALSE, sizeof (Row));
  bs_order_layers_forward (layers);
  bs_order_layers_backward (layers);
  bs_order_layers_prune (layers, cost);
  start_memory (self);
  return self;
}

void
bs_order_proof_free (BsOrderProof *self)
{
  g_free (self->memory);
  g_free (self->first);
  g_array_unref (self->rows);
  for (guint o = 0; o < BS_N_ORIENTATIONS; o++)
    g_array_unref (self->found[o]);
  g_free (self);
}

gboolean
bs_order_proof_raise (BsOrderProof *self, guint *order, gint32 *cost, gint32 *bound,
                      const BsProgress *progress)
{
  gint32 target = MIN (*cost, *bound + self->step), least;

  if (*bound >= *cost)
    return FALSE;
  self->most = target + self->prices;
  switch (fill_level (self, progress))
    {
    case LEVEL_EMPTY:
      *bound = target;
      break;
    case LEVEL_FOUND:
      least = learn (self, order, cost) - self->prices;
      *bound = MIN (CLAMP (least, *bound, target), *cost);
      break;
    case LEVEL_GIVEN_UP:
    default:
      return FALSE;
    }
  return *bound < *cost;
}
