/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/sawing-rack.h"

#include "core/sawing-stock.h"

#include <glib/gi18n-lib.h>

void
bs_sawn_board_free (BsSawnBoard *self)
{
  g_array_unref (self->cuts);
  g_clear_pointer (&self->sawing, bs_sawing_free);
  g_free (self);
}

static void
saw_board (const BsPlan *plan, BsSawnBoard *self)
{
  g_autoptr (GArray) defects = bs_saw_defects_new (plan, self->board);
  g_autofree BsSawPiece *pieces = g_new (BsSawPiece, self->cuts->len + 1);
  const BsSaw *saw = &plan->shop.saw;
  const BsSawBoard board = {
    .length = self->board->length,
    .width = self->board->width,
    .end_trim = saw->end_trim,
    .kerf = bs_saw_kerf (plan),
    .min_offcut = saw->min_offcut,
    .n_defects = defects->len,
    .defects = (const BsCutDefect *)defects->data,
  };

  for (guint i = 0; i < self->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, g_array_index (self->cuts, guint, i));
      pieces[i] = (BsSawPiece){ cut->x, cut->y, cut->length, cut->width };
    }
  self->sawing = bs_sawing_new (&board, pieces, self->cuts->len);
}

static void
add_board (BsSawRack *self, const BsSawnBoard *board)
{
  const BsSawing *sawing = board->sawing;

  self->n_taken++;
  self->n_pieces += board->cuts->len;
  self->n_faults += sawing->fault != BS_SAW_FAULT_NONE;
  self->area += sawing->length * sawing->width;
  self->piece_area += sawing->piece_area;
  self->kerf_area += sawing->kerf_area;
  self->offcut_area += sawing->offcut_area;
  self->waste_area += sawing->waste_area;
  self->price_minor += board->board->price_minor;
  self->n_unpriced += board->board->price_minor <= 0;
}

static BsSawnBoard *
board_new (const BsBoard *board)
{
  BsSawnBoard *self = g_new0 (BsSawnBoard, 1);

  self->board = board;
  self->cuts = g_array_new (FALSE, FALSE, sizeof (guint));
  return self;
}

BsSawnBoard *
bs_sawn_board_new (const BsPlan *plan, const BsBoard *board)
{
  BsSawnBoard *self = board_new (board);

  for (guint i = 0; i < plan->cuts->len; i++)
    if (g_str_equal (g_array_index (plan->cuts, BsCut, i).board, board->id))
      g_array_append_val (self->cuts, i);
  saw_board (plan, self);
  return self;
}

static void
hand_out_cuts (const BsPlan *plan, GPtrArray *boards)
{
  g_autoptr (GHashTable) by_id = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < plan->boards->len; i++)
    {
      BsSawnBoard *board = board_new (plan->boards->pdata[i]);

      g_ptr_array_add (boards, board);
      g_hash_table_insert (by_id, board->board->id, board);
    }
  for (guint i = 0; i < plan->cuts->len; i++)
    {
      BsSawnBoard *board = g_hash_table_lookup (by_id, g_array_index (plan->cuts, BsCut, i).board);
      if (board != NULL)
        g_array_append_val (board->cuts, i);
    }
}

BsSawRack *
bs_saw_rack_new (const BsPlan *plan)
{
  BsSawRack *self = g_new0 (BsSawRack, 1);
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);

  self->boards = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_sawn_board_free);
  hand_out_cuts (plan, self->boards);
  for (guint i = 0; i < self->boards->len; i++)
    {
      BsSawnBoard *board = self->boards->pdata[i];

      saw_board (plan, board);
      if (board->cuts->len > 0)
        add_board (self, board);
    }
  for (guint i = 0; i < wishes->len; i++)
    self->n_missing += (guint)bs_saw_count_missing (plan, &g_array_index (wishes, BsSawWish, i));
  return self;
}

void
bs_saw_rack_free (BsSawRack *self)
{
  g_ptr_array_unref (self->boards);
  g_free (self);
}

const BsSawnBoard *
bs_saw_rack_find (const BsSawRack *self, const char *board)
{
  for (guint i = 0; i < self->boards->len; i++)
    {
      const BsSawnBoard *sawn = self->boards->pdata[i];
      if (g_strcmp0 (sawn->board->id, board) == 0)
        return sawn;
    }
  return NULL;
}

const char *
bs_saw_piece_label (const BsPlan *plan, const char *id)
{
  const BsLamination *lamination = bs_plan_find_lamination (plan, id);
  const BsPart *part = lamination == NULL ? bs_plan_find_part (plan, id) : NULL;

  if (lamination != NULL && lamination->label != NULL)
    return lamination->label;
  return part != NULL && part->name != NULL ? part->name : id;
}

const char *
bs_saw_board_label (const BsBoard *board)
{
  return board->label != NULL ? board->label : board->id;
}

static const char *
get_label (const BsSawnBoard *self, const BsPlan *plan, guint piece)
{
  guint index = g_array_index (self->cuts, guint, piece);

  return bs_saw_piece_label (plan, g_array_index (plan->cuts, BsCut, index).piece);
}

char *
bs_sawn_board_tell_fault (const BsSawnBoard *self, const BsPlan *plan)
{
  const BsSawing *sawing = self->sawing;
  const char *board = bs_saw_board_label (self->board);

  switch (sawing->fault)
    {
    case BS_SAW_FAULT_OFF_BOARD:
      /* Translators: a piece, a board. */
      return g_strdup_printf (_ ("%s lies over an end or an edge of board %s. Move it."),
                              get_label (self, plan, sawing->piece), board);
    case BS_SAW_FAULT_NO_KERF:
      /* Translators: two pieces, a board. */
      return g_strdup_printf (
          _ ("%s and %s on board %s overlap, or leave the saw no room between them. Move one."),
          get_label (self, plan, sawing->piece), get_label (self, plan, sawing->other), board);
    case BS_SAW_FAULT_NOT_THROUGH:
      return g_strdup_printf (
          _ ("The pieces on board %s lie so that neither crosscuts nor rip cuts through the whole "
             "board can free them. Move one."),
          board);
    case BS_SAW_FAULT_NONE:
    default:
      return NULL;
    }
}

int
bs_saw_count_missing (const BsPlan *plan, const BsSawWish *wish)
{
  return MAX (wish->count - bs_saw_count_cuts (plan, wish->id), 0);
}
