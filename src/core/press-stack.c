/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/press-stack.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Least distance of nodes, mm: far below the least that tells anything new. */
#define LEAST_STEP 1.0

G_DEFINE_QUARK (bs - press - error - quark, bs_press_error)

BsPressStack
bs_press_stack_default (void)
{
  return (BsPressStack){
    .model = BS_PRESS_MODEL_SQUEEZE,
    .step = 10.0,
    .span_from = -INFINITY,
    .span_to = INFINITY,
  };
}

double
bs_press_piece_straightening_force (const BsPressPiece *self)
{
  double inertia = self->height * pow (self->thickness, 3.0) / 12.0;

  return 384.0 * self->e_along_mpa * inertia * fabs (self->bow) / (5.0 * pow (self->length, 3.0));
}

static gboolean
is_positive (double value)
{
  return isfinite (value) && value > 0.0;
}

static gboolean
check_sizes (const BsPressPiece *piece, guint place, double step, GError **error)
{
  if (!is_positive (piece->thickness) || !is_positive (piece->height)
      || !is_positive (piece->e_along_mpa) || !is_positive (piece->e_across_mpa)
      || !is_positive (piece->shear_mpa) || !isfinite (piece->start) || !isfinite (piece->bow))
    {
      g_set_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                   _ ("Piece %u of the stack cannot be pressed: its sizes and stiffness must be "
                      "numbers above zero."),
                   place + 1);
      return FALSE;
    }
  if (!is_positive (piece->length) || piece->length < step)
    {
      g_set_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                   _ ("Piece %u of the stack is %.1f mm long; the least that can be worked out is "
                      "%.1f mm. Leave it out or make it longer."),
                   place + 1, piece->length, step);
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_place (const BsPressPiece *before, const BsPressPiece *piece, guint place, GError **error)
{
  if (piece->course != before->course && piece->course != before->course + 1)
    {
      g_set_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                   _ ("Piece %u lies in course %u, but the one before it lies in course %u: no "
                      "course may be empty, and they go from front to back."),
                   place + 1, piece->course + 1, before->course + 1);
      return FALSE;
    }
  if (piece->course == before->course && piece->start < before->start + before->length)
    {
      g_set_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                   _ ("Piece %u begins at %.1f mm, but the one to its left in the same course ends "
                      "at %.1f mm: they overlap."),
                   place + 1, piece->start, before->start + before->length);
      return FALSE;
    }
  return TRUE;
}

gboolean
bs_press_stack_check (const BsPressStack *self, GError **error)
{
  if (!(self->step >= LEAST_STEP) || !(self->span_from < self->span_to))
    {
      g_set_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                   _ ("The pressures are wanted every %.1f mm from %.1f to %.1f mm; the distance "
                      "must be 1 mm or more and the end must lie behind the beginning."),
                   self->step, self->span_from, self->span_to);
      return FALSE;
    }
  if (self->n_pieces < 2 || self->pieces[0].course != 0
      || self->pieces[self->n_pieces - 1].course == 0)
    {
      g_set_error_literal (error, BS_PRESS_ERROR, BS_PRESS_ERROR_STACK,
                           _ ("There is no glue line to press: at least two laminations are "
                              "needed."));
      return FALSE;
    }
  for (guint i = 0; i < self->n_pieces; i++)
    if (!check_sizes (&self->pieces[i], i, self->step, error)
        || (i > 0 && !check_place (&self->pieces[i - 1], &self->pieces[i], i, error)))
      return FALSE;
  return TRUE;
}

gboolean
bs_press_clamp_check (const BsPressClamp *self, GError **error)
{
  if (isfinite (self->x) && isfinite (self->force) && self->force >= 0.0
      && is_positive (self->head))
    return TRUE;
  g_set_error (error, BS_PRESS_ERROR, BS_PRESS_ERROR_CLAMP,
               _ ("A clamp at %.1f mm with %.0f N and a head of %.1f mm cannot be: it needs a "
                  "place, a force of zero or more and a head above zero."),
               self->x, self->force, self->head);
  return FALSE;
}
