/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/flatten-map.h"
#include "draw/heat.h"

G_BEGIN_DECLS

/* What comes off each face, as maps to scale seen from above: x to the right from the left end, y
 * up from the front. */

/* Cells of a map that is to be drawn. */
#define BS_REMOVAL_COLUMNS 240
#define BS_REMOVAL_ROWS 120

/* Where a map lies and how large it is, in device units. */
typedef struct
{
  double left, top; /* of the slab's picture */
  double per_mm;
  double text_size, hairline;
} BsRemovalScale;

/* Both faces under one another in a width, no higher than `height` where they can be, with room for
 * words and labels; and the height that they then take. 0 when there is nothing to draw. */
double bs_removal_fit (BsRemovalScale *show_face, BsRemovalScale *underside, const BsStack *stack,
                       double width, double height, double text_size, double hairline);

/* One scale of shades for both faces, from nothing to the deepest spot. */
BsHeat bs_removal_get_heat (const BsFlattenMap *map, BsUnitSystem units);

/* One face with its words, the laminations, and its deepest spots with their depths; the lamination
 * of that id, if any, is marked. */
void bs_draw_removal (cairo_t *cr, const BsFlattenMap *map, const BsStack *stack, gboolean is_top,
                      const BsRemovalScale *scale, const char *selected, const BsPalette *palette);

/* The legend of both, from the origin to the right; as high as a BS_HEAT_LEGEND_HEIGHT. */
void bs_draw_removal_legend (cairo_t *cr, const BsFlattenMap *map, BsUnitSystem units, double width,
                             double text_size, double hairline, const BsPalette *palette);

/* The lamination at a device position, or -1. */
int bs_removal_find_place (const BsRemovalScale *self, const BsStack *stack, double x, double y);

G_END_DECLS
