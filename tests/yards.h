/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/limits.h"
#include "core/purchase.h"
#include "core/text.h"
#include "core/units.h"
#include "slabs.h"

/* Plans that want wood and yards that have it, for tests of the purchase. */

#define FEET(n) ((n)*12.0 * BS_MM_PER_INCH)
#define INCHES(n) ((n)*BS_MM_PER_INCH)

/* Boards of one size, as many as are wanted, at a price for each. */
static inline BsOffer *
yard_offer (BsPlan *plan, double length, double width, double thickness, gint64 price_minor)
{
  g_autofree char *id = g_strdup_printf ("offer-%u", plan->offers->len + 1);
  BsOffer *offer = bs_offer_new (id);
  BsOfferLength size = { length, BS_SUPPLY_OPEN, NULL };

  bs_text_set (&offer->wood, "maple");
  offer->thickness = thickness;
  offer->width_least = width;
  offer->width_most = width;
  offer->price_minor = price_minor;
  g_array_append_val (offer->lengths, size);
  g_ptr_array_add (plan->offers, offer);
  return offer;
}

static inline BsPart *
yard_part (BsPlan *plan, const char *name, int count, double length, double width, double thickness)
{
  BsPart *part = bs_part_new (name);

  bs_text_set (&part->name, name);
  bs_text_set (&part->wood, "maple");
  part->count = count;
  part->length = length;
  part->width = width;
  part->thickness = thickness;
  g_ptr_array_add (plan->parts, part);
  return part;
}

static inline BsBoard *
yard_rack (BsPlan *plan, const char *id, double length, double width, double thickness)
{
  BsBoard *board = bs_board_new (id);

  bs_text_set (&board->wood, "maple");
  board->length = length;
  board->width = width;
  board->thickness = thickness;
  g_ptr_array_add (plan->boards, board);
  return board;
}

static inline void
yard_wood (BsPlan *plan)
{
  BsWood *wood = bs_wood_new ("maple");

  bs_text_set (&wood->name, "Maple");
  wood->sg_12 = 0.63;
  g_ptr_array_add (plan->woods, wood);
}

/* n laminations of maple that no board is named for, and nothing spare. */
static inline BsPlan *
yard_plan (guint n, double length, double thickness, double height)
{
  BsPlan *plan = slab_new (n, length, thickness, height);

  yard_wood (plan);
  plan->buying.spare_pct = 0.0;
  for (guint i = 0; i < n; i++)
    bs_text_set (&slab_at (plan, i)->wood, "maple");
  return plan;
}
