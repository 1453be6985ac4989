/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/purchase-rack.h"

#include <math.h>

#include "core/cutting-model.h"
#include "core/sawing-stock.h"
#include "core/sawing-wish.h"
#include "core/wanted.h"

static gboolean
can_hold (const BsBoard *board, const BsWant *want)
{
  return want->length <= board->length && want->sawn_width <= board->width;
}

/* The need counts on boards as they come; of a measured one it is known better. The least that it
 * saves any want, mm; below 0 when it is worse. */
static double
find_thickness_saved (const BsBoard *board, const GArray *wanted)
{
  BsRough rough = bs_rough_of (board);
  double saved = G_MAXDOUBLE;

  if (!bs_rough_is_measured (&rough))
    return 0.0;
  for (guint i = 0; i < wanted->len; i++)
    {
      const BsWant *want = &g_array_index (wanted, BsWant, i);
      const BsMillingNeed *need = &want->need;

      if (!can_hold (board, want))
        continue;
      BsRough piece = bs_milling_piece (&rough, want->length, want->sawn_width);
      saved = fmin (saved, need->loss + need->deviations * need->loss_deviation
                               - bs_milling_loss (piece.bow, piece.cup, piece.twist));
    }
  return saved < G_MAXDOUBLE ? saved : 0.0;
}

/* As where cuts are planned: what the longest piece asks for that the board may give. */
static double
find_straighten (const BsPlan *plan, const BsBoard *board, const GArray *wanted)
{
  double straighten = 0.0;

  for (guint i = 0; i < wanted->len; i++)
    {
      const BsWant *want = &g_array_index (wanted, BsWant, i);

      if (can_hold (board, want))
        straighten = fmax (straighten, bs_saw_straighten (plan, board, want->length));
    }
  return bs_saw_round_up (plan->units, straighten);
}

/* A board that was cut has had its edge made straight. */
static void
add_cuts (BsPurchaseRack *self, const BsPlan *plan, BsCutStock *stock)
{
  const BsBoard *board = self->boards->pdata[self->boards->len - 1];

  for (guint i = 0; i < plan->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, i);
      const BsCutPart part = { .length = cut->length, .width = cut->width, .quantity = 1 };
      const BsCutPin pin = {
        .stock = self->boards->len - 1,
        .part = self->cuts->len,
        .x = cut->x,
        .y = cut->y,
      };

      if (!g_str_equal (cut->board, board->id))
        continue;
      stock->straighten = fmax (fmin (stock->straighten, cut->y), 0.0);
      g_array_append_val (self->cuts, part);
      g_array_append_val (self->pins, pin);
    }
}

/* Whether the saw can make the cuts of the last board, of which the first is `first`. */
static gboolean
can_saw (const BsPurchaseRack *self, const BsCutting *saw, guint first)
{
  BsCutting alone = *saw;
  g_autoptr (GArray) pins = g_array_new (FALSE, FALSE, sizeof (BsCutPin));

  for (guint i = first; i < self->pins->len; i++)
    {
      const BsCutPin *pin = &g_array_index (self->pins, BsCutPin, i);
      const BsCutPin moved = { .part = i - first, .x = pin->x, .y = pin->y };
      g_array_append_val (pins, moved);
    }
  alone.stock = &g_array_index (self->stock, BsCutStock, self->stock->len - 1);
  alone.n_stock = 1;
  alone.parts = (const BsCutPart *)self->cuts->data + first;
  alone.pins = (const BsCutPin *)pins->data;
  alone.n_parts = alone.n_pins = pins->len;
  if (!bs_cutting_check (&alone, NULL))
    return FALSE;
  g_autoptr (BsCutModel) model = bs_cut_model_new (&alone, NULL);
  return model != NULL;
}

static void
add_board (BsPurchaseRack *self, const BsPlan *plan, const BsBoard *board, const GArray *wanted,
           gboolean has_cuts)
{
  GArray *defects = bs_saw_defects_new (plan, board);
  BsRough rough = bs_rough_of (board);
  gboolean is_known = has_cuts || bs_rough_is_measured (&rough);
  BsCutStock stock
      = bs_saw_stock (board, is_known ? find_straighten (plan, board, wanted) : NAN, defects);

  stock.price_minor = 0;
  stock.thickness = fmax (board->thickness + find_thickness_saved (board, wanted), 0.0);
  g_ptr_array_add (self->boards, (gpointer)board);
  g_ptr_array_add (self->defects, defects);
  if (has_cuts)
    add_cuts (self, plan, &stock);
  g_array_append_val (self->stock, stock);
}

static void
drop_last (BsPurchaseRack *self, guint n_cuts)
{
  g_ptr_array_remove_index (self->boards, self->boards->len - 1);
  g_ptr_array_remove_index (self->defects, self->defects->len - 1);
  g_array_set_size (self->stock, self->stock->len - 1);
  g_array_set_size (self->cuts, n_cuts);
  g_array_set_size (self->pins, n_cuts);
}

static GHashTable *
find_boards_with_cuts (const BsPlan *plan)
{
  GHashTable *boards = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < plan->cuts->len; i++)
    g_hash_table_add (boards, g_array_index (plan->cuts, BsCut, i).board);
  return boards;
}

BsPurchaseRack *
bs_purchase_rack_new (const BsPlan *plan, const BsCutting *saw, const GArray *wanted,
                      gboolean with_rests)
{
  BsPurchaseRack *self = g_new0 (BsPurchaseRack, 1);
  g_autoptr (GHashTable) with_cuts = find_boards_with_cuts (plan);

  self->boards = g_ptr_array_new ();
  self->stock = g_array_new (FALSE, FALSE, sizeof (BsCutStock));
  self->cuts = g_array_new (FALSE, FALSE, sizeof (BsCutPart));
  self->pins = g_array_new (FALSE, FALSE, sizeof (BsCutPin));
  self->defects = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsBoard *board = plan->boards->pdata[i];
      gboolean has_cuts = g_hash_table_contains (with_cuts, board->id);
      guint n_cuts = self->cuts->len;

      if ((has_cuts && !with_rests) || bs_saw_is_used_up (plan, board))
        continue;
      add_board (self, plan, board, wanted, has_cuts);
      if (has_cuts && !can_saw (self, saw, n_cuts))
        drop_last (self, n_cuts);
    }
  return self;
}

void
bs_purchase_rack_free (BsPurchaseRack *self)
{
  g_ptr_array_unref (self->boards);
  g_array_unref (self->stock);
  g_array_unref (self->cuts);
  g_array_unref (self->pins);
  g_ptr_array_unref (self->defects);
  g_free (self);
}
