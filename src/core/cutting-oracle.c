/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-oracle.h"

#include "core/cutting-knapsack.h"

#include <string.h>

/* A row longer than this is first tried by search. Steps of the table: room x types; the search
 * takes some hundreds of nodes when few parts fit in the row. */
#define SEARCH_ROOM 8000
#define QUICK_NODES 4000
#define SEARCH_NODES 400000

/* Slices of one class, from short to long: the table over the second axis takes in one type after
 * the other, and a level is where all types up to some size are in it. */
typedef struct
{
  gboolean is_ready;
  guint n_order;
  guint *order; /* types, by size along the first axis */
  guint n_levels;
  gint32 *first;   /* of each level: size of its slices along the first axis */
  guint *rows_end; /* of each level: how many rows of the table belong to it */
  guint n_rows;
  guint *row_type;
  guint16 *taken; /* row after row */
  gint64 *best;   /* of the second axis */
} ClassTable;

/* Boards of one width: the best value of a slice of each level, and of all slices by the room that
 * they have along the first axis. */
typedef struct
{
  gboolean is_ready;
  gint64 *slice;  /* of each level */
  gint64 *best;   /* of each room */
  gint16 *choice; /* level that the room ends with, -1: none */
  int *row_count; /* of rows that were searched */
  gint64 *last;   /* of rows that were not: best value with one of the table's types last */
} GroupTable;

struct _BsCutOracle
{
  const BsCutModel *model;
  gint64 *values;
  int *limits;
  gboolean is_quick;
  gint64 *floors;  /* of each group */
  const int *caps; /* how many of each a pattern may hold in all; NULL: any */
  ClassTable *classes;
  GroupTable *groups;

  /* The sheet with defects that was looked at last. */
  guint spotted;     /* its index, or G_MAXUINT */
  gint64 *rest;      /* best value from each place on */
  gint16 *step;      /* what to do at each place: a level, or one of the below */
  GHashTable *bands; /* Band -> gint64 */
};

#define STEP_ON (-1)
#define STEP_BLOCK (-2)

/* A slice that touches defects or pins. */
typedef struct
{
  guint64 spots;
  gint32 first; /* longest part that it takes */
} Band;

static guint
hash_band (gconstpointer key)
{
  const Band *band = key;

  return (guint)(band->spots * 31 + (guint64)band->first * 17);
}

static gboolean
equal_bands (gconstpointer a, gconstpointer b)
{
  const Band *left = a, *right = b;

  return left->spots == right->spots && left->first == right->first;
}

static const BsCutClass *
class_of (const BsCutOracle *self, const BsCutSheet *sheet)
{
  return &self->model->classes[self->model->groups[sheet->group].class];
}

static gint32
first_size (const BsCutOracle *self, const BsCutClass *class, guint type)
{
  return self->model->types[type].size[bs_cut_first_axis (class->order)];
}

static gint32
second_size (const BsCutOracle *self, const BsCutClass *class, guint type)
{
  return self->model->types[type].size[1 - bs_cut_first_axis (class->order)];
}

static void
init_class (BsCutOracle *self, guint index)
{
  const BsCutClass *class = &self->model->classes[index];
  ClassTable *table = &self->classes[index];
  guint n = self->model->n_types;

  table->order = g_new (guint, n + 1);
  table->first = g_new (gint32, n + 1);
  table->rows_end = g_new0 (guint, n + 1);
  table->row_type = g_new (guint, n + 1);
  table->best = g_new (gint64, (gsize) class->max_second + 1);
  for (guint t = 0; t < n; t++)
    {
      guint i = table->n_order;

      if (!class->fits[t])
        continue;
      for (; i > 0 && first_size (self, class, table->order[i - 1]) > first_size (self, class, t);
           i--)
        table->order[i] = table->order[i - 1];
      table->order[i] = t;
      table->n_order++;
    }
  for (guint i = 0; i < table->n_order; i++)
    {
      gint32 first = first_size (self, class, table->order[i]);
      if (table->n_levels == 0 || (!class->is_row && table->first[table->n_levels - 1] != first))
        table->first[table->n_levels++] = first;
      else
        table->first[table->n_levels - 1] = first;
    }
}

BsCutOracle *
bs_cut_oracle_new (const BsCutModel *model)
{
  BsCutOracle *self = g_new0 (BsCutOracle, 1);
  gint32 longest = 0;

  self->model = model;
  self->values = g_new0 (gint64, model->n_types + 1);
  self->limits = g_new0 (int, model->n_types + 1);
  self->classes = g_new0 (ClassTable, model->n_classes + 1);
  self->groups = g_new0 (GroupTable, model->n_groups + 1);
  for (guint c = 0; c < model->n_classes; c++)
    init_class (self, c);
  for (guint g = 0; g < model->n_groups; g++)
    {
      const BsCutGroup *group = &model->groups[g];
      GroupTable *table = &self->groups[g];

      table->slice = g_new0 (gint64, model->n_types + 1);
      table->best = g_new (gint64, (gsize)group->max_first + 1);
      table->choice = g_new (gint16, (gsize)group->max_first + 1);
      table->row_count = g_new0 (int, model->n_types + 1);
      table->last = g_new0 (gint64, model->n_types + 1);
      longest = MAX (longest, group->max_first);
    }
  self->floors = g_new0 (gint64, model->n_groups + 1);
  self->rest = g_new (gint64, (gsize)longest + 1);
  self->step = g_new (gint16, (gsize)longest + 1);
  self->bands = g_hash_table_new_full (hash_band, equal_bands, g_free, g_free);
  self->spotted = G_MAXUINT;
  return self;
}

void
bs_cut_oracle_free (BsCutOracle *self)
{
  if (self == NULL)
    return;
  for (guint c = 0; c < self->model->n_classes; c++)
    {
      ClassTable *table = &self->classes[c];
      g_free (table->order);
      g_free (table->first);
      g_free (table->rows_end);
      g_free (table->row_type);
      g_free (table->best);
      g_free (table->taken);
    }
  for (guint g = 0; g < self->model->n_groups; g++)
    {
      g_free (self->groups[g].slice);
      g_free (self->groups[g].best);
      g_free (self->groups[g].choice);
      g_free (self->groups[g].row_count);
      g_free (self->groups[g].last);
    }
  g_hash_table_unref (self->bands);
  g_free (self->floors);
  g_free (self->rest);
  g_free (self->step);
  g_free (self->values);
  g_free (self->limits);
  g_free (self->classes);
  g_free (self->groups);
  g_free (self);
}

void
bs_cut_oracle_set (BsCutOracle *self, const gint64 *values, const int *limits)
{
  memcpy (self->values, values, self->model->n_types * sizeof (gint64));
  memcpy (self->limits, limits, self->model->n_types * sizeof (int));
  for (guint c = 0; c < self->model->n_classes; c++)
    self->classes[c].is_ready = FALSE;
  for (guint g = 0; g < self->model->n_groups; g++)
    self->groups[g].is_ready = FALSE;
  self->spotted = G_MAXUINT;
  bs_cut_oracle_set_floors (self, NULL);
}

void
bs_cut_oracle_set_floors (BsCutOracle *self, const gint64 *floors)
{
  for (guint g = 0; g < self->model->n_groups; g++)
    self->floors[g] = floors == NULL ? 0 : floors[g];
}

void
bs_cut_oracle_set_quick (BsCutOracle *self, gboolean is_quick)
{
  self->is_quick = is_quick;
}

static gboolean
is_long_row (const BsCutClass *class)
{
  return class->is_row && class->max_second > SEARCH_ROOM;
}

gboolean
bs_cut_oracle_has_long_rows (const BsCutOracle *self)
{
  for (guint c = 0; c < self->model->n_classes; c++)
    if (is_long_row (&self->model->classes[c]))
      return TRUE;
  return FALSE;
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
  const ClassTable *table = &self->classes[index];

  for (guint g = 0; g < self->model->n_groups; g++)
    if (self->model->groups[g].class == index)
      {
        gint32 rest = self->model->groups[g].second - item->size;
        self->groups[g].last[table->n_rows] = rest < 0 ? 0 : table->best[rest] + item->value;
      }
}

static void
fill_class (BsCutOracle *self, guint index)
{
  const BsCutClass *class = &self->model->classes[index];
  ClassTable *table = &self->classes[index];
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
          = { second_size (self, class, type), self->values[type], self->limits[type] };

      while (first_size (self, class, type) > table->first[level])
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
  GroupTable *table = &self->groups[index];
  gboolean is_best;

  for (guint t = 0; t < self->model->n_types; t++)
    items[t] = (BsKnapsackItem){ second_size (self, class, t), self->values[t],
                                 class->fits[t] ? self->limits[t] : 0 };
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
  ClassTable *levels = &self->classes[group->class];
  GroupTable *table = &self->groups[index];

  table->is_ready = TRUE;
  table->row_count[0] = -1;
  if (is_long_row (class) && search_row (self, index))
    return;
  table->row_count[0] = -1;
  if (!levels->is_ready)
    fill_class (self, group->class);
  if (class->is_row)
    return;
  table->best[0] = 0;
  table->choice[0] = STEP_ON;
  for (gint32 room = 1; room <= group->max_first; room++)
    {
      gint64 best = table->best[room - 1], shorter = 0;
      gint16 choice = STEP_ON;

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

static GroupTable *
ready_group (BsCutOracle *self, const BsCutSheet *sheet)
{
  GroupTable *table = &self->groups[sheet->group];

  if (!table->is_ready)
    fill_group (self, sheet->group);
  return table;
}

/* The best values along the second axis, from each place on, of a slice that touches defects or
 * pins and takes parts up to some size. steps: the type to lay at each place or -1. */
static void
fill_band (BsCutOracle *self, const BsCutSheet *sheet, const Band *band, gint64 *best, int *steps)
{
  const BsCutClass *class = class_of (self, sheet);

  best[sheet->room[1]] = 0;
  for (gint32 place = sheet->room[1] - 1; place >= 0; place--)
    {
      best[place] = best[place + 1];
      steps[place] = -1;
      for (guint t = 0; t < self->model->n_types; t++)
        {
          gint32 end = place + second_size (self, class, t);
          if (self->values[t] <= 0 || self->limits[t] <= 0 || !class->fits[t]
              || end > sheet->room[1] || first_size (self, class, t) > band->first
              || best[end] + self->values[t] <= best[place]
              || !bs_cut_model_allows (self->model, sheet, t, band->spots, place))
            continue;
          best[place] = best[end] + self->values[t];
          steps[place] = (int)t;
        }
    }
}

static gint64
band_value (BsCutOracle *self, const BsCutSheet *sheet, Band band)
{
  gint64 *known = g_hash_table_lookup (self->bands, &band);

  if (known == NULL)
    {
      g_autofree gint64 *best = g_new (gint64, (gsize)sheet->room[1] + 1);
      g_autofree int *steps = g_new (int, (gsize)sheet->room[1] + 1);

      fill_band (self, sheet, &band, best, steps);
      known = g_memdup2 (&best[0], sizeof (gint64));
      g_hash_table_insert (self->bands, g_memdup2 (&band, sizeof band), known);
    }
  return *known;
}

/* The slice that holds a block and no longer parts. */
static gint64
block_value (BsCutOracle *self, const BsCutSheet *sheet, const BsCutBlock *block)
{
  Band band = { 0, block->to - block->from };

  bs_cut_model_find_spots (self->model, sheet, block->from, block->to, &band.spots);
  return band_value (self, sheet, band);
}

/* The best that can start at a place, when all places behind it are known. */
static void
fill_place (BsCutOracle *self, const BsCutSheet *sheet, gint32 place)
{
  const ClassTable *levels = &self->classes[self->model->groups[sheet->group].class];
  const GroupTable *table = &self->groups[sheet->group];
  const BsCutBlock *block = bs_cut_model_next_block (sheet, place);

  self->rest[place] = self->rest[place + 1];
  self->step[place] = STEP_ON;
  if (block != NULL && place >= block->from)
    {
      self->rest[place] = self->rest[MIN (block->to, sheet->room[0])]
                          + (place == block->from ? block_value (self, sheet, block) : 0);
      self->step[place] = STEP_BLOCK;
      if (place > block->from)
        return;
    }
  for (guint k = 0; k < levels->n_levels && place + levels->first[k] <= sheet->room[0]; k++)
    {
      gint32 end = place + levels->first[k];
      gint64 value = table->slice[k];
      guint64 spots;

      if (self->rest[end] + value <= self->rest[place])
        continue; /* not even without defects */
      if (!bs_cut_model_find_spots (self->model, sheet, place, end, &spots))
        continue;
      if (spots != 0)
        value = band_value (self, sheet, (Band){ spots, levels->first[k] });
      if (self->rest[end] + value > self->rest[place])
        {
          self->rest[place] = self->rest[end] + value;
          self->step[place] = (gint16)k;
        }
    }
}

/* The best slices from each place of a sheet with defects or pins. */
static void
fill_spotted (BsCutOracle *self, guint index)
{
  const BsCutSheet *sheet = &self->model->sheets[index];

  if (self->spotted == index)
    return;
  ready_group (self, sheet);
  self->spotted = index;
  g_hash_table_remove_all (self->bands);
  self->rest[sheet->room[0]] = 0;
  self->step[sheet->room[0]] = STEP_ON;
  for (gint32 place = sheet->room[0] - 1; place >= 0; place--)
    fill_place (self, sheet, place);
}

gint64
bs_cut_oracle_rest_value (BsCutOracle *self, guint index, gint32 used)
{
  const BsCutSheet *sheet = &self->model->sheets[index];

  if (used >= sheet->room[0])
    return 0;
  if (bs_cut_model_is_clear (self->model, sheet))
    return ready_group (self, sheet)->best[sheet->room[0] - used];
  fill_spotted (self, index);
  return self->rest[used];
}

gint64
bs_cut_oracle_value (BsCutOracle *self, guint index)
{
  const BsCutSheet *sheet = &self->model->sheets[index];

  return sheet->is_row ? ready_group (self, sheet)->slice[0]
                       : bs_cut_oracle_rest_value (self, index, 0);
}

gint64
bs_cut_oracle_row_value (BsCutOracle *self, guint index, gint32 room)
{
  guint class = self->model->groups[self->model->sheets[index].group].class;

  if (!self->classes[class].is_ready)
    fill_class (self, class);
  return self->classes[class].best[room];
}

/* The strips that the first rows of a table put in a room from a place on. */
static void
add_strips (BsCutOracle *self, BsCutPattern *pattern, const BsCutSheet *sheet, guint n_rows,
            gint32 room, gint32 second)
{
  const BsCutClass *class = class_of (self, sheet);
  const ClassTable *table = &self->classes[self->model->groups[sheet->group].class];

  for (guint row = n_rows; row-- > 0;)
    {
      guint type = table->row_type[row];
      int count = table->taken[row * ((gsize) class->max_second + 1) + (gsize)room];

      for (int i = 0; i < count; i++)
        {
          bs_cut_pattern_add_strip (pattern, type, second);
          second += second_size (self, class, type);
          room -= second_size (self, class, type);
        }
    }
}

/* The strips of a clear slice of some level. */
static void
add_level_strips (BsCutOracle *self, BsCutPattern *pattern, const BsCutSheet *sheet, guint level)
{
  const ClassTable *table = &self->classes[self->model->groups[sheet->group].class];

  add_strips (self, pattern, sheet, table->rows_end[level], sheet->room[1], 0);
}

static void
add_band_strips (BsCutOracle *self, BsCutPattern *pattern, const BsCutSheet *sheet, Band band)
{
  const BsCutClass *class = class_of (self, sheet);
  g_autofree gint64 *best = g_new (gint64, (gsize)sheet->room[1] + 1);
  g_autofree int *steps = g_new (int, (gsize)sheet->room[1] + 1);

  fill_band (self, sheet, &band, best, steps);
  for (gint32 place = 0; place < sheet->room[1];)
    if (steps[place] < 0
        || (self->caps != NULL && pattern->count[steps[place]] >= self->caps[steps[place]]))
      place++; /* the table knows of limits only as all or nothing */
    else
      {
        guint type = (guint)steps[place];
        bs_cut_pattern_add_strip (pattern, type, place);
        place += second_size (self, class, type);
      }
}

/* Adds the next slice at or behind `place` of the pattern; left: room not yet given to slices of a
 * clear sheet. FALSE when there is none. */
static gboolean
add_next_slice (BsCutOracle *self, BsCutPattern *pattern, gint32 *place, gint32 *left)
{
  const BsCutSheet *sheet = &self->model->sheets[pattern->sheet];
  const ClassTable *levels = &self->classes[self->model->groups[sheet->group].class];
  gint32 first;
  guint64 spots;

  if (bs_cut_model_is_clear (self->model, sheet))
    {
      const GroupTable *table = ready_group (self, sheet);
      guint level;

      while (*left > 0 && table->choice[*left] == STEP_ON)
        (*left)--;
      if (*left == 0)
        return FALSE;
      level = (guint)table->choice[*left];
      bs_cut_pattern_add_slice (pattern, *place, *place + levels->first[level]);
      add_level_strips (self, pattern, sheet, level);
      *place += levels->first[level];
      *left -= levels->first[level];
      return TRUE;
    }

  fill_spotted (self, pattern->sheet);
  while (*place < sheet->room[0] && self->step[*place] == STEP_ON)
    (*place)++;
  if (*place >= sheet->room[0])
    return FALSE;
  if (self->step[*place] == STEP_BLOCK)
    {
      const BsCutBlock *block = bs_cut_model_next_block (sheet, *place);
      first = block->to - *place;
    }
  else
    first = levels->first[self->step[*place]];
  bs_cut_model_find_spots (self->model, sheet, *place, *place + first, &spots);
  bs_cut_pattern_add_slice (pattern, *place, *place + first);
  if (spots != 0)
    add_band_strips (self, pattern, sheet, (Band){ spots, first });
  else
    add_level_strips (self, pattern, sheet, (guint)self->step[*place]);
  *place = MIN (*place + first, sheet->room[0]);
  return TRUE;
}

static void
add_row (BsCutOracle *self, BsCutPattern *pattern)
{
  const BsCutSheet *sheet = &self->model->sheets[pattern->sheet];
  const BsCutClass *class = class_of (self, sheet);
  const GroupTable *table = ready_group (self, sheet);
  gint32 place = 0;

  bs_cut_pattern_add_slice (pattern, 0, sheet->room[0]);
  if (table->row_count[0] < 0)
    {
      add_level_strips (self, pattern, sheet, 0);
      return;
    }
  for (guint t = 0; t < self->model->n_types; t++)
    for (int i = 0; i < table->row_count[t]; i++)
      {
        bs_cut_pattern_add_strip (pattern, t, place);
        place += second_size (self, class, t);
      }
}

BsCutPattern *
bs_cut_oracle_pattern (BsCutOracle *self, guint index)
{
  const BsCutSheet *sheet = &self->model->sheets[index];
  BsCutPattern *pattern = bs_cut_pattern_new (self->model, index);
  gint32 place = 0, left = sheet->room[0];

  if (sheet->is_row)
    add_row (self, pattern);
  else
    while (add_next_slice (self, pattern, &place, &left))
      continue;
  bs_cut_pattern_close (pattern, self->model);
  return pattern;
}

static BsCutPattern *
pattern_with_last (BsCutOracle *self, guint index, guint row)
{
  const BsCutSheet *sheet = &self->model->sheets[index];
  guint type = self->classes[self->model->groups[sheet->group].class].row_type[row];
  gint32 size = second_size (self, class_of (self, sheet), type);
  BsCutPattern *pattern = bs_cut_pattern_new (self->model, index);

  bs_cut_pattern_add_slice (pattern, 0, sheet->room[0]);
  bs_cut_pattern_add_strip (pattern, type, 0);
  add_strips (self, pattern, sheet, row, sheet->room[1] - size, size);
  bs_cut_pattern_close (pattern, self->model);
  return pattern;
}

GPtrArray *
bs_cut_oracle_row_patterns (BsCutOracle *self, guint index, guint most)
{
  const BsCutSheet *sheet = &self->model->sheets[index];
  const GroupTable *table = ready_group (self, sheet);
  guint n_rows = self->classes[self->model->groups[sheet->group].class].n_rows;
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_cut_pattern_unref);

  g_ptr_array_add (found, bs_cut_oracle_pattern (self, index));
  if (table->row_count[0] >= 0)
    return found;
  while (found->len < most)
    {
      guint best = G_MAXUINT;

      for (guint row = 0; row < n_rows; row++)
        if (table->last[row] > self->floors[sheet->group]
            && (best == G_MAXUINT || table->last[row] > table->last[best]))
          best = row;
      if (best == G_MAXUINT)
        break;
      g_ptr_array_add (found, pattern_with_last (self, index, best));
      table->last[best] = 0;
    }
  return found;
}

/* Takes back the last slice of a pattern. */
static void
drop_last_slice (BsCutPattern *pattern)
{
  guint last = pattern->slices->len - 1;
  guint n = g_array_index (pattern->slices, BsCutPatternSlice, last).n_strips;

  for (guint i = 0; i < n; i++)
    pattern
        ->count[g_array_index (pattern->strips, BsCutStrip, pattern->strips->len - 1 - i).type]--;
  g_array_set_size (pattern->strips, pattern->strips->len - n);
  g_array_set_size (pattern->slices, last);
}

static gboolean
exceeds (const BsCutOracle *self, const BsCutPattern *pattern, const int *limits)
{
  for (guint t = 0; t < self->model->n_types; t++)
    if (pattern->count[t] > limits[t])
      return TRUE;
  return FALSE;
}

BsCutPattern *
bs_cut_oracle_fill (BsCutOracle *self, guint index, const gint64 *values, const int *limits)
{
  const BsCutSheet *sheet = &self->model->sheets[index];
  g_autofree int *rest = g_memdup2 (limits, self->model->n_types * sizeof (int));
  BsCutPattern *pattern;
  gint32 place = 0, left = sheet->room[0];

  bs_cut_oracle_set (self, values, limits);
  if (sheet->is_row)
    return bs_cut_oracle_pattern (self, index);
  self->caps = limits;
  pattern = bs_cut_pattern_new (self->model, index);
  for (;;)
    {
      gint32 place_before = place, left_before = left;

      if (!add_next_slice (self, pattern, &place, &left))
        break;
      if (!exceeds (self, pattern, limits))
        continue;
      /* The tables did not know how much the slices before had used up. */
      drop_last_slice (pattern);
      for (guint t = 0; t < self->model->n_types; t++)
        rest[t] = limits[t] - pattern->count[t];
      bs_cut_oracle_set (self, values, rest);
      place = place_before;
      left = left_before;
    }
  self->caps = NULL;
  bs_cut_pattern_close (pattern, self->model);
  return pattern;
}
