/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-proof-private.h"

#include <stdlib.h>

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

Level
bs_order_proof_fill_level (BsOrderProof *self, const BsProgress *progress)
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
