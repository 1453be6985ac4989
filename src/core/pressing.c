/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/press-contacts.h"
#include "core/press-equations.h"
#include "core/press-line.h"
#include "core/press-stack.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Step of the mesh that guesses which spots open, in steps of the real one. */
#define COARSER 2.0

/* How far the search for the closing force tightens all clamps, and how finely it ends. Nobody
 * tightens a clamp sixteen times as hard. */
#define MOST_TIGHTENED 16.0
#define FACTOR_TOLERANCE 1e-3

struct BsPressing
{
  BsPressStack stack; /* owns its pieces */
  BsPressMesh *mesh;
  BsPressContacts contacts;
  gboolean has_set; /* the contacts begin with the set of an earlier solve */
};

BsPressing *
bs_pressing_new (const BsPressStack *stack, GError **error)
{
  BsPressing *self;

  if (!bs_press_stack_check (stack, error))
    return NULL;
  self = g_new0 (BsPressing, 1);
  self->stack = *stack;
  self->stack.pieces = g_memdup2 (stack->pieces, sizeof (BsPressPiece) * stack->n_pieces);
  self->mesh = bs_press_mesh_new (stack);
  bs_press_contacts_init (&self->contacts, self->mesh);
  return self;
}

void
bs_pressing_free (BsPressing *self)
{
  bs_press_contacts_clear (&self->contacts);
  bs_press_mesh_free (self->mesh);
  g_free ((gpointer)self->stack.pieces);
  g_free (self);
}

/* The outer face that runs without a break through x, as far as it goes. */
static gboolean
find_face (const BsPressing *self, guint course, double x, double *from, double *to)
{
  const BsPressMesh *mesh = self->mesh;
  gboolean is_begun = FALSE;

  for (guint i = 0; i < mesh->n_beams; i++)
    {
      const BsPressBeam *beam = &mesh->beams[i];

      if (self->stack.pieces[i].course != course)
        continue;
      if (!is_begun || mesh->stations[beam->first] > *to)
        {
          if (is_begun && *to > x)
            break;
          *from = mesh->stations[beam->first];
          is_begun = TRUE;
        }
      *to = mesh->stations[beam->last];
    }
  return x > *from && x < *to;
}

/* Adds a clamp's two heads to the loads. Both press on the same length, so that their forces cannot
 * turn the stack. */
static gboolean
add_clamp (const BsPressing *self, const BsPressClamp *clamp, double *loads)
{
  guint last = self->mesh->n_courses - 1;
  double front_from = 0.0, front_to = 0.0, back_from = 0.0, back_to = 0.0;
  double half;

  if (!find_face (self, 0, clamp->x, &front_from, &front_to)
      || !find_face (self, last, clamp->x, &back_from, &back_to))
    return FALSE;
  half = fmin (clamp->head / 2.0,
               fmin (clamp->x - fmax (front_from, back_from), fmin (front_to, back_to) - clamp->x));
  for (guint i = 0; i < self->stack.n_pieces; i++)
    {
      guint course = self->stack.pieces[i].course;

      if (course == 0 || course == last)
        bs_press_equations_push_face (loads, self->mesh, i, course == last, clamp->x - half,
                                      clamp->x + half, clamp->force / (2.0 * half));
    }
  return TRUE;
}

/* The loads of all clamps; NULL with an error for one that cannot be. */
static double *
make_loads (const BsPressing *self, const BsPressClamp *clamps, guint n_clamps, GError **error)
{
  g_autofree double *loads = g_new0 (double, self->mesh->n_unknowns);

  for (guint i = 0; i < n_clamps; i++)
    {
      if (!bs_press_clamp_check (&clamps[i], error))
        return NULL;
      if (add_clamp (self, &clamps[i], loads))
        continue;
      g_set_error (
          error, BS_PRESS_ERROR, BS_PRESS_ERROR_CLAMP,
          _ ("The clamp at %.1f mm does not bear on both outer faces. Move it to where both "
             "reach."),
          clamps[i].x);
      return NULL;
    }
  return g_steal_pointer (&loads);
}

/* The set of closed spots of a coarser mesh, at the finer one's spots. Both have the same joints.
 */
static void
refine_set (const BsPressing *coarse, const BsPressing *self, gboolean *is_closed)
{
  for (guint i = 0; i < self->mesh->segments->len; i++)
    {
      const BsPressSegment *to = &g_array_index (self->mesh->segments, BsPressSegment, i);
      const BsPressSegment *from = &g_array_index (coarse->mesh->segments, BsPressSegment, i);
      const double *x = coarse->mesh->stations + from->station;
      guint near = 0;

      for (guint j = 0; j < to->n; j++)
        {
          double place = self->mesh->stations[to->station + j];

          while (near + 1 < from->n && x[near + 1] - place <= place - x[near])
            near++;
          is_closed[to->first + j] = coarse->contacts.is_closed[from->first + near];
        }
    }
}

/* Which spots will be open, by the plainer model on twice the step: for a twentieth of the work of
 * one factoring it mostly saves two or three. */
static void
guess_set (BsPressing *self, const BsPressClamp *clamps, guint n_clamps)
{
  BsPressStack stack = self->stack;
  g_autoptr (BsPressing) coarse = NULL;
  g_autofree double *loads = NULL;
  g_autofree gboolean *is_closed = g_new (gboolean, self->contacts.n);
  guint n_solves;

  self->has_set = TRUE;
  stack.model = BS_PRESS_MODEL_TIMOSHENKO;
  stack.step *= COARSER;
  coarse = bs_pressing_new (&stack, NULL);
  if (coarse == NULL || coarse->mesh->segments->len != self->mesh->segments->len)
    return;
  loads = make_loads (coarse, clamps, n_clamps, NULL);
  if (loads == NULL || !bs_press_contacts_settle (&coarse->contacts, loads, &n_solves))
    return;
  refine_set (coarse, self, is_closed);
  bs_press_contacts_set_closed (&self->contacts, is_closed);
}

static double
find_imbalance (const BsPressResult *result, const BsPressClamp *clamps, guint n_clamps)
{
  double force = 0.0, worst = 0.0;

  for (guint i = 0; i < n_clamps; i++)
    force += clamps[i].force;
  for (guint i = 0; force > 0.0 && i < result->n_lines; i++)
    worst = fmax (worst, fabs (result->lines[i].force / force - 1.0));
  return worst;
}

gboolean
bs_pressing_solve (BsPressing *self, const BsPressClamp *clamps, guint n_clamps,
                   BsPressResult *result, GError **error)
{
  g_autofree double *loads = make_loads (self, clamps, n_clamps, error);
  gboolean has_settled;

  *result = (BsPressResult){ 0 };
  if (loads == NULL)
    return FALSE;
  if (!self->has_set && self->stack.model == BS_PRESS_MODEL_SQUEEZE)
    guess_set (self, clamps, n_clamps);
  has_settled = bs_press_contacts_settle (&self->contacts, loads, &result->n_solves);
  result->status = has_settled ? BS_PRESS_STATUS_SOLVED : BS_PRESS_STATUS_NOT_SETTLED;
  bs_press_lines_fill (result, &self->stack, self->mesh, self->contacts.forces,
                       self->contacts.overlaps);
  result->imbalance = find_imbalance (result, clamps, n_clamps);
  return TRUE;
}

guint
bs_pressing_n_points (const BsPressing *self)
{
  return self->contacts.n;
}

gboolean
bs_pressing_glued_response (BsPressing *self, const BsPressClamp *clamp, double *pressure_mpa)
{
  g_autofree double *loads = make_loads (self, clamp, clamp != NULL ? 1 : 0, NULL);

  if (loads == NULL || !bs_press_contacts_glue (&self->contacts, loads, clamp == NULL))
    return FALSE;
  for (guint i = 0; i < self->mesh->segments->len; i++)
    {
      const BsPressSegment *segment = &g_array_index (self->mesh->segments, BsPressSegment, i);

      for (guint c = segment->first; c < segment->first + segment->n; c++)
        pressure_mpa[c]
            = self->contacts.new_forces[c] / (self->contacts.contacts[c].length * segment->height);
    }
  return TRUE;
}

/* The widest gap that is left anywhere when all clamps are eased or tightened by a factor. */
static double
widest_gap (BsPressing *self, const BsPressClamp *clamps, guint n_clamps, double factor)
{
  g_autofree BsPressClamp *scaled = g_memdup2 (clamps, sizeof (BsPressClamp) * n_clamps);
  g_auto (BsPressResult) result = { 0 };
  double widest = 0.0;

  for (guint i = 0; i < n_clamps; i++)
    scaled[i].force *= factor;
  if (!bs_pressing_solve (self, scaled, n_clamps, &result, NULL)
      || result.status != BS_PRESS_STATUS_SOLVED)
    return NAN;
  for (guint i = 0; i < result.n_lines; i++)
    widest = fmax (widest, result.lines[i].widest_opening);
  return widest;
}

double
bs_pressing_closing_force (BsPressing *self, const BsPressClamp *clamps, guint n_clamps, double gap)
{
  double low = 0.0, high = 1.0, force = 0.0;

  if (widest_gap (self, clamps, n_clamps, 0.0) <= gap)
    return 0.0;
  for (guint i = 0; i < n_clamps; i++)
    force += clamps[i].force;
  for (; !(widest_gap (self, clamps, n_clamps, high) <= gap); high *= 2.0)
    if (high >= MOST_TIGHTENED)
      return INFINITY;
  while (high - low > FACTOR_TOLERANCE)
    {
      double middle = (low + high) / 2.0;

      if (widest_gap (self, clamps, n_clamps, middle) <= gap)
        high = middle;
      else
        low = middle;
    }
  return high * force;
}
