/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* The largest slab that fits between the faces as built: docs/flattening-model.md. Allowances of
 * the plan's slab are taken off. */
void bs_flatten (const BsStack *stack, BsFlattenResult *result);

G_END_DECLS
