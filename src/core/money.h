/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* Money is kept in minor units of the plan's currency (cents). */

/* How many decimal places a currency (ISO 4217 code) has: 2 but for some. Source: ISO 4217, list
 * one; from memory. */
int bs_money_places (const char *currency);

/* "1234.50 EUR", decimal mark of the locale, a thin space before the code; NAN gives an en dash.
 * Free with g_free. */
char *bs_money_format (double minor, const char *currency);

/* The same without the code. */
char *bs_money_format_number (double minor, const char *currency);

/* Reads what a person types for an amount of a currency: "42.50", "42,50 EUR", "$42.5". What is
 * finer than its minor unit is rounded to it. Returns FALSE with an error (BS_UNITS_ERROR) that
 * says what was found and what is expected. */
gboolean bs_money_parse (const char *text, const char *currency, double *minor, GError **error);

/* A price for a volume, kept for each m3, as it is said: "1900.00 EUR/m³", or by the board foot
 * where sizes are in inches. What is typed may name either ("4.50/bf"); otherwise it is the one
 * that is shown. */
char *bs_money_format_rate (double minor_per_m3, const char *currency, BsUnitSystem units);
gboolean bs_money_parse_rate (const char *text, const char *currency, BsUnitSystem units,
                              double *minor_per_m3, GError **error);

G_END_DECLS
