/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/results.h"

#include "core/assembly.h"
#include "core/clamping.h"
#include "core/explain.h"
#include "core/findings.h"
#include "core/flatten.h"
#include "core/mass.h"
#include "core/moisture.h"

BsResults *
bs_evaluate (const BsPlan *plan)
{
  BsResults *self = g_atomic_rc_box_new0 (BsResults);

  self->stack = bs_stack_new (plan);
  bs_moisture_seasons (&plan->slab, &self->emc_low_pct, &self->emc_high_pct);

  bs_flatten (self->stack, &self->flatten);
  self->clamps.positions = g_array_new (FALSE, FALSE, sizeof (double));
  bs_clamping_rule (self->stack, &self->clamps);
  bs_assembly_times (self->stack, (int)self->clamps.positions->len, &self->assembly);
  self->mass_kg = bs_mass_slab (self->stack, self->flatten.thickness,
                                (self->emc_low_pct + self->emc_high_pct) / 2.0);
  self->glue_kg = bs_mass_glue (self->stack);

  self->findings = bs_findings_new (self);
  bs_explain (self);
  return self;
}
