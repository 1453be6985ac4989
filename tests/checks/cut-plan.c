/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/cut-plan.h"

#define NEAR 1e-6 /* mm: binary fractions of sizes up to 15 m */

static const BsCutBoard *
board_at (const BsCutPlan *plan, guint i)
{
  return &g_array_index (plan->boards, BsCutBoard, i);
}

static const BsCutSlice *
slice_at (const BsCutPlan *plan, guint i)
{
  return &g_array_index (plan->slices, BsCutSlice, i);
}

static const BsCutPiece *
piece_at (const BsCutPlan *plan, guint i)
{
  return &g_array_index (plan->pieces, BsCutPiece, i);
}

static gboolean
is_pinned_board (const BsCutting *cutting, const BsCutBoard *board)
{
  for (guint k = 0; k < cutting->n_pins; k++)
    if (cutting->pins[k].stock == board->stock && cutting->pins[k].copy == board->copy)
      return TRUE;
  return FALSE;
}

static void
check_boards (const BsCutting *cutting, const BsCutPlan *plan)
{
  gint64 price = 0;

  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsCutBoard *board = board_at (plan, i);
      const BsCutStock *stock = &cutting->stock[board->stock];

      g_assert_cmpuint (board->stock, <, cutting->n_stock);
      if (stock->supply != BS_CUT_UNLIMITED)
        g_assert_cmpint ((int)board->copy, <, stock->supply);
      g_assert_true (board->order == BS_CUT_CROSSCUT_FIRST || board->order == BS_CUT_RIP_FIRST);
      for (guint j = 0; j < i; j++)
        g_assert_false (board_at (plan, j)->stock == board->stock
                        && board_at (plan, j)->copy == board->copy);
      g_assert_cmpfloat (board->offcut_from, <=, board->offcut_to + NEAR);
      g_assert_cmpfloat (board->offcut_to, <=, stock->length - cutting->trim_end + NEAR);
      if (board->offcut_to > board->offcut_from)
        g_assert_cmpfloat (board->offcut_to - board->offcut_from, >=, cutting->min_offcut - NEAR);
      price += stock->price_minor;
    }
  g_assert_cmpint (plan->price_minor, ==, price);
}

/* Slices of a board one behind the other, a kerf between them, the offcut behind the last. */
static void
check_slices (const BsCutting *cutting, const BsCutPlan *plan)
{
  for (guint i = 0; i < plan->slices->len; i++)
    {
      const BsCutSlice *slice = slice_at (plan, i);
      const BsCutBoard *board = board_at (plan, slice->board);
      const BsCutStock *stock = &cutting->stock[board->stock];
      gboolean is_section = board->order == BS_CUT_CROSSCUT_FIRST;
      double trim = is_section ? cutting->trim_end : cutting->trim_edge;
      double near = is_section ? trim : trim + stock->straighten;
      double size = is_section ? stock->length : stock->width;

      g_assert_cmpfloat (slice->from, <, slice->to);
      if (!is_pinned_board (cutting, board))
        {
          g_assert_cmpfloat (slice->from, >=, near - NEAR);
          g_assert_cmpfloat (slice->to, <=, size - trim + NEAR);
        }
      if (i > 0 && slice_at (plan, i - 1)->board == slice->board)
        g_assert_cmpfloat (slice->from, >=, slice_at (plan, i - 1)->to + cutting->kerf - NEAR);
      if (is_section && board->offcut_to > board->offcut_from)
        g_assert_cmpfloat (slice->to + cutting->kerf, <=, board->offcut_from + NEAR);
    }
}

/* Which faces and edges of a piece a defect spoils. */
static void
check_defects (const BsCutting *cutting, const BsCutStock *stock, const BsCutPiece *piece)
{
  const BsCutPart *part = &cutting->parts[piece->part];
  guint faces = 0;
  gboolean low = FALSE, high = FALSE;

  for (guint k = 0; k < stock->n_defects; k++)
    {
      const BsCutDefect *defect = &stock->defects[k];
      if (defect->x_from >= piece->x + piece->length - NEAR || defect->x_to <= piece->x + NEAR
          || defect->y_from >= piece->y + piece->width - NEAR || defect->y_to <= piece->y + NEAR)
        continue;
      g_assert_cmpint (defect->faces, !=, BS_CUT_UNSOUND);
      faces |= defect->faces;
      low = low || defect->y_from <= piece->y + NEAR;
      high = high || defect->y_to >= piece->y + piece->width - NEAR;
    }
  g_assert_cmpint (part->clear_faces, <=, 2 - (int)(faces & 1) - (int)(faces >> 1));
  g_assert_cmpint (part->clear_edges, <=, 2 - (int)low - (int)high);
  g_assert_cmpuint (piece->clear_faces, ==, BS_CUT_BOTH_FACES & ~faces);
}

static void
check_piece (const BsCutting *cutting, const BsCutPlan *plan, guint index)
{
  const BsCutPiece *piece = piece_at (plan, index);
  const BsCutSlice *slice = slice_at (plan, piece->slice);
  const BsCutBoard *board = board_at (plan, piece->board);
  const BsCutStock *stock = &cutting->stock[board->stock];
  const BsCutPart *part = &cutting->parts[piece->part];
  gboolean is_section = board->order == BS_CUT_CROSSCUT_FIRST;
  double from = is_section ? piece->x : piece->y;
  double size = is_section ? piece->length : piece->width;

  g_assert_cmpuint (slice->board, ==, piece->board);
  g_assert_cmpfloat_with_epsilon (piece->length, part->length + cutting->allow_length, NEAR);
  g_assert_cmpfloat_with_epsilon (piece->width, part->width + cutting->allow_width, NEAR);
  g_assert_cmpfloat (part->thickness, <=, stock->thickness);
  g_assert_cmpint (part->wood, ==, stock->wood);
  g_assert_cmpfloat (from, >=, slice->from - NEAR);
  g_assert_cmpfloat (from + size, <=, slice->to + NEAR);
  if (!piece->is_pinned)
    {
      g_assert_cmpfloat (piece->x, >=, cutting->trim_end - NEAR);
      g_assert_cmpfloat (piece->y, >=, stock->straighten + cutting->trim_edge - NEAR);
      g_assert_cmpfloat (piece->x + piece->length, <=, stock->length - cutting->trim_end + NEAR);
      g_assert_cmpfloat (piece->y + piece->width, <=, stock->width - cutting->trim_edge + NEAR);
      g_assert_true (bs_cutting_suits (cutting, board->stock, piece->part));
      check_defects (cutting, stock, piece);
    }
  for (guint i = 0; i < index; i++)
    {
      const BsCutPiece *other = piece_at (plan, i);
      double a = is_section ? piece->y : piece->x, b = is_section ? other->y : other->x;
      double a_size = is_section ? piece->width : piece->length;
      double b_size = is_section ? other->width : other->length;

      if (other->slice == piece->slice)
        g_assert_true (a + a_size + cutting->kerf <= b + NEAR
                       || b + b_size + cutting->kerf <= a + NEAR);
    }
}

void
cut_plan_assert_possible (const BsCutting *cutting, const BsCutPlan *plan)
{
  g_autofree int *placed = g_new0 (int, cutting->n_parts + 1);
  double bought = 0.0, parts = 0.0, offcuts = 0.0;
  guint n_missing = 0, n_pinned = 0;

  check_boards (cutting, plan);
  check_slices (cutting, plan);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const BsCutPiece *piece = piece_at (plan, i);
      const BsCutPart *part = &cutting->parts[piece->part];

      check_piece (cutting, plan, i);
      placed[piece->part]++;
      parts += part->length * part->width;
      n_pinned += piece->is_pinned ? 1 : 0;
    }
  g_assert_cmpuint (n_pinned, ==, cutting->n_pins);
  for (guint i = 0; i < cutting->n_parts; i++)
    {
      g_assert_cmpint (placed[i] + plan->missing[i], ==, cutting->parts[i].quantity);
      n_missing += (guint)plan->missing[i];
    }
  g_assert_cmpuint (plan->n_missing, ==, n_missing);
  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsCutBoard *board = board_at (plan, i);
      const BsCutStock *stock = &cutting->stock[board->stock];
      bought += stock->length * stock->width;
      offcuts += (board->offcut_to - board->offcut_from) * stock->width;
    }
  g_assert_cmpfloat_with_epsilon (plan->bought_area, bought, 1e-3);
  g_assert_cmpfloat_with_epsilon (plan->part_area, parts, 1e-3);
  g_assert_cmpfloat_with_epsilon (plan->offcut_area, offcuts, 1e-3);
  g_assert_cmpfloat_with_epsilon (plan->waste_area, bought - parts - offcuts, 1e-3);
  g_assert_cmpfloat (plan->waste_area, >=, -1e-3);
  g_assert_cmpint (plan->bound_minor, <=, plan->price_minor);
}
