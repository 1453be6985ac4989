/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-oracle-private.h"

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
} Candidate;

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
      candidates[n++] = (Candidate){ t, bs_cut_second_size (self, class, t), self->values[t] };
  return n;
}

void
bs_cut_spots_fill_band (BsCutOracle *self, const BsCutSheet *sheet, const BsCutBand *band,
                        gint64 *best, int *steps)
{
  g_autofree Candidate *candidates = g_new (Candidate, self->model->n_types + 1);
  guint n = find_candidates (self, sheet, band, candidates);

  best[sheet->room[1]] = 0;
  for (gint32 place = sheet->room[1] - 1; place >= 0; place--)
    {
      gint64 most = best[place + 1];
      int step = -1;

      for (guint k = 0; k < n; k++)
        {
          const Candidate *candidate = &candidates[k];
          gint32 end = place + candidate->size;

          if (end > sheet->room[1] || best[end] + candidate->value <= most
              || !bs_cut_model_allows (self->model, sheet, candidate->type, band->spots, place))
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
