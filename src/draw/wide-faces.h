/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "draw/palette.h"
#include "draw/photo.h"

G_BEGIN_DECLS

/* The wide faces of a lamination on the photos of its board, one above the other, with its defects:
 * for a slab on edge they lie in the glue lines and are seen nowhere else. */

#define BS_N_WIDE_FACES 2

/* The one that was the board's upper face first. */
BsFace bs_wide_face (BsLayup layup, int number);

/* Fills width and height (device units), as true to scale as they allow; a face without a photo at
 * hand is bare wood. */
void bs_draw_wide_faces (cairo_t *cr, const BsPlan *plan, const BsLamination *lamination,
                         const BsFacePhoto photos[BS_N_WIDE_FACES], double width, double height,
                         const BsPalette *palette);

G_END_DECLS
