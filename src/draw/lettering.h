/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>

G_BEGIN_DECLS

/* All text of the pictures: one sans family with figures of equal width. Sizes in device units. */

typedef struct
{
  double size;
  gboolean is_bold;
  double wrap;          /* width at which lines break, 0: never */
  PangoAlignment align; /* of wrapped lines */
} BsLettering;

/* The caller's. */
PangoLayout *bs_lettering_layout (cairo_t *cr, const char *text, const BsLettering *style);

void bs_lettering_measure (cairo_t *cr, const char *text, const BsLettering *style, double *width,
                           double *height);

/* Draws in the current source with (x, y) at the given parts of the text's box: (0, 0) its top
 * left, (0.5, 0.5) its middle. */
void bs_lettering_draw (cairo_t *cr, const char *text, const BsLettering *style, double x, double y,
                        double part_x, double part_y);

/* The largest size, at most style's and at least `least`, at which text fits a width; 0 when none.
 */
double bs_lettering_fit (cairo_t *cr, const char *text, const BsLettering *style, double width,
                         double least);

G_END_DECLS
