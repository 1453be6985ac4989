/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/press-plan.h"

#include "core/clamping.h"
#include "core/wood-stiffness.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* How far the stiffness across the grain of one wood may well lie from the means that are used: by
 * a third, as single woods of the table do. */
#define SOFTER (2.0 / 3.0)
#define STIFFER (3.0 / 2.0)

#define STIFFNESS_SOURCE N_ ("FPL-GTR-190 (2010), tables 5-1 and 5-2, mean ratios; from memory")

static gboolean
add_lamination (BsPressPlan *self, const BsPlaced *placed, guint course, GError **error)
{
  BsWoodStiffness wood;
  BsPressPiece piece = { .course = course,
                         .start = placed->x,
                         .length = placed->length,
                         .thickness = placed->thickness,
                         .height = (placed->height_left + placed->height_right) / 2.0,
                         .bow = placed->bow };

  if (placed->wood == NULL || isnan (placed->wood->moe_mpa))
    {
      g_set_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                   _ ("How stiff lamination “%s” is cannot be told: its wood has no modulus of "
                      "elasticity. Choose a wood from the table, or type the figure."),
                   placed->lamination->label);
      return FALSE;
    }
  wood = bs_wood_stiffness_typical (placed->wood->moe_mpa, placed->wood->is_hardwood);
  piece.e_along_mpa = wood.e_along;
  bs_wood_stiffness_section (&wood, piece.thickness, piece.height, placed->pith_y, placed->pith_z,
                             &piece.e_across_mpa, &piece.shear_mpa);
  g_array_append_val (self->pieces, piece);
  return TRUE;
}

/* A row of cauls end to end along one face, as long as the slab; the wood of a caul is known by its
 * modulus only and taken for a hardwood. */
static void
add_cauls (BsPressPlan *self, const BsStack *stack, const BsCaulKind *caul, guint course)
{
  BsWoodStiffness wood = bs_wood_stiffness_typical (caul->moe_mpa, TRUE);
  guint n = (guint)ceil (stack->length / caul->length);
  BsPressPiece piece = { .course = course,
                         .length = stack->length / n,
                         .thickness = caul->thickness,
                         .height = caul->height,
                         .e_along_mpa = wood.e_along,
                         .is_caul = TRUE };

  bs_wood_stiffness_section (&wood, caul->thickness, caul->height, NAN, NAN, &piece.e_across_mpa,
                             &piece.shear_mpa);
  for (guint i = 0; i < n; i++)
    {
      piece.start = stack->length / n * i;
      /* Rounding must not let a caul reach over the next one. */
      piece.length = stack->length / n * (i + 1) - piece.start;
      g_array_append_val (self->pieces, piece);
    }
}

static gboolean
add_pieces (BsPressPlan *self, const BsStack *stack, const BsCaulKind *caul, GError **error)
{
  if (caul != NULL)
    add_cauls (self, stack, caul, 0);
  for (guint i = 0; i < stack->n; i++)
    if (!add_lamination (self, &stack->placed[i], i + self->first_course, error))
      return FALSE;
  if (caul != NULL)
    add_cauls (self, stack, caul, stack->n + 1);
  return TRUE;
}

/* Only where every lamination lies does the finished slab have its glue lines; the rest is cut off.
 */
static void
set_span (BsPressStack *self, const BsStack *stack)
{
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];

      self->span_from = fmax (self->span_from, placed->x);
      self->span_to = fmin (self->span_to, placed->x + placed->length);
    }
}

static void
add_kinds (BsPressPlan *self, const BsShop *shop)
{
  for (guint i = 0; i < shop->clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (shop->clamps, i);
      BsLayoutKind own = { .count = (guint)kind->count,
                           .max_force = kind->max_force_n,
                           .reach = kind->reach,
                           .head_width = kind->head_width,
                           .head_height = kind->head_height };

      g_array_append_val (self->kinds, own);
    }
}

/* The weakest wood's strength across the grain; fmin passes over NAN. */
static double
find_strength (const BsStack *stack)
{
  double strength = INFINITY;

  for (guint i = 0; i < stack->n; i++)
    strength = fmin (strength, stack->placed[i].wood->comp_perp_mpa);
  return strength;
}

static void
set_problem (BsPressPlan *self, const BsStack *stack, const BsCaulKind *caul)
{
  double outer = bs_clamping_outer_strength (stack);
  double front = g_array_index (self->pieces, BsPressPiece, 0).height;
  double back = g_array_index (self->pieces, BsPressPiece, self->pieces->len - 1).height;
  BsLayoutProblem *problem = &self->problem;

  problem->stack = bs_press_stack_default ();
  problem->stack.pieces = (const BsPressPiece *)(void *)self->pieces->data;
  problem->stack.n_pieces = self->pieces->len;
  set_span (&problem->stack, stack);
  problem->n_kinds = self->kinds->len;
  problem->kinds = (const BsLayoutKind *)(void *)self->kinds->data;
  problem->reach_needed = stack->width + (caul != NULL ? 2.0 * caul->thickness : 0.0);
  problem->least_mpa = stack->plan->adhesive.min_pressure_mpa;
  problem->most_mpa = find_strength (stack);
  problem->bearing_mpa = caul != NULL || isnan (outer) ? INFINITY : outer;
  problem->bearing_height = fmin (front, back);
}

gboolean
bs_press_plan_init (BsPressPlan *self, const BsStack *stack, GError **error)
{
  const BsCaulKind *caul = stack->n >= 2 ? bs_clamping_caul (stack) : NULL;
  g_auto (BsPressPlan) plan = { .first_course = caul != NULL ? 1 : 0,
                                .pieces = g_array_new (FALSE, FALSE, sizeof (BsPressPiece)),
                                .kinds = g_array_new (FALSE, FALSE, sizeof (BsLayoutKind)) };

  *self = (BsPressPlan){ 0 };
  if (stack->n < 2)
    {
      g_set_error_literal (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                           _ ("There is no glue line to press: at least two laminations are "
                              "needed."));
      return FALSE;
    }
  if (bs_stack_covered_length (stack) <= 0.0)
    {
      g_set_error_literal (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                           _ ("There is no place along the slab where all laminations lie. Line "
                              "them up, or take longer ones."));
      return FALSE;
    }
  if (!add_pieces (&plan, stack, caul, error))
    return FALSE;
  add_kinds (&plan, &stack->plan->shop);
  set_problem (&plan, stack, caul);
  *self = plan;
  plan = (BsPressPlan){ 0 };
  return TRUE;
}

void
bs_press_plan_clear (BsPressPlan *self)
{
  g_clear_pointer (&self->pieces, g_array_unref);
  g_clear_pointer (&self->kinds, g_array_unref);
}

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
explain_status (const BsLayout *layout)
{
  switch (layout->status)
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

void
bs_press_plan_explain (const BsPressPlan *self, const BsStack *stack, const BsLayout *layout,
                       BsWorking *why)
{
  double softer, stiffer;

  bs_working_init (why, N_ ("Weakest glue-line pressure"), explain_status (layout),
                   "p = k max(0, d) / h", BS_QUANTITY_PRESSURE,
                   N_ ("From woods a third softer to half as stiff again across the grain than the "
                       "means of the table: softer wood is pressed more evenly. Against plane "
                       "elasticity the model itself is within 0.03 of the mean pressure."));
  if (layout->n_clamps == 0)
    return;
  why->value = layout->least_mpa;
  softer = press_other_wood (self, layout, SOFTER);
  stiffer = press_other_wood (self, layout, STIFFER);
  why->low = fmin (why->value, fmin (softer, stiffer));
  why->high = fmax (why->value, fmax (softer, stiffer));
  add_layout (self, stack, layout, why);
  add_stiffness (self, why);
}
