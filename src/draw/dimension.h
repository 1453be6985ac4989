/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/lettering.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* A dimension line between two points with its value: over a level line, right of an upright or a
 * rising one (left of it with is_left). */
void bs_dimension_draw (cairo_t *cr, double x_from, double y_from, double x_to, double y_to,
                        const char *value, gboolean is_left, double text_size, double hairline,
                        const BsPalette *palette);

/* The step of a scale, in mm: round in the units, at least `least` mm. Every `*minor` of a step
 * there is a small tick. */
double bs_dimension_step (double least, BsUnitSystem units, double *minor);

/* A bar of a round length, with that length written over it. */
void bs_dimension_scale_bar (cairo_t *cr, double x, double y, double per_mm, double longest,
                             BsUnitSystem units, double text_size, double hairline,
                             const BsPalette *palette);

G_END_DECLS
