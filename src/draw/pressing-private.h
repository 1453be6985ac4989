/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/heat.h"
#include "draw/pressing.h"

G_BEGIN_DECLS

/* The shades of all pictures of one pressure: from nothing to the greatest there is, or to a little
 * more than the adhesive's least. */
BsHeat bs_pressing_heat (const BsPressure *pressure);

/* How a spot of a glue line is pressed. Each has a sign besides its shade. */
typedef enum
{
  BS_SPOT_ENOUGH,
  BS_SPOT_BELOW,   /* less than the adhesive asks for */
  BS_SPOT_OPEN,    /* not at all */
  BS_SPOT_CRUSHED, /* more than the wood bears */
  BS_SPOT_NONE,    /* no glue line there */
} BsSpot;

/* The sign of a spot in a rectangle, in one colour; nothing for one that is pressed enough. */
void bs_pressing_draw_sign (cairo_t *cr, BsSpot spot, double x, double y, double width,
                            double height, double hairline, const BsColor *color);

/* The bands of all glue lines (draw/pressing-bands.c). */
void bs_pressing_draw_bands (cairo_t *cr, const BsPressure *pressure, const BsPressingScale *scale,
                             const BsPalette *palette);

/* Half of a band's height, for the glue line between two laminations. */
double bs_pressing_half_band (const BsPressingScale *scale, const BsStack *stack, guint line);

G_END_DECLS
