/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/picture.h"

G_BEGIN_DECLS

/* The edge of a lamination: a fine line; a heavy one with notched corners when selected, a heavy
 * broken one while held. */
void bs_outline_draw (cairo_t *cr, double x, double y, double width, double height,
                      const BsScale *scale, const BsPalette *palette, BsMark marks);

G_END_DECLS
