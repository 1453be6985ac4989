/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "draw/palette.h"

G_BEGIN_DECLS

/* The bars of a timeline. Ink alone tells them apart, by tone and by hatch: the wood alone has
 * colour. */
typedef enum
{
  BS_SPAN_SPREAD,  /* full */
  BS_SPAN_TIGHTEN, /* lines rising to the right */
  BS_SPAN_OPEN,    /* grey */
  BS_SPAN_PRESS,   /* grey with upright lines */
  BS_SPAN_REST,    /* outlined */
  BS_SPAN_PLANE,   /* crossing lines */
} BsSpan;

/* Device units; (x, y) is its top left corner. */
void bs_span_bar_draw (cairo_t *cr, BsSpan span, double x, double y, double width, double height,
                       double hairline, const BsPalette *palette);

G_END_DECLS
