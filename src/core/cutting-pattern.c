/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-pattern.h"

#include <math.h>

BsCutPattern *
bs_cut_pattern_new (const BsCutModel *model, guint sheet)
{
  BsCutPattern *self = g_new0 (BsCutPattern, 1);

  self->n_refs = 1;
  self->sheet = sheet;
  self->count = g_new0 (int, model->n_types + 1);
  self->slices = g_array_new (FALSE, FALSE, sizeof (BsCutPatternSlice));
  self->strips = g_array_new (FALSE, FALSE, sizeof (BsCutStrip));
  return self;
}

BsCutPattern *
bs_cut_pattern_ref (BsCutPattern *self)
{
  self->n_refs++;
  return self;
}

void
bs_cut_pattern_unref (BsCutPattern *self)
{
  if (self == NULL || --self->n_refs > 0)
    return;
  g_free (self->count);
  g_array_unref (self->slices);
  g_array_unref (self->strips);
  g_free (self);
}

void
bs_cut_pattern_add_slice (BsCutPattern *self, gint32 from, gint32 to)
{
  BsCutPatternSlice slice = { from, to, 0 };

  g_array_append_val (self->slices, slice);
}

void
bs_cut_pattern_add_strip (BsCutPattern *self, guint type, gint32 second)
{
  BsCutStrip strip = { type, second };

  g_array_append_val (self->strips, strip);
  self->count[type]++;
  g_array_index (self->slices, BsCutPatternSlice, self->slices->len - 1).n_strips++;
}

/* How far along x the board is used. */
static gint32
find_used (const BsCutPattern *self, const BsCutModel *model, const BsCutSheet *sheet)
{
  gint32 used = 0;

  if (!sheet->is_row)
    for (guint i = 0; i < self->slices->len; i++)
      used = MAX (used, g_array_index (self->slices, BsCutPatternSlice, i).to);
  else
    for (guint i = 0; i < self->strips->len; i++)
      {
        const BsCutStrip *strip = &g_array_index (self->strips, BsCutStrip, i);
        used = MAX (used, strip->second + model->types[strip->type].size[0]);
      }
  return used;
}

/* The offcut behind `used`; 0 when it is too short or has a defect in it, so that no part can be
 * promised from it. */
static double
find_offcut (const BsCutModel *model, const BsCutSheet *sheet, gint32 used)
{
  guint64 spots = 0;

  if (!bs_cut_model_is_clear (model, sheet))
    bs_cut_model_find_spots (model, sheet, used, G_MAXINT32, &spots);
  return spots != 0 ? 0.0 : bs_cut_model_offcut (model, sheet, used);
}

static gint64
area_of_offcut (const BsCutBoards *boards, double offcut)
{
  return (gint64)llround (offcut * (double)boards->width / 10.0);
}

static gint64
score_of_offcut (double offcut)
{
  return (gint64)llround (offcut * offcut * 100.0);
}

/* The place where the rest of a board begins that has pinned parts. */
static gint32
end_of_blocks (const BsCutSheet *sheet)
{
  return sheet->n_blocks > 0 ? sheet->blocks[sheet->n_blocks - 1].to : 0;
}

double
bs_cut_pattern_measure (const BsCutModel *model, guint index, gint32 used, gint64 *net_area,
                        gint64 *score)
{
  const BsCutSheet *sheet = &model->sheets[index];
  const BsCutBoards *boards = &model->stock[sheet->stock];
  gint32 pinned = end_of_blocks (sheet);
  double offcut = find_offcut (model, sheet, MAX (used, pinned));

  *net_area = boards->area - area_of_offcut (boards, offcut);
  *score = score_of_offcut (offcut);
  if (sheet->n_blocks > 0)
    {
      double before = find_offcut (model, sheet, pinned);
      *net_area -= boards->area - area_of_offcut (boards, before);
      *score -= score_of_offcut (before);
    }
  return offcut;
}

void
bs_cut_pattern_close (BsCutPattern *self, const BsCutModel *model)
{
  const BsCutSheet *sheet = &model->sheets[self->sheet];
  gint32 used = find_used (self, model, sheet);

  self->offcut = bs_cut_pattern_measure (model, self->sheet, used, &self->net_area, &self->score);
}
