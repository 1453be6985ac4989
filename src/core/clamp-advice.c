/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-advice.h"

#include <math.h>

/* What counts as help: so many mm less that are pressed too little, or so much more (part of what
 * is wanted) at the weakest spot. */
#define HELPS_LENGTH 1.0
#define HELPS_PRESSURE 0.002

/* The strongest kind of which one is left over and that reaches and can press so much; -1: none. */
static int
find_spare (const BsPressure *pressure, double force)
{
  const BsLayoutProblem *problem = &pressure->press.problem;
  int best = -1;

  for (guint i = 0; i < problem->n_kinds; i++)
    {
      const BsLayoutKind *kind = &problem->kinds[i];
      guint used = 0;

      for (guint j = 0; j < pressure->layout.n_clamps; j++)
        used += pressure->layout.clamps[j].kind == i;
      if (used >= kind->count || kind->reach < problem->reach_needed || kind->max_force < force)
        continue;
      if (best < 0 || kind->max_force > problem->kinds[best].max_force)
        best = (int)i;
    }
  return best;
}

/* The kind of clamp that could make a change; -1: none of those owned. */
static int
find_kind (const BsPressure *pressure, const BsClampChange *change)
{
  guint kind;

  if (change->kind == BS_CLAMP_CHANGE_ADD)
    return find_spare (pressure, change->force);
  kind = pressure->layout.clamps[change->clamp].kind;
  return change->force <= pressure->press.problem.kinds[kind].max_force ? (int)kind : -1;
}

/* Its heads lie on the work and touch no other clamp's. */
static gboolean
has_room (const BsPressure *pressure, const BsClampChange *change, guint kind)
{
  const BsLayoutProblem *problem = &pressure->press.problem;
  double half = problem->kinds[kind].head_width / 2.0, from, to;

  bs_press_plan_find_room (&pressure->press, &from, &to);
  for (guint i = 0; i < pressure->layout.n_clamps; i++)
    {
      const BsLayoutClamp *other = &pressure->layout.clamps[i];

      if (change->kind != BS_CLAMP_CHANGE_ADD && i == change->clamp)
        continue;
      if (fabs (other->x - change->x) < half + problem->kinds[other->kind].head_width / 2.0)
        return FALSE;
    }
  return change->x - half >= from && change->x + half <= to;
}

static gboolean
does_help (const BsPressure *pressure, const BsClampChange *change)
{
  double wanted = pressure->press.problem.least_mpa;
  double shorter = pressure->below_length - change->less_than_wanted;

  return shorter > HELPS_LENGTH
         || (shorter > -HELPS_LENGTH
             && change->least_mpa > pressure->layout.least_mpa + HELPS_PRESSURE * wanted);
}

static void
choose_trials (BsClampAdvice *self, const GArray *changes)
{
  for (guint i = 0; i < changes->len; i++)
    {
      const BsClampChange *change = &g_array_index (changes, BsClampChange, i);
      int kind = find_kind (self->pressure, change);
      BsClampTrial trial = { *change, (guint)kind };

      if (kind >= 0 && has_room (self->pressure, change, (guint)kind)
          && does_help (self->pressure, change))
        g_array_append_val (self->trials, trial);
    }
}

/* By the faster form and on coarser nodes: at each of a dozen steps other spots are open, and each
 * takes several factorings. */
static double
find_closing_force (const BsPressure *pressure, const BsPressClamp *clamps)
{
  BsPressStack stack = pressure->press.problem.stack;
  g_autoptr (BsPressing) pressing = NULL;

  stack.model = BS_PRESS_MODEL_TIMOSHENKO;
  stack.step = BS_PRESSURE_COARSE_STEP;
  pressing = bs_pressing_new (&stack, NULL);
  return bs_pressing_closing_force (pressing, clamps, pressure->layout.n_clamps,
                                    BS_CLAMP_ADVICE_GAP);
}

/* FALSE when asked to stop. */
static gboolean
find_trials (BsClampAdvice *self, const BsPressClamp *clamps, const BsProgress *progress)
{
  const BsPressure *pressure = self->pressure;
  const BsLayoutProblem *problem = &pressure->press.problem;
  g_autoptr (BsPressing) pressing = NULL;
  g_autoptr (GArray) changes = NULL;

  if (pressure->layout.n_clamps < 2)
    return TRUE;
  pressing = bs_pressing_new (&problem->stack, NULL);
  changes = bs_clamp_changes (pressing, clamps, pressure->layout.n_clamps, problem->least_mpa,
                              progress);
  if (changes != NULL)
    choose_trials (self, changes);
  return changes != NULL;
}

static gboolean
work_out (BsClampAdvice *self, const BsProgress *progress)
{
  const BsPressure *pressure = self->pressure;
  g_autofree BsPressClamp *clamps
      = bs_layout_press_clamps (&pressure->layout, &pressure->press.problem);

  if (!find_trials (self, clamps, progress))
    return FALSE;
  self->closing_force = find_closing_force (pressure, clamps);
  return TRUE;
}

BsClampAdvice *
bs_clamp_advice_new (const BsPlan *plan, const BsProgress *progress)
{
  g_autoptr (BsClampAdvice) self = g_new0 (BsClampAdvice, 1);

  self->trials = g_array_new (FALSE, FALSE, sizeof (BsClampTrial));
  self->closing_force = NAN;
  self->pressure = bs_pressure_new_quick (plan);
  if (self->pressure->state == BS_PRESSURE_OF_SET_CLAMPS && !work_out (self, progress))
    return NULL;
  return g_steal_pointer (&self);
}

void
bs_clamp_advice_free (BsClampAdvice *self)
{
  g_clear_pointer (&self->pressure, bs_pressure_free);
  g_array_unref (self->trials);
  g_free (self);
}

GArray *
bs_clamp_advice_try (const BsClampAdvice *self, const BsClampTrial *trial)
{
  const BsLayout *layout = &self->pressure->layout;
  const BsClampChange *change = &trial->change;
  GArray *clamps = g_array_new (FALSE, FALSE, sizeof (BsLayoutClamp));

  g_array_append_vals (clamps, layout->clamps, layout->n_clamps);
  if (change->kind == BS_CLAMP_CHANGE_ADD)
    {
      /* On the other side than the clamp before it. */
      guint before = change->clamp > 0 ? change->clamp - 1 : 0;
      BsLayoutClamp more = { .kind = trial->kind,
                             .x = change->x,
                             .force = change->force,
                             .is_above = !layout->clamps[before].is_above };

      g_array_insert_val (clamps, change->clamp, more);
      return clamps;
    }
  g_array_index (clamps, BsLayoutClamp, change->clamp).x = change->x;
  g_array_index (clamps, BsLayoutClamp, change->clamp).force = change->force;
  return clamps;
}
