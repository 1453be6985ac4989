/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"
#include "core/working.h"

G_BEGIN_DECLS

/* The laminations that a slab asks for when there are none yet: docs/timber-model.md, What to buy.
 * Sizes in mm, milled, as those of BsLamination. */
typedef struct
{
  int count;
  double length, thickness, height;
} BsSlabWish;

/* As few as can be with none above `thickness` across the slab; all alike, and together as wide as
 * the slab. Length and height have what the ends and the flattening will take. */
BsSlabWish bs_slab_wish (const BsPlan *plan, double thickness);

/* A plan that has no laminations gets these, of the plan's first wood, in the slab. */
BsPlan *bs_slab_wish_make_laminations (const BsPlan *plan);

void bs_slab_wish_explain (const BsSlabWish *self, const BsPlan *plan, double thickness,
                           BsWorking *why);

G_END_DECLS
