/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/money.h"

#include "core/units.h"

#include <math.h>
#include <string.h>

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
bs_money_format_number (double minor, const char *currency)
{
  int places = bs_money_places (currency);

  if (!isfinite (minor))
    return g_strdup ("\u2013");
  /* Whole minor units first, so that no rounding of halves is left to the printing; no minus before
   * nothing. */
  double whole = round (minor);
  return g_strdup_printf ("%.*f", places, (fabs (whole) > 0.0 ? whole : 0.0) / pow (10.0, places));
}

char *
bs_money_format (double minor, const char *currency)
{
  g_autofree char *number = bs_money_format_number (minor, currency);

  return isfinite (minor) ? g_strdup_printf ("%s\u202f%s", number, currency)
                          : g_steal_pointer (&number);
}

/* A sign is taken for the plan's currency, whatever it is: they are shared by many. */
static const char *
skip_sign (const char *text)
{
  static const char *const signs[] = { "$", "\u20ac", "\u00a3", "\u00a5" };

  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    if (g_str_has_prefix (text, signs[i]))
      return text + strlen (signs[i]);
  return text;
}

/* Takes the code or a sign off the end of a text. */
static void
cut_currency (char *text, const char *currency)
{
  gsize length = strlen (text);
  gsize code = strlen (currency);

  if (length > code && g_ascii_strcasecmp (text + length - code, currency) == 0)
    text[length - code] = '\0';
  for (char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    if (p > text && skip_sign (p) > p && *skip_sign (p) == '\0')
      {
        *p = '\0';
        return;
      }
}

gboolean
bs_money_parse (const char *text, const char *currency, double *minor, GError **error)
{
  g_return_val_if_fail (text != NULL && currency != NULL && minor != NULL, FALSE);

  double amount = 0.0;
  g_autofree char *bare = g_strstrip (g_strdup (text));
  if (g_utf8_validate (bare, -1, NULL))
    cut_currency (bare, currency);
  const char *number = skip_sign (bare);
  if (g_ascii_strncasecmp (number, currency, strlen (currency)) == 0)
    number += strlen (currency);
  if (!bs_units_parse (number, BS_QUANTITY_MONEY, BS_UNIT_SYSTEM_METRIC, &amount, error))
    return FALSE;
  *minor = round (amount * pow (10.0, bs_money_places (currency)));
  return TRUE;
}

#define MM3_PER_M3 1e9

/* One unit of the volumes by which lumber is priced, in m3. */
static double
find_priced_volume (BsUnitSystem units)
{
  return bs_units_one (BS_QUANTITY_VOLUME, units) / MM3_PER_M3;
}

char *
bs_money_format_rate (double minor_per_m3, const char *currency, BsUnitSystem units)
{
  g_autofree char *price = bs_money_format (minor_per_m3 * find_priced_volume (units), currency);

  if (!isfinite (minor_per_m3))
    return g_steal_pointer (&price);
  return g_strdup_printf ("%s/%s", price, bs_units_symbol (BS_QUANTITY_VOLUME, units));
}

gboolean
bs_money_parse_rate (const char *text, const char *currency, BsUnitSystem units,
                     double *minor_per_m3, GError **error)
{
  const char *slash = strchr (text, '/');
  g_autofree char *price
      = slash != NULL ? g_strndup (text, (gsize)(slash - text)) : g_strdup (text);
  double minor = 0.0, volume = find_priced_volume (units) * MM3_PER_M3;

  if (!bs_money_parse (price, currency, &minor, error))
    return FALSE;
  if (slash != NULL)
    {
      g_autofree char *one = g_strconcat ("1 ", slash + 1, NULL);
      if (!bs_units_parse (one, BS_QUANTITY_VOLUME, units, &volume, error))
        return FALSE;
    }
  *minor_per_m3 = minor / (volume / MM3_PER_M3);
  return TRUE;
}
