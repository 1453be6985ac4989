/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/paper-scale.h"

#include <math.h>

/* Those that a rule can be read against: by tens and halves, or by parts of an inch. */
static const double metric[]
    = { 1.0,  2.0,  2.5,  3.0,  4.0,  5.0,  6.0,  7.5,  10.0,  12.5,  15.0, 20.0,
        25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 75.0, 100.0, 200.0, 500.0 };
static const double inch[]
    = { 1.0,  2.0,  3.0,  4.0,  5.0,  6.0,  8.0,  10.0, 12.0, 16.0,  20.0, 24.0,
        28.0, 32.0, 36.0, 40.0, 48.0, 56.0, 64.0, 80.0, 96.0, 192.0, 480.0 };

G_STATIC_ASSERT (G_N_ELEMENTS (metric) == G_N_ELEMENTS (inch));

double
bs_paper_scale_find (double size, double room, BsUnitSystem units)
{
  const double *scales = units == BS_UNIT_SYSTEM_METRIC ? metric : inch;
  gsize last = G_N_ELEMENTS (metric) - 1, i = 0;

  if (!(isfinite (size) && size > 0.0 && room > 0.0))
    return 0.0;
  while (i < last && size * BS_POINTS_PER_MM / scales[i] > room)
    i++;
  return scales[i];
}

double
bs_paper_scale_find_larger (double times, BsUnitSystem units)
{
  const double *scales = units == BS_UNIT_SYSTEM_METRIC ? metric : inch;
  double larger = 0.0;

  for (gsize i = 0; i < G_N_ELEMENTS (metric) && scales[i] < times; i++)
    larger = scales[i];
  return larger;
}

char *
bs_paper_scale_format (double times)
{
  return g_strdup_printf ("1:%g", times);
}
