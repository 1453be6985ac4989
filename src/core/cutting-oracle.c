/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-oracle-private.h"

#include <string.h>

BsCutOracle *
bs_cut_oracle_new (const BsCutModel *model)
{
  BsCutOracle *self = g_new0 (BsCutOracle, 1);
  gint32 longest = 0;

  self->model = model;
  self->values = g_new0 (gint64, model->n_types + 1);
  self->limits = g_new0 (int, model->n_types + 1);
  self->classes = g_new0 (BsCutClassTable, model->n_classes + 1);
  self->groups = g_new0 (BsCutGroupTable, model->n_groups + 1);
  for (guint c = 0; c < model->n_classes; c++)
    bs_cut_tables_init_class (self, c);
  for (guint g = 0; g < model->n_groups; g++)
    {
      const BsCutGroup *group = &model->groups[g];
      BsCutGroupTable *table = &self->groups[g];

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
  self->bands = g_hash_table_new_full (bs_cut_band_hash, bs_cut_band_equal, g_free, g_free);
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
      BsCutClassTable *table = &self->classes[c];
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

gboolean
bs_cut_oracle_has_long_rows (const BsCutOracle *self)
{
  for (guint c = 0; c < self->model->n_classes; c++)
    if (bs_cut_is_long_row (&self->model->classes[c]))
      return TRUE;
  return FALSE;
}

gint64
bs_cut_oracle_rest_value (BsCutOracle *self, guint index, gint32 used)
{
  const BsCutSheet *sheet = &self->model->sheets[index];

  if (used >= sheet->room[0])
    return 0;
  if (bs_cut_model_is_clear (self->model, sheet))
    return bs_cut_tables_ready (self, sheet)->best[sheet->room[0] - used];
  bs_cut_spots_fill (self, index);
  return self->rest[used];
}

gint64
bs_cut_oracle_value (BsCutOracle *self, guint index)
{
  const BsCutSheet *sheet = &self->model->sheets[index];

  return sheet->is_row ? bs_cut_tables_ready (self, sheet)->slice[0]
                       : bs_cut_oracle_rest_value (self, index, 0);
}

gint64
bs_cut_oracle_most (BsCutOracle *self, guint index)
{
  const BsCutSheet *sheet = &self->model->sheets[index];

  return sheet->is_row ? bs_cut_oracle_value (self, index)
                       : bs_cut_tables_ready (self, sheet)->best[sheet->room[0]];
}

gint64
bs_cut_oracle_row_value (BsCutOracle *self, guint index, gint32 room)
{
  guint class = self->model->groups[self->model->sheets[index].group].class;

  if (!self->classes[class].is_ready)
    bs_cut_tables_fill_class (self, class);
  return self->classes[class].best[room];
}

/* The strips that the first rows of a table put in a room from a place on. */
static void
add_strips (BsCutOracle *self, BsCutPattern *pattern, const BsCutSheet *sheet, guint n_rows,
            gint32 room, gint32 second)
{
  const BsCutClass *class = bs_cut_oracle_class (self, sheet);
  const BsCutClassTable *table = &self->classes[self->model->groups[sheet->group].class];

  for (guint row = n_rows; row-- > 0;)
    {
      guint type = table->row_type[row];
      int count = table->taken[row * ((gsize) class->max_second + 1) + (gsize)room];

      for (int i = 0; i < count; i++)
        {
          bs_cut_pattern_add_strip (pattern, type, second);
          second += bs_cut_second_size (self, class, type);
          room -= bs_cut_second_size (self, class, type);
        }
    }
}

/* The strips of a clear slice of some level. */
static void
add_level_strips (BsCutOracle *self, BsCutPattern *pattern, const BsCutSheet *sheet, guint level)
{
  const BsCutClassTable *table = &self->classes[self->model->groups[sheet->group].class];

  add_strips (self, pattern, sheet, table->rows_end[level], sheet->room[1], 0);
}

static void
add_band_strips (BsCutOracle *self, BsCutPattern *pattern, const BsCutSheet *sheet, BsCutBand band)
{
  const BsCutClass *class = bs_cut_oracle_class (self, sheet);
  g_autofree gint64 *best = g_new (gint64, (gsize)sheet->room[1] + 1);
  g_autofree int *steps = g_new (int, (gsize)sheet->room[1] + 1);

  bs_cut_spots_fill_band (self, sheet, &band, best, steps);
  for (gint32 place = 0; place < sheet->room[1];)
    if (steps[place] < 0
        || (self->caps != NULL && pattern->count[steps[place]] >= self->caps[steps[place]]))
      place++; /* the table knows of limits only as all or nothing */
    else
      {
        guint type = (guint)steps[place];
        bs_cut_pattern_add_strip (pattern, type, place);
        place += bs_cut_second_size (self, class, type);
      }
}

/* Adds the next slice at or behind `place` of the pattern; left: room not yet given to slices of a
 * clear sheet. FALSE when there is none. */
static gboolean
add_next_slice (BsCutOracle *self, BsCutPattern *pattern, gint32 *place, gint32 *left)
{
  const BsCutSheet *sheet = &self->model->sheets[pattern->sheet];
  const BsCutClassTable *levels = &self->classes[self->model->groups[sheet->group].class];
  gint32 first;
  guint64 spots;

  if (bs_cut_model_is_clear (self->model, sheet))
    {
      const BsCutGroupTable *table = bs_cut_tables_ready (self, sheet);
      guint level;

      while (*left > 0 && table->choice[*left] == BS_CUT_STEP_ON)
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

  bs_cut_spots_fill (self, pattern->sheet);
  while (*place < sheet->room[0] && self->step[*place] == BS_CUT_STEP_ON)
    (*place)++;
  if (*place >= sheet->room[0])
    return FALSE;
  if (self->step[*place] == BS_CUT_STEP_BLOCK)
    {
      const BsCutBlock *block = bs_cut_model_next_block (sheet, *place);
      first = block->to - *place;
    }
  else
    first = levels->first[self->step[*place]];
  bs_cut_model_find_spots (self->model, sheet, *place, *place + first, &spots);
  bs_cut_pattern_add_slice (pattern, *place, *place + first);
  if (spots != 0)
    add_band_strips (self, pattern, sheet, (BsCutBand){ spots, first });
  else
    add_level_strips (self, pattern, sheet, (guint)self->step[*place]);
  *place = MIN (*place + first, sheet->room[0]);
  return TRUE;
}

static void
add_row (BsCutOracle *self, BsCutPattern *pattern)
{
  const BsCutSheet *sheet = &self->model->sheets[pattern->sheet];
  const BsCutClass *class = bs_cut_oracle_class (self, sheet);
  const BsCutGroupTable *table = bs_cut_tables_ready (self, sheet);
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
        place += bs_cut_second_size (self, class, t);
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
  gint32 size = bs_cut_second_size (self, bs_cut_oracle_class (self, sheet), type);
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
  const BsCutGroupTable *table = bs_cut_tables_ready (self, sheet);
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
