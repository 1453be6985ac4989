/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-options.h"

#include <string.h>

/* What a slice may hold. */
typedef struct
{
  gint32 first; /* size of the slice along the first axis */
  gint64 value; /* if all of it is wanted */
  guint n;
  BsCutStrip strips[];
} Content;

/* One slice of an option. */
typedef struct
{
  gint32 from;
  guint content;
} Step;

/* Contents of slices of the same size that touch the same spots, in one group of sheets. */
typedef struct
{
  guint sheet; /* of a sheet with spots; else that of the group's first sheet */
  guint64 spots;
  gint32 first;
  GArray *contents; /* guint */
} Shelf;

typedef struct
{
  BsCutOptions *out;
  const BsCutModel *model;
  BsCutOracle *oracle;
  const int *demand;
  const BsCutDuals *duals;
  GPtrArray *shelves; /* Shelf */
  GHashTable *known;  /* key of stock and counts -> index of option + 1 */
  guint most_options, nodes_left;
  gboolean is_too_many;
  gboolean only_full;

  /* The sheet at hand. */
  guint sheet;
  gint64 cost;   /* price and rent, scaled */
  gint64 needed; /* value that a pattern must have */
  int *count;    /* of each type in the pattern so far */
  gint64 value;  /* of it, as far as it is wanted */
  int n_wanted;  /* parts in it that are wanted */
  GArray *path;  /* Step */

  /* The slice at hand. */
  const Shelf *shelf;
  GArray *strips;
  int *in_slice;
} Listing;

static void
shelf_free (gpointer data)
{
  Shelf *self = data;

  g_array_unref (self->contents);
  g_free (self);
}

static gint32
size_of (const Listing *self, guint type, gboolean is_first)
{
  guint first = bs_cut_first_axis (self->model->sheets[self->sheet].order);

  return self->model->types[type].size[is_first ? first : 1 - first];
}

static gboolean
may_hold (const Listing *self, guint type, gint32 place)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];

  return self->in_slice[type] < self->demand[type] && self->model->stock[sheet->stock].fits[type]
         && (sheet->is_row || size_of (self, type, TRUE) <= self->shelf->first)
         && place + size_of (self, type, FALSE) <= sheet->room[1];
}

static gboolean
count_node (Listing *self)
{
  if (self->nodes_left == 0)
    self->is_too_many = TRUE;
  else
    self->nodes_left--;
  return !self->is_too_many;
}

/* Whether the shelf has another arrangement of the same parts. */
static gboolean
is_on_shelf (const Listing *self)
{
  gsize size = self->model->n_types * sizeof (int);
  g_autofree int *count = g_malloc (size + 1);

  for (guint i = 0; i < self->shelf->contents->len; i++)
    {
      guint index = g_array_index (self->shelf->contents, guint, i);
      const Content *known = self->out->contents->pdata[index];
      gboolean same = known->n == self->strips->len;

      memcpy (count, self->in_slice, size);
      for (guint k = 0; k < known->n && same; k++)
        same = --count[known->strips[k].type] >= 0;
      if (same)
        return TRUE;
    }
  return FALSE;
}

static void
keep_content (Listing *self)
{
  guint n = self->strips->len, index = self->out->contents->len;
  Content *content = g_malloc (sizeof (Content) + n * sizeof (BsCutStrip));

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
list_clear_contents (Listing *self, guint type, gint32 place, gboolean is_long)
{
  if (!count_node (self))
    return;
  if (type == self->model->n_types)
    {
      for (guint t = 0; t < self->model->n_types; t++)
        if (may_hold (self, t, place))
          return;
      if (is_long)
        keep_content (self);
      return;
    }
  list_clear_contents (self, type + 1, place, is_long);
  if (may_hold (self, type, place))
    {
      BsCutStrip strip = { type, place };

      g_array_append_val (self->strips, strip);
      self->in_slice[type]++;
      /* The same type again, by a call that takes one at least. */
      list_clear_contents (self, type, place + size_of (self, type, FALSE),
                           is_long || size_of (self, type, TRUE) == self->shelf->first);
      self->in_slice[type]--;
      g_array_set_size (self->strips, self->strips->len - 1);
    }
}

/* The next place at or behind this one where a strip may have to start. */
static gint32
next_start (const Listing *self, gint32 place)
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
is_well_filled (const Listing *self)
{
  const BsCutBoards *boards = &self->model->stock[self->model->sheets[self->sheet].stock];

  if (self->shelf->spots >> boards->n_defects != 0 && boards->n_defects < boards->n_spots)
    return TRUE;
  for (guint i = 0; i < self->strips->len; i++)
    if (size_of (self, g_array_index (self->strips, BsCutStrip, i).type, TRUE)
        == self->shelf->first)
      return TRUE;
  return FALSE;
}

/* Contents of a slice with defects or pins: strips in order of their places. */
static void
list_band_contents (Listing *self, gint32 place)
{
  gint32 next = next_start (self, place);
  gboolean any = FALSE;

  if (!count_node (self))
    return;
  for (guint t = 0; t < self->model->n_types; t++)
    if (may_hold (self, t, place)
        && bs_cut_model_allows (self->model, &self->model->sheets[self->sheet], t,
                                self->shelf->spots, place))
      {
        BsCutStrip strip = { t, place };

        any = TRUE;
        g_array_append_val (self->strips, strip);
        self->in_slice[t]++;
        list_band_contents (self, place + size_of (self, t, FALSE));
        self->in_slice[t]--;
        g_array_set_size (self->strips, self->strips->len - 1);
      }
  if (next < self->model->sheets[self->sheet].room[1])
    list_band_contents (self, next);
  else if (!any && self->strips->len > 0 && is_well_filled (self) && !is_on_shelf (self))
    keep_content (self);
}

static const Shelf *
find_shelf (Listing *self, guint64 spots, gint32 first)
{
  const BsCutModel *model = self->model;
  Shelf *shelf;

  for (guint i = 0; i < self->shelves->len; i++)
    {
      const Shelf *known = self->shelves->pdata[i];
      gboolean same = spots != 0
                          ? known->sheet == self->sheet
                          : model->sheets[known->sheet].group == model->sheets[self->sheet].group;
      if (same && known->spots == spots && known->first == first)
        return known;
    }
  shelf = g_new0 (Shelf, 1);
  *shelf = (Shelf){ self->sheet, spots, first, g_array_new (FALSE, FALSE, sizeof (guint)) };
  g_ptr_array_add (self->shelves, shelf);
  self->shelf = shelf;
  if (spots != 0)
    list_band_contents (self, 0);
  else
    list_clear_contents (self, 0, 0, FALSE);
  return shelf;
}

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
keep_option (Listing *self, gint32 used)
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
add_content (Listing *self, gint32 from, guint index)
{
  const Content *content = self->out->contents->pdata[index];
  Step step = { from, index };

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
drop_content (Listing *self)
{
  guint index = g_array_index (self->path, Step, self->path->len - 1).content;
  const Content *content = self->out->contents->pdata[index];

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
can_add_slice (const Listing *self, gint32 used)
{
  for (guint t = 0; t < self->model->n_types; t++)
    if (self->count[t] < self->demand[t]
        && self->model->stock[self->model->sheets[self->sheet].stock].fits[t]
        && used + size_of (self, t, TRUE) <= self->model->sheets[self->sheet].room[0])
      return TRUE;
  return FALSE;
}

/* Slices of a clear sheet, in the order of `menu` so that no two lists differ in order only. */
static void
list_clear (Listing *self, const GArray *menu, guint next, gint32 used)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];

  if (!count_node (self))
    return;
  if (self->path->len > 0 && self->value >= self->needed
      && !(self->only_full && can_add_slice (self, used)))
    keep_option (self, used);
  if (self->value + bs_cut_oracle_rest_value (self->oracle, self->sheet, used) < self->needed)
    return;
  for (guint i = next; i < menu->len && !self->is_too_many; i++)
    {
      guint index = g_array_index (menu, guint, i);
      const Content *content = self->out->contents->pdata[index];
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
list_sizes (const Listing *self)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];
  GArray *sizes = g_array_new (FALSE, FALSE, sizeof (gint32));

  for (guint t = 0; t < self->model->n_types; t++)
    {
      gint32 size = size_of (self, t, TRUE);
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

static void list_spotted (Listing *self, const GArray *sizes, gint32 place, gint32 used);

static void
list_spotted_slices (Listing *self, const GArray *sizes, gint32 from, gint32 to, guint64 spots,
                     gint32 first)
{
  const Shelf *shelf = find_shelf (self, spots, first);

  for (guint i = 0; i < shelf->contents->len && !self->is_too_many; i++)
    {
      guint index = g_array_index (shelf->contents, guint, i);
      const Content *content = self->out->contents->pdata[index];
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

/* The next place behind this one where a slice may have to start, unless one did here. */
static gint32
next_slice_start (const Listing *self, gint32 place)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];
  const BsCutBoards *boards = &self->model->stock[sheet->stock];
  const BsCutBlock *block = bs_cut_model_next_block (sheet, place);
  guint axis = bs_cut_first_axis (sheet->order);
  gint32 next = block == NULL ? G_MAXINT32 : block->from;

  for (guint k = 0; k < boards->n_defects; k++)
    if (boards->spots[k].to[axis] > place)
      next = MIN (next, boards->spots[k].to[axis]);
  return next;
}

/* Slices of a sheet with defects or pins, in order of their places. */
static void
list_spotted (Listing *self, const GArray *sizes, gint32 place, gint32 used)
{
  const BsCutModel *model = self->model;
  const BsCutSheet *sheet = &model->sheets[self->sheet];
  const BsCutBlock *block = bs_cut_model_next_block (sheet, place);
  guint64 spots;

  if (!count_node (self))
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
can_lengthen_row (const Listing *self, gint32 place)
{
  for (guint t = 0; t < self->model->n_types; t++)
    if (may_hold (self, t, place))
      return TRUE;
  return FALSE;
}

/* Parts of a row, one type after the other; every choice counts, since a shorter one leaves more.
 */
static void
list_row (Listing *self, guint type, gint32 place)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];

  if (!count_node (self))
    return;
  if (self->strips->len > 0 && self->value >= self->needed
      && !(self->only_full && can_lengthen_row (self, place)))
    {
      guint index;

      keep_content (self);
      index = g_array_index (self->shelf->contents, guint, self->shelf->contents->len - 1);
      g_array_append_vals (self->path, &(Step){ 0, index }, 1);
      keep_option (self, place);
      g_array_set_size (self->path, 0);
    }
  if (self->value + bs_cut_oracle_row_value (self->oracle, self->sheet, sheet->room[1] - place)
      < self->needed)
    return;
  for (guint t = type; t < self->model->n_types && !self->is_too_many; t++)
    if (may_hold (self, t, place))
      {
        BsCutStrip strip = { t, place };

        g_array_append_val (self->strips, strip);
        self->in_slice[t]++;
        self->count[t]++;
        self->value += self->duals->values[t];
        list_row (self, t, place + size_of (self, t, FALSE));
        self->value -= self->duals->values[t];
        self->count[t]--;
        self->in_slice[t]--;
        g_array_set_size (self->strips, self->strips->len - 1);
      }
}

static void
list_sheet (Listing *self)
{
  const BsCutSheet *sheet = &self->model->sheets[self->sheet];
  g_autoptr (GArray) sizes = list_sizes (self);

  if (sheet->is_row)
    {
      Shelf *shelf = g_new0 (Shelf, 1);
      *shelf
          = (Shelf){ self->sheet, 0, sheet->room[0], g_array_new (FALSE, FALSE, sizeof (guint)) };
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
          const Shelf *shelf = find_shelf (self, 0, g_array_index (sizes, gint32, i));
          g_array_append_vals (menu, shelf->contents->data, shelf->contents->len);
        }
      list_clear (self, menu, 0, 0);
    }
}

BsCutOptions *
bs_cut_options_new (const BsCutModel *model, BsCutOracle *oracle, const BsCutOptionsWanted *wanted)
{
  g_autoptr (BsCutOptions) out = g_new0 (BsCutOptions, 1);
  g_autoptr (GPtrArray) shelves = g_ptr_array_new_with_free_func (shelf_free);
  g_autoptr (GHashTable) known = g_hash_table_new_full (hash_key, equal_keys, g_free, NULL);
  g_autoptr (GArray) path = g_array_new (FALSE, FALSE, sizeof (Step));
  g_autoptr (GArray) strips = g_array_new (FALSE, FALSE, sizeof (BsCutStrip));
  g_autofree int *count = g_new0 (int, model->n_types + 1);
  g_autofree int *in_slice = g_new0 (int, model->n_types + 1);
  const BsCutDuals *duals = wanted->duals;
  Listing self = {
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
  out->steps = g_array_new (FALSE, FALSE, sizeof (Step));
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
      const Step *step = &g_array_index (self->steps, Step, option->steps + i);
      const Content *content = self->contents->pdata[step->content];

      bs_cut_pattern_add_slice (pattern, step->from, step->from + content->first);
      for (guint k = 0; k < content->n; k++)
        bs_cut_pattern_add_strip (pattern, content->strips[k].type, content->strips[k].second);
    }
  bs_cut_pattern_close (pattern, self->model);
  return pattern;
}
