/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-oracle-private.h"

#include <stdlib.h>

guint
bs_cut_band_hash (gconstpointer key)
{
  const BsCutBand *band = key;

  return (guint)(band->spots * 31 + (guint64)band->first * 17);
}

gboolean
bs_cut_band_equal (gconstpointer a, gconstpointer b)
{
  const BsCutBand *left = a, *right = b;

  return left->spots == right->spots && left->first == right->first;
}

/* A type that a band may take. */
typedef struct
{
  guint type;
  gint32 size;
  gint64 value;
  gboolean is_plain; /* may have any defect that is sound */
} Candidate;

/* Whether a part could lie wherever another does, take no more room and be worth no less. A shorter
 * part may end within a spot that lies inside the longer one. */
static gboolean
replaces (const BsCutOracle *self, const Candidate *a, const Candidate *b)
{
  const BsCutType *type = &self->model->types[a->type], *other = &self->model->types[b->type];

  if (a->size > b->size || a->value < b->value || type->clear_faces > other->clear_faces
      || type->clear_edges > other->clear_edges || (type->clear_edges > 0 && a->size < b->size))
    return FALSE;
  return a->type < b->type || a->size < b->size || a->value > b->value;
}

static guint
drop_replaced (const BsCutOracle *self, Candidate *candidates, guint n)
{
  guint n_left = 0;

  for (guint i = 0; i < n; i++)
    {
      gboolean is_replaced = FALSE;

      /* Those already dropped were replaced by one that is left or is still to come. */
      for (guint k = 0; k < n_left && !is_replaced; k++)
        is_replaced = replaces (self, &candidates[k], &candidates[i]);
      for (guint k = i + 1; k < n && !is_replaced; k++)
        is_replaced = replaces (self, &candidates[k], &candidates[i]);
      if (!is_replaced)
        candidates[n_left++] = candidates[i];
    }
  return n_left;
}

/* Found once for each band: they are few, the places many. */
static guint
find_candidates (BsCutOracle *self, const BsCutSheet *sheet, const BsCutBand *band,
                 Candidate *candidates)
{
  const BsCutClass *class = bs_cut_oracle_class (self, sheet);
  guint n = 0;

  for (guint t = 0; t < self->model->n_types; t++)
    if (self->values[t] > 0 && self->limits[t] > 0 && class->fits[t]
        && bs_cut_first_size (self, class, t) <= band->first)
      candidates[n++] = (Candidate){
        .type = t,
        .size = bs_cut_second_size (self, class, t),
        .value = self->values[t],
        .is_plain
        = self->model->types[t].clear_faces == 0 && self->model->types[t].clear_edges == 0,
      };
  return drop_replaced (self, candidates, n);
}

/* Where a spot keeps parts away along the second axis, with what the saw needs beside a pin. */
typedef struct
{
  gint32 from, to;
  gboolean is_hard; /* pinned or unsound: no part may lie there */
} Reach;

static int
compare_reaches (gconstpointer a, gconstpointer b)
{
  const Reach *left = a, *right = b;

  return (left->to < right->to) - (left->to > right->to);
}

/* The spots of a band, the farthest first. */
static guint
find_reaches (const BsCutOracle *self, const BsCutSheet *sheet, guint64 spots, Reach *reaches)
{
  const BsCutBoards *boards = &self->model->stock[sheet->stock];
  guint axis = 1 - bs_cut_first_axis (sheet->order), n = 0;

  for (guint k = 0; spots != 0; k++, spots >>= 1)
    {
      gint32 kerf = k >= boards->n_defects ? self->model->kerf[axis] : 0;

      if ((spots & 1) != 0)
        reaches[n++] = (Reach){
          .from = boards->spots[k].from[axis] - kerf,
          .to = boards->spots[k].to[axis] + kerf,
          .is_hard = k >= boards->n_defects || boards->spots[k].faces == BS_CUT_UNSOUND,
        };
    }
  qsort (reaches, n, sizeof (Reach), compare_reaches);
  return n;
}

/* Whether a part may lie at a place from which on all is clear up to one end, and without pins and
 * unsound wood up to another. */
static gboolean
may_lie (const BsCutOracle *self, const BsCutSheet *sheet, guint64 spots,
         const Candidate *candidate, gint32 place, gint32 clear_end, gint32 sound_end)
{
  gint32 end = place + candidate->size - self->model->kerf[1 - bs_cut_first_axis (sheet->order)];

  if (end <= clear_end || end > sound_end)
    return end <= clear_end;
  return candidate->is_plain
         || bs_cut_model_allows (self->model, sheet, candidate->type, spots, place);
}

void
bs_cut_spots_fill_band (BsCutOracle *self, const BsCutSheet *sheet, const BsCutBand *band,
                        gint64 *best, int *steps)
{
  g_autofree Candidate *candidates = g_new (Candidate, self->model->n_types + 1);
  guint n = find_candidates (self, sheet, band, candidates);
  gint32 clear_end = G_MAXINT32, sound_end = G_MAXINT32;
  Reach reaches[64];
  guint n_reaches = find_reaches (self, sheet, band->spots, reaches), next = 0;

  best[sheet->room[1]] = 0;
  for (gint32 place = sheet->room[1] - 1; place >= 0; place--)
    {
      gint64 most = best[place + 1];
      int step = -1;

      for (; next < n_reaches && reaches[next].to > place; next++)
        {
          clear_end = MIN (clear_end, reaches[next].from);
          if (reaches[next].is_hard)
            sound_end = MIN (sound_end, reaches[next].from);
        }
      for (guint k = 0; k < n; k++)
        {
          const Candidate *candidate = &candidates[k];
          gint32 end = place + candidate->size;

          if (end > sheet->room[1] || best[end] + candidate->value <= most
              || !may_lie (self, sheet, band->spots, candidate, place, clear_end, sound_end))
            continue;
          most = best[end] + candidate->value;
          step = (int)candidate->type;
        }
      best[place] = most;
      steps[place] = step;
    }
}

static gint64
band_value (BsCutOracle *self, const BsCutSheet *sheet, BsCutBand band)
{
  gint64 *known = g_hash_table_lookup (self->bands, &band);

  if (known == NULL)
    {
      g_autofree gint64 *best = g_new (gint64, (gsize)sheet->room[1] + 1);
      g_autofree int *steps = g_new (int, (gsize)sheet->room[1] + 1);

      bs_cut_spots_fill_band (self, sheet, &band, best, steps);
      known = g_memdup2 (&best[0], sizeof (gint64));
      g_hash_table_insert (self->bands, g_memdup2 (&band, sizeof band), known);
    }
  return *known;
}

/* The slice that holds a block and no longer parts. */
static gint64
block_value (BsCutOracle *self, const BsCutSheet *sheet, const BsCutBlock *block)
{
  BsCutBand band = { 0, block->to - block->from };

  bs_cut_model_find_spots (self->model, sheet, block->from, block->to, &band.spots);
  return band_value (self, sheet, band);
}

/* The best that can start at a place, when all places behind it are known. */
static void
fill_place (BsCutOracle *self, const BsCutSheet *sheet, gint32 place)
{
  const BsCutClassTable *levels = &self->classes[self->model->groups[sheet->group].class];
  const BsCutGroupTable *table = &self->groups[sheet->group];
  const BsCutBlock *block = bs_cut_model_next_block (sheet, place);

  self->rest[place] = self->rest[place + 1];
  self->step[place] = BS_CUT_STEP_ON;
  if (block != NULL && place >= block->from)
    {
      self->rest[place] = self->rest[MIN (block->to, sheet->room[0])]
                          + (place == block->from ? block_value (self, sheet, block) : 0);
      self->step[place] = BS_CUT_STEP_BLOCK;
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
        value = band_value (self, sheet, (BsCutBand){ spots, levels->first[k] });
      if (self->rest[end] + value > self->rest[place])
        {
          self->rest[place] = self->rest[end] + value;
          self->step[place] = (gint16)k;
        }
    }
}

/* The best slices from each place of a sheet with defects or pins. */
void
bs_cut_spots_fill (BsCutOracle *self, guint index)
{
  const BsCutSheet *sheet = &self->model->sheets[index];

  if (self->spotted == index)
    return;
  bs_cut_tables_ready (self, sheet);
  self->spotted = index;
  g_hash_table_remove_all (self->bands);
  self->rest[sheet->room[0]] = 0;
  self->step[sheet->room[0]] = BS_CUT_STEP_ON;
  for (gint32 place = sheet->room[0] - 1; place >= 0; place--)
    fill_place (self, sheet, place);
}
