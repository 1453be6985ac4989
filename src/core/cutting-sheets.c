/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-sheets.h"

static int
compare_blocks (gconstpointer a, gconstpointer b)
{
  return ((const BsCutBlock *)a)->from - ((const BsCutBlock *)b)->from;
}

/* The pinned parts of a board as slices; FALSE when they are none, cut in this order. */
static gboolean
add_blocks (const BsCutModel *self, BsCutSheet *sheet)
{
  const BsCutBoards *boards = &self->stock[sheet->stock];
  guint first = bs_cut_first_axis (sheet->order), second = 1 - first, n = 0;

  sheet->blocks = g_new0 (BsCutBlock, boards->n_spots + 1);
  for (guint k = boards->n_defects; k < boards->n_spots; k++)
    sheet->blocks[sheet->n_blocks++] = (BsCutBlock){ MAX (boards->spots[k].from[first], 0),
                                                     boards->spots[k].to[first] + self->kerf[first],
                                                     G_GUINT64_CONSTANT (1) << k };
  qsort (sheet->blocks, sheet->n_blocks, sizeof (BsCutBlock), compare_blocks);
  for (guint k = 0; k < sheet->n_blocks; k++)
    if (n > 0 && sheet->blocks[k].from < sheet->blocks[n - 1].to)
      {
        sheet->blocks[n - 1].to = MAX (sheet->blocks[n - 1].to, sheet->blocks[k].to);
        sheet->blocks[n - 1].pins |= sheet->blocks[k].pins;
      }
    else
      sheet->blocks[n++] = sheet->blocks[k];
  sheet->n_blocks = n;

  for (guint k = 0; k < n; k++)
    for (guint i = boards->n_defects; i < boards->n_spots; i++)
      for (guint j = boards->n_defects; j < i; j++)
        if ((sheet->blocks[k].pins >> i & sheet->blocks[k].pins >> j & 1) != 0
            && boards->spots[i].from[second] < boards->spots[j].to[second] + self->kerf[second]
            && boards->spots[j].from[second] < boards->spots[i].to[second] + self->kerf[second])
          return FALSE;
  return TRUE;
}

/* TRUE when no two of the parts that fit lie side by side and first cuts are but trimming. */
static gboolean
is_one_row (const BsCutModel *self, const BsCutBoards *boards, gint32 room)
{
  gint32 least = G_MAXINT32;

  for (guint t = 0; t < self->n_types; t++)
    if (boards->fits[t] && self->types[t].size[0] <= boards->room_x)
      least = MIN (least, self->types[t].size[1]);
  return boards->n_spots == 0 && least > room / 2;
}

static guint
find_class (BsCutModel *self, const BsCutSheet *sheet, const gboolean *fits)
{
  guint c;

  for (c = 0; c < self->n_classes; c++)
    {
      const BsCutClass *class = &self->classes[c];
      gboolean same = class->order == sheet->order && class->is_row == sheet->is_row;
      for (guint t = 0; t < self->n_types && same; t++)
        same = class->fits[t] == fits[t];
      if (same)
        break;
    }
  if (c == self->n_classes)
    self->classes[self->n_classes++] = (BsCutClass){ sheet->order, sheet->is_row, fits, 0 };
  self->classes[c].max_second = MAX (self->classes[c].max_second, sheet->room[1]);
  return c;
}

static guint
find_group (BsCutModel *self, const BsCutSheet *sheet, guint class)
{
  guint g;

  for (g = 0; g < self->n_groups; g++)
    if (self->groups[g].class == class && self->groups[g].second == sheet->room[1])
      break;
  if (g == self->n_groups)
    self->groups[self->n_groups++] = (BsCutGroup){ class, sheet->room[1], 0 };
  self->groups[g].max_first = MAX (self->groups[g].max_first, sheet->room[0]);
  return g;
}

/* A row is a strip as wide as the board: the order says rip first, the saw has nothing to rip. */
gboolean
bs_cut_model_add_sheets (BsCutModel *self, guint stock)
{
  const BsCutBoards *boards = &self->stock[stock];
  gint32 room[] = { boards->room_x, boards->room_y };
  gboolean is_row = is_one_row (self, boards, room[1]), any = FALSE;

  for (int order = BS_CUT_CROSSCUT_FIRST; order <= BS_CUT_RIP_FIRST; order++)
    {
      BsCutSheet *sheet = &self->sheets[self->n_sheets];
      guint first;

      if (is_row ? order != BS_CUT_RIP_FIRST : !(self->input->order & order))
        continue;
      *sheet = (BsCutSheet){ .stock = stock, .order = order, .is_row = is_row };
      first = bs_cut_first_axis (order);
      sheet->room[0] = room[first];
      sheet->room[1] = room[1 - first];
      if (!add_blocks (self, sheet))
        {
          g_free (sheet->blocks);
          continue;
        }
      any = TRUE;
      sheet->group = find_group (self, sheet, find_class (self, sheet, boards->fits));
      self->n_sheets++;
    }
  return any;
}
