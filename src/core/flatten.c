/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten.h"

#include "core/flatten-work.h"

#include <math.h>

/* A spot that moves the thickness by less than this part of its own moving is not worth a name. */
#define LEAST_WEIGHT 0.01

/* Laminations that are in this list are those to move, to turn over or to replace. */
static void
name_touches (const BsFitBasis *basis, BsFlattenResult *result)
{
  for (int i = 0; i < BS_MAX_TOUCHES; i++)
    {
      const BsFaceSpot *spot = &basis->spots[i];
      if (spot->place < 0 || basis->weights[i] < LEAST_WEIGHT)
        continue;
      result->touches[result->n_touches++]
          = (BsTouch){ .place = spot->place, .x = spot->x, .y = spot->y, .is_top = spot->is_top };
    }
}

static double
height_over (const BsFaceSpot *spot, const BsFit *fit)
{
  return spot->z - fit->slope_x * spot->x - fit->slope_y * spot->y - fit->offset;
}

/* From the planes that the faces leave to the slab within them. */
static void
take_allowances (const BsFaces *faces, const BsFit *fit, double allowance, BsFlattenResult *result)
{
  BsFaceSpot high = bs_faces_extreme (faces, TRUE, BS_EXTREME_GREATEST, fit->slope_x, fit->slope_y);
  BsFaceSpot low = bs_faces_extreme (faces, FALSE, BS_EXTREME_LEAST, fit->slope_x, fit->slope_y);

  result->thickness = fmax (0.0, fit->distance - 2.0 * allowance);
  result->slope_x = fit->slope_x;
  result->slope_y = fit->slope_y;
  result->offset = fit->offset + allowance;
  result->top_least = allowance;
  result->top_most = height_over (&high, fit) - fit->distance + allowance;
  result->underside_least = allowance;
  result->underside_most = allowance - height_over (&low, fit);
  result->gap = fit->gap;
}

void
bs_flatten_by (const BsStack *stack, BsFlattenWork work, BsFlattenResult *result)
{
  BsFitBasis touching;
  BsFaces faces;

  *result = (BsFlattenResult){ .thickness = NAN };
  if (!bs_faces_init (&faces, stack))
    return;

  BsFit fit = bs_flatten_fit (&faces, work, &touching);
  take_allowances (&faces, &fit, stack->plan->slab.allowance, result);
  name_touches (&touching, result);
  bs_faces_clear (&faces);
}

void
bs_flatten (const BsStack *stack, BsFlattenResult *result)
{
  bs_flatten_by (stack, stack->plan->slab.flatten_work, result);
}

void
bs_flatten_shims (const BsStack *stack, const BsFlattenResult *result, double shims[BS_N_CORNERS])
{
  BsFaces faces;

  for (int i = 0; i < BS_N_CORNERS; i++)
    shims[i] = NAN;
  if (isnan (result->thickness) || !bs_faces_init (&faces, stack))
    return;
  for (int i = 0; i < BS_N_CORNERS; i++)
    {
      gboolean is_right = i == BS_CORNER_RIGHT_FRONT || i == BS_CORNER_RIGHT_BACK;
      gboolean is_back = i == BS_CORNER_LEFT_BACK || i == BS_CORNER_RIGHT_BACK;
      const BsFaceStrip *strip = &faces.strips[is_back ? faces.n - 1 : 0];
      double x = strip->x + (is_right ? strip->length : 0.0);
      double y = strip->y + (is_back ? strip->width : 0.0);
      double z = bs_face_strip_underside (strip, is_right ? 1.0 : 0.0, is_back ? 1.0 : 0.0);

      /* The lowest spot, which lies on the bench, is the one from which most comes off. */
      shims[i]
          = z - result->slope_x * x - result->slope_y * y - result->offset + result->underside_most;
    }
  bs_faces_clear (&faces);
}
