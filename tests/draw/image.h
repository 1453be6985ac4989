/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

/* White pictures to draw on and to compare. */
cairo_t *image_new (int width, int height);

/* The greatest difference of any channel of any pixel, 0 to 255; with is_turned, b is first turned
 * upside down. Both of one size. */
int image_difference (cairo_t *a, cairo_t *b, gboolean is_turned);

/* Number of pixels that are not white, and the box that holds them. */
int image_count_ink (cairo_t *cr, cairo_rectangle_int_t *box);

/* TRUE when no pixel has a hue. */
gboolean image_is_grey (cairo_t *cr);

/* Of one pixel, 0 for white to 255 for black. */
int image_get_darkness (cairo_t *cr, int x, int y);
