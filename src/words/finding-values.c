/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/finding-values.h"

#include "core/units.h"

/* What the values of each kind are: core/finding.h. */
static const BsQuantity quantities[BS_N_FINDING_KINDS][BS_FINDING_MAX_VALUES] = {
  [BS_FINDING_TOO_FEW_LAMINATIONS] = { BS_QUANTITY_COUNT },
  [BS_FINDING_THIN] = { BS_QUANTITY_LENGTH, BS_QUANTITY_LENGTH },
  [BS_FINDING_NARROW] = { BS_QUANTITY_LENGTH, BS_QUANTITY_LENGTH },
  [BS_FINDING_SHORT] = { BS_QUANTITY_LENGTH, BS_QUANTITY_LENGTH },
  [BS_FINDING_DEFECT_SHOWS] = { BS_QUANTITY_RATIO, BS_QUANTITY_LENGTH, BS_QUANTITY_LENGTH },
  [BS_FINDING_MOISTURE_APART] = { BS_QUANTITY_PERCENT, BS_QUANTITY_PERCENT },
  [BS_FINDING_MOISTURE_UNFIT] = { BS_QUANTITY_PERCENT, BS_QUANTITY_PERCENT, BS_QUANTITY_PERCENT },
  [BS_FINDING_CLAMPS_MISSING] = { BS_QUANTITY_COUNT, BS_QUANTITY_COUNT },
  [BS_FINDING_CLAMPS_WEAK] = { BS_QUANTITY_FORCE, BS_QUANTITY_FORCE },
  [BS_FINDING_CLAMP_REACH] = { BS_QUANTITY_LENGTH, BS_QUANTITY_LENGTH, BS_QUANTITY_COUNT },
  [BS_FINDING_CRUSHING] = { BS_QUANTITY_PRESSURE, BS_QUANTITY_PRESSURE },
  [BS_FINDING_CLAMPS_PLACED] = { BS_QUANTITY_COUNT, BS_QUANTITY_COUNT },
  [BS_FINDING_CLAMP_FORCED] = { BS_QUANTITY_FORCE, BS_QUANTITY_FORCE },
  [BS_FINDING_OPEN_TIME] = { BS_QUANTITY_TIME, BS_QUANTITY_TIME, BS_QUANTITY_COUNT },
  [BS_FINDING_COLD] = { BS_QUANTITY_TEMPERATURE, BS_QUANTITY_TEMPERATURE },
  [BS_FINDING_HEAVY] = { BS_QUANTITY_MASS, BS_QUANTITY_MASS },
  [BS_FINDING_PLANER_NARROW] = { BS_QUANTITY_LENGTH, BS_QUANTITY_LENGTH },
};

static const char *
find_label (const BsStack *stack, int place)
{
  return place >= 0 && (guint)place < stack->n ? stack->placed[place].lamination->label : "";
}

void
bs_finding_values_init (FindingValues *self, const BsFinding *finding, const BsResults *results)
{
  const BsQuantity *quantity = quantities[finding->kind];
  BsUnitSystem units = results->stack->plan->units;

  *self = (FindingValues){
    .first = bs_units_format (finding->values[0], quantity[0], units),
    .second = bs_units_format (finding->values[1], quantity[1], units),
    .third = bs_units_format (finding->values[2], quantity[2], units),
    .label = find_label (results->stack, finding->place),
    .neighbour = find_label (results->stack, finding->neighbour),
    .recommended = bs_units_format (results->clamps.pressure_mpa, BS_QUANTITY_PRESSURE, units),
    .reached = bs_units_format (results->clamps.reached_mpa, BS_QUANTITY_PRESSURE, units),
  };
}

void
bs_finding_values_clear (FindingValues *self)
{
  g_free (self->first);
  g_free (self->second);
  g_free (self->third);
  g_free (self->recommended);
  g_free (self->reached);
}
