/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* Points (1/72 in) for each mm of paper. */
#define BS_POINTS_PER_MM (72.0 / 25.4)

/* The round scale, as so many times smaller than true, at which a picture of `size` mm is no longer
 * than `room` points: 2 for 1:2. 0 when there is no size or no room. */
double bs_paper_scale_find (double size, double room, BsUnitSystem units);

/* The next larger picture: 2 after 2.5; 0 after the largest. */
double bs_paper_scale_find_larger (double times, BsUnitSystem units);

/* "1:2.5"; the caller's. */
char *bs_paper_scale_format (double times);

G_END_DECLS
