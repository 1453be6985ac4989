/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting.h"
#include "core/plan.h"

G_BEGIN_DECLS

/* A board of the rack as the search for cuts sees it. */

/* Defects that count (BsCutDefect), in the board's frame. Those of less than half a severity are
 * left to look at. On a wide face a defect is on that face alone, and on an edge it is taken to be
 * as deep as it is wide there and on both faces, both on the safe side; wane, checks and holes are
 * unsound wood. Never more than the search takes: then neighbours are taken as one. The caller's.
 */
GArray *bs_saw_defects_new (const BsPlan *plan, const BsBoard *board);

/* The one board with the price it was paid at; `straighten` is what making its front edge straight
 * takes. The defects (bs_saw_defects_new ()) are borrowed. */
BsCutStock bs_saw_stock (const BsBoard *board, double straighten, const GArray *defects);

/* How well a board looks, 0 to 1000: by how much of its two wide faces is free of defects, each
 * counted by its severity. */
int bs_saw_looks (const BsBoard *board);

G_END_DECLS
