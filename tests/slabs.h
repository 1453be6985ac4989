/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"

/* Plans of n straight laminations that stand alike, with no allowance, for tests to warp and weigh.
 */
static inline BsPlan *
slab_new (guint n, double length, double thickness, double height)
{
  BsPlan *plan = bs_plan_new ();

  plan->slab.allowance = 0.0;
  for (guint i = 0; i < n; i++)
    {
      char id[16];
      g_snprintf (id, sizeof id, "%u", i + 1);
      BsLamination *lamination = bs_lamination_new (id);
      lamination->length = length;
      lamination->thickness = thickness;
      lamination->height = height;
      g_ptr_array_add (plan->laminations, lamination);
      bs_plan_insert_placement (plan, (int)i, id, BS_ORIENTATION_AS_MARKED, 0.0);
    }
  return plan;
}

/* The lamination at a place, to be changed before the plan is shared. */
static inline BsLamination *
slab_at (BsPlan *plan, guint place)
{
  return g_ptr_array_index (plan->laminations, place);
}
