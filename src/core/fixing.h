/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/movement.h"

G_BEGIN_DECLS

/* The slots that let a slab move where it is fastened: docs/timber-model.md, Slots. */

/* How far the farthest edge lies from the line where a slab of this width (mm) is held. */
double bs_fixing_reach (const BsFixing *fixing, double width);

/* Slots at round distances, at most six, out to the farthest edge; none when the movement is not
 * known. The screws are driven at the mean moisture at gluing. BsSlot, the caller's. */
GArray *bs_fixing_slots (const BsStack *stack, const BsMovement *movement);

G_END_DECLS
