/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/money.h"

#include "core/units.h"

#include <math.h>

#define THIN "\u202f"

/* Places by ISO 4217, list one; from memory. */
typedef struct
{
  const char *path;
  double minor;
  const char *currency;
  const char *wanted;
} Row;

static const Row rows[] = {
  { "two-places", 123456.0, "EUR", "1234.56" THIN "EUR" },
  { "whole", 500.0, "USD", "5.00" THIN "USD" },
  { "no-places", 1500.0, "JPY", "1500" THIN "JPY" },
  { "three-places", 1500.0, "KWD", "1.500" THIN "KWD" },
  { "unknown-code", 250.0, "XYZ", "2.50" THIN "XYZ" },
  { "part-of-a-cent", 99.6, "GBP", "1.00" THIN "GBP" },
  { "nothing", -0.2, "GBP", "0.00" THIN "GBP" },
  { "not-known", NAN, "EUR", "\u2013" },
};

static void
test_format (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *text = bs_money_format (row->minor, row->currency);

  g_assert_cmpstr (text, ==, row->wanted);
}

typedef struct
{
  const char *path;
  const char *text;
  const char *currency;
  double wanted; /* NAN: refused */
} Typed;

static const Typed typed[] = {
  { "plain", "42.50", "EUR", 4250.0 },
  { "comma", "42,5", "EUR", 4250.0 },
  { "code", "42.50 EUR", "EUR", 4250.0 },
  { "code-close-by", "42.50eur", "EUR", 4250.0 },
  { "code-before", "EUR 42.50", "EUR", 4250.0 },
  { "sign-before", "$42.50", "USD", 4250.0 },
  { "sign-after", "42,50 \u20ac", "EUR", 4250.0 },
  { "no-places", "1500", "JPY", 1500.0 },
  { "three-places", "1.5", "KWD", 1500.0 },
  { "finer-than-a-cent", "0.4567", "EUR", 46.0 },
  { "other-code", "42 USD", "EUR", NAN },
  { "only-a-sign", "$", "EUR", NAN },
  { "words", "dear", "EUR", NAN },
  { "empty", "", "EUR", NAN },
  { "not-text", "4\xFF", "EUR", NAN },
};

static void
test_parse (gconstpointer data)
{
  const Typed *row = data;
  g_autoptr (GError) error = NULL;
  double minor = -1.0;

  g_assert_cmpint (bs_money_parse (row->text, row->currency, &minor, &error), ==,
                   !isnan (row->wanted));
  if (isnan (row->wanted))
    {
      g_assert_true (error->domain == BS_UNITS_ERROR);
      g_assert_true (g_str_has_suffix (error->message, "42.50."));
    }
  else
    g_assert_cmpfloat_with_epsilon (minor, row->wanted, 1e-6);
}

static void
test_places (void)
{
  g_assert_cmpint (bs_money_places ("EUR"), ==, 2);
  g_assert_cmpint (bs_money_places ("KRW"), ==, 0);
  g_assert_cmpint (bs_money_places ("TND"), ==, 3);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/money/format/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_format);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (typed); i++)
    {
      g_autofree char *path = g_strconcat ("/money/parse/", typed[i].path, NULL);
      g_test_add_data_func (path, &typed[i], test_parse);
    }
  g_test_add_func ("/money/places", test_places);
  return g_test_run ();
}
