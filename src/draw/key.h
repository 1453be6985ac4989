/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/picture.h"

G_BEGIN_DECLS

/* The key to the signs of the diagram: those that this plan uses, in lines of a width, with the top
 * left corner at the origin. Returns its height; draws only when is_drawn. */
double bs_key_draw (cairo_t *cr, const BsResults *results, double width, double text_size,
                    gboolean is_drawn);

G_END_DECLS
