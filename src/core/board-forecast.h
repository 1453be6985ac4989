/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/milling.h"

G_BEGIN_DECLS

/* What a board of the rack gives for the plan's slab: crosscut to the slab's length, ripped to
 * strips where it is glued on edge, then planed (core/milling.h). Warp that was not measured counts
 * as none. */

typedef struct
{
  BsRough crosscut; /* the board, or as much of it as the slab is long */
  BsRough piece; /* of it, what is planed: a strip as it comes from the saw, or all of its width */
  double width;  /* of a strip, finished; NAN where the width is left as it is */
  int n_lengths; /* pieces of the slab's length; 0: it is shorter, and its whole length counts */
  int n_strips;  /* side by side in each; 0: it is narrower, and its whole width counts */
  double thickness;           /* of the piece, finished; 0: nothing is left */
  BsMillingCautions cautions; /* before the crosscut board is milled */
  gboolean is_measured;       /* bow, cup and twist are known */
} BsBoardForecast;

BsBoardForecast bs_board_forecast (const BsBoard *board, const BsPlan *plan);

/* How its thickness came about. */
void bs_board_forecast_explain (const BsBoardForecast *self, const BsPlan *plan, BsWorking *why);

/* A board's own measures, unknown warp as none. */
BsRough bs_board_rough (const BsBoard *board);

G_END_DECLS
