/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Money is kept in minor units of the plan's currency (cents). */

/* How many decimal places a currency (ISO 4217 code) has: 2 but for some. Source: ISO 4217, list
 * one; from memory. */
int bs_money_places (const char *currency);

/* "1234.50 EUR", decimal mark of the locale, a thin space before the code; NAN gives an en dash.
 * Free with g_free. */
char *bs_money_format (double minor, const char *currency);

G_END_DECLS
