/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/results.h"

#include "core/flatten.h"

#include <math.h>

BsResults *
bs_evaluate (const BsPlan *plan)
{
  BsResults *self = g_atomic_rc_box_new0 (BsResults);

  self->stack = bs_stack_new (plan);
  self->findings = g_array_new (FALSE, TRUE, sizeof (BsFinding));
  self->clamps.positions = g_array_new (FALSE, FALSE, sizeof (double));
  bs_flatten (self->stack, &self->flatten);
  return self;
}
