/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/purchase-put.h"

#include <glib/gi18n-lib.h>

#include "core/limits.h"
#include "core/slab-wish.h"
#include "core/text.h"

static gboolean
has_label (const BsPlan *plan, const char *label)
{
  for (guint i = 0; i < plan->boards->len; i++)
    if (g_strcmp0 (((BsBoard *)plan->boards->pdata[i])->label, label) == 0)
      return TRUE;
  return FALSE;
}

/* The first of A to Z, A2 to Z2 and so on that no board has. */
static char *
make_label (const BsPlan *plan)
{
  for (guint round = 1;; round++)
    for (int letter = 'A'; letter <= 'Z'; letter++)
      {
        g_autofree char *label
            = round == 1 ? g_strdup_printf ("%c", letter) : g_strdup_printf ("%c%u", letter, round);
        if (!has_label (plan, label))
          return g_steal_pointer (&label);
      }
}

static char *
make_id (const BsPlan *plan)
{
  for (guint n = plan->boards->len + 1;; n++)
    {
      g_autofree char *id = g_strdup_printf ("board-%u", n);
      if (bs_plan_find_board (plan, id) == NULL)
        return g_steal_pointer (&id);
    }
}

static const BsBoard *
add_bought (BsPlan *edited, const BsPurchase *purchase, guint kind)
{
  const BsCutStock *stock = &g_array_index (purchase->as_sold, BsCutStock, kind);
  guint index = g_array_index (purchase->yard_offers, guint, kind - purchase->rack->boards->len);
  const BsOffer *offer = purchase->plan->offers->pdata[index];
  g_autofree char *id = make_id (edited), *label = make_label (edited);
  BsBoard *board = bs_board_new (id);

  bs_text_set (&board->label, label);
  bs_text_set (&board->wood, offer->wood);
  board->length = stock->length;
  board->width = stock->width;
  board->thickness = offer->thickness;
  board->price_minor = stock->price_minor;
  g_ptr_array_add (edited->boards, board);
  return board;
}

/* A lamination more, like one of its kind, in the rack: the best of all go into the slab. */
static const char *
add_spare (BsPlan *edited, const char *like, int number)
{
  const BsLamination *other = bs_plan_find_lamination (edited, like);
  g_autofree char *label = g_strdup_printf (C_ ("label of a spare lamination", "S%d"), number);
  g_autofree char *id = bs_plan_make_lamination_id (edited);
  BsLamination *lamination = bs_lamination_new (id);

  bs_text_set (&lamination->label, label);
  bs_text_set (&lamination->wood, other->wood);
  lamination->length = other->length;
  lamination->thickness = other->thickness;
  lamination->height = other->height;
  g_ptr_array_add (edited->laminations, lamination);
  return lamination->id;
}

/* The id of the next piece of a want; NULL when the plan can hold no more. */
static const char *
take_piece (BsPlan *edited, const BsWant *want, int taken)
{
  if ((guint)taken < want->pieces->len)
    return want->pieces->pdata[taken];
  if (taken < want->needed) /* of laminations that were made just now */
    return ((BsLamination *)edited->laminations->pdata[taken])->id;
  if (edited->laminations->len >= BS_MAX_LAMINATIONS)
    return NULL;
  const char *like = want->pieces->len > 0 ? want->pieces->pdata[0]
                                           : ((BsLamination *)edited->laminations->pdata[0])->id;
  return add_spare (edited, like, taken - want->needed + 1);
}

static void
add_cut (BsPlan *edited, const BsBoard *board, const char *id, const BsCutPiece *piece)
{
  g_autoptr (GRefString) name = g_ref_string_new (id);
  BsCut cut = {
    .board = board->id,
    .piece = name,
    .x = piece->x,
    .y = piece->y,
    .length = piece->length,
    .width = piece->width,
  };

  bs_plan_add_cut (edited, &cut);
}

BsPlan *
bs_purchase_put (const BsPurchase *purchase)
{
  const BsPlan *plan = purchase->plan;

  g_return_val_if_fail (purchase->cuts != NULL, NULL);

  BsPlan *edited
      = plan->laminations->len == 0 ? bs_slab_wish_make_laminations (plan) : bs_plan_copy (plan);
  const GArray *boards = purchase->cuts->boards, *pieces = purchase->cuts->pieces;
  g_autofree const BsBoard **cut_from = g_new0 (const BsBoard *, boards->len);
  g_autofree int *taken = g_new0 (int, purchase->wanted->len);

  for (guint i = 0; i < boards->len; i++)
    {
      guint kind = g_array_index (boards, BsCutBoard, i).stock;
      cut_from[i] = kind < purchase->rack->boards->len ? purchase->rack->boards->pdata[kind]
                                                       : add_bought (edited, purchase, kind);
    }
  for (guint i = 0; i < pieces->len; i++)
    {
      const BsCutPiece *piece = &g_array_index (pieces, BsCutPiece, i);
      if (piece->is_pinned) /* the plan has its cut */
        continue;
      guint want = g_array_index (purchase->part_wants, guint, piece->part);
      const char *id
          = take_piece (edited, &g_array_index (purchase->wanted, BsWant, want), taken[want]++);

      if (id != NULL)
        add_cut (edited, cut_from[piece->board], id, piece);
    }
  return edited;
}

BsPurchaseSawn *
bs_purchase_sawn_new (const BsPurchase *purchase)
{
  BsPurchaseSawn *self = g_new0 (BsPurchaseSawn, 1);
  guint n_before = purchase->plan->cuts->len; /* new ones come behind them */

  self->plan = bs_purchase_put (purchase);
  self->rack = bs_saw_rack_new (self->plan);
  self->boards = g_ptr_array_new ();
  for (guint i = 0; i < self->rack->boards->len; i++)
    {
      BsSawnBoard *sawn = self->rack->boards->pdata[i];
      guint n = sawn->cuts->len;

      if (n == 0 || g_array_index (sawn->cuts, guint, n - 1) < n_before)
        continue;
      g_ptr_array_add (self->boards, sawn);
      self->n_of_rack += i < purchase->plan->boards->len;
    }
  return self;
}

void
bs_purchase_sawn_free (BsPurchaseSawn *self)
{
  g_ptr_array_unref (self->boards);
  bs_saw_rack_free (self->rack);
  bs_plan_unref (self->plan);
  g_free (self);
}
