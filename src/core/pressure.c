/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/pressure.h"

#include "core/clamping.h"
#include "core/clamps.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Part of the clamps' force that a glue line may miss by rounding. */
#define BALANCED 1e-6

static GArray *
list_clamps (const BsStack *stack)
{
  BsClampRule rule;
  GArray *clamps;

  rule.positions = g_array_new (FALSE, FALSE, sizeof (double));
  bs_clamping_rule (stack, &rule);
  clamps = bs_clamps_new (stack, &rule);
  g_array_unref (rule.positions);
  return clamps;
}

static gboolean
do_all_reach (const BsPressPlan *press, const GArray *clamps)
{
  for (guint i = 0; i < clamps->len; i++)
    {
      guint kind = g_array_index (clamps, BsLayoutClamp, i).kind;

      if (g_array_index (press->kinds, BsLayoutKind, kind).reach < press->problem.reach_needed)
        return FALSE;
    }
  return TRUE;
}

static void
measure_lines (BsPressure *self)
{
  const BsLayoutProblem *problem = &self->press.problem;

  for (guint i = 0; i < bs_pressure_get_n_lines (self); i++)
    {
      const BsPressLine *line = bs_pressure_get_line (self, i);

      self->below_length += bs_press_line_length_below (line, problem->least_mpa);
      self->open_length += line->open_length;
      self->crushed_length += bs_press_line_length_above (line, problem->most_mpa);
    }
}

/* The heads bear on the outer laminations themselves unless there are cauls. */
static void
measure_heads (BsPressure *self)
{
  const BsLayoutProblem *problem = &self->press.problem;

  if (isinf (problem->bearing_mpa))
    return;
  self->head_stress_mpa = 0.0;
  for (guint i = 0; i < self->layout.n_clamps; i++)
    {
      const BsLayoutClamp *clamp = &self->layout.clamps[i];
      const BsLayoutKind *kind = &problem->kinds[clamp->kind];
      double area = kind->head_width * fmin (kind->head_height, problem->bearing_height);

      self->head_stress_mpa = fmax (self->head_stress_mpa, clamp->force / area);
    }
  if (self->head_stress_mpa > problem->bearing_mpa && self->layout.status == BS_LAYOUT_REACHED)
    self->layout.status = BS_LAYOUT_CRUSHES;
}

static BsPressureState
press_clamps (BsPressure *self, const GArray *clamps)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPressing) pressing = NULL;

  if (clamps->len == 0)
    return BS_PRESSURE_NO_CLAMPS;
  if (!do_all_reach (&self->press, clamps))
    return BS_PRESSURE_TOO_SHORT;
  pressing = bs_pressing_new (&self->press.problem.stack, &error);
  if (pressing == NULL
      || !bs_layout_press (&self->press.problem, pressing,
                           (const BsLayoutClamp *)(void *)clamps->data, clamps->len, &self->layout,
                           &error))
    {
      self->reason = g_strdup (error->message);
      return pressing == NULL ? BS_PRESSURE_NO_STACK : BS_PRESSURE_OFF_WORK;
    }
  gboolean is_solved = self->layout.pressures.status == BS_PRESS_STATUS_SOLVED;
  if (is_solved && self->layout.pressures.imbalance < BALANCED)
    return BS_PRESSURE_OF_SET_CLAMPS;
  bs_layout_clear (&self->layout);
  self->layout.status = BS_LAYOUT_NO_CLAMPS;
  if (!is_solved)
    return BS_PRESSURE_NOT_SETTLED;
  self->reason
      = g_strdup (_ ("A clamp presses where a lamination is missing, so that the pile would tip. "
                     "Move it to where all of them lie, or bring their ends level."));
  return BS_PRESSURE_OFF_WORK;
}

static void
press_stack (BsPressure *self, BsPressModel model)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) clamps = NULL;

  if (!bs_press_plan_init (&self->press, self->stack, &error))
    {
      self->state = BS_PRESSURE_NO_STACK;
      self->reason = g_strdup (error->message);
      return;
    }
  self->press.problem.stack.model = model;
  if (model == BS_PRESS_MODEL_TIMOSHENKO && self->stack->n >= BS_PRESSURE_MANY_LAMINATIONS)
    self->press.problem.stack.step = BS_PRESSURE_COARSE_STEP;
  clamps = list_clamps (self->stack);
  self->state = press_clamps (self, clamps);
  if (self->state != BS_PRESSURE_OF_SET_CLAMPS)
    return;
  measure_lines (self);
  measure_heads (self);
}

BsPressure *
bs_pressure_new (const BsPlan *plan, BsPressModel model)
{
  BsPressure *self = g_new0 (BsPressure, 1);

  self->stack = bs_stack_new (plan);
  self->layout.status = BS_LAYOUT_NO_CLAMPS;
  self->head_stress_mpa = NAN;
  press_stack (self, model);
  self->press.problem.stack.model = model; /* without a stack too */
  return self;
}

BsPressure *
bs_pressure_new_quick (const BsPlan *plan)
{
  return bs_pressure_new (plan, plan->order->len < BS_PRESSURE_MANY_LAMINATIONS
                                    ? BS_PRESS_MODEL_SQUEEZE
                                    : BS_PRESS_MODEL_TIMOSHENKO);
}

void
bs_pressure_explain (BsPressure *self)
{
  bs_press_plan_explain (&self->press, self->stack, &self->layout, FALSE, &self->why);
}

void
bs_pressure_free (BsPressure *self)
{
  bs_layout_clear (&self->layout);
  bs_press_plan_clear (&self->press);
  g_free (self->reason);
  bs_stack_free (self->stack);
  g_free (self);
}

guint
bs_pressure_get_n_lines (const BsPressure *self)
{
  return self->state == BS_PRESSURE_OF_SET_CLAMPS ? self->stack->n - 1 : 0;
}

const BsPressLine *
bs_pressure_get_line (const BsPressure *self, guint line)
{
  g_return_val_if_fail (line < bs_pressure_get_n_lines (self), NULL);

  return &self->layout.pressures.lines[line + self->press.first_course];
}
