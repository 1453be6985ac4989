/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/movement.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define HANDBOOK_13                                                                                \
  N_ ("Wood Handbook FPL-GTR-190 (2010), equation 13-2 from 6 to 14 %, 13-3 outside (13-3 from "   \
      "memory)")
#define HANDBOOK_EMC "Wood Handbook FPL-GTR-190 (2010), equation 4-5 (from memory)"
#define WOODS N_ ("the plan’s table of woods, by the angle of the rings")
#define SET_BY_YOU N_ ("set by you")

static void
add_moistures (const BsMovement *movement, BsWorking *why)
{
  bs_working_add (why, N_ ("moisture at the dampest"), "M₂", movement->damp_pct,
                  BS_QUANTITY_PERCENT, HANDBOOK_EMC);
  bs_working_add (why, N_ ("moisture at the driest"), "M₁", movement->dry_pct, BS_QUANTITY_PERCENT,
                  HANDBOOK_EMC);
  bs_working_add (why, N_ ("mean moisture at gluing"), "", movement->glued_pct, BS_QUANTITY_PERCENT,
                  NULL);
}

/* The coefficient that gives this change in one step. */
static double
find_mean_coefficient (const BsMovement *movement, const BsSeasons *seasons)
{
  return seasons->year / seasons->at_gluing / (movement->damp_pct - movement->dry_pct);
}

static void
set_range (const BsSeasons *seasons, BsWorking *why)
{
  why->value = seasons->year;
  why->low = fmin (seasons->least, seasons->most);
  why->high = fmax (seasons->least, seasons->most);
}

static const char *
describe_certainty (const BsMovement *movement)
{
  if (movement->n_no_rings > 0)
    return N_ ("The range is that of laminations whose rings are not known: all quartersawn, or "
               "all flatsawn. Woods and boards differ besides, and thick slabs lag behind the "
               "seasons.");
  return N_ ("Boards of one wood differ, and thick or well finished slabs lag behind the seasons "
             "and move less.");
}

void
bs_movement_explain_width (const BsMovement *movement, const BsStack *stack, BsWorking *why)
{
  const BsSeasons *width = &movement->width;
  double least = INFINITY, most = 0.0;

  if (isnan (width->year))
    {
      bs_working_init (why, N_ ("Movement of the width over the year"),
                       stack->n == 0 ? N_ ("There are no laminations in the slab yet.")
                                     : N_ ("How much a wood in the slab moves is not known."),
                       "ΔW = W C (M₂ − M₁)", BS_QUANTITY_LENGTH, N_ ("Nothing to go by."));
      return;
    }
  bs_working_init (why, N_ ("Movement of the width over the year"),
                   N_ ("How much wider the slab is at its dampest than at its driest, if nothing "
                       "holds it. What holds it must let it move by that much."),
                   "ΔW = W C (M₂ − M₁)", BS_QUANTITY_LENGTH, describe_certainty (movement));
  set_range (width, why);
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double cos2 = bs_movement_ring_cos2_y (placed);
      double own = bs_movement_at (placed->wood, isnan (cos2) ? 0.5 : cos2).coefficient;

      least = fmin (least, own);
      most = fmax (most, own);
    }
  bs_working_add (why, N_ ("width at gluing"), "W", width->at_gluing, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("mean coefficient of movement across, for each %"), "C",
                  find_mean_coefficient (movement, width), BS_QUANTITY_RATIO, HANDBOOK_13);
  add_moistures (movement, why);
  bs_working_add (why, N_ ("width at the driest"), "", width->dry, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("width at the dampest"), "", width->damp, BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("least coefficient of a lamination"), "", least, BS_QUANTITY_RATIO,
                  WOODS);
  bs_working_add (why, N_ ("greatest coefficient of a lamination"), "", most, BS_QUANTITY_RATIO,
                  WOODS);
  bs_working_add (why, N_ ("laminations whose rings are not known"), "", movement->n_no_rings,
                  BS_QUANTITY_COUNT, NULL);
}

void
bs_movement_explain_thickness (const BsMovement *movement, BsWorking *why)
{
  const BsSeasons *thickness = &movement->thickness;

  if (isnan (thickness->year))
    {
      bs_working_init (why, N_ ("Movement of the thickness over the year"),
                       N_ ("The thickness of the slab, or how much its wood moves, is not known."),
                       "ΔT = T C (M₂ − M₁)", BS_QUANTITY_LENGTH, N_ ("Nothing to go by."));
      return;
    }
  bs_working_init (why, N_ ("Movement of the thickness over the year"),
                   N_ ("How much thicker the slab is at its dampest than at its driest. Where "
                       "neighbours have their rings at other angles, a step grows at the glue "
                       "line between them."),
                   "ΔT = T C (M₂ − M₁)", BS_QUANTITY_LENGTH, describe_certainty (movement));
  set_range (thickness, why);
  bs_working_add (why, N_ ("thickness at gluing"), "T", thickness->at_gluing, BS_QUANTITY_LENGTH,
                  NULL);
  bs_working_add (why, N_ ("mean coefficient of movement through the slab, for each %"), "C",
                  find_mean_coefficient (movement, thickness), BS_QUANTITY_RATIO, HANDBOOK_13);
  add_moistures (movement, why);
  bs_working_add (why, N_ ("thickness at the driest"), "", thickness->dry, BS_QUANTITY_LENGTH,
                  NULL);
  bs_working_add (why, N_ ("thickness at the dampest"), "", thickness->damp, BS_QUANTITY_LENGTH,
                  NULL);
  bs_working_add (why, N_ ("greatest step at a glue line"), "", movement->step, BS_QUANTITY_LENGTH,
                  NULL);
}

void
bs_movement_explain_slot (const BsSlot *slot, double screw, double clearance, BsWorking *why)
{
  bs_working_init (why, N_ ("Length of the slot"),
                   N_ ("A slot in what carries the slab, along the slab’s width, so that the screw "
                       "in the slab can travel with it. At the spot where the slab is fixed a "
                       "round hole will do."),
                   "l = s + i + o + 2 c", BS_QUANTITY_LENGTH,
                   N_ ("A longer slot does no harm: take the next size up. Drive the screw where "
                       "it belongs today, which is not always the middle of the slot."));
  why->value = slot->length;
  bs_working_add (why, N_ ("diameter of the screw"), "s", screw, BS_QUANTITY_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("travel towards the fixed spot at the driest"), "i", slot->towards,
                  BS_QUANTITY_LENGTH, HANDBOOK_13);
  bs_working_add (why, N_ ("travel away from it at the dampest"), "o", slot->away,
                  BS_QUANTITY_LENGTH, HANDBOOK_13);
  bs_working_add (why, N_ ("play at each end"), "c", clearance, BS_QUANTITY_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("distance from where the slab is fixed"), "", slot->distance,
                  BS_QUANTITY_LENGTH, SET_BY_YOU);
  bs_working_add (why, N_ ("middle of the slot, from the fixed spot"), "", slot->middle,
                  BS_QUANTITY_LENGTH, NULL);
}
