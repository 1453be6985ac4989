/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-oracle-private.h"

#include "core/cutting-knapsack.h"

#include <string.h>

/* A row longer than this is first tried by search. Steps of the table: room x types; the search
 * takes some hundreds of nodes when few parts fit in the row. */
#define SEARCH_ROOM 8000
#define QUICK_NODES 4000
#define SEARCH_NODES 400000

void
bs_cut_tables_init_class (BsCutOracle *self, guint index)
{
  const BsCutClass *class = &self->model->classes[index];
  BsCutClassTable *table = &self->classes[index];
  guint n = self->model->n_types;

  table->order = g_new0 (guint, n + 1);
  table->first = g_new (gint32, n + 1);
  table->rows_end = g_new0 (guint, n + 1);
  table->row_type = g_new (guint, n + 1);
  table->best = g_new (gint64, (gsize) class->max_second + 1);
  for (guint t = 0; t < n; t++)
    {
      guint i = table->n_order;

      if (!class->fits[t])
        continue;
      for (; i > 0
             && bs_cut_first_size (self, class, table->order[i - 1])
                    > bs_cut_first_size (self, class, t);
           i--)
        table->order[i] = table->order[i - 1];
      table->order[i] = t;
      table->n_order++;
    }
  for (guint i = 0; i < table->n_order; i++)
    {
      gint32 first = bs_cut_first_size (self, class, table->order[i]);
      if (table->n_levels == 0 || (!class->is_row && table->first[table->n_levels - 1] != first))
        table->first[table->n_levels++] = first;
      else
        table->first[table->n_levels - 1] = first;
    }
}

gboolean
bs_cut_is_long_row (const BsCutClass *class)
{
  return class->is_row && class->max_second > SEARCH_ROOM;
}

/* The value of each level's slice in each group of the class. */
static void
record_level (BsCutOracle *self, guint index, guint level)
{
  for (guint g = 0; g < self->model->n_groups; g++)
    if (self->model->groups[g].class == index)
      self->groups[g].slice[level] = self->classes[index].best[self->model->groups[g].second];
}

/* What a row is worth at most when this item, the next of the table, is the last in it, once. */
static void
record_last (BsCutOracle *self, guint index, const BsKnapsackItem *item)
{
  const BsCutClassTable *table = &self->classes[index];

  for (guint g = 0; g < self->model->n_groups; g++)
    if (self->model->groups[g].class == index)
      {
        gint32 rest = self->model->groups[g].second - item->size;
        self->groups[g].last[table->n_rows] = rest < 0 ? 0 : table->best[rest] + item->value;
      }
}

void
bs_cut_tables_fill_class (BsCutOracle *self, guint index)
{
  const BsCutClass *class = &self->model->classes[index];
  BsCutClassTable *table = &self->classes[index];
  gsize width = (gsize) class->max_second + 1;
  guint level = 0;

  if (table->taken == NULL)
    table->taken = g_new (guint16, width * MAX (table->n_order, 1));
  table->is_ready = TRUE;
  table->n_rows = 0;
  memset (table->best, 0, width * sizeof (gint64));
  for (guint i = 0; i < table->n_order; i++)
    {
      guint type = table->order[i];
      BsKnapsackItem item
          = { bs_cut_second_size (self, class, type), self->limits[type], self->values[type] };

      while (bs_cut_first_size (self, class, type) > table->first[level])
        {
          table->rows_end[level] = table->n_rows;
          record_level (self, index, level++);
        }
      if (item.value <= 0 || item.limit <= 0 || item.size > class->max_second)
        continue;
      if (class->is_row)
        record_last (self, index, &item);
      bs_knapsack_add (table->best, table->taken + table->n_rows * width, class->max_second, &item);
      table->row_type[table->n_rows++] = type;
    }
  for (; level < table->n_levels; level++)
    {
      table->rows_end[level] = table->n_rows;
      record_level (self, index, level);
    }
}

/* A long row without a table, when that is quick. */
static gboolean
search_row (BsCutOracle *self, guint index)
{
  const BsCutGroup *group = &self->model->groups[index];
  const BsCutClass *class = &self->model->classes[group->class];
  g_autofree BsKnapsackItem *items = g_new0 (BsKnapsackItem, self->model->n_types + 1);
  BsCutGroupTable *table = &self->groups[index];
  gboolean is_best;

  for (guint t = 0; t < self->model->n_types; t++)
    items[t] = (BsKnapsackItem){ bs_cut_second_size (self, class, t),
                                 class->fits[t] ? self->limits[t] : 0, self->values[t] };
  table->slice[0] = bs_knapsack_search (
      items, self->model->n_types, group->second, self->floors[index],
      self->is_quick ? QUICK_NODES : SEARCH_NODES, table->row_count, &is_best);
  return is_best || self->is_quick;
}

/* What a row or the slices in each room are worth. */
static void
fill_group (BsCutOracle *self, guint index)
{
  const BsCutGroup *group = &self->model->groups[index];
  const BsCutClass *class = &self->model->classes[group->class];
  BsCutClassTable *levels = &self->classes[group->class];
  BsCutGroupTable *table = &self->groups[index];

  table->is_ready = TRUE;
  table->row_count[0] = -1;
  if (bs_cut_is_long_row (class) && search_row (self, index))
    return;
  table->row_count[0] = -1;
  if (!levels->is_ready)
    bs_cut_tables_fill_class (self, group->class);
  if (class->is_row)
    return;
  table->best[0] = 0;
  table->choice[0] = BS_CUT_STEP_ON;
  for (gint32 room = 1; room <= group->max_first; room++)
    {
      gint64 best = table->best[room - 1], shorter = 0;
      gint16 choice = BS_CUT_STEP_ON;

      for (guint k = 0; k < levels->n_levels && levels->first[k] <= room; k++)
        {
          gint64 value = table->slice[k];
          if (value > shorter && table->best[room - levels->first[k]] + value > best)
            {
              best = table->best[room - levels->first[k]] + value;
              choice = (gint16)k;
            }
          shorter = value;
        }
      table->best[room] = best;
      table->choice[room] = choice;
    }
}

BsCutGroupTable *
bs_cut_tables_ready (BsCutOracle *self, const BsCutSheet *sheet)
{
  BsCutGroupTable *table = &self->groups[sheet->group];

  if (!table->is_ready)
    fill_group (self, sheet->group);
  return table;
}
