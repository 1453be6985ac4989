/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-search.h"

#include "core/stages-ways.h"

#include <math.h>

/* What a row that ends before a lamination still needs to reach the end of the slab. */
typedef struct
{
  gint64 time_us; /* G_MAXINT64: it cannot be reached */
  int n_pieces;
  int clamps; /* of all rounds so far together */
} Rest;

struct _BsStagesSearch
{
  const BsStagesInput *input;
  int n;
  int round; /* rounds so far */
  BsWays ways;
  GArray **pieces;                 /* ways to have each interval as one piece; NULL: none */
  GArray **next;                   /* the same at the end of the round under way */
  GArray **rows;                   /* ways to have a row that ends before a lamination */
  double *starts;                  /* y of each lamination's front, and of the slab's back */
  double *masses;                  /* of all laminations before one whose mass is known, */
  int *unknown;                    /* and how many before it have none that is */
  gint16 *outer;                   /* clamps for each interval as outer piece; 0: not asked yet */
  gint16 *whole;                   /* clamps for each interval as a stage; 0: not asked yet */
  int least_clamps[BS_WAY_ROUNDS]; /* that any stage of each round needs */
  int *most_pieces;                /* for each number of clamps: that can be joined in time */
  Rest *rests;     /* for each lamination and the end: what the rest of the slab takes at least */
  gint64 place_us; /* for each piece more */
  int steps_left;  /* rows that may still be tried */
};

static gsize
interval (const BsStagesSearch *self, int first, int end)
{
  return (gsize)first * (gsize)(self->n + 1) + (gsize)end;
}

static const BsWay *
way_at (const BsStagesSearch *self, int way)
{
  return bs_ways_get (&self->ways, way);
}

static gint64
to_us (double seconds)
{
  return (gint64)floor (seconds * 1e6 + 0.5);
}

static double
width_of (const BsStagesSearch *self, int first, int end)
{
  return self->starts[end] - self->starts[first];
}

static int
outer_clamps (BsStagesSearch *self, int first, int end)
{
  gint16 *known = &self->outer[interval (self, first, end)];

  if (*known == 0)
    *known = (gint16)CLAMP (bs_stages_clamps_for (self->input, first, end - first), 2, BS_WAY_MOST);
  return *known;
}

static int
whole_clamps (BsStagesSearch *self, int first, int end)
{
  gint16 *known = &self->whole[interval (self, first, end)];

  if (*known == 0)
    *known = (gint16)CLAMP (bs_stages_clamps_for_whole (self->input, first, end - first, 0), 2,
                            BS_WAY_MOST);
  return *known;
}

static int
slab_clamps (const BsStagesSearch *self, int outer, int n_pieces)
{
  return CLAMP (bs_stages_clamps_for_slab (self->input, outer, n_pieces), 2, BS_WAY_MOST);
}

static gint64
stage_us (const BsStagesSearch *self, int n_pieces, int n_clamps)
{
  return to_us (bs_stage_times (self->input, n_pieces, n_clamps).assembly_s);
}

static void
find_most_pieces (BsStagesSearch *self)
{
  int most_clamps = MAX (self->input->clamps, self->input->pack_clamps);

  self->most_pieces = g_new0 (int, most_clamps + 1);
  for (int clamps = 2; clamps <= most_clamps; clamps++)
    self->most_pieces[clamps] = bs_stage_most_pieces (self->input, clamps);
}

BsStagesSearch *
bs_stages_search_new (const BsStagesInput *input)
{
  BsStagesSearch *self = g_new0 (BsStagesSearch, 1);
  int n = input->n;
  gsize n_intervals = (gsize)n * (gsize)(n + 1);

  self->input = input;
  self->n = n;
  self->steps_left = BS_STAGES_MAX_STEPS;
  bs_ways_init (&self->ways);
  self->pieces = g_new0 (GArray *, n_intervals);
  self->next = g_new0 (GArray *, n_intervals);
  self->rows = g_new0 (GArray *, n + 1);
  self->starts = g_new0 (double, n + 1);
  self->masses = g_new0 (double, n + 1);
  self->unknown = g_new0 (int, n + 1);
  self->outer = g_new0 (gint16, n_intervals);
  self->whole = g_new0 (gint16, n_intervals);
  self->rests = g_new0 (Rest, n + 1);
  find_most_pieces (self);
  self->place_us = n >= 3 ? stage_us (self, 3, 0) - stage_us (self, 2, 0) : 0;

  for (int i = 0; i < n; i++)
    {
      BsWay single = { .first = (gint16)i, .end = (gint16)(i + 1), .round = BS_WAY_SINGLE };
      self->starts[i + 1] = self->starts[i] + input->widths[i];
      gboolean is_known = input->masses != NULL && !isnan (input->masses[i]);
      self->masses[i + 1] = self->masses[i] + (is_known ? input->masses[i] : 0.0);
      self->unknown[i + 1] = self->unknown[i] + !is_known;
      bs_ways_add (&self->ways, &self->pieces[interval (self, i, i + 1)], &single);
    }
  return self;
}

static void
free_lists (GArray **lists, gsize n)
{
  for (gsize i = 0; i < n; i++)
    if (lists[i] != NULL)
      g_array_unref (lists[i]);
  g_free (lists);
}

void
bs_stages_search_free (BsStagesSearch *self)
{
  gsize n_intervals = (gsize)self->n * (gsize)(self->n + 1);

  free_lists (self->pieces, n_intervals);
  free_lists (self->next, n_intervals);
  free_lists (self->rows, (gsize)self->n + 1);
  bs_ways_clear (&self->ways);
  g_free (self->starts);
  g_free (self->masses);
  g_free (self->unknown);
  g_free (self->outer);
  g_free (self->whole);
  g_free (self->most_pieces);
  g_free (self->rests);
  g_free (self);
}

void
bs_stages_search_allow (BsStagesSearch *self, int n_steps)
{
  self->steps_left = n_steps;
}

double
bs_stages_search_piece_width (const BsStagesSearch *self, int first, int end)
{
  gboolean is_piece = self->pieces[interval (self, first, end)] != NULL;
  return is_piece ? width_of (self, first, end) : NAN;
}

gboolean
bs_stages_search_gave_up (const BsStagesSearch *self)
{
  return self->ways.is_full || self->steps_left <= 0;
}

/* What a growing row is for. */
typedef struct
{
  gboolean is_last;               /* the whole slab; else a pack */
  double least_width, most_width; /* of the pieces of the last stage */
  gint64 limit_us;
  int clamps;        /* at hand */
  GArray **finished; /* where finished stages go: one list, or a table of intervals */
} Aim;

/* NAN when that of one lamination is not known. */
static double
mass_of (const BsStagesSearch *self, int first, int end)
{
  return self->unknown[end] > self->unknown[first] ? NAN : self->masses[end] - self->masses[first];
}

static gboolean
is_pack_allowed (const BsStagesSearch *self, int first, int end)
{
  return bs_stage_pack_limit (self->input, width_of (self, first, end), mass_of (self, first, end))
         == BS_STAGE_LIMIT_NONE;
}

static gboolean
is_piece_wanted (const BsStagesSearch *self, const Aim *aim, int first, int end)
{
  double width = width_of (self, first, end);
  return width >= aim->least_width - BS_STAGES_ROUNDING
         && width <= aim->most_width + BS_STAGES_ROUNDING;
}

static int
all_clamps (const BsStagesSearch *self, const BsWay *way)
{
  int sum = 0;

  for (int i = 0; i < self->round; i++)
    sum += way->clamps[i];
  return sum;
}

static void
find_rest (BsStagesSearch *self, const Aim *aim, int at)
{
  Rest *rest = &self->rests[at];

  *rest = (Rest){ G_MAXINT64, G_MAXINT, G_MAXINT };
  for (int end = at + 1; end <= self->n; end++)
    {
      const GArray *list = self->pieces[interval (self, at, end)];
      const Rest *next = &self->rests[end];
      if (list == NULL || next->time_us == G_MAXINT64 || !is_piece_wanted (self, aim, at, end))
        continue;
      rest->n_pieces = MIN (rest->n_pieces, next->n_pieces + 1);
      for (guint i = 0; i < list->len; i++)
        {
          const BsWay *piece = way_at (self, bs_way_list_get (list, i));
          rest->time_us = MIN (rest->time_us, next->time_us + piece->time_us + self->place_us);
          rest->clamps = MIN (rest->clamps, next->clamps + all_clamps (self, piece));
        }
    }
}

/* Whether a row may still become the slab: a bound from below on pieces, time and clamps, each by
 * itself. */
static gboolean
may_finish (const BsStagesSearch *self, const Aim *aim, const BsWay *row)
{
  const Rest *rest = &self->rests[row->end];

  return rest->time_us < G_MAXINT64
         && rest->n_pieces <= self->most_pieces[row->outer] - row->n_pieces
         && rest->clamps <= self->round * self->input->pack_clamps - all_clamps (self, row)
         && rest->time_us <= aim->limit_us - (row->time_us - self->place_us);
}

/* Clamps that are left over but too few for any stage are as good as used: ways that differ in
 * nothing else are then alike. */
static gint16
round_up (const BsStagesSearch *self, int round, int used)
{
  int left = self->input->pack_clamps - used;
  return (gint16)(left < self->least_clamps[round] ? self->input->pack_clamps : used);
}

/* Adds the clamps of a piece to those of a row. FALSE: in some round there are not so many. */
static gboolean
add_clamps (const BsStagesSearch *self, BsWay *row, const BsWay *piece)
{
  for (int i = 0; i < self->round; i++)
    {
      int used = row->clamps[i] + piece->clamps[i];
      if (used > self->input->pack_clamps)
        return FALSE;
      row->clamps[i] = round_up (self, i, used);
    }
  return TRUE;
}

/* Joins a row to a piece. FALSE: the clamps or the time are not there, or it is of no use. */
static gboolean
join_row (BsStagesSearch *self, const Aim *aim, const BsWay *row, int row_number, int n_clamps)
{
  if (n_clamps > aim->clamps || row->n_pieces > self->most_pieces[n_clamps])
    return FALSE;

  BsWay joined = *row;
  joined.time_us += stage_us (self, row->n_pieces, n_clamps) - row->n_pieces * self->place_us;
  joined.round = (gint16)self->round;
  joined.row = row_number;
  joined.n_pieces = joined.outer = 0;
  if (joined.time_us > aim->limit_us)
    return FALSE;
  if (!aim->is_last)
    {
      joined.time_us += self->input->planes_packs ? to_us (self->input->plane_s) : 0;
      joined.clamps[self->round] = round_up (self, self->round, n_clamps);
    }

  GArray **list
      = aim->is_last ? aim->finished : &aim->finished[interval (self, row->first, row->end)];
  guint before = self->ways.all->len;
  bs_ways_add (&self->ways, list, &joined);
  return self->ways.all->len > before;
}

/* A row of one piece more. It is itself kept for going on, and joined where that makes a stage. */
static void
extend_row (BsStagesSearch *self, const Aim *aim, int number, int piece_number)
{
  BsWay row = *way_at (self, number);
  const BsWay *piece = way_at (self, piece_number);

  self->steps_left--;
  if (!add_clamps (self, &row, piece))
    return;
  row.time_us += piece->time_us + self->place_us;
  row.end = piece->end;
  row.n_pieces++;
  row.row = number;
  row.piece = piece_number;
  if (row.n_pieces > self->most_pieces[row.outer]
      || (aim->is_last && !may_finish (self, aim, &row)))
    return;

  int n_clamps = MAX (row.outer, outer_clamps (self, piece->first, piece->end));
  gboolean is_whole = row.end == self->n && row.first == 0;
  if (aim->is_last ? is_whole : !is_whole)
    {
      n_clamps = aim->is_last ? slab_clamps (self, n_clamps, row.n_pieces)
                              : MAX (n_clamps, whole_clamps (self, row.first, row.end));

      /* The stage has to name its last row, so that is put down even if it leads no farther. */
      int last = bs_ways_keep (&self->ways, &row);
      if (last >= 0 && !join_row (self, aim, &row, last, n_clamps))
        g_array_set_size (self->ways.all, (guint)last);
    }
  if (row.end < self->n)
    bs_ways_add (&self->ways, &self->rows[row.end], &row);
}

static void
begin_rows (BsStagesSearch *self, const Aim *aim, int first)
{
  for (int end = first + 1; end <= self->n; end++)
    {
      const GArray *list = self->pieces[interval (self, first, end)];
      int outer = outer_clamps (self, first, end);
      if (aim->is_last)
        outer = slab_clamps (self, outer, 0);
      if (list == NULL || !is_piece_wanted (self, aim, first, end) || outer > aim->clamps)
        continue;
      for (guint i = 0; i < list->len; i++)
        {
          int number = bs_way_list_get (list, i);
          BsWay row = *way_at (self, number);
          row.time_us += self->place_us;
          row.n_pieces = 1;
          row.outer = (gint16)outer;
          row.row = -1;
          row.piece = number;
          if (!aim->is_last || may_finish (self, aim, &row))
            bs_ways_add (&self->ways, &self->rows[end], &row);
        }
    }
}

/* All rows that begin with a lamination, by where they end. */
static void
grow_rows (BsStagesSearch *self, const Aim *aim, int first)
{
  for (int i = first; i <= self->n; i++)
    if (self->rows[i] != NULL)
      g_array_set_size (self->rows[i], 0);
  begin_rows (self, aim, first);

  for (int at = first + 1; at < self->n; at++)
    {
      guint n_rows = self->rows[at] != NULL ? self->rows[at]->len : 0;
      for (int end = at + 1; n_rows > 0 && end <= self->n; end++)
        {
          const GArray *list = self->pieces[interval (self, at, end)];
          if (!aim->is_last && !is_pack_allowed (self, first, end))
            break;
          if (list == NULL || !is_piece_wanted (self, aim, at, end))
            continue;
          for (guint i = 0; i < n_rows; i++)
            for (guint k = 0; k < list->len && !bs_stages_search_gave_up (self); k++)
              extend_row (self, aim, bs_way_list_get (self->rows[at], i),
                          bs_way_list_get (list, k));
        }
    }
}

static void
find_least_clamps (BsStagesSearch *self)
{
  int least = BS_WAY_MOST;

  for (int first = 0; first < self->n; first++)
    for (int end = first + 1; end <= self->n; end++)
      if (self->pieces[interval (self, first, end)] != NULL)
        least = MIN (least, outer_clamps (self, first, end));
  self->least_clamps[self->round] = least;
}

void
bs_stages_search_next_round (BsStagesSearch *self)
{
  gsize n_intervals = (gsize)self->n * (gsize)(self->n + 1);
  Aim aim = { .most_width = INFINITY,
              .limit_us = G_MAXINT64,
              .clamps = self->input->pack_clamps,
              .finished = self->next };

  g_return_if_fail (self->round < BS_WAY_ROUNDS);

  find_least_clamps (self);

  /* What is a piece stays one. */
  for (gsize i = 0; i < n_intervals; i++)
    {
      g_clear_pointer (&self->next[i], g_array_unref);
      if (self->pieces[i] != NULL)
        self->next[i] = g_array_copy (self->pieces[i]);
    }
  for (int first = 0; first < self->n && !bs_stages_search_gave_up (self); first++)
    grow_rows (self, &aim, first);

  GArray **spent = self->pieces;
  self->pieces = self->next;
  self->next = spent;
  self->round++;
}

int
bs_stages_search_finish (BsStagesSearch *self, double least_width, double most_width,
                         gint64 limit_us)
{
  g_autoptr (GArray) finished = NULL;
  Aim aim = { .is_last = TRUE,
              .least_width = least_width,
              .most_width = most_width,
              .limit_us = limit_us,
              .clamps = self->input->clamps,
              .finished = &finished };
  int best = BS_STAGES_NO_WAY;

  if (width_of (self, 0, self->n) + 2.0 * self->input->caul
      > self->input->max_opening + BS_STAGES_ROUNDING)
    return best;
  guint n_before = self->ways.all->len;
  self->rests[self->n] = (Rest){ 0 };
  for (int at = self->n - 1; at >= 0; at--)
    find_rest (self, &aim, at);
  grow_rows (self, &aim, 0);
  for (guint i = 0; finished != NULL && i < finished->len; i++)
    {
      int number = bs_way_list_get (finished, i);
      if (best == BS_STAGES_NO_WAY || way_at (self, number)->time_us < way_at (self, best)->time_us)
        best = number;
    }
  if (best == BS_STAGES_NO_WAY)
    g_array_set_size (self->ways.all, n_before);
  return best;
}

gint64
bs_stages_search_time_us (const BsStagesSearch *self, int way)
{
  return way_at (self, way)->time_us;
}

double
bs_stages_search_imbalance (const BsStagesSearch *self, int way)
{
  double least = INFINITY, most = 0.0;

  for (int row = way_at (self, way)->row; row >= 0; row = way_at (self, row)->row)
    {
      const BsWay *piece = way_at (self, way_at (self, row)->piece);
      double width = width_of (self, piece->first, piece->end);
      least = fmin (least, width);
      most = fmax (most, width);
    }
  return most - least;
}

void
bs_stages_search_report (const BsStagesSearch *self, int way, BsStagesReport report, gpointer data)
{
  const BsWay *stage = way_at (self, way);
  if (stage->round == BS_WAY_SINGLE)
    return;

  int n_pieces = way_at (self, stage->row)->n_pieces;
  g_autofree int *bounds = g_new0 (int, n_pieces + 1);
  g_autofree int *pieces = g_new0 (int, n_pieces);
  int at = n_pieces;

  bounds[n_pieces] = stage->end;
  for (int row = stage->row; row >= 0; row = way_at (self, row)->row)
    {
      pieces[--at] = way_at (self, row)->piece;
      bounds[at] = way_at (self, pieces[at])->first;
    }
  for (int i = 0; i < n_pieces; i++)
    bs_stages_search_report (self, pieces[i], report, data);
  report (stage->round, bounds, n_pieces, data);
}
