/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/press-plan.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* How far the stiffness across the grain of one wood may well lie from the means that are used: by
 * a third, as single woods of the table do. */
#define SOFTER (2.0 / 3.0)
#define STIFFER (3.0 / 2.0)

#define STIFFNESS_SOURCE N_ ("FPL-GTR-190 (2010), tables 5-1 and 5-2, mean ratios; from memory")

/* The weakest pressure of the same clamps when all woods are softer or stiffer across by a factor;
 * NAN when it cannot be told. */
static double
press_other_wood (const BsPressPlan *self, const BsLayout *layout, double factor)
{
  BsPressStack stack = self->problem.stack;
  g_autofree BsPressPiece *pieces
      = g_memdup2 (stack.pieces, sizeof (BsPressPiece) * stack.n_pieces);
  g_autofree BsPressClamp *clamps = bs_layout_press_clamps (layout, &self->problem);
  g_autoptr (BsPressing) pressing = NULL;
  g_auto (BsPressResult) result = { 0 };

  for (guint i = 0; i < stack.n_pieces; i++)
    pieces[i].e_across_mpa *= factor;
  stack.pieces = pieces;
  pressing = bs_pressing_new (&stack, NULL);
  if (pressing == NULL || !bs_pressing_solve (pressing, clamps, layout->n_clamps, &result, NULL)
      || result.status != BS_PRESS_STATUS_SOLVED)
    return NAN;
  return result.lines[result.weakest].least_mpa;
}

static const char *
explain_found (BsLayoutStatus status)
{
  switch (status)
    {
    case BS_LAYOUT_REACHED:
      return N_ (
          "The pressure at the weakest spot of all glue lines, with the fewest clamps that "
          "were found to press every spot enough. Friction of the glue is left out; it would "
          "make deeper lines more even.");
    case BS_LAYOUT_SHORT:
      return N_ (
          "The pressure at the weakest spot of all glue lines, with the best that the clamps "
          "owned can do: less than the adhesive asks for. More or stronger clamps, or "
          "thicker cauls, would help.");
    case BS_LAYOUT_CRUSHES:
      return N_ ("The pressure at the weakest spot of all glue lines. It is enough, but under the "
                 "clamps the wood is pressed beyond its strength; thicker cauls, or more clamps "
                 "tightened less, would help.");
    case BS_LAYOUT_NO_CLAMPS:
      return N_ ("Fewer than two of the clamps owned reach across the slab and its cauls.");
    case BS_LAYOUT_STOPPED:
    default:
      return N_ ("The search for places of the clamps was stopped.");
    }
}

static const char *
explain_set (BsLayoutStatus status)
{
  switch (status)
    {
    case BS_LAYOUT_REACHED:
      return N_ ("The pressure at the weakest spot of all glue lines, with the clamps as they are "
                 "set. Friction of the glue is left out; it would make deeper lines more even.");
    case BS_LAYOUT_SHORT:
      return N_ ("The pressure at the weakest spot of all glue lines, with the clamps as they are "
                 "set: less than the adhesive asks for. The pressures that data sheets recommend "
                 "are often out of reach of hand clamps.");
    case BS_LAYOUT_CRUSHES:
      return N_ ("The pressure at the weakest spot of all glue lines. It is enough, but under the "
                 "clamps the wood is pressed beyond its strength; thicker cauls, or more clamps "
                 "tightened less, would help.");
    case BS_LAYOUT_NO_CLAMPS:
    case BS_LAYOUT_STOPPED:
    default:
      return N_ (
          "It cannot be told. It takes two laminations or more of known wood that lie beside "
          "one another, and clamps that reach across them.");
    }
}

static const char *
explain_certainty (BsPressModel model)
{
  if (model == BS_PRESS_MODEL_TIMOSHENKO)
    return N_ ("By a faster form of the model that follows while something moves. It errs to the "
               "safe side: by up to 0.06 of the mean pressure at the weakest spot and a fifth at "
               "the greatest.");
  return N_ ("From woods a third softer to half as stiff again across the grain than the "
             "means of the table: softer wood is pressed more evenly. Against plane "
             "elasticity the model itself is within 0.03 of the mean pressure.");
}

static void
add_stiffness (const BsPressPlan *self, BsWorking *why)
{
  double softest = INFINITY, stiffest = 0.0;

  for (guint i = 0; i < self->pieces->len; i++)
    {
      const BsPressPiece *piece = &g_array_index (self->pieces, BsPressPiece, i);

      if (piece->is_caul)
        continue;
      softest = fmin (softest, piece->e_across_mpa);
      stiffest = fmax (stiffest, piece->e_across_mpa);
    }
  bs_working_add (why,
                  N_ ("stiffness across the grain of the softest lamination, as its rings lie"),
                  "E", softest, BS_QUANTITY_PRESSURE, STIFFNESS_SOURCE);
  bs_working_add (why, N_ ("likewise of the stiffest"), "", stiffest, BS_QUANTITY_PRESSURE,
                  STIFFNESS_SOURCE);
}

static void
add_layout (const BsPressPlan *self, const BsStack *stack, const BsLayout *layout, BsWorking *why)
{
  const BsPressLine *weakest = &layout->pressures.lines[layout->pressures.weakest];
  double force = 0.0;

  for (guint i = 0; i < layout->n_clamps; i++)
    force += layout->clamps[i].force;
  bs_working_add (why, N_ ("least pressure that the adhesive asks for"), "",
                  self->problem.least_mpa, BS_QUANTITY_PRESSURE, stack->plan->adhesive.source);
  bs_working_add (why, N_ ("clamps"), "", layout->n_clamps, BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("fewest that the force alone asks for; 0 when all are too few"), "",
                  layout->fewest_by_force, BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("force of all clamps"), "F", force, BS_QUANTITY_FORCE, NULL);
  bs_working_add (why, N_ ("mean pressure of the largest glue line"), "", layout->mean_mpa,
                  BS_QUANTITY_PRESSURE, NULL);
  bs_working_add (why, N_ ("mean pressure with every clamp that reaches at its most"), "",
                  layout->mean_possible_mpa, BS_QUANTITY_PRESSURE, NULL);
  bs_working_add (why, N_ ("weakest glue line, counted from the front"), "i",
                  layout->pressures.weakest - self->first_course + 1, BS_QUANTITY_COUNT, NULL);
  bs_working_add (why, N_ ("its weakest spot, from the left end"), "x", weakest->least_x,
                  BS_QUANTITY_LENGTH, NULL);
  bs_working_add (why, N_ ("greatest pressure of all glue lines"), "", layout->greatest_mpa,
                  BS_QUANTITY_PRESSURE, NULL);
}

static void
add_range (const BsPressPlan *self, const BsLayout *layout, BsWorking *why)
{
  double softer = press_other_wood (self, layout, SOFTER);
  double stiffer = press_other_wood (self, layout, STIFFER);

  why->low = fmin (why->value, fmin (softer, stiffer));
  why->high = fmax (why->value, fmax (softer, stiffer));
}

void
bs_press_plan_explain (const BsPressPlan *self, const BsStack *stack, const BsLayout *layout,
                       gboolean is_found, BsWorking *why)
{
  const char *explanation
      = is_found ? explain_found (layout->status) : explain_set (layout->status);

  bs_working_init (why, N_ ("Weakest pressure"), explanation, "p = k max(0, d) / h",
                   BS_QUANTITY_PRESSURE, explain_certainty (self->problem.stack.model));
  if (layout->n_clamps == 0)
    return;
  why->value = layout->least_mpa;
  if (self->problem.stack.model == BS_PRESS_MODEL_SQUEEZE)
    add_range (self, layout, why);
  add_layout (self, stack, layout, why);
  add_stiffness (self, why);
}
