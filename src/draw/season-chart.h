/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"
#include "draw/chart.h"

G_BEGIN_DECLS

/* The section of the finished slab, to scale, at gluing (grey), at its driest (broken line) and at
 * its dampest (full line); what it moves is drawn larger by a round factor, which is written under
 * it. It stays put along the line where it is held. Below lie its slots, seen from below, to the
 * same scale and not exaggerated, with their distances and lengths. A slab whose movement is not
 * known draws nothing and has no height. */
double bs_season_chart_get_height (const BsResults *results, const BsChart *chart);
void bs_draw_season_chart (cairo_t *cr, const BsResults *results, const BsChart *chart);

G_END_DECLS
