/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-solution.h"

/* The plan in the terms of the problem: millimetres, parts instead of types. */

typedef struct
{
  const BsCutModel *model;
  BsCutPlan *plan;
  GArray *type_of_piece; /* guint; G_MAXUINT for a pinned one */
  guint *next_copy;      /* of each stock of the input */
} Writer;

static gboolean
is_pinned (const BsCutting *input, guint stock, guint copy)
{
  for (guint k = 0; k < input->n_pins; k++)
    if (input->pins[k].stock == stock && input->pins[k].copy == copy)
      return TRUE;
  return FALSE;
}

static guint
pick_copy (Writer *self, const BsCutBoards *boards, gboolean has_pins)
{
  guint *next = &self->next_copy[boards->index];

  if (has_pins)
    return boards->copy;
  while (is_pinned (self->model->input, boards->index, *next))
    (*next)++;
  return (*next)++;
}

static BsCutFaces
find_clear_faces (const BsCutStock *stock, const BsCutPiece *piece)
{
  guint seen = 0;

  for (guint k = 0; k < stock->n_defects; k++)
    {
      const BsCutDefect *defect = &stock->defects[k];
      if (defect->x_from < piece->x + piece->length && defect->x_to > piece->x
          && defect->y_from < piece->y + piece->width && defect->y_to > piece->y)
        seen |= defect->faces;
    }
  return (BsCutFaces)(BS_CUT_BOTH_FACES & ~seen);
}

static void
write_piece (Writer *self, BsCutPiece piece, guint type)
{
  const BsCutBoard *board = &g_array_index (self->plan->boards, BsCutBoard, piece.board);

  piece.clear_faces = find_clear_faces (&self->model->input->stock[board->stock], &piece);
  g_array_append_val (self->plan->pieces, piece);
  g_array_append_val (self->type_of_piece, type);
}

static void
write_slice (Writer *self, double from, double to)
{
  BsCutSlice slice = { self->plan->boards->len - 1, from, to };

  g_array_append_val (self->plan->slices, slice);
}

/* Corner of a piece of the last board, from the board's corner. */
static double
place_in_mm (const Writer *self, gint32 place, guint axis)
{
  guint stock = g_array_index (self->plan->boards, BsCutBoard, self->plan->boards->len - 1).stock;

  return bs_cut_near_trim (self->model->input, stock, axis)
         + (double)place * self->model->unit[axis];
}

static BsCutPiece
make_piece (const Writer *self, guint type, gint32 x, gint32 y)
{
  const BsCutType *size = &self->model->types[type];

  return (BsCutPiece){ .board = self->plan->boards->len - 1,
                       .slice = self->plan->slices->len - 1,
                       .x = place_in_mm (self, x, 0),
                       .y = place_in_mm (self, y, 1),
                       .length = size->gross[0],
                       .width = size->gross[1] };
}

/* Each part of a row is a section of its own. */
static void
write_row (Writer *self, const BsCutPattern *pattern)
{
  for (guint i = 0; i < pattern->strips->len; i++)
    {
      const BsCutStrip *strip = &g_array_index (pattern->strips, BsCutStrip, i);
      double from = place_in_mm (self, strip->second, 0);

      write_slice (self, from, from + self->model->types[strip->type].gross[0]);
      write_piece (self, make_piece (self, strip->type, strip->second, 0), strip->type);
    }
}

/* Writes the pinned parts of a block; the slice has been written. */
static void
write_pins (Writer *self, const BsCutSheet *sheet, guint block)
{
  const BsCutModel *model = self->model;
  const BsCutBoards *boards = &model->stock[sheet->stock];
  guint spot = boards->n_defects;

  for (guint k = 0; k < model->input->n_pins; k++)
    {
      const BsCutPin *pin = &model->input->pins[k];
      const BsCutPart *part = &model->input->parts[pin->part];

      if (pin->stock != boards->index || pin->copy != boards->copy)
        continue;
      if (sheet->blocks[block].pins >> spot++ & 1)
        write_piece (self,
                     (BsCutPiece){ .board = self->plan->boards->len - 1,
                                   .slice = self->plan->slices->len - 1,
                                   .part = pin->part,
                                   .x = pin->x,
                                   .y = pin->y,
                                   .length = part->length + model->input->allow_length,
                                   .width = part->width + model->input->allow_width,
                                   .is_pinned = TRUE },
                     G_MAXUINT);
    }
}

static void
write_strips (Writer *self, const BsCutSheet *sheet, const BsCutPattern *pattern, gint32 from,
              guint first, guint n)
{
  gboolean is_section = bs_cut_first_axis (sheet->order) == 0;

  for (guint k = first; k < first + n; k++)
    {
      const BsCutStrip *strip = &g_array_index (pattern->strips, BsCutStrip, k);
      write_piece (self,
                   make_piece (self, strip->type, is_section ? from : strip->second,
                               is_section ? strip->second : from),
                   strip->type);
    }
}

/* The slices of a pattern (NULL: none) with the blocks in them, and the blocks between them, which
 * are slices of their own. */
static void
write_slices (Writer *self, const BsCutSheet *sheet, const BsCutPattern *pattern)
{
  guint axis = bs_cut_first_axis (sheet->order), block = 0, strip = 0;
  guint n = pattern == NULL ? 0 : pattern->slices->len;
  double kerf = self->model->input->kerf;

  for (guint i = 0; i <= n; i++)
    {
      const BsCutPatternSlice *slice
          = i < n ? &g_array_index (pattern->slices, BsCutPatternSlice, i) : NULL;

      for (; block < sheet->n_blocks && (slice == NULL || sheet->blocks[block].from < slice->from);
           block++)
        {
          write_slice (self, place_in_mm (self, sheet->blocks[block].from, axis),
                       place_in_mm (self, sheet->blocks[block].to, axis) - kerf);
          write_pins (self, sheet, block);
        }
      if (slice == NULL)
        break;
      write_slice (self, place_in_mm (self, slice->from, axis),
                   place_in_mm (self, slice->to, axis) - kerf);
      for (; block < sheet->n_blocks && sheet->blocks[block].from < slice->to; block++)
        write_pins (self, sheet, block);
      write_strips (self, sheet, pattern, slice->from, strip, slice->n_strips);
      strip += slice->n_strips;
    }
}

static void
write_board (Writer *self, guint index, const BsCutPattern *pattern)
{
  const BsCutSheet *sheet = &self->model->sheets[index];
  const BsCutBoards *boards = &self->model->stock[sheet->stock];
  const BsCutStock *stock = &self->model->input->stock[boards->index];
  g_autoptr (BsCutPattern) none = bs_cut_pattern_new (self->model, index);
  const BsCutPattern *measured = pattern == NULL ? none : pattern;
  BsCutBoard board = { .stock = boards->index,
                       .copy = pick_copy (self, boards, sheet->n_blocks > 0),
                       .order = sheet->is_row ? BS_CUT_CROSSCUT_FIRST : sheet->order };

  if (pattern == NULL)
    bs_cut_pattern_close (none, self->model);
  board.offcut_to = stock->length - self->model->input->trim_end;
  board.offcut_from = board.offcut_to - measured->offcut;
  g_array_append_val (self->plan->boards, board);
  if (sheet->is_row && pattern != NULL)
    write_row (self, pattern);
  else
    write_slices (self, sheet, pattern);
  self->plan->price_minor += stock->price_minor;
  self->plan->bought_area += stock->length * stock->width;
  self->plan->offcut_area += measured->offcut * stock->width;
}

/* Boards with pinned parts, whether anything is added to them or not; then the others. */
static void
write_boards (Writer *self, const BsCutSolution *solution)
{
  const BsCutModel *model = self->model;
  g_autofree gboolean *is_written = g_new0 (gboolean, model->n_stock + 1);

  for (guint i = 0; i < solution->patterns->len; i++)
    {
      const BsCutPattern *pattern = solution->patterns->pdata[i];
      is_written[model->sheets[pattern->sheet].stock] = TRUE;
    }
  for (guint k = 0; k < model->n_sheets; k++)
    if (model->sheets[k].n_blocks > 0 && !is_written[model->sheets[k].stock])
      {
        is_written[model->sheets[k].stock] = TRUE;
        write_board (self, k, NULL);
      }
  for (guint k = 0; k < model->n_sheets; k++)
    for (guint i = 0; i < solution->patterns->len; i++)
      if (((const BsCutPattern *)solution->patterns->pdata[i])->sheet == k)
        write_board (self, k, solution->patterns->pdata[i]);
}

typedef struct
{
  guint piece;
  int looks;
} Place;

static int
compare_looks (gconstpointer a, gconstpointer b)
{
  const Place *left = a, *right = b;

  if (left->looks != right->looks)
    return left->looks > right->looks ? -1 : 1;
  return left->piece < right->piece ? -1 : left->piece > right->piece;
}

/* Hands the places of a type, the best looking first, to its parts: those on show first. */
static void
name_parts (Writer *self, guint type, int *missing)
{
  const BsCutting *input = self->model->input;
  g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (Place));
  guint next = 0;

  for (guint i = 0; i < self->type_of_piece->len; i++)
    if (g_array_index (self->type_of_piece, guint, i) == type)
      {
        const BsCutPiece *piece = &g_array_index (self->plan->pieces, BsCutPiece, i);
        guint stock = g_array_index (self->plan->boards, BsCutBoard, piece->board).stock;
        Place place = { i, input->stock[stock].looks };
        g_array_append_val (places, place);
      }
  g_array_sort (places, compare_looks);
  for (int on_show = 1; on_show >= 0; on_show--)
    for (guint p = 0; p < input->n_parts; p++)
      {
        if (self->model->type_of_part[p] != type || (input->parts[p].is_on_show != 0) != on_show)
          continue;
        for (; missing[p] > 0 && next < places->len; next++, missing[p]--)
          g_array_index (self->plan->pieces, BsCutPiece, g_array_index (places, Place, next).piece)
              .part
              = p;
      }
}

BsCutPlan *
bs_cut_solution_describe (const BsCutSolution *self, const BsCutModel *model)
{
  const BsCutting *input = model->input;
  BsCutPlan *plan = g_new0 (BsCutPlan, 1);
  g_autoptr (GArray) type_of_piece = g_array_new (FALSE, FALSE, sizeof (guint));
  g_autofree guint *next_copy = g_new0 (guint, input->n_stock + 1);
  Writer writer = { model, plan, type_of_piece, next_copy };

  plan->boards = g_array_new (FALSE, FALSE, sizeof (BsCutBoard));
  plan->slices = g_array_new (FALSE, FALSE, sizeof (BsCutSlice));
  plan->pieces = g_array_new (FALSE, FALSE, sizeof (BsCutPiece));
  plan->missing = g_new0 (int, input->n_parts + 1);
  write_boards (&writer, self);
  for (guint p = 0; p < input->n_parts; p++)
    {
      plan->missing[p] = input->parts[p].quantity;
      for (guint k = 0; k < input->n_pins; k++)
        plan->missing[p] -= input->pins[k].part == p;
    }
  for (guint t = 0; t < model->n_types; t++)
    name_parts (&writer, t, plan->missing);
  for (guint p = 0; p < input->n_parts; p++)
    plan->n_missing += (guint)plan->missing[p];
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const BsCutPart *part = &input->parts[g_array_index (plan->pieces, BsCutPiece, i).part];
      plan->part_area += part->length * part->width;
    }
  plan->waste_area = plan->bought_area - plan->part_area - plan->offcut_area;
  return plan;
}
