/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-solution.h"

#include <string.h>

BsCutSolution *
bs_cut_solution_new (void)
{
  BsCutSolution *self = g_new0 (BsCutSolution, 1);

  self->patterns = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_cut_pattern_unref);
  return self;
}

BsCutSolution *
bs_cut_solution_copy (const BsCutSolution *self)
{
  BsCutSolution *copy = g_memdup2 (self, sizeof *self);

  copy->patterns = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_cut_pattern_unref);
  for (guint i = 0; i < self->patterns->len; i++)
    g_ptr_array_add (copy->patterns, bs_cut_pattern_ref (self->patterns->pdata[i]));
  return copy;
}

void
bs_cut_solution_free (BsCutSolution *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->patterns);
  g_free (self);
}

static void
count_in (BsCutSolution *self, const BsCutModel *model, const BsCutPattern *pattern, int sign)
{
  self->price += sign * model->stock[model->sheets[pattern->sheet].stock].price;
  self->net_area += sign * pattern->net_area;
  self->score += sign * pattern->score;
}

void
bs_cut_solution_add (BsCutSolution *self, const BsCutModel *model, BsCutPattern *pattern)
{
  g_ptr_array_add (self->patterns, bs_cut_pattern_ref (pattern));
  count_in (self, model, pattern, 1);
}

void
bs_cut_solution_remove (BsCutSolution *self, const BsCutModel *model, guint index)
{
  count_in (self, model, self->patterns->pdata[index], -1);
  g_ptr_array_remove_index (self->patterns, index);
}

int
bs_cut_solution_compare (const BsCutSolution *self, const BsCutSolution *other)
{
  if (self->n_missing != other->n_missing)
    return self->n_missing < other->n_missing ? -1 : 1;
  if (self->price != other->price)
    return self->price < other->price ? -1 : 1;
  if (self->net_area != other->net_area)
    return self->net_area < other->net_area ? -1 : 1;
  if (self->score != other->score)
    return self->score > other->score ? -1 : 1;
  return 0;
}

/* Rebuilds a pattern without the strips that are marked; NULL when nothing is left. Slices of clear
 * boards shrink to their longest part and move up. */
static BsCutPattern *
rebuild (const BsCutPattern *old, const BsCutModel *model, const gboolean *is_dropped)
{
  const BsCutSheet *sheet = &model->sheets[old->sheet];
  guint axis = bs_cut_first_axis (sheet->order), next = 0;
  gboolean is_clear = bs_cut_model_is_clear (model, sheet);
  BsCutPattern *pattern = bs_cut_pattern_new (model, old->sheet);
  gint32 place = 0;

  for (guint i = 0; i < old->slices->len; i++)
    {
      const BsCutPatternSlice *slice = &g_array_index (old->slices, BsCutPatternSlice, i);
      gint32 longest = 0, second = 0;

      for (guint k = next; k < next + slice->n_strips; k++)
        if (!is_dropped[k])
          longest = MAX (longest,
                         model->types[g_array_index (old->strips, BsCutStrip, k).type].size[axis]);
      if (longest > 0)
        bs_cut_pattern_add_slice (pattern, is_clear ? place : slice->from,
                                  is_clear && !sheet->is_row ? place + longest : slice->to);
      for (guint k = next; k < next + slice->n_strips; k++)
        {
          const BsCutStrip *strip = &g_array_index (old->strips, BsCutStrip, k);
          if (is_dropped[k])
            continue;
          bs_cut_pattern_add_strip (pattern, strip->type, is_clear ? second : strip->second);
          second += model->types[strip->type].size[1 - axis];
        }
      next += slice->n_strips;
      place += longest;
    }
  if (pattern->strips->len == 0)
    g_clear_pointer (&pattern, bs_cut_pattern_unref);
  else
    bs_cut_pattern_close (pattern, model);
  return pattern;
}

/* Whole slices first: they are what makes offcuts longer. */
static void
mark_dropped (const BsCutPattern *pattern, int *excess, gboolean whole_slices, gboolean *is_dropped)
{
  guint next = 0;

  for (guint i = 0; i < pattern->slices->len; i++)
    {
      guint n = g_array_index (pattern->slices, BsCutPatternSlice, i).n_strips, n_spare = 0;

      for (guint k = next; k < next + n; k++)
        {
          guint type = g_array_index (pattern->strips, BsCutStrip, k).type;
          if (is_dropped[k] || excess[type] == 0)
            continue;
          is_dropped[k] = TRUE;
          excess[type]--;
          n_spare++;
        }
      for (guint k = next; k < next + n && whole_slices && n_spare < n; k++)
        if (is_dropped[k])
          {
            is_dropped[k] = FALSE;
            excess[g_array_index (pattern->strips, BsCutStrip, k).type]++;
          }
      next += n;
    }
}

void
bs_cut_solution_trim (BsCutSolution *self, const BsCutModel *model, const int *demand)
{
  g_autofree int *excess = g_new0 (int, model->n_types + 1);
  gboolean any = FALSE;

  self->n_missing = 0;
  for (guint i = 0; i < self->patterns->len; i++)
    for (guint t = 0; t < model->n_types; t++)
      excess[t] += ((const BsCutPattern *)self->patterns->pdata[i])->count[t];
  for (guint t = 0; t < model->n_types; t++)
    {
      excess[t] -= demand[t];
      self->n_missing += MAX (-excess[t], 0);
      excess[t] = MAX (excess[t], 0);
      any = any || excess[t] > 0;
    }
  if (!any)
    return;
  for (guint i = self->patterns->len; i-- > 0;)
    {
      BsCutPattern *old = self->patterns->pdata[i];
      g_autofree gboolean *is_dropped = g_new0 (gboolean, old->strips->len + 1);
      gboolean changed = FALSE;
      BsCutPattern *pattern;

      mark_dropped (old, excess, TRUE, is_dropped);
      mark_dropped (old, excess, FALSE, is_dropped);
      for (guint k = 0; k < old->strips->len; k++)
        changed = changed || is_dropped[k];
      if (!changed)
        continue;
      pattern = rebuild (old, model, is_dropped);
      bs_cut_solution_remove (self, model, i);
      if (pattern != NULL)
        bs_cut_solution_add (self, model, pattern);
      g_clear_pointer (&pattern, bs_cut_pattern_unref);
    }
}
