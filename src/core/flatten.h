/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* The largest slab that fits between the faces as built, by the order of work of the plan:
 * docs/flattening-model.md. Allowances of the plan's slab are taken off. */
void bs_flatten (const BsStack *stack, BsFlattenResult *result);

/* By another order of work. Never thicker than with BS_FLATTEN_SHIMMED. */
void bs_flatten_by (const BsStack *stack, BsFlattenWork work, BsFlattenResult *result);

/* The corners of the slab's underside. */
typedef enum
{
  BS_CORNER_LEFT_FRONT,
  BS_CORNER_RIGHT_FRONT,
  BS_CORNER_LEFT_BACK,
  BS_CORNER_RIGHT_BACK,
} BsCorner;

#define BS_N_CORNERS 4

/* How far each corner stands over a flat bench, mm, when the slab lies on its underside with the
 * finished faces level: the shims. NAN when the result has no thickness. */
void bs_flatten_shims (const BsStack *stack, const BsFlattenResult *result,
                       double shims[BS_N_CORNERS]);

G_END_DECLS
