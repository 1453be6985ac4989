/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/clamp-layout.h"
#include "core/stack.h"
#include "core/working.h"

G_BEGIN_DECLS

/* A slab of a plan with the shop's cauls and clamps, as the pressing engine wants it:
 * docs/pressing-model.md, From a plan. */
typedef struct
{
  BsLayoutProblem problem; /* borrows the arrays below; kinds are those of shop->clamps, in order */
  guint first_course; /* course of the front lamination: 1 behind a caul, else 0. Glue line i of
                       * the slab, from 0, is line i + first_course of a result */
  GArray *pieces;     /* BsPressPiece */
  GArray *kinds;      /* BsLayoutKind */
} BsPressPlan;

/* The wanted pressure is the least of the adhesive's range. FALSE with BS_PRESS_ERROR_STACK when
 * there are fewer than two laminations, when one has a wood without a modulus, or when there is no
 * place along the slab where all of them lie. `self` is overwritten; after FALSE there is nothing
 * to clear. */
gboolean bs_press_plan_init (BsPressPlan *self, const BsStack *stack, GError **error);
void bs_press_plan_clear (BsPressPlan *self);

/* From and to where along x a clamp bears on both outer faces (mm, both just left out). */
void bs_press_plan_find_room (const BsPressPlan *self, double *from, double *to);

/* How the weakest pressure of a layout came about, be it one that was found or clamps as they are
 * set. With the model that is not the faster one also what range it may have: two more solves, with
 * the woods a third softer and half as stiff again across the grain. `stack` as given to init; a
 * layout without clamps gives no number. */
void bs_press_plan_explain (const BsPressPlan *self, const BsStack *stack, const BsLayout *layout,
                            gboolean is_found, BsWorking *why);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BsPressPlan, bs_press_plan_clear)

G_END_DECLS
