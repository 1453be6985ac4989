/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/sawing-rack.h"
#include "draw/board.h"
#include "draw/picture.h"

G_BEGIN_DECLS

/* A board with the pieces that are cut out of it, seen from above: its left end at the left, its
 * front edge at the bottom. Pieces with label and size; kerfs, numbered in the order of work; waste
 * veiled and hatched; an offcut worth keeping with a dashed edge and its length; defects, those of
 * the underside in a dashed frame. Device units. */
typedef struct
{
  double per_mm;
  double hairline;
  double text_size;
  const BsPalette *palette;
  const char *selected;     /* id of a piece, or NULL */
  guint selected_copy;      /* which of its cuts on this plan, from 0 */
  gboolean without_numbers; /* of the passes: nothing is bought yet */
  BsMark mark;              /* of the selected one */
} BsCutStyle;

/* Room that the picture takes below the board and at its left, for the numbers of the passes. */
double bs_cut_picture_margin (double text_size);

/* With the board's left, back corner at the origin of cr. */
void bs_draw_cut_board (cairo_t *cr, const BsPlan *plan, const BsSawnBoard *sawn,
                        const BsCutStyle *style);

/* One piece by itself, with its left, back corner at the origin. */
void bs_draw_cut_piece (cairo_t *cr, const BsPlan *plan, const BsCut *cut, const BsCutStyle *style,
                        BsMark marks);

G_END_DECLS
