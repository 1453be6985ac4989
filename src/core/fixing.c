/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/fixing.h"

#include "core/units.h"

#include <math.h>

#define MOST_SLOTS 6

double
bs_fixing_reach (const BsFixing *fixing, double width)
{
  return fixing->line == BS_FIXED_MIDDLE ? width / 2.0 : width;
}

/* The smallest round step that gives no more than MOST_SLOTS. */
static double
find_step (double reach, BsUnitSystem units)
{
  static const double metric[] = { 25.0, 50.0, 100.0, 150.0, 200.0, 250.0, 500.0 };
  static const double inch[] = { 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 24.0 };
  const gboolean is_metric = units == BS_UNIT_SYSTEM_METRIC;
  const double *steps = is_metric ? metric : inch;
  const gsize n = is_metric ? G_N_ELEMENTS (metric) : G_N_ELEMENTS (inch);
  const double unit = is_metric ? 1.0 : BS_MM_PER_INCH;

  for (gsize i = 0; i < n; i++)
    if (reach <= MOST_SLOTS * steps[i] * unit)
      return steps[i] * unit;
  return reach / MOST_SLOTS;
}

GArray *
bs_fixing_slots (const BsStack *stack, const BsMovement *movement)
{
  const BsFixing *fixing = &stack->plan->slab.fixing;
  const double reach = bs_fixing_reach (fixing, movement->width.at_gluing);
  GArray *slots = g_array_new (FALSE, FALSE, sizeof (BsSlot));

  if (stack->n == 0 || isnan (movement->width.year))
    return slots;
  const double step = find_step (reach, stack->plan->units);
  for (guint i = 1; i * step <= reach; i++)
    {
      BsSlot slot
          = bs_movement_slot (stack, i * step, fixing->screw, fixing->play, movement->glued_pct);
      g_array_append_val (slots, slot);
    }
  return slots;
}
