/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/money.h"

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
  g_test_add_func ("/money/places", test_places);
  return g_test_run ();
}
