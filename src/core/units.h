/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"
#include "core/working.h"

G_BEGIN_DECLS

/* The only place where units are changed. Inside: mm, N, MPa, s, degrees C, %, kg.
 *
 * Exact by definition: the inch (25.4 mm), the pound (0.45359237 kg), standard gravity (9.80665
 * m/s2); the rest follows. Source: ISO 80000-3:2019 and ISO 80000-4:2019 annexes; NIST SP 811
 * (2008) appendix B. */

#define BS_MM_PER_INCH 25.4
#define BS_KG_PER_POUND 0.45359237
#define BS_N_PER_POUND_FORCE (BS_KG_PER_POUND * 9.80665)
#define BS_MPA_PER_PSI (BS_N_PER_POUND_FORCE / (BS_MM_PER_INCH * BS_MM_PER_INCH))
#define BS_MM3_PER_BOARD_FOOT (144.0 * BS_MM_PER_INCH * BS_MM_PER_INCH * BS_MM_PER_INCH)

/* A value (in the unit that BsQuantity names) in words: "87.8 mm", "3 7/16 in", "12 min 30 s", "14
 * kN". Decimal mark of the locale; inches to the nearest 1/32, and in thousandths below that; a
 * thin space between number and unit. To the precision of the shop, so that what is shown and read
 * again may differ from the value. NAN gives an en dash. Free with g_free. */
char *bs_units_format (double value, BsQuantity quantity, BsUnitSystem system);

/* The number without its unit, always in the unit of bs_units_symbol, and that unit alone (static;
 * "" for a ratio). */
char *bs_units_format_number (double value, BsQuantity quantity, BsUnitSystem system);
const char *bs_units_symbol (BsQuantity quantity, BsUnitSystem system);

/* How much one unit of bs_units_symbol is, in the unit that BsQuantity names. */
double bs_units_one (BsQuantity quantity, BsUnitSystem system);

/* Reads what a person types for a quantity, in the system's unit unless it names another:
 * lengths "2440", "2.44 m", "8'", "4 1/2\"", "1 3/4", "8' 6 1/2\"", "8/4" (quarters of an inch),
 * "12 ft"; forces "4.5 kN", "1000 lbf"; temperatures "68 F"; and so on. A fraction of a length is
 * of an inch in either system; a time must name its unit. Decimal comma or point. Returns FALSE
 * with an error that says what was found and what is expected. */
gboolean bs_units_parse (const char *text, BsQuantity quantity, BsUnitSystem system, double *value,
                         GError **error);

#define BS_UNITS_ERROR (bs_units_error_quark ())
GQuark bs_units_error_quark (void);

typedef enum
{
  BS_UNITS_ERROR_SYNTAX, /* not a number, or one that can be read in two ways */
  BS_UNITS_ERROR_UNIT,   /* a unit that is missing or not known for this quantity */
} BsUnitsError;

G_END_DECLS
