/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* Edits: each returns a new plan, or a new reference to the old one when nothing changes. The plan
 * given is left as it is. Places outside the order are programmer errors. */

/* Takes the lamination at `from` out and puts it back so that it ends up at place `to`. */
BsPlan *bs_edit_move (BsPlan *plan, int from, int to);

/* Turns the lamination at a place, on top of how it already lies. */
BsPlan *bs_edit_turn (BsPlan *plan, int place, BsOrientation turn);

/* Off the slab to the rack, and from the rack to a place (0 to the number of placements). */
BsPlan *bs_edit_set_aside (BsPlan *plan, int place);
BsPlan *bs_edit_bring_back (BsPlan *plan, const char *lamination, int place);

/* Replaces the lamination that has this one's id, or adds it to the rack. */
BsPlan *bs_edit_put_lamination (BsPlan *plan, BsLamination *lamination);
/* Removes it from the plan altogether. */
BsPlan *bs_edit_remove_lamination (BsPlan *plan, const char *lamination);

G_END_DECLS
