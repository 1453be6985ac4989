/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/results.h"

#include "core/assembly.h"
#include "core/clamping.h"
#include "core/clamps.h"
#include "core/explain.h"
#include "core/findings.h"
#include "core/flatten.h"
#include "core/mass.h"
#include "core/moisture.h"
#include "core/order-plan.h"

#include <math.h>

/* What the wood does after the glue-up, what it costs and what has to be lifted. */
static void
evaluate_timber (BsResults *self)
{
  const BsStack *stack = self->stack;
  double width = fmin (stack->plan->slab.width, stack->width);
  double thickness = self->flatten.thickness;

  bs_movement_slab (stack, width, thickness, &self->movement);
  bs_cupping_slab (stack, self->emc_low_pct, self->emc_high_pct, &self->cupping);
  self->slots = bs_fixing_slots (stack, &self->movement);
  bs_cost (stack, thickness, self->glue_kg, &self->cost);
  bs_lift_loads (stack, self->mass_kg, (self->emc_low_pct + self->emc_high_pct) / 2.0, self->loads);
}

static void
explain_timber (BsResults *self)
{
  const BsPlan *plan = self->stack->plan;
  const BsLift lift = bs_lift_default ();

  bs_movement_explain_width (&self->movement, self->stack, &self->why_width_movement);
  bs_movement_explain_thickness (&self->movement, &self->why_thickness_movement);
  bs_cupping_explain (&self->cupping, &self->why_cup);
  bs_cost_explain (&self->cost, plan, &self->why_cost);
  bs_cost_explain_glue (&self->cost, plan, &self->why_glue);
  bs_cost_explain_waste (&self->cost, &self->why_waste);
  bs_lift_explain (&self->loads[BS_LOAD_SLAB], &lift, plan->shop.people, &self->why_lifting);
}

BsResults *
bs_evaluate (const BsPlan *plan)
{
  BsResults *self = g_atomic_rc_box_new0 (BsResults);

  self->stack = bs_stack_new (plan);
  bs_moisture_seasons (&plan->slab, &self->emc_low_pct, &self->emc_high_pct);

  bs_flatten (self->stack, &self->flatten);
  self->clamps.positions = g_array_new (FALSE, FALSE, sizeof (double));
  bs_clamping_rule (self->stack, &self->clamps);
  self->set_clamps = bs_clamps_new (self->stack, &self->clamps);
  bs_assembly_times (self->stack, (int)self->set_clamps->len, &self->assembly);
  self->mass_kg = bs_mass_slab (self->stack, self->flatten.thickness,
                                (self->emc_low_pct + self->emc_high_pct) / 2.0);
  self->glue_kg = bs_mass_glue (self->stack);
  self->order = bs_order_present_cost (plan);
  evaluate_timber (self);

  self->findings = bs_findings_new (self);
  bs_explain (self);
  bs_order_cost_explain (&self->order, &self->why_order);
  if (self->stack->n == 0) /* there is no order */
    self->why_order.value = NAN;
  explain_timber (self);
  return self;
}
