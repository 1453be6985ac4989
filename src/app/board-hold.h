/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/board.h"

G_BEGIN_DECLS

/* A defect of a board under the pointer: where it is held and what dragging makes of it. Knows no
 * widget. Device units are those of the scale, sizes in mm. */

typedef enum
{
  BS_HOLD_NEW,    /* is being drawn */
  BS_HOLD_BODY,   /* moves */
  BS_HOLD_CORNER, /* is resized */
} BsHoldKind;

typedef struct
{
  BsHoldKind kind;
  int defect;          /* -1: a new one */
  BsFace face;         /* a new one's */
  gboolean holds_x_to; /* which corner */
  gboolean holds_across_to;
  double x, across; /* where it was taken hold of */
  BsDefect before;  /* as it was then; its texts are borrowed */
} BsHold;

/* The defect at a device position, the one that lies on top of others; -1: none. */
int bs_hold_find_defect (const BsBoardScale *scale, const BsBoard *board, double device_x,
                         double device_y);

/* Takes hold of what is there: a corner of the selected defect, a defect, or the bare face, where a
 * new one begins. FALSE beside the board. */
gboolean bs_hold_begin (BsHold *self, const BsBoardScale *scale, const BsBoard *board, int selected,
                        double device_x, double device_y);

/* What the defect is once the pointer is elsewhere; within its face. */
BsDefect bs_hold_drag (const BsHold *self, const BsBoardScale *scale, const BsBoard *board,
                       double device_x, double device_y);

/* A defect moved, or resized at its far corner, by so much, within its face and not below the least
 * size. */
BsDefect bs_hold_move (const BsDefect *defect, const BsBoard *board, double dx, double dacross);
BsDefect bs_hold_resize (const BsDefect *defect, const BsBoard *board, double dx, double dacross);

G_END_DECLS
