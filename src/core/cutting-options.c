/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-options-private.h"

#include <string.h>

static guint
hash_key (gconstpointer key)
{
  const guint8 *bytes = key;
  guint hash = 2166136261U;

  for (guint i = 0; i < 1U + bytes[0]; i++)
    hash = (hash ^ bytes[i]) * 16777619U;
  return hash;
}

static gboolean
equal_keys (gconstpointer a, gconstpointer b)
{
  return memcmp (a, b, 1U + *(const guint8 *)a) == 0;
}

static gboolean
is_better (const BsCutOption *a, const BsCutOption *b)
{
  return a->net_area != b->net_area ? a->net_area < b->net_area : a->score > b->score;
}

/* Files the pattern so far, unless one that covers the same is as good. */
static void
keep_option (BsCutListing *self, gint32 used)
{
  BsCutOptions *out = self->out;
  const BsCutModel *model = self->model;
  guint n = model->n_types, stock = model->sheets[self->sheet].stock;
  guint8 key[256];
  guint known;
  BsCutOption option = { .sheet = self->sheet, .loss = self->cost - self->value };

  option.steps = out->steps->len;
  option.n_steps = self->path->len;
  g_array_append_vals (out->steps, self->path->data, self->path->len);
  bs_cut_pattern_measure (model, self->sheet, used, &option.net_area, &option.score);
  key[0] = (guint8)(n + 2);
  key[1] = (guint8)(stock & 0xff);
  key[2] = (guint8)(stock >> 8);
  for (guint t = 0; t < n; t++)
    key[3 + t] = (guint8)MIN (self->count[t], self->demand[t]);
  known = GPOINTER_TO_UINT (g_hash_table_lookup (self->known, key));
  if (known > 0)
    {
      BsCutOption *other = &g_array_index (out->options, BsCutOption, known - 1);
      if (is_better (&option, other))
        {
          option.counts = other->counts;
          *other = option;
        }
      else
        g_array_set_size (out->steps, option.steps);
      return;
    }
  if (out->options->len >= self->most_options)
    {
      self->is_too_many = TRUE;
      return;
    }
  option.counts = out->counts->len;
  g_array_append_vals (out->counts, key + 3, n);
  g_array_append_val (out->options, option);
  g_hash_table_insert (self->known, g_memdup2 (key, n + 3), GUINT_TO_POINTER (out->options->len));
}

static void
add_content (BsCutListing *self, gint32 from, guint index)
{
  const BsCutContent *content = self->out->contents->pdata[index];
  BsCutStep step = { from, index };

  for (guint i = 0; i < content->n; i++)
    {
      guint type = content->strips[i].type;
      if (self->count[type]++ < self->demand[type])
        {
          self->value += self->duals->values[type];
          self->n_wanted++;
        }
    }
  g_array_append_val (self->path, step);
}

static void
drop_content (BsCutListing *self)
{
  guint index = g_array_index (self->path, BsCutStep, self->path->len - 1).content;
  const BsCutContent *content = self->out->contents->pdata[index];

  for (guint i = 0; i < content->n; i++)
    {
      guint type = content->strips[i].type;
      if (--self->count[type] < self->demand[type])
        {
          self->value -= self->duals->values[type];
          self->n_wanted--;
        }
    }
  g_array_set_size (self->path, self->path->len - 1);
}

/* Whether some part that is still wanted has room for a slice of its own. */
static gboolean
can_add_slice (const BsCutListing *self, gint32 used)
{
  for (guint t = 0; t < self->model->n_types; t++)
    if (self->count[t] < self->demand[t]
        && self->model->stock[self->model->sheets[self->sheet].stock].fits[t]
        && used + bs_cut_listing_size (self, t, TRUE) <= self->model->sheets[self->sheet].room[0])
      return TRUE;
  return FALSE;
}

/* Slices of a clear sheet, in the order of `menu` so that no two lists differ in order only. */
static void
list_clear (BsCutListing *self, const GArray *menu, guint next, gint32 used)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];

  if (!bs_cut_listing_count (self))
    return;
  if (self->path->len > 0 && self->value >= self->needed
      && !(self->only_full && can_add_slice (self, used)))
    keep_option (self, used);
  if (self->value + bs_cut_oracle_rest_value (self->oracle, self->sheet, used) < self->needed)
    return;
  for (guint i = next; i < menu->len && !self->is_too_many; i++)
    {
      guint index = g_array_index (menu, guint, i);
      const BsCutContent *content = self->out->contents->pdata[index];
      int n_before = self->n_wanted;
      gint32 end = used + content->first;

      if (end > sheet->room[0]
          || self->value + content->value
                     + bs_cut_oracle_rest_value (self->oracle, self->sheet, end)
                 < self->needed)
        continue;
      add_content (self, used, index);
      if (self->n_wanted > n_before)
        list_clear (self, menu, i, end);
      drop_content (self);
    }
}

/* Distinct sizes of slices, from long to short. */
static GArray *
list_sizes (const BsCutListing *self)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];
  GArray *sizes = g_array_new (FALSE, FALSE, sizeof (gint32));

  for (guint t = 0; t < self->model->n_types; t++)
    {
      gint32 size = bs_cut_listing_size (self, t, TRUE);
      guint i = 0;

      if (self->demand[t] == 0 || size > sheet->room[0]
          || !self->model->stock[sheet->stock].fits[t])
        continue;
      while (i < sizes->len && g_array_index (sizes, gint32, i) > size)
        i++;
      if (i == sizes->len || g_array_index (sizes, gint32, i) != size)
        g_array_insert_val (sizes, i, size);
    }
  return sizes;
}

static void list_spotted (BsCutListing *self, const GArray *sizes, gint32 place, gint32 used);

static void
list_spotted_slices (BsCutListing *self, const GArray *sizes, gint32 from, gint32 to, guint64 spots,
                     gint32 first)
{
  const BsCutShelf *shelf = bs_cut_listing_shelf (self, spots, first);

  for (guint i = 0; i < shelf->contents->len && !self->is_too_many; i++)
    {
      guint index = g_array_index (shelf->contents, guint, i);
      const BsCutContent *content = self->out->contents->pdata[index];
      int n_before = self->n_wanted;

      if (self->value + content->value + bs_cut_oracle_rest_value (self->oracle, self->sheet, to)
          < self->needed)
        continue;
      add_content (self, from, index);
      if (self->n_wanted > n_before)
        list_spotted (self, sizes, to, to);
      drop_content (self);
    }
}

/* The next place behind this one where a slice may have to start, unless one did here. What is
 * pinned may reach into the trims. */
static gint32
next_slice_start (const BsCutListing *self, gint32 place)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];
  const BsCutBoards *boards = &self->model->stock[sheet->stock];
  const BsCutBlock *block = bs_cut_model_next_block (sheet, place);
  guint axis = bs_cut_first_axis (sheet->order);
  gint32 next = G_MAXINT32;

  if (block != NULL)
    next = block->from > place ? block->from : block->to;

  for (guint k = 0; k < boards->n_defects; k++)
    if (boards->spots[k].to[axis] > place)
      next = MIN (next, boards->spots[k].to[axis]);
  return next;
}

/* Slices of a sheet with defects or pins, in order of their places. */
static void
list_spotted (BsCutListing *self, const GArray *sizes, gint32 place, gint32 used)
{
  const BsCutModel *model = self->model;
  const BsCutSheet *sheet = &model->sheets[self->sheet];
  const BsCutBlock *block = bs_cut_model_next_block (sheet, place);
  guint64 spots;

  if (!bs_cut_listing_count (self))
    return;
  if (self->path->len > 0 && self->value >= self->needed)
    keep_option (self, used);
  if (self->value + bs_cut_oracle_rest_value (self->oracle, self->sheet, place) < self->needed)
    return;
  for (guint i = 0; i < sizes->len && !self->is_too_many; i++)
    {
      gint32 first = g_array_index (sizes, gint32, i);
      if (place + first <= sheet->room[0]
          && bs_cut_model_find_spots (model, sheet, place, place + first, &spots))
        list_spotted_slices (self, sizes, place, place + first, spots, first);
    }
  if (block != NULL && place == block->from)
    {
      gint32 end = MIN (block->to, sheet->room[0]);

      bs_cut_model_find_spots (model, sheet, block->from, block->to, &spots);
      list_spotted_slices (self, sizes, block->from, end, spots, block->to - block->from);
      list_spotted (self, sizes, end, used);
    }
  else if (next_slice_start (self, place) < sheet->room[0])
    list_spotted (self, sizes, next_slice_start (self, place), used);
}

static gboolean
can_lengthen_row (const BsCutListing *self, gint32 place)
{
  for (guint t = 0; t < self->model->n_types; t++)
    if (bs_cut_listing_may_hold (self, t, place))
      return TRUE;
  return FALSE;
}

/* Parts of a row, one type after the other; every choice counts, since a shorter one leaves more.
 */
static void
list_row (BsCutListing *self, guint type, gint32 place)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];

  if (!bs_cut_listing_count (self))
    return;
  if (self->strips->len > 0 && self->value >= self->needed
      && !(self->only_full && can_lengthen_row (self, place)))
    {
      guint index;

      bs_cut_listing_keep (self);
      index = g_array_index (self->shelf->contents, guint, self->shelf->contents->len - 1);
      g_array_append_vals (self->path, &(BsCutStep){ 0, index }, 1);
      keep_option (self, place);
      g_array_set_size (self->path, 0);
    }
  if (self->value + bs_cut_oracle_row_value (self->oracle, self->sheet, sheet->room[1] - place)
      < self->needed)
    return;
  for (guint t = type; t < self->model->n_types && !self->is_too_many; t++)
    if (bs_cut_listing_may_hold (self, t, place))
      {
        BsCutStrip strip = { t, place };

        g_array_append_val (self->strips, strip);
        self->in_slice[t]++;
        self->count[t]++;
        self->value += self->duals->values[t];
        list_row (self, t, place + bs_cut_listing_size (self, t, FALSE));
        self->value -= self->duals->values[t];
        self->count[t]--;
        self->in_slice[t]--;
        g_array_set_size (self->strips, self->strips->len - 1);
      }
}

static void
list_sheet (BsCutListing *self)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];
  g_autoptr (GArray) sizes = list_sizes (self);

  if (sheet->is_row)
    {
      BsCutShelf *shelf = g_new0 (BsCutShelf, 1);
      *shelf = (BsCutShelf){ self->sheet, 0, sheet->room[0],
                             g_array_new (FALSE, FALSE, sizeof (guint)) };
      g_ptr_array_add (self->shelves, shelf);
      self->shelf = shelf;
      list_row (self, 0, 0);
    }
  else if (!bs_cut_model_is_clear (self->model, sheet))
    list_spotted (self, sizes, 0, 0);
  else
    {
      g_autoptr (GArray) menu = g_array_new (FALSE, FALSE, sizeof (guint));
      for (guint i = 0; i < sizes->len; i++)
        {
          const BsCutShelf *shelf
              = bs_cut_listing_shelf (self, 0, g_array_index (sizes, gint32, i));
          g_array_append_vals (menu, shelf->contents->data, shelf->contents->len);
        }
      list_clear (self, menu, 0, 0);
    }
}

BsCutOptions *
bs_cut_options_new (const BsCutModel *model, BsCutOracle *oracle, const BsCutOptionsWanted *wanted)
{
  g_autoptr (BsCutOptions) out = g_new0 (BsCutOptions, 1);
  g_autoptr (GPtrArray) shelves = g_ptr_array_new_with_free_func (bs_cut_shelf_free);
  g_autoptr (GHashTable) known = g_hash_table_new_full (hash_key, equal_keys, g_free, NULL);
  g_autoptr (GArray) path = g_array_new (FALSE, FALSE, sizeof (BsCutStep));
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (BsCutStrip));
  g_autofree int *count = g_new0 (int, model->n_types + 1);
  g_autofree int *in_slice = g_new0 (int, model->n_types + 1);
  const BsCutDuals *duals = wanted->duals;
  BsCutListing self = {
    .out = out,
    .model = model,
    .oracle = oracle,
    .demand = wanted->demand,
    .duals = duals,
    .shelves = shelves,
    .known = known,
    .most_options = wanted->most_options,
    .nodes_left = wanted->most_nodes,
    .only_full = wanted->only_full,
    .count = count,
    .path = path,
    .strips = strips,
    .in_slice = in_slice,
  };

  out->model = model;
  out->options = g_array_new (FALSE, FALSE, sizeof (BsCutOption));
  out->counts = g_array_new (FALSE, FALSE, 1);
  out->steps = g_array_new (FALSE, FALSE, sizeof (BsCutStep));
  out->contents = g_ptr_array_new_with_free_func (g_free);
  bs_cut_oracle_set_quick (oracle, FALSE);
  bs_cut_oracle_set (oracle, duals->values, wanted->demand);
  for (self.sheet = 0; self.sheet < model->n_sheets && !self.is_too_many; self.sheet++)
    {
      guint stock = model->sheets[self.sheet].stock;

      if (wanted->supply[stock] == 0 || wanted->is_left_out[stock])
        continue;
      self.cost = model->stock[stock].price * duals->scale + duals->rents[stock];
      self.needed = self.cost - wanted->most_loss;
      list_sheet (&self);
    }
  return self.is_too_many ? NULL : g_steal_pointer (&out);
}

void
bs_cut_options_free (BsCutOptions *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->options);
  g_array_unref (self->counts);
  g_array_unref (self->steps);
  g_ptr_array_unref (self->contents);
  g_free (self);
}

BsCutPattern *
bs_cut_options_pattern (const BsCutOptions *self, const BsCutOption *option)
{
  BsCutPattern *pattern = bs_cut_pattern_new (self->model, option->sheet);

  for (guint i = 0; i < option->n_steps; i++)
    {
      const BsCutStep *step = &g_array_index (self->steps, BsCutStep, option->steps + i);
      const BsCutContent *content = self->contents->pdata[step->content];

      bs_cut_pattern_add_slice (pattern, step->from, step->from + content->first);
      for (guint k = 0; k < content->n; k++)
        bs_cut_pattern_add_strip (pattern, content->strips[k].type, content->strips[k].second);
    }
  bs_cut_pattern_close (pattern, self->model);
  return pattern;
}
