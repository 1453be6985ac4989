/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-proposal.h"

static BsPressure *
press_rule (const BsPlan *plan)
{
  g_autoptr (BsPlan) bare = bs_plan_copy (plan);

  g_array_set_size (bare->placed_clamps, 0);
  return bs_pressure_new (bare, BS_PRESS_MODEL_SQUEEZE);
}

BsClampProposal *
bs_clamp_proposal_new (const BsPlan *plan, const BsProgress *progress)
{
  g_autoptr (BsClampProposal) self = g_new0 (BsClampProposal, 1);

  self->found.status = BS_LAYOUT_NO_CLAMPS;
  self->rule = press_rule (plan);
  self->present = bs_pressure_new (plan, BS_PRESS_MODEL_SQUEEZE);
  if (!bs_progress_report (progress, 0.0))
    return NULL;
  if (self->present->state == BS_PRESSURE_NO_STACK)
    return g_steal_pointer (&self);
  if (!bs_layout_find (&self->present->press.problem, progress, &self->found, NULL))
    self->found.status = BS_LAYOUT_NO_CLAMPS;
  bs_press_plan_explain (&self->present->press, self->present->stack, &self->found, TRUE,
                         &self->why);
  return bs_progress_report (progress, 1.0) ? g_steal_pointer (&self) : NULL;
}

void
bs_clamp_proposal_free (BsClampProposal *self)
{
  g_clear_pointer (&self->present, bs_pressure_free);
  g_clear_pointer (&self->rule, bs_pressure_free);
  bs_layout_clear (&self->found);
  g_free (self);
}
