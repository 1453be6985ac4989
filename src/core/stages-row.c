/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-row.h"

#include "core/stages-ways.h"

#include <math.h>

/* What stands in `clamps` of a row here. */
enum
{
  ROUNDS, /* begun so far */
  IN_USE, /* clamps at work in the last of them */
};

typedef struct
{
  const BsStagesInput *input;
  double most_width;
  BsWays ways;
  GArray **rows;     /* for each lamination and the end: rows that end before it */
  int *most_pieces;  /* for each number of clamps */
  gint64 place_us;   /* for each piece more in the last stage */
  gint64 waiting_us; /* for each round more */
} Search;

static gint64
to_us (double seconds)
{
  return (gint64)floor (seconds * 1e6 + 0.5);
}

static gint64
assembly_us (const Search *self, int n_pieces, int n_clamps)
{
  return to_us (bs_stage_times (self->input, n_pieces, n_clamps).assembly_s);
}

/* Adds the gluing of a pack to a row: in the round at hand when the clamps suffice, else in a new
 * one. */
static gboolean
glue_pack (const Search *self, BsWay *row, int first, int count)
{
  const BsStagesInput *input = self->input;
  int n_clamps = MAX (bs_stages_clamps_for (input, first, 1),
                      bs_stages_clamps_for (input, first + count - 1, 1));

  n_clamps = MAX (n_clamps, bs_stages_clamps_for_whole (input, first, count, 0));
  if (n_clamps > input->pack_clamps || count > self->most_pieces[n_clamps])
    return FALSE;
  if (row->clamps[ROUNDS] == 0 || row->clamps[IN_USE] + n_clamps > input->pack_clamps)
    {
      row->clamps[ROUNDS]++;
      row->clamps[IN_USE] = 0;
      row->time_us += self->waiting_us;
    }
  row->clamps[IN_USE] = (gint16)(row->clamps[IN_USE] + n_clamps);
  row->time_us += assembly_us (self, count, n_clamps);
  row->time_us += input->planes_packs ? to_us (input->plane_s) : 0;
  return row->clamps[ROUNDS] < input->max_rounds;
}

/* The row, number `before` (-1: none), with a piece of `count` laminations from first on added. */
static void
extend_row (Search *self, int before, int first, int count)
{
  const BsStagesInput *input = self->input;
  BsWay row = { .row = before };
  int outer = bs_stages_clamps_for_slab (input, bs_stages_clamps_for (input, first, count), 0);

  if (before >= 0)
    row = *bs_ways_get (&self->ways, before);
  else
    row.outer = (gint16)MIN (outer, BS_WAY_MOST);
  if (count > 1 && !glue_pack (self, &row, first, count))
    return;
  row.first = (gint16)first;
  row.end = (gint16)(first + count);
  row.row = before;
  row.n_pieces++;
  row.time_us += self->place_us;
  if (row.outer > input->clamps || row.n_pieces > self->most_pieces[row.outer])
    return;

  if (row.end == input->n)
    {
      /* The last stage; at the end only its clamps and time matter. */
      int n_clamps = bs_stages_clamps_for_slab (input, MAX (row.outer, outer), row.n_pieces);
      if (n_clamps > input->clamps || row.n_pieces > self->most_pieces[n_clamps])
        return;
      row.time_us += assembly_us (self, row.n_pieces, n_clamps) - row.n_pieces * self->place_us;
      row.outer = row.n_pieces = row.clamps[IN_USE] = 0;
    }
  bs_ways_add (&self->ways, &self->rows[row.end], &row);
}

static void
extend_rows (Search *self, int at)
{
  const BsStagesInput *input = self->input;
  double width = 0.0, mass = 0.0;

  for (int end = at + 1; end <= input->n && end - at < input->n; end++)
    {
      width += input->widths[end - 1];
      mass += input->masses != NULL ? input->masses[end - 1] : 0.0;
      if (width > self->most_width + BS_STAGES_ROUNDING
          || (end > at + 1 && bs_stage_pack_limit (input, width, mass) != BS_STAGE_LIMIT_NONE))
        break;
      if (at == 0)
        extend_row (self, -1, 0, end);
      for (guint i = 0; at > 0 && self->rows[at] != NULL && i < self->rows[at]->len; i++)
        extend_row (self, bs_way_list_get (self->rows[at], i), at, end - at);
    }
}

static gboolean
can_close_slab (const BsStagesInput *input)
{
  double width = 2.0 * input->caul;

  for (int i = 0; i < input->n; i++)
    width += input->widths[i];
  return width <= input->max_opening + BS_STAGES_ROUNDING;
}

static int
find_best (const Search *self)
{
  const GArray *list = self->rows[self->input->n];
  int best = -1;

  for (guint i = 0; list != NULL && i < list->len; i++)
    {
      int number = bs_way_list_get (list, i);
      const BsWay *way = bs_ways_get (&self->ways, number);
      const BsWay *other = best >= 0 ? bs_ways_get (&self->ways, best) : NULL;
      if (other == NULL || way->clamps[ROUNDS] < other->clamps[ROUNDS]
          || (way->clamps[ROUNDS] == other->clamps[ROUNDS] && way->time_us < other->time_us))
        best = number;
    }
  return best;
}

static BsStagesPlan *
make_plan (const Search *self, int way)
{
  int n = self->input->n, n_packs = 0;
  g_autofree int *starts = g_new (int, n);
  g_autofree int *counts = g_new (int, n);

  for (int row = way; row >= 0; row = bs_ways_get (&self->ways, row)->row)
    {
      const BsWay *piece = bs_ways_get (&self->ways, row);
      if (piece->end - piece->first < 2)
        continue;
      n_packs++;
      starts[n - n_packs] = piece->first;
      counts[n - n_packs] = piece->end - piece->first;
    }
  return bs_stages_plan_from_packs (self->input, starts + n - n_packs, counts + n - n_packs,
                                    n_packs);
}

static void
clear_search (Search *self)
{
  for (int i = 0; i <= self->input->n; i++)
    g_clear_pointer (&self->rows[i], g_array_unref);
  bs_ways_clear (&self->ways);
  g_free (self->rows);
  g_free (self->most_pieces);
}

BsStagesPlan *
bs_stages_row_find (const BsStagesInput *input, double most_width)
{
  int most_clamps = MAX (input->clamps, input->pack_clamps);
  double waiting = input->press_s + (input->planes_packs ? input->rest_s : 0.0);
  Search self = { .input = input,
                  .most_width = most_width,
                  .rows = g_new0 (GArray *, input->n + 1),
                  .most_pieces = g_new0 (int, most_clamps + 1),
                  .waiting_us = to_us (waiting) };
  BsStagesPlan *plan = NULL;

  self.place_us = assembly_us (&self, 3, 0) - assembly_us (&self, 2, 0);
  for (int clamps = 2; clamps <= most_clamps; clamps++)
    self.most_pieces[clamps] = bs_stage_most_pieces (input, clamps);
  bs_ways_init (&self.ways);
  if (can_close_slab (input))
    for (int at = 0; at < input->n; at++)
      extend_rows (&self, at);

  int best = find_best (&self);
  if (best >= 0)
    plan = make_plan (&self, best);
  clear_search (&self);
  return plan;
}
