/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/lumber.h"

G_BEGIN_DECLS

/* A photo of a board's face is the face and nothing else, lying as in the picture of the board
 * (draw/board.h): the left end to the left, of the top the back edge above, of the underside the
 * front edge. Who loads it gives it as a surface. */

/* A part of a photo, in parts of its width and height from its upper left corner, 0 to 1. */
typedef struct
{
  double x, y, width, height;
} BsPhotoPart;

#define BS_PHOTO_WHOLE ((BsPhotoPart){ 0.0, 0.0, 1.0, 1.0 })

/* Where a piece cut from the board lies on the photo of its top or its underside. */
BsPhotoPart bs_photo_part_of_cut (const BsBoard *board, const BsCut *cut, BsFace face);

/* Draws a part of a photo to fill a rectangle (device units). */
void bs_photo_draw (cairo_t *cr, cairo_surface_t *photo, const BsPhotoPart *part, double x,
                    double y, double width, double height);

G_END_DECLS
