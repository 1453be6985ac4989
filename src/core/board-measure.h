/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/lumber.h"

G_BEGIN_DECLS

/* How lumber is counted and named where it is sold: docs/cutting-model.md, Measure. Sizes in mm. */

/* Volume in board feet, nothing rounded: 1 board foot = 12 in x 12 in x 1 in; stock thinner than 1
 * in counts as 1 in. */
double bs_board_feet (double thickness, double width, double length);

/* Volume in cubic metres. */
double bs_board_cubic_metres (double thickness, double width, double length);

/* What a rack of boards comes to, nothing rounded. */
typedef struct
{
  guint n;
  double board_feet;
  double volume; /* mm3 */
  gint64 price_minor;
  guint n_priced; /* boards that have a price */
} BsBoardsSum;

BsBoardsSum bs_boards_sum (const GPtrArray *boards);

/* A tally counts one board after the other, because exact halves are rounded up and down in turn.
 */
typedef struct
{
  guint n_boards;
  int board_feet; /* of all boards so far, and what is left over in quarters, 0 to 3 */
  int quarter_feet;
  gboolean width_half_goes_down; /* next time; likewise the surface measure */
  gboolean surface_half_goes_down;
} BsTally;

/* What one board is counted as. */
typedef struct
{
  int width_in;
  int length_ft;
  int surface_ft2;   /* surface measure */
  double board_feet; /* surface measure x thickness */
} BsTallied;

/* Counts a board as the hardwood trade does: width to the nearest whole inch, length down to the
 * whole foot, width x length / 12 to the nearest whole square foot, that times the thickness in
 * inches, which is a multiple of 1/4 and at least 1. */
BsTallied bs_tally_add (BsTally *self, double thickness, double width, double length);

/* What a rough hardwood thickness finishes at when surfaced on two sides, mm; NAN when the trade
 * has no such class. Steps of 1/4 in from 4/4 to 8/4 and of 1/2 in from 8/4 to 16/4, and 3/8, 1/2,
 * 5/8, 3/4. */
double bs_board_surfaced_thickness (double rough);

/* The thinnest class that finishes at no less than a thickness, mm; NAN when there is none. */
double bs_board_rough_thickness (double finished);

/* How many pieces of a rough thickness have to be glued face to face to finish at a thickness; 0
 * when the trade has no such class. */
int bs_board_layers (double finished, double rough);

G_END_DECLS
