/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"
#include "draw/chart.h"

G_BEGIN_DECLS

/* The finished slab as it is wished, seen from the front, the right and above, with its sizes and
 * the names of its sides: length and thickness to scale, and what runs away from the eye at half of
 * it (cabinet axonometry, ISO 5456-3:1996, 5.2; from memory). Sides that people do not see are
 * pale. Once there are laminations, the joints and the grain lie as they do in the stack. */
double bs_slab_view_get_height (const BsStack *stack, const BsChart *chart);
void bs_draw_slab_view (cairo_t *cr, const BsStack *stack, const BsChart *chart);

G_END_DECLS
