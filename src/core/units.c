/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/units-private.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Narrow no-break space, minus sign and en dash. */
#define THIN_SPACE "\u202f"
#define MINUS "\u2212"
#define DASH "\u2013"

/* In place of the usual unit where that would be too small or too large. */
static const BsUnitScale kilonewton = { "kN", 1e3, 0.0, 3, 2 };
static const BsUnitScale gram = { "g", 1e-3, 0.0, 3, 1 };

/* Zeros after the decimal mark say nothing in a shop: "88 mm", not "88.0 mm". */
static void
trim_zeros (char *digits)
{
  gsize end = strlen (digits);

  while (end > 0 && digits[end - 1] == '0')
    end--;
  while (end > 0 && !g_ascii_isdigit (digits[end - 1]))
    end--; /* the mark, which is longer than a byte in some locales */
  digits[end] = '\0';
}

static char *
format_decimal (double value, int figures, int places)
{
  double size = fabs (value);
  int whole = size >= 1.0 ? (int)floor (log10 (size)) + 1 : 0;
  int leading = size > 0.0 && size < 1.0 ? -(int)floor (log10 (size)) - 1 : 0;
  int decimals = figures > 0 ? CLAMP (figures - whole + leading, 0, places) : places;

  g_autofree char *digits = g_strdup_printf ("%.*f", decimals, size);
  if (decimals > 0)
    trim_zeros (digits);
  gboolean is_zero = strpbrk (digits, "123456789") == NULL;
  return g_strconcat (value < 0.0 && !is_zero ? MINUS : "", digits, NULL);
}

/* Lowest terms of thirty-seconds; what is smaller than one is shown in thousandths, so that nothing
 * that is there reads as nothing. */
static char *
format_inches (double inches)
{
  double size = fabs (inches);
  if (size < 1.0 / 32.0)
    return format_decimal (inches, 0, 3);

  const char *sign = inches < 0.0 ? MINUS : "";
  double parts = floor (size * 32.0 + 0.5);
  double whole = floor (parts / 32.0);
  int numerator = (int)(parts - 32.0 * whole);
  int denominator = 32;
  while (numerator > 0 && numerator % 2 == 0)
    {
      numerator /= 2;
      denominator /= 2;
    }

  if (numerator == 0)
    return g_strdup_printf ("%s%.0f", sign, whole);
  if (whole < 1.0)
    return g_strdup_printf ("%s%d/%d", sign, numerator, denominator);
  return g_strdup_printf ("%s%.0f\u00a0%d/%d", sign, whole, numerator, denominator);
}

/* "45 s", "12 min 30 s", "1 h 30 min": the second unit only when there is something of it. */
static char *
format_time (double seconds)
{
  double size = fabs (seconds);
  gboolean is_long = floor (size + 0.5) >= 3600.0;
  double parts = floor ((is_long ? size / 60.0 : size) + 0.5);
  double large = floor (parts / 60.0);
  double small = parts - 60.0 * large;
  const char *sign = seconds < 0.0 && parts > 0.0 ? MINUS : "";
  const char *large_unit = is_long ? "h" : "min";
  const char *small_unit = is_long ? "min" : "s";

  if (large < 1.0)
    return g_strdup_printf ("%s%.0f" THIN_SPACE "%s", sign, small, small_unit);
  if (small < 1.0)
    return g_strdup_printf ("%s%.0f" THIN_SPACE "%s", sign, large, large_unit);
  return g_strdup_printf ("%s%.0f" THIN_SPACE "%s %.0f" THIN_SPACE "%s", sign, large, large_unit,
                          small, small_unit);
}

static char *
format_scaled (double value, const BsUnitScale *scale)
{
  return format_decimal ((value - scale->zero) / scale->size, scale->figures, scale->places);
}

char *
bs_units_format_number (double value, BsQuantity quantity, BsUnitSystem system)
{
  if (!isfinite (value))
    return g_strdup (DASH);
  if (quantity == BS_QUANTITY_LENGTH && system == BS_UNIT_SYSTEM_INCH)
    return format_inches (value / BS_MM_PER_INCH);
  return format_scaled (value, bs_units_get_scale (quantity, system));
}

const char *
bs_units_symbol (BsQuantity quantity, BsUnitSystem system)
{
  return bs_units_get_scale (quantity, system)->symbol;
}

static const BsUnitScale *
find_other_scale (double value, BsQuantity quantity, BsUnitSystem system)
{
  if (system != BS_UNIT_SYSTEM_METRIC)
    return NULL;
  if (quantity == BS_QUANTITY_FORCE && fabs (value) >= 999.5)
    return &kilonewton;
  return quantity == BS_QUANTITY_MASS && fabs (value) < 0.9995 ? &gram : NULL;
}

double
bs_units_one (BsQuantity quantity, BsUnitSystem system)
{
  return bs_units_get_scale (quantity, system)->size;
}

char *
bs_units_format (double value, BsQuantity quantity, BsUnitSystem system)
{
  if (!isfinite (value))
    return g_strdup (DASH);
  if (quantity == BS_QUANTITY_TIME)
    return format_time (value);

  const BsUnitScale *other = find_other_scale (value, quantity, system);
  const char *symbol = other != NULL ? other->symbol : bs_units_symbol (quantity, system);
  g_autofree char *number = other != NULL ? format_scaled (value, other)
                                          : bs_units_format_number (value, quantity, system);

  return *symbol == '\0' ? g_steal_pointer (&number)
                         : g_strconcat (number, THIN_SPACE, symbol, NULL);
}
