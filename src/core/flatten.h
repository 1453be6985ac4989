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

G_END_DECLS
