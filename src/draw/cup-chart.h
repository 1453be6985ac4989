/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"
#include "draw/chart.h"

G_BEGIN_DECLS

/* What becomes of a slab on flat in the season that changes it most: its shape as it is laid, with
 * all hearts the same way, and with hearts up and down by turns, over a straight line, heights
 * drawn larger by one round factor. On edge, or with a wood that is not known, it draws nothing and
 * has no height. */
double bs_cup_chart_get_height (const BsResults *results, const BsChart *chart);
void bs_draw_cup_chart (cairo_t *cr, const BsResults *results, const BsChart *chart);

G_END_DECLS
