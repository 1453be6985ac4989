/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"
#include "draw/chart.h"

G_BEGIN_DECLS

/* The moisture of each lamination, from the front to the back, against what the wood comes to over
 * the year where the slab will live (a band) and in the shop (a broken line). What the findings
 * complain of is drawn heavier; a lamination that was not measured stands as a ring in the middle
 * of the band. Without laminations there are only the band and the line. */
double bs_moisture_chart_get_height (const BsChart *chart);
void bs_draw_moisture_chart (cairo_t *cr, const BsResults *results, const BsChart *chart);

G_END_DECLS
