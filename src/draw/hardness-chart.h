/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"
#include "draw/chart.h"

G_BEGIN_DECLS

typedef struct
{
  const char *name; /* in the person's language */
  double hardness_n;
  gboolean is_estimated;
  gboolean is_fit;    /* fits all that is asked */
  gboolean is_chosen; /* heavier than the others */
} BsHardnessMark;

/* Woods along a scale of side hardness, to scale: a tick for each, its name over it, and the range
 * wanted as a band. `marks` are sorted by hardness. Where the width has no room for all
 * names, the chosen ones come first, then those that fit; the others keep their ticks. */
typedef struct
{
  const BsHardnessMark *marks;
  guint n;
  double low_n, high_n;    /* NAN: open at that end */
  gboolean is_range_usual; /* nobody asked for it */
  BsUnitSystem units;
} BsHardnessScale;

double bs_hardness_chart_get_height (const BsChart *chart);
void bs_draw_hardness_chart (cairo_t *cr, const BsHardnessScale *scale, const BsChart *chart);

G_END_DECLS
