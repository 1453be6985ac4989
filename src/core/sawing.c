/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing.h"

#include <math.h>

/* mm: what sums of sizes in binary fractions are off, far below what a saw can do. */
#define NEAR 1e-3

/* mm: narrower than this no saw takes off; it stays on the piece. */
#define SLIVER 1.0

/* A stretch of the first or the second axis. */
typedef struct
{
  double from, to;
} Span;

/* The pieces that one slice holds, next to each other in the order of work. */
typedef struct
{
  Span span; /* along the first axis */
  guint first, n;
} Slice;

typedef struct
{
  const BsSawBoard *board;
  const BsSawPiece *pieces;
  guint n;
  gboolean rips_first;
  guint *order; /* of the pieces: by slice, then across it */
  GArray *slices;
  BsSawing *out;
} Work;

/* Where a piece lies along the first axis, or along the second. */
static Span
get_span (const Work *self, guint piece, gboolean is_first)
{
  const BsSawPiece *at = &self->pieces[piece];

  return is_first != self->rips_first ? (Span){ at->x, at->x + at->length }
                                      : (Span){ at->y, at->y + at->width };
}

static double
get_room (const Work *self, gboolean is_first)
{
  return is_first != self->rips_first ? self->board->length : self->board->width;
}

static int
compare_first (gconstpointer a, gconstpointer b, gpointer work)
{
  double left = get_span (work, *(const guint *)a, TRUE).from;
  double right = get_span (work, *(const guint *)b, TRUE).from;

  return (left > right) - (left < right);
}

static int
compare_second (gconstpointer a, gconstpointer b, gpointer work)
{
  double left = get_span (work, *(const guint *)a, FALSE).from;
  double right = get_span (work, *(const guint *)b, FALSE).from;

  return (left > right) - (left < right);
}

static gboolean
is_clear_of (Span a, Span b, double kerf)
{
  return a.to + kerf <= b.from + NEAR || b.to + kerf <= a.from + NEAR;
}

/* Pieces whose places along the first axis leave no kerf between them share a slice. */
static void
find_slices (Work *self)
{
  g_array_set_size (self->slices, 0);
  for (guint i = 0; i < self->n; i++)
    self->order[i] = i;
  g_qsort_with_data (self->order, (int)self->n, sizeof (guint), compare_first, self);
  for (guint i = 0; i < self->n; i++)
    {
      Span span = get_span (self, self->order[i], TRUE);
      Slice *last = self->slices->len > 0
                        ? &g_array_index (self->slices, Slice, self->slices->len - 1)
                        : NULL;

      if (last == NULL || is_clear_of (last->span, span, self->board->kerf))
        {
          Slice slice = { span, i, 1 };
          g_array_append_val (self->slices, slice);
          continue;
        }
      last->span.to = fmax (last->span.to, span.to);
      last->n++;
    }
}

/* FALSE when two pieces of a slice leave no kerf between them across it either. */
static gboolean
can_divide_slices (Work *self)
{
  for (guint k = 0; k < self->slices->len; k++)
    {
      const Slice *slice = &g_array_index (self->slices, Slice, k);
      guint *order = self->order + slice->first;

      g_qsort_with_data (order, (int)slice->n, sizeof (guint), compare_second, self);
      for (guint i = 1; i < slice->n; i++)
        if (!is_clear_of (get_span (self, order[i - 1], FALSE), get_span (self, order[i], FALSE),
                          self->board->kerf))
          return FALSE;
    }
  return TRUE;
}

static gboolean
can_saw (Work *self, gboolean rips_first)
{
  self->rips_first = rips_first;
  find_slices (self);
  return can_divide_slices (self);
}

/* One pass; is_first: it divides the first axis. */
static void
add_pass (Work *self, gboolean is_first, double at, double width, Span along)
{
  BsSawPass pass = { is_first == self->rips_first, at, width, along.from, along.to };

  g_array_append_val (self->out->passes, pass);
  self->out->kerf_area += width * (along.to - along.from);
}

/* The passes that free a stretch: before it, unless wood begins there (`free_from`), and behind it,
 * unless that is where the wood ends. Returns where the wood goes on. */
static double
free_span (Work *self, gboolean is_first, Span span, double free_from, double end, Span along)
{
  double kerf = self->board->kerf;
  double before = fmax (span.from - kerf, free_from), behind = fmin (span.to + kerf, end);

  if (span.from - free_from > SLIVER)
    add_pass (self, is_first, before, span.from - before, along);
  if (end - span.to > SLIVER)
    add_pass (self, is_first, span.to, behind - span.to, along);
  return behind;
}

static void
divide_slice (Work *self, const Slice *slice)
{
  double wood = 0.0;

  for (guint i = slice->first; i < slice->first + slice->n; i++)
    {
      Span span = get_span (self, self->order[i], FALSE);

      wood = free_span (self, FALSE, span, wood, get_room (self, FALSE), slice->span);
    }
  for (guint i = slice->first; i < slice->first + slice->n; i++)
    free_span (self, TRUE, get_span (self, self->order[i], TRUE), slice->span.from, slice->span.to,
               get_span (self, self->order[i], FALSE));
}

static void
saw (Work *self)
{
  Span across = { 0.0, get_room (self, FALSE) };
  double wood = 0.0;

  for (guint k = 0; k < self->slices->len; k++)
    wood = free_span (self, TRUE, g_array_index (self->slices, Slice, k).span, wood,
                      get_room (self, TRUE), across);
  self->out->n_first = self->out->passes->len;
  for (guint k = 0; k < self->slices->len; k++)
    divide_slice (self, &g_array_index (self->slices, Slice, k));
}

static gboolean
has_defect (const BsSawBoard *board, double from)
{
  for (guint k = 0; k < board->n_defects; k++)
    if (board->defects[k].x_to > from && board->defects[k].x_from < board->length)
      return TRUE;
  return FALSE;
}

/* What is left of a crosscut board behind the last section. */
static void
find_offcut (Work *self)
{
  const BsSawBoard *board = self->board;
  double from = self->n == 0 ? board->end_trim : 0.0, to = board->length - board->end_trim;

  for (guint i = 0; i < self->n; i++)
    from = fmax (from, self->pieces[i].x + self->pieces[i].length + board->kerf);
  self->out->offcut_from = self->out->offcut_to = to;
  if ((self->n > 0 && self->rips_first) || to - from < board->min_offcut - NEAR
      || has_defect (board, from))
    return;
  self->out->offcut_from = from;
  self->out->offcut_area = (to - from) * board->width;
}

static gboolean
is_on_board (const BsSawBoard *board, const BsSawPiece *piece)
{
  return piece->x >= -NEAR && piece->x + piece->length <= board->length + NEAR && piece->y >= -NEAR
         && piece->y + piece->width <= board->width + NEAR;
}

static gboolean
is_apart (const BsSawPiece *a, const BsSawPiece *b, double kerf)
{
  Span a_x = { a->x, a->x + a->length }, b_x = { b->x, b->x + b->length };
  Span a_y = { a->y, a->y + a->width }, b_y = { b->y, b->y + b->width };

  return is_clear_of (a_x, b_x, kerf) || is_clear_of (a_y, b_y, kerf);
}

/* What is wrong with the pieces by themselves, whatever the saw does. */
static BsSawFault
find_fault (Work *self)
{
  for (guint i = 0; i < self->n; i++)
    {
      self->out->piece = i;
      if (!is_on_board (self->board, &self->pieces[i]))
        return BS_SAW_FAULT_OFF_BOARD;
      for (guint k = 0; k < i; k++)
        if (!is_apart (&self->pieces[i], &self->pieces[k], self->board->kerf))
          {
            self->out->other = k;
            return BS_SAW_FAULT_NO_KERF;
          }
    }
  return BS_SAW_FAULT_NONE;
}

BsSawing *
bs_sawing_new (const BsSawBoard *board, const BsSawPiece *pieces, guint n_pieces)
{
  BsSawing *self = g_new0 (BsSawing, 1);
  g_autofree guint *order = g_new (guint, n_pieces + 1);
  g_autoptr (GArray) slices = g_array_new (FALSE, FALSE, sizeof (Slice));
  Work work = { board, pieces, n_pieces, FALSE, order, slices, self };

  self->length = board->length;
  self->width = board->width;
  self->passes = g_array_new (FALSE, FALSE, sizeof (BsSawPass));
  self->fault = find_fault (&work);
  if (self->fault == BS_SAW_FAULT_NONE && !can_saw (&work, FALSE) && !can_saw (&work, TRUE))
    self->fault = BS_SAW_FAULT_NOT_THROUGH;
  self->order = work.rips_first ? BS_CUT_RIP_FIRST : BS_CUT_CROSSCUT_FIRST;
  for (guint i = 0; i < n_pieces; i++)
    self->piece_area += pieces[i].length * pieces[i].width;
  if (self->fault == BS_SAW_FAULT_NONE)
    {
      saw (&work);
      find_offcut (&work);
    }
  self->waste_area
      = board->length * board->width - self->piece_area - self->kerf_area - self->offcut_area;
  return self;
}

void
bs_sawing_free (BsSawing *self)
{
  g_array_unref (self->passes);
  g_free (self);
}
