/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/pressure.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* The slab in its clamps, as seen from above its show face: x from the left end to the right, the
 * front at the bottom. Each glue line is a band in shades of its pressure. */

/* Maps millimetres of the slab to device units and back; pictures and pointer use the same one. */
typedef struct
{
  double left, top; /* of the slab's left, back corner */
  double per_mm_along, per_mm_across;
  double length, width; /* of the slab, mm */
  double caul;          /* thickness of the cauls, mm */
  double text_size, hairline;
} BsPressingScale;

/* Fits the slab with its clamps into an area, its length to the area's width and to scale as far as
 * the height allows; thin laminations are drawn wider than true. */
void bs_pressing_scale_fit (BsPressingScale *self, const BsResults *results, double width,
                            double height, double text_size, double hairline);

/* What the picture takes of that height; 0 for a slab without sizes. */
double bs_pressing_scale_get_height (const BsPressingScale *self);

double bs_pressing_scale_from_x (const BsPressingScale *self, double x);
double bs_pressing_scale_to_x (const BsPressingScale *self, double device);
double bs_pressing_scale_from_y (const BsPressingScale *self, double y);

/* The clamp (place in set_clamps) and the glue line (from the front) at a device position; -1:
 * none.
 */
int bs_pressing_scale_find_clamp (const BsPressingScale *self, const BsResults *results, double x,
                                  double y);
int bs_pressing_scale_find_line (const BsPressingScale *self, const BsResults *results, double x,
                                 double y);

/* What is chosen; -1: nothing. */
typedef struct
{
  int clamp, line;
} BsPressingChoice;

/* The picture. Pressures may be those of a moment ago, or NULL: then there are no bands yet. */
void bs_draw_pressing (cairo_t *cr, const BsResults *results, const BsPressure *pressure,
                       const BsPressingScale *scale, const BsPalette *palette,
                       BsPressingChoice choice);

/* The legend to it, in a width with the top left corner at the origin: the shades with values, the
 * signs, and how much wider than true the slab is drawn. Returns its height; draws only when
 * is_drawn. */
double bs_draw_pressing_legend (cairo_t *cr, const BsPressure *pressure,
                                const BsPressingScale *scale, double width,
                                const BsPalette *palette, gboolean is_drawn);

/* Under the picture, at the same scale along: the pressure along one glue line, with the lines of
 * what the adhesive asks for and of what the wood bears. `top` and `height` in device units. */
void bs_draw_pressing_curve (cairo_t *cr, const BsPressure *pressure, guint line,
                             const BsPressingScale *scale, double top, double height,
                             const BsPalette *palette);

G_END_DECLS
