/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/lumber.h"
#include "core/plan.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* A board to scale, x to the right from its left end: its four long faces below one another as they
 * come up when it is rolled towards the person: top, front edge, underside, back edge. So the front
 * edge lies below the top and above the underside. Beside them the left end, seen as the section of
 * the slab is: the front edge to the left, the top up. */

typedef struct
{
  const BsBoard *board;
  const BsWood *wood;     /* NULL: not known */
  cairo_surface_t *top;   /* photo of that face, see draw/photo.h; NULL: none */
  cairo_surface_t *under; /* of the underside */
} BsBoardLook;

/* Where it lies; pointer and picture use the same one. Device units. */
typedef struct
{
  double left;             /* of all faces */
  double tops[BS_N_FACES]; /* upper edge of each; NAN: that face is not drawn */
  double per_mm;           /* of the faces, along and across */
  double end_left, end_bottom;
  double end_per_mm; /* 0: the end is not drawn */
  double hairline;   /* on screen one pixel, on paper 0.18 mm */
  double text_size;
} BsBoardScale;

/* Lays all faces and the end out in an area whose upper left corner is the origin, with room for
 * their names; the faces as large as the area allows. Returns the height that is used. */
double bs_board_scale_fit (BsBoardScale *self, const BsBoard *board, double width, double height,
                           double text_size, double hairline);

/* A rectangle on a face (mm; across as of a defect) in device units. */
void bs_board_scale_place (const BsBoardScale *self, const BsBoard *board, BsFace face,
                           double x_from, double x_to, double across_from, double across_to,
                           cairo_rectangle_t *place);

/* The face at a device position; FALSE where there is none. */
gboolean bs_board_scale_find_face (const BsBoardScale *self, const BsBoard *board, double device_x,
                                   double device_y, BsFace *face);

/* A device position in mm on a face, wherever it is; within the face's edges. */
void bs_board_scale_to_mm (const BsBoardScale *self, const BsBoard *board, BsFace face,
                           double device_x, double device_y, double *x, double *across);

/* One face where the scale says: its wood or its photo, its rings, its defects, its edge. */
void bs_draw_board_face (cairo_t *cr, const BsBoardLook *look, BsFace face,
                         const BsBoardScale *scale, const BsPalette *palette);

/* The end where the scale says. */
void bs_draw_board_end (cairo_t *cr, const BsBoardLook *look, const BsBoardScale *scale,
                        const BsPalette *palette);

/* All of it, with the names of the faces above them. */
void bs_draw_board (cairo_t *cr, const BsBoardLook *look, const BsBoardScale *scale,
                    const BsPalette *palette);

G_END_DECLS
