/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/clamp-layout.h"
#include "core/plan.h"

/* The plan with these clamps (BsLayoutClamp) placed in it, for tests below the layer of edits. */
static inline BsPlan *
plan_with_clamps (const BsPlan *plan, const GArray *clamps)
{
  BsPlan *copy = bs_plan_copy (plan);

  g_array_set_size (copy->placed_clamps, 0);
  for (guint i = 0; i < clamps->len; i++)
    {
      const BsLayoutClamp *clamp = &g_array_index (clamps, BsLayoutClamp, i);
      const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, clamp->kind);

      bs_plan_place_clamp (copy, kind->id, clamp->x, clamp->force, clamp->is_above);
    }
  return copy;
}
