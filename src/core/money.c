/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/money.h"

#include <math.h>

static const char *const without_places[]
    = { "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG",
        "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF", NULL };
static const char *const three_places[] = { "BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND", NULL };

int
bs_money_places (const char *currency)
{
  if (g_strv_contains (without_places, currency))
    return 0;
  return g_strv_contains (three_places, currency) ? 3 : 2;
}

char *
bs_money_format (double minor, const char *currency)
{
  int places = bs_money_places (currency);

  if (!isfinite (minor))
    return g_strdup ("\u2013");
  /* Whole minor units first, so that no rounding of halves is left to the printing; no minus before
   * nothing. */
  double whole = round (minor);
  return g_strdup_printf ("%.*f\u202f%s", places,
                          (fabs (whole) > 0.0 ? whole : 0.0) / pow (10.0, places), currency);
}
