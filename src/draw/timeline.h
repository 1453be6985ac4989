/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/forecast.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* The presses of a schedule, a row each, to scale: at the left the assembly time in minutes against
 * the glue's limit, at the right the whole calendar (assembly, press, rest and planing). Sizes in
 * device units; the picture's top left corner is the origin. A forecast without a schedule draws
 * nothing and has no height. */
double bs_timeline_get_height (const BsForecast *forecast, double text_size);
void bs_draw_timeline (cairo_t *cr, const BsForecast *forecast, double width, double text_size,
                       double hairline, const BsPalette *palette);

/* The step of a time scale, in seconds: round, at least `least`. */
double bs_timeline_step (double least);

G_END_DECLS
