/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/stack.h"

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

/* Draws a part of a photo to fill a rectangle (device units). */
void bs_photo_draw (cairo_t *cr, cairo_surface_t *photo, const BsPhotoPart *part, double x,
                    double y, double width, double height);

/* The photo of the board's face that is a face of the lamination now, and which part of it. */
typedef struct
{
  const char *path; /* borrowed from the plan; NULL: there is none */
  BsPhotoPart part;
  gboolean is_underside;    /* of the board */
  cairo_surface_t *surface; /* from whom has it; NULL: not at hand */
} BsFacePhoto;

/* There is none when the face was an edge of its board, the board has no photo, or no cut says
 * where in the board it lay. */
BsFacePhoto bs_photo_find (const BsPlan *plan, const BsLamination *lamination, BsFace face);

/* The one on the show face of the slab. */
BsFacePhoto bs_photo_find_shown (const BsPlan *plan, const BsPlaced *placed);

/* Draws it from where defects of the lamination's face are measured: across to the right, along
 * downwards (device units). */
void bs_photo_draw_face (cairo_t *cr, const BsFacePhoto *photo, double across, double along);

G_END_DECLS
