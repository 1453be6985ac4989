/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/lumber.h"

#include "core/text.h"

#include <math.h>

BsSaw
bs_saw_default (void)
{
  return (BsSaw){
    .kerf = 3.0,
    .end_trim = 25.0,
    .edge_trim = 0.0,
    .edge_allowance = 1.0,
    .spring_per_m = 0.5,
    .min_offcut = 300.0,
    .first = BS_SAW_FIRST_EITHER,
  };
}

BsBoard *
bs_board_new (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  BsBoard *self = g_atomic_rc_box_new0 (BsBoard);
  bs_text_set (&self->id, id);
  self->moisture_pct = NAN;
  self->bow = NAN;
  self->crook = NAN;
  self->cup = NAN;
  self->twist = NAN;
  self->pith_y = NAN;
  self->pith_z = NAN;
  self->defects = bs_defects_new ();
  return self;
}

BsBoard *
bs_board_copy (const BsBoard *self)
{
  BsBoard *copy = g_atomic_rc_box_dup (sizeof *self, (BsBoard *)self);

  bs_text_share (copy->id);
  bs_text_share (copy->label);
  bs_text_share (copy->wood);
  bs_text_share (copy->photo_top);
  bs_text_share (copy->photo_underside);
  bs_text_share (copy->unknown);
  copy->defects = bs_defects_copy (self->defects);
  return copy;
}

BsBoard *
bs_board_ref (BsBoard *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear_board (gpointer data)
{
  BsBoard *self = data;
  bs_text_clear (&self->id);
  bs_text_clear (&self->label);
  bs_text_clear (&self->wood);
  bs_text_clear (&self->photo_top);
  bs_text_clear (&self->photo_underside);
  bs_text_clear (&self->unknown);
  g_array_unref (self->defects);
}

void
bs_board_unref (BsBoard *self)
{
  g_atomic_rc_box_release_full (self, clear_board);
}

double
bs_board_breadth (const BsBoard *self, BsFace face)
{
  return face == BS_FACE_TOP || face == BS_FACE_UNDERSIDE ? self->width : self->thickness;
}

static void
clear_offer_length (gpointer data)
{
  BsOfferLength *length = data;
  bs_text_clear (&length->unknown);
}

static GArray *
new_offer_lengths (void)
{
  GArray *lengths = g_array_new (FALSE, TRUE, sizeof (BsOfferLength));
  g_array_set_clear_func (lengths, clear_offer_length);
  return lengths;
}

BsOffer *
bs_offer_new (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  BsOffer *self = g_atomic_rc_box_new0 (BsOffer);
  bs_text_set (&self->id, id);
  self->lengths = new_offer_lengths ();
  return self;
}

BsOffer *
bs_offer_copy (const BsOffer *self)
{
  BsOffer *copy = g_atomic_rc_box_dup (sizeof *self, (BsOffer *)self);

  bs_text_share (copy->id);
  bs_text_share (copy->yard);
  bs_text_share (copy->wood);
  bs_text_share (copy->unknown);
  copy->lengths = new_offer_lengths ();
  g_array_append_vals (copy->lengths, self->lengths->data, self->lengths->len);
  for (guint i = 0; i < copy->lengths->len; i++)
    bs_text_share (g_array_index (copy->lengths, BsOfferLength, i).unknown);
  return copy;
}

static void
clear_offer (gpointer data)
{
  BsOffer *self = data;
  bs_text_clear (&self->id);
  bs_text_clear (&self->yard);
  bs_text_clear (&self->wood);
  bs_text_clear (&self->unknown);
  g_array_unref (self->lengths);
}

void
bs_offer_unref (BsOffer *self)
{
  g_atomic_rc_box_release_full (self, clear_offer);
}

BsPart *
bs_part_new (const char *id)
{
  g_return_val_if_fail (id != NULL, NULL);

  BsPart *self = g_atomic_rc_box_new0 (BsPart);
  bs_text_set (&self->id, id);
  return self;
}

BsPart *
bs_part_copy (const BsPart *self)
{
  BsPart *copy = g_atomic_rc_box_dup (sizeof *self, (BsPart *)self);

  bs_text_share (copy->id);
  bs_text_share (copy->name);
  bs_text_share (copy->wood);
  bs_text_share (copy->unknown);
  return copy;
}

static void
clear_part (gpointer data)
{
  BsPart *self = data;
  bs_text_clear (&self->id);
  bs_text_clear (&self->name);
  bs_text_clear (&self->wood);
  bs_text_clear (&self->unknown);
}

void
bs_part_unref (BsPart *self)
{
  g_atomic_rc_box_release_full (self, clear_part);
}

static void
clear_cut (gpointer data)
{
  BsCut *self = data;
  bs_text_clear (&self->board);
  bs_text_clear (&self->piece);
  bs_text_clear (&self->unknown);
}

GArray *
bs_cuts_new (void)
{
  GArray *cuts = g_array_new (FALSE, TRUE, sizeof (BsCut));
  g_array_set_clear_func (cuts, clear_cut);
  return cuts;
}
