/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/units.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* Values as shades, the same in every map: the more, the darker. On screen they are 'viridis',
 * which is perceptually even and keeps its order for the colour-blind and in grey; on paper greys
 * of even lightness. A map never stands without its legend. */
typedef struct
{
  double from, to;     /* the values of the lightest and of the darkest shade, in the unit that */
  BsQuantity quantity; /* BsQuantity names; from < to */
  BsUnitSystem units;
} BsHeat;

/* Where a value lies between `from`, 0, and `to`, 1; values beyond are clamped. */
double bs_heat_get_part (const BsHeat *self, double value);

/* The shade of a part, and the colour, black or white, of text that stands out from it. */
BsColor bs_heat_shade (const BsPalette *palette, double part);
BsColor bs_heat_on_shade (const BsPalette *palette, double part);

/* A step of round numbers in the units shown, at least `least`, for legends and contour lines. */
double bs_heat_step (const BsHeat *self, double least);

/* n_rows of n_columns values, the first row at the top, as equal cells that fill a rectangle. NAN
 * leaves its cell empty. */
void bs_heat_draw_cells (const BsHeat *self, cairo_t *cr, const double *values, guint n_columns,
                         guint n_rows, double x, double y, double width, double height,
                         const BsPalette *palette);

/* A bar of all shades with round values and their unit under it; its height in text sizes. */
#define BS_HEAT_LEGEND_HEIGHT 2.4
void bs_heat_draw_legend (const BsHeat *self, cairo_t *cr, double x, double y, double width,
                          double text_size, double hairline, const BsPalette *palette);

G_END_DECLS
