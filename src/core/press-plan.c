/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/press-plan.h"

#include "core/clamping.h"
#include "core/wood-stiffness.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static gboolean
add_lamination (BsPressPlan *self, const BsPlaced *placed, guint course, GError **error)
{
  BsWoodStiffness wood;
  BsPressPiece piece = { .course = course,
                         .start = placed->x,
                         .length = placed->length,
                         .thickness = placed->thickness,
                         .height = (placed->height_left + placed->height_right) / 2.0,
                         .bow = isnan (placed->bow) ? 0.0 : placed->bow };

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

void
bs_press_plan_find_room (const BsPressPlan *self, double *from, double *to)
{
  guint last = g_array_index (self->pieces, BsPressPiece, self->pieces->len - 1).course;
  double ends[2][2] = { { INFINITY, -INFINITY }, { INFINITY, -INFINITY } };

  for (guint i = 0; i < self->pieces->len; i++)
    {
      const BsPressPiece *piece = &g_array_index (self->pieces, BsPressPiece, i);
      double *face = ends[piece->course == last ? 1 : 0];

      if (piece->course != 0 && piece->course != last)
        continue;
      face[0] = fmin (face[0], piece->start);
      face[1] = fmax (face[1], piece->start + piece->length);
    }
  *from = fmax (ends[0][0], ends[1][0]);
  *to = fmin (ends[0][1], ends[1][1]);
}
