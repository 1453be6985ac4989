/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/units-private.h"

#define FOOT BS_MM_PER_FOOT
#define FT2 (FOOT * FOOT * 1e-6) /* m2 */

/* Precision is what the shop can measure and no more: 0.1 mm, 1/32 in, three figures of a force. */
static const BsUnitScale scales[][2] = {
  [BS_QUANTITY_LENGTH] = { { "mm", 1.0, 0.0, 0, 1 }, { "in", BS_MM_PER_INCH, 0.0, 0, 3 } },
  [BS_QUANTITY_FINE_LENGTH] = { { "mm", 1.0, 0.0, 0, 2 }, { "in", BS_MM_PER_INCH, 0.0, 0, 3 } },
  [BS_QUANTITY_AREA] = { { "m²", 1e6, 0.0, 3, 4 }, { "ft²", FOOT *FOOT, 0.0, 3, 3 } },
  [BS_QUANTITY_VOLUME]
  = { { "m³", 1e9, 0.0, 3, 5 }, { "bd ft", BS_MM3_PER_BOARD_FOOT, 0.0, 3, 2 } },
  [BS_QUANTITY_FORCE] = { { "N", 1.0, 0.0, 0, 0 }, { "lbf", BS_N_PER_POUND_FORCE, 0.0, 0, 0 } },
  [BS_QUANTITY_LINE_FORCE]
  = { { "N/mm", 1.0, 0.0, 3, 1 }, { "lbf/in", BS_N_PER_POUND_FORCE / BS_MM_PER_INCH, 0.0, 0, 0 } },
  [BS_QUANTITY_PRESSURE] = { { "MPa", 1.0, 0.0, 3, 2 }, { "psi", BS_MPA_PER_PSI, 0.0, 3, 1 } },
  [BS_QUANTITY_TORQUE]
  = { { "N·m", 1e3, 0.0, 3, 1 }, { "lbf·ft", BS_N_PER_POUND_FORCE *FOOT, 0.0, 3, 1 } },
  [BS_QUANTITY_TIME] = { { "s", 1.0, 0.0, 0, 0 }, { "s", 1.0, 0.0, 0, 0 } },
  [BS_QUANTITY_MASS] = { { "kg", 1.0, 0.0, 3, 2 }, { "lb", BS_KG_PER_POUND, 0.0, 3, 2 } },
  [BS_QUANTITY_DENSITY]
  = { { "kg/m³", 1.0, 0.0, 0, 0 }, { "lb/ft³", BS_KG_PER_POUND / (FT2 * FOOT * 1e-3), 0.0, 3, 1 } },
  [BS_QUANTITY_SPREAD]
  = { { "g/m²", 1.0, 0.0, 0, 0 }, { "lb/1000 ft²", BS_KG_PER_POUND / FT2, 0.0, 3, 1 } },
  [BS_QUANTITY_SPREAD_TIME] = { { "s/m²", 1.0, 0.0, 0, 0 }, { "s/ft²", 1.0 / FT2, 0.0, 3, 1 } },
  [BS_QUANTITY_TEMPERATURE] = { { "°C", 1.0, 0.0, 0, 1 }, { "°F", 5.0 / 9.0, -160.0 / 9.0, 0, 1 } },
  [BS_QUANTITY_PERCENT] = { { "%", 1.0, 0.0, 0, 1 }, { "%", 1.0, 0.0, 0, 1 } },
  [BS_QUANTITY_COUNT] = { { "", 1.0, 0.0, 0, 0 }, { "", 1.0, 0.0, 0, 0 } },
  [BS_QUANTITY_RATIO] = { { "", 1.0, 0.0, 3, 6 }, { "", 1.0, 0.0, 3, 6 } },
  /* Minor units as they are; core/money.h knows currencies. */
  [BS_QUANTITY_MONEY] = { { "", 1.0, 0.0, 0, 0 }, { "", 1.0, 0.0, 0, 0 } },
};

const BsUnitScale *
bs_units_get_scale (BsQuantity quantity, BsUnitSystem system)
{
  g_assert (quantity < G_N_ELEMENTS (scales));
  return &scales[quantity][system];
}

const BsUnitName bs_unit_names[] = {
  { BS_QUANTITY_LENGTH, "mm", 1.0, 0.0 },
  { BS_QUANTITY_LENGTH, "cm", 10.0, 0.0 },
  { BS_QUANTITY_LENGTH, "m", 1e3, 0.0 },
  { BS_QUANTITY_LENGTH, "in", BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_LENGTH, "inch", BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_LENGTH, "inches", BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_LENGTH, "\"", BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_LENGTH, "''", BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_LENGTH, "ft", FOOT, 0.0 },
  { BS_QUANTITY_LENGTH, "foot", FOOT, 0.0 },
  { BS_QUANTITY_LENGTH, "feet", FOOT, 0.0 },
  { BS_QUANTITY_LENGTH, "'", FOOT, 0.0 },
  { BS_QUANTITY_AREA, "mm2", 1.0, 0.0 },
  { BS_QUANTITY_AREA, "cm2", 1e2, 0.0 },
  { BS_QUANTITY_AREA, "m2", 1e6, 0.0 },
  { BS_QUANTITY_AREA, "in2", BS_MM_PER_INCH *BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_AREA, "sqin", BS_MM_PER_INCH *BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_AREA, "ft2", FOOT *FOOT, 0.0 },
  { BS_QUANTITY_AREA, "sqft", FOOT *FOOT, 0.0 },
  { BS_QUANTITY_VOLUME, "m3", 1e9, 0.0 },
  { BS_QUANTITY_VOLUME, "dm3", 1e6, 0.0 },
  { BS_QUANTITY_VOLUME, "bf", BS_MM3_PER_BOARD_FOOT, 0.0 },
  { BS_QUANTITY_VOLUME, "bdft", BS_MM3_PER_BOARD_FOOT, 0.0 },
  { BS_QUANTITY_VOLUME, "boardfeet", BS_MM3_PER_BOARD_FOOT, 0.0 },
  { BS_QUANTITY_VOLUME, "ft3", FOOT *FOOT *FOOT, 0.0 },
  { BS_QUANTITY_FORCE, "n", 1.0, 0.0 },
  { BS_QUANTITY_FORCE, "kn", 1e3, 0.0 },
  { BS_QUANTITY_FORCE, "kgf", 9.80665, 0.0 },
  { BS_QUANTITY_FORCE, "lbf", BS_N_PER_POUND_FORCE, 0.0 },
  { BS_QUANTITY_FORCE, "lb", BS_N_PER_POUND_FORCE, 0.0 },
  { BS_QUANTITY_FORCE, "lbs", BS_N_PER_POUND_FORCE, 0.0 },
  { BS_QUANTITY_LINE_FORCE, "n/mm", 1.0, 0.0 },
  { BS_QUANTITY_LINE_FORCE, "kn/m", 1.0, 0.0 },
  { BS_QUANTITY_LINE_FORCE, "lbf/in", BS_N_PER_POUND_FORCE / BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_PRESSURE, "mpa", 1.0, 0.0 },
  { BS_QUANTITY_PRESSURE, "n/mm2", 1.0, 0.0 },
  { BS_QUANTITY_PRESSURE, "kpa", 1e-3, 0.0 },
  { BS_QUANTITY_PRESSURE, "gpa", 1e3, 0.0 },
  { BS_QUANTITY_PRESSURE, "bar", 0.1, 0.0 },
  { BS_QUANTITY_PRESSURE, "psi", BS_MPA_PER_PSI, 0.0 },
  { BS_QUANTITY_PRESSURE, "lbf/in2", BS_MPA_PER_PSI, 0.0 },
  { BS_QUANTITY_TORQUE, "nm", 1e3, 0.0 },
  { BS_QUANTITY_TORQUE, "nmm", 1.0, 0.0 },
  { BS_QUANTITY_TORQUE, "lbfft", BS_N_PER_POUND_FORCE *FOOT, 0.0 },
  { BS_QUANTITY_TORQUE, "lbfin", BS_N_PER_POUND_FORCE *BS_MM_PER_INCH, 0.0 },
  { BS_QUANTITY_TIME, "s", 1.0, 0.0 },
  { BS_QUANTITY_TIME, "sec", 1.0, 0.0 },
  { BS_QUANTITY_TIME, "min", 60.0, 0.0 },
  { BS_QUANTITY_TIME, "h", 3600.0, 0.0 },
  { BS_QUANTITY_TIME, "hr", 3600.0, 0.0 },
  { BS_QUANTITY_TIME, "d", 86400.0, 0.0 },
  { BS_QUANTITY_MASS, "kg", 1.0, 0.0 },
  { BS_QUANTITY_MASS, "g", 1e-3, 0.0 },
  { BS_QUANTITY_MASS, "lb", BS_KG_PER_POUND, 0.0 },
  { BS_QUANTITY_MASS, "lbs", BS_KG_PER_POUND, 0.0 },
  { BS_QUANTITY_DENSITY, "kg/m3", 1.0, 0.0 },
  { BS_QUANTITY_DENSITY, "g/cm3", 1e3, 0.0 },
  { BS_QUANTITY_DENSITY, "lb/ft3", BS_KG_PER_POUND / (FT2 * FOOT * 1e-3), 0.0 },
  { BS_QUANTITY_SPREAD, "g/m2", 1.0, 0.0 },
  { BS_QUANTITY_SPREAD, "lb/1000ft2", BS_KG_PER_POUND / FT2, 0.0 },
  { BS_QUANTITY_SPREAD_TIME, "s/m2", 1.0, 0.0 },
  { BS_QUANTITY_SPREAD_TIME, "min/m2", 60.0, 0.0 },
  { BS_QUANTITY_SPREAD_TIME, "s/ft2", 1.0 / FT2, 0.0 },
  { BS_QUANTITY_SPREAD_TIME, "min/ft2", 60.0 / FT2, 0.0 },
  { BS_QUANTITY_TEMPERATURE, "c", 1.0, 0.0 },
  { BS_QUANTITY_TEMPERATURE, "f", 5.0 / 9.0, -160.0 / 9.0 },
  { BS_QUANTITY_PERCENT, "%", 1.0, 0.0 },
};

const gsize bs_n_unit_names = G_N_ELEMENTS (bs_unit_names);
