/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/flatten-spread.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* How thick the drawn slabs come out: a bar for each step of thickness, dark where it is at least
 * what is wanted, and lines where 50, 90 and 95 of a hundred are reached. */

/* Height in text sizes. */
#define BS_ODDS_HEIGHT 11.0

void bs_draw_odds (cairo_t *cr, const BsFlattenOdds *odds, double wanted, BsUnitSystem units,
                   double width, double text_size, double hairline, const BsPalette *palette);

G_END_DECLS
