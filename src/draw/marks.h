/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/finding.h"
#include "draw/palette.h"
#include "draw/lettering.h"

G_BEGIN_DECLS

/* The small signs on laminations. Each is told apart by its shape alone; all but the arrow of the
 * run-out are drawn in a square of a size, with (x, y) its middle. */

/* A solid triangle that points to the edge that was on top when the lamination was marked. */
void bs_mark_top_edge (cairo_t *cr, double x, double y, double size, gboolean is_up,
                       const BsColor *color);

/* Two short bars beside the end that was the left one when it was marked. */
void bs_mark_left_end (cairo_t *cr, double x, double y, double size, const BsColor *color);

/* Rings around a heart that lies to one side (-1 left, +1 right). */
void bs_mark_heart (cairo_t *cr, double x, double y, double size, int side, const BsColor *color);

/* A triangle or an octagon with an exclamation mark cut out of it. */
void bs_mark_finding (cairo_t *cr, double x, double y, double size, BsSeverity severity,
                      const BsColor *color, const BsColor *ground);

/* An arrow along the face from y to y + length: plane this way. A negative length points up. */
void bs_mark_run_out (cairo_t *cr, double x, double y, double length, double head,
                      double line_width, const BsColor *color);

/* A patch that signs are read on where the wood or a photo is too busy. */
void bs_mark_ground (cairo_t *cr, double x, double y, double width, double height,
                     const BsColor *color);

/* A label in the middle of a box, on a patch of the wood's tint: as large as style allows and the
 * box takes, across the box or standing along it. Left out where less than seven tenths of the size
 * fit. */
void bs_mark_label (cairo_t *cr, const char *label, const BsLettering *style, gboolean is_standing,
                    double x, double y, double width, double height, const BsColor *color,
                    const BsColor *patch);

G_END_DECLS
