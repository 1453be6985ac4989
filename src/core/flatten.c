/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten.h"

#include <math.h>

/* Between the lowest top and the highest underside, without tilt. */
void
bs_flatten (const BsStack *stack, BsFlattenResult *result)
{
  double allowance = stack->plan->slab.allowance;
  double top_low = INFINITY, top_high = -INFINITY;
  double under_low = INFINITY, under_high = -INFINITY;

  *result = (BsFlattenResult){ .thickness = NAN };
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *p = &stack->placed[i];
      under_low = fmin (under_low, fmin (0.0, p->crook));
      under_high = fmax (under_high, fmax (0.0, p->crook));
      double least = fmin (p->height_left, p->height_right);
      double most = fmax (p->height_left, p->height_right);
      double middle = (least + most) / 2.0 + p->crook;
      top_low = fmin (top_low, fmin (least, middle));
      top_high = fmax (top_high, fmax (most, middle));
    }
  if (stack->n == 0)
    return;
  result->thickness = fmax (0.0, top_low - under_high - 2.0 * allowance);
  result->offset = under_high + allowance;
  result->top_least = result->underside_least = allowance;
  result->top_most = top_high - top_low + allowance;
  result->underside_most = under_high - under_low + allowance;
}
