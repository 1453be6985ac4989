/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/sawing-wish.h"

G_BEGIN_DECLS

/* Moving one piece by hand: docs/cutting-model.md, Moving a piece. Sizes in mm; `cut` is the
 * place of its cut in the plan. */

#define BS_SAW_MOVE_ERROR (bs_saw_move_error_quark ())
GQuark bs_saw_move_error_quark (void);

typedef enum
{
  BS_SAW_MOVE_ERROR_BOARD, /* it cannot come from that board at all */
  BS_SAW_MOVE_ERROR_DONE,  /* it was cut already */
  BS_SAW_MOVE_ERROR_PLACE, /* no saw can cut it there while the others stay where they are */
} BsSawMoveError;

/* The plan with a piece on another place, and pinned there, while all others stay. NULL with a
 * sentence that says why that cannot be. */
BsPlan *bs_saw_move (const BsPlan *plan, guint cut, const char *board, double x, double y,
                     GError **error);

/* Likewise, but all others that are neither pinned nor cut are planned anew around it, in the
 * first good way that is found. Takes longer. */
BsPlan *bs_saw_move_and_plan (const BsPlan *plan, guint cut, const char *board, double x, double y,
                              GError **error);

/* Where a piece lies well on a board: at its trimmed ends or edges and next to or in line with the
 * other pieces. Sorted doubles, along or across; the caller's. */
GArray *bs_saw_stops_new (const BsPlan *plan, guint cut, const char *board, gboolean is_across);

/* The nearest stop within a tolerance, or else a whole step of the saw; on the board as far as the
 * piece fits. */
void bs_saw_snap (const BsPlan *plan, guint cut, const char *board, double tolerance, double *x,
                  double *y);

/* The first place of a board where it can lie while all others stay; FALSE when there is none. */
gboolean bs_saw_find_place (const BsPlan *plan, guint cut, const char *board, double *x, double *y);

/* The defects that the piece has on the faces or edges that must be clear, in its place: how many
 * of each too many, and whether its wood is unsound. */
typedef struct
{
  int faces, edges;
  gboolean is_unsound;
} BsSawBlemish;

BsSawBlemish bs_saw_find_blemish (const BsPlan *plan, const BsCut *cut);

G_END_DECLS
