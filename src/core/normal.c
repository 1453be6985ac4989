/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/normal.h"

#include <math.h>

/* Beyond 38 deviations the C library's erfc is 0. */
#define FARTHEST 38.0

/* Halvings until the interval is as narrow as a double of that size can tell. */
#define HALVINGS 60

/* The upper tail, which erfc knows to full precision however small it is, falls with its argument.
 */
static double
find_upper_tail (double probability)
{
  double low = 0.0, high = FARTHEST;

  for (int i = 0; i < HALVINGS; i++)
    {
      double middle = (low + high) / 2.0;

      if (erfc (middle / G_SQRT2) / 2.0 > probability)
        low = middle;
      else
        high = middle;
    }
  return (low + high) / 2.0;
}

double
bs_normal_quantile (double probability)
{
  g_return_val_if_fail (probability > 0.0 && probability < 1.0, NAN);

  return probability < 0.5 ? -find_upper_tail (probability) : find_upper_tail (1.0 - probability);
}
