/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/sawing-wish.h"

G_BEGIN_DECLS

/* From the board to the slab: docs/cutting-model.md, From the rack to the slab. */

/* The lamination that a cut gives, milled: as wished, or as far as its board and piece reach;
 * straight and flat, with the board's wood, moisture, rings, run-out and defects where they come to
 * lie. Label and lightness stay those of the wish, and run-out where the board's is not known. The
 * caller's. */
BsLamination *bs_saw_mill (const BsPlan *plan, const BsLamination *wished, const BsBoard *board,
                           const BsCut *cut);

/* The part of a board that a lamination is: x and y of its left front corner as it lies on the
 * board's wide faces, and its size there. */
typedef struct
{
  const BsBoard *board;
  double x, y, length, width;
} BsSawnFrom;

/* FALSE when no cut in the plan says where it came from. */
gboolean bs_saw_find_origin (const BsPlan *plan, const BsLamination *lamination, BsSawnFrom *from);

/* The face of the board that a face of a lamination was, or lay beneath. */
BsFace bs_saw_face_of_board (BsLayup layup, BsFace face);

/* Turns a lamination over where it lies in a plan that is not shared yet, if it would show more
 * defects than its underside. */
void bs_saw_turn_to_show (BsPlan *plan, const BsLamination *lamination);

/* All laminations as their cuts give them; those that were cut already are left as they were
 * measured. Each is turned to show its clearer side.
 * n_laid_out: how many. A new plan, or a new reference when there are none. */
BsPlan *bs_saw_lay_out (BsPlan *plan, guint *n_laid_out);

/* Laminations whose cut before has no successor in `after`, which is not shared yet, have no board
 * any more: they are wanted again. */
void bs_saw_forget_boards (const BsPlan *before, BsPlan *after);

G_END_DECLS
