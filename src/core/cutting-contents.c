/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-options-private.h"

#include <string.h>

void
bs_cut_shelf_free (gpointer data)
{
  BsCutShelf *self = data;

  g_array_unref (self->contents);
  g_free (self);
}

gint32
bs_cut_listing_size (const BsCutListing *self, guint type, gboolean is_first)
{
  guint first = bs_cut_first_axis (self->model->sheets[self->sheet].order);

  return self->model->types[type].size[is_first ? first : 1 - first];
}

gboolean
bs_cut_listing_may_hold (const BsCutListing *self, guint type, gint32 place)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];

  return self->in_slice[type] < self->demand[type] && self->model->stock[sheet->stock].fits[type]
         && (sheet->is_row || bs_cut_listing_size (self, type, TRUE) <= self->shelf->first)
         && place + bs_cut_listing_size (self, type, FALSE) <= sheet->room[1];
}

gboolean
bs_cut_listing_count (BsCutListing *self)
{
  if (self->nodes_left == 0)
    self->is_too_many = TRUE;
  else
    self->nodes_left--;
  return !self->is_too_many;
}

/* Whether the shelf has another arrangement of the same parts. */
static gboolean
is_on_shelf (const BsCutListing *self)
{
  gsize size = self->model->n_types * sizeof (int);
  g_autofree int *count = g_malloc (size + 1);

  for (guint i = 0; i < self->shelf->contents->len; i++)
    {
      guint index = g_array_index (self->shelf->contents, guint, i);
      const BsCutContent *known = self->out->contents->pdata[index];
      gboolean same = known->n == self->strips->len;

      memcpy (count, self->in_slice, size);
      for (guint k = 0; k < known->n && same; k++)
        same = --count[known->strips[k].type] >= 0;
      if (same)
        return TRUE;
    }
  return FALSE;
}

void
bs_cut_listing_keep (BsCutListing *self)
{
  guint n = self->strips->len, index = self->out->contents->len;
  BsCutContent *content = g_malloc (sizeof (BsCutContent) + n * sizeof (BsCutStrip));

  content->first = self->shelf->first;
  content->n = n;
  content->value = 0;
  for (guint i = 0; i < n; i++)
    content->value += self->duals->values[g_array_index (self->strips, BsCutStrip, i).type];
  memcpy (content->strips, self->strips->data, n * sizeof (BsCutStrip));
  g_ptr_array_add (self->out->contents, content);
  g_array_append_val (self->shelf->contents, index);
}

/* Contents of a clear slice: every choice that nothing can be added to, with a longest part as long
 * as the slice. */
static void
list_clear_contents (BsCutListing *self, guint type, gint32 place, gboolean is_long)
{
  if (!bs_cut_listing_count (self))
    return;
  if (type == self->model->n_types)
    {
      for (guint t = 0; t < self->model->n_types; t++)
        if (bs_cut_listing_may_hold (self, t, place))
          return;
      if (is_long)
        bs_cut_listing_keep (self);
      return;
    }
  list_clear_contents (self, type + 1, place, is_long);
  if (bs_cut_listing_may_hold (self, type, place))
    {
      BsCutStrip strip = { type, place };

      g_array_append_val (self->strips, strip);
      self->in_slice[type]++;
      /* The same type again, by a call that takes one at least. */
      list_clear_contents (self, type, place + bs_cut_listing_size (self, type, FALSE),
                           is_long || bs_cut_listing_size (self, type, TRUE) == self->shelf->first);
      self->in_slice[type]--;
      g_array_set_size (self->strips, self->strips->len - 1);
    }
}

/* The next place at or behind this one where a strip may have to start. */
static gint32
next_start (const BsCutListing *self, gint32 place)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];
  const BsCutBoards *boards = &self->model->stock[sheet->stock];
  guint axis = 1 - bs_cut_first_axis (sheet->order);
  gint32 next = G_MAXINT32;

  for (guint k = 0; k < boards->n_spots; k++)
    if (self->shelf->spots >> k & 1)
      {
        gint32 to
            = boards->spots[k].to[axis] + (k >= boards->n_defects ? self->model->kerf[axis] : 0);
        if (to > place)
          next = MIN (next, to);
      }
  return next;
}

/* A slice that is longer than its parts need could be a shorter one, unless pinned parts give its
 * size. */
static gboolean
is_well_filled (const BsCutListing *self)
{
  const BsCutBoards *boards = &self->model->stock[self->model->sheets[self->sheet].stock];

  if (self->shelf->spots >> boards->n_defects != 0 && boards->n_defects < boards->n_spots)
    return TRUE;
  for (guint i = 0; i < self->strips->len; i++)
    if (bs_cut_listing_size (self, g_array_index (self->strips, BsCutStrip, i).type, TRUE)
        == self->shelf->first)
      return TRUE;
  return FALSE;
}

/* Contents of a slice with defects or pins: strips in order of their places. */
static void
list_band_contents (BsCutListing *self, gint32 place)
{
  gint32 next = next_start (self, place);
  gboolean any = FALSE;

  if (!bs_cut_listing_count (self))
    return;
  for (guint t = 0; t < self->model->n_types; t++)
    if (bs_cut_listing_may_hold (self, t, place)
        && bs_cut_model_allows (self->model, &self->model->sheets[self->sheet], t,
                                self->shelf->spots, place))
      {
        BsCutStrip strip = { t, place };

        any = TRUE;
        g_array_append_val (self->strips, strip);
        self->in_slice[t]++;
        list_band_contents (self, place + bs_cut_listing_size (self, t, FALSE));
        self->in_slice[t]--;
        g_array_set_size (self->strips, self->strips->len - 1);
      }
  if (next < self->model->sheets[self->sheet].room[1])
    list_band_contents (self, next);
  else if (!any && self->strips->len > 0 && is_well_filled (self) && !is_on_shelf (self))
    bs_cut_listing_keep (self);
}

const BsCutShelf *
bs_cut_listing_shelf (BsCutListing *self, guint64 spots, gint32 first)
{
  const BsCutModel *model = self->model;
  BsCutShelf *shelf;

  for (guint i = 0; i < self->shelves->len; i++)
    {
      const BsCutShelf *known = self->shelves->pdata[i];
      gboolean same = spots != 0
                          ? known->sheet == self->sheet
                          : model->sheets[known->sheet].group == model->sheets[self->sheet].group;
      if (same && known->spots == spots && known->first == first)
        return known;
    }
  shelf = g_new0 (BsCutShelf, 1);
  *shelf = (BsCutShelf){ self->sheet, spots, first, g_array_new (FALSE, FALSE, sizeof (guint)) };
  g_ptr_array_add (self->shelves, shelf);
  self->shelf = shelf;
  if (spots != 0)
    list_band_contents (self, 0);
  else
    list_clear_contents (self, 0, 0, FALSE);
  return shelf;
}
