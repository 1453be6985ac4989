/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/sawing-rack.h"

G_BEGIN_DECLS

/* Sentences on boards and the pieces cut from them. All char * are the caller's. */

/* "Board 3: 3100 × 238 × 52 mm, crosscut first"; what is wrong with its cuts, if anything is. */
char *bs_words_sawn_board (const BsSawnBoard *board, const BsPlan *plan);

/* What a piece's state is: "planned", "pinned", "cut" (static). */
const char *bs_words_cut_state (const BsCut *cut);

/* Which of the board's defects the milled piece has, and where they come to lie: "knot: in a glue
 * line"; empty when there are none. */
char *bs_words_cut_defects (const BsPlan *plan, const BsCut *cut);

/* What must be clear of defects and is not, as a sentence; NULL when nothing is. */
char *bs_words_cut_blemish (const BsPlan *plan, const BsCut *cut);

/* What moving a piece to where it is in `after` (its cut there) costs: price, waste and pieces
 * without a place before and after; and what is wrong with its place, if anything is. */
char *bs_words_cut_move (const BsPlan *before, const BsPlan *after, int cut);

/* Why a wish has no place. */
char *bs_words_saw_lack (const BsPlan *plan, const BsSawWish *wish);

/* The passes of the saw by their numbers, to mark out: "1 at 22 mm, 2 at 1915 mm"; across the board
 * or along it. NULL: there are none. */
char *bs_words_saw_passes (const BsSawing *sawing, gboolean is_rip, BsUnitSystem units);

/* "7 boards of 3.24 m²: 76.5 % pieces, 3.4 % kerfs, 2 % offcuts, 18.1 % other waste"; empty while
 * nothing is cut. */
char *bs_words_saw_sum (const BsSawRack *rack, BsUnitSystem units);

/* All of a piece for those who cannot see it: what, how large, where, its state. */
char *bs_words_cut (const BsPlan *plan, const BsCut *cut);

/* Which board a lamination is cut from, and where on it, as far as that is known; NULL when it is
 * not. */
char *bs_words_origin (const BsPlan *plan, const BsLamination *lamination);

G_END_DECLS
