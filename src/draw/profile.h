/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/flatten-map.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* The rough slab about the finished one, cut across or along, with what comes off drawn higher than
 * true so that steps and crook are seen; the middle of the thickness is left out. */
typedef enum
{
  BS_PROFILE_ACROSS, /* front at the left */
  BS_PROFILE_ALONG,  /* left end at the left */
} BsProfile;

/* Height in text sizes. */
#define BS_PROFILE_HEIGHT 10.0

/* at: mm from the left end, or from the front, where it is cut. Draws from the origin to the right
 * and down. */
void bs_draw_profile (cairo_t *cr, const BsFlattenMap *map, const BsStack *stack, BsProfile profile,
                      double at, double width, double text_size, double hairline,
                      const BsPalette *palette);

/* So many times higher than true, a round number: what the picture says of itself. */
double bs_profile_times (double deepest, double per_mm, double text_size);

G_END_DECLS
