/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/words.h"

#include "shops.h"

#include <math.h>

#define THIN "\u202f"

static void
test_whole_text (void)
{
  BsWorking working;

  bs_working_init (&working, "Pressing force", "What presses it.", "F = p A", BS_QUANTITY_FORCE,
                   "A range.");
  working.value = 120000.0;
  working.low = 84000.0;
  working.high = 168000.0;
  bs_working_add (&working, "area", "A", 120000.0, BS_QUANTITY_AREA, NULL);
  bs_working_add (&working, "pressure", "p", 1.0, BS_QUANTITY_PRESSURE, "Handbook, table 1");
  bs_working_add (&working, "wanted", "", 0.5, BS_QUANTITY_PRESSURE, "");
  g_autofree char *text = bs_words_working (&working, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpstr (text, ==,
                   "Pressing force: 120" THIN "kN (84" THIN "kN to 168" THIN "kN)\n"
                   "What presses it.\n"
                   "F = p A\n"
                   "A = 0.12" THIN "m² area (from the plan)\n"
                   "p = 1" THIN "MPa pressure (Handbook, table 1)\n"
                   "wanted: 0.5" THIN "MPa (from the plan)\n"
                   "A range.");
}

static void
test_without_a_range (void)
{
  BsWorking working;

  bs_working_init (&working, "Time", "Of all.", "", BS_QUANTITY_TIME, "Your hands.");
  working.value = 90.0;
  g_autofree char *text = bs_words_working (&working, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpstr (text, ==, "Time: 1" THIN "min 30" THIN "s\nOf all.\nYour hands.");
}

/* Money in the working's own currency. */
static void
test_money (void)
{
  BsWorking working;

  bs_working_init (&working, "Cost", "Of all.", "", BS_QUANTITY_MONEY, "Prices.");
  working.currency = "SEK";
  working.value = 123450.0;
  bs_working_add (&working, "wood", "W", 100000.0, BS_QUANTITY_MONEY, NULL);
  g_autofree char *text = bs_words_working (&working, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpstr (text, ==,
                   "Cost: 1234.50" THIN "SEK\nOf all.\nW = 1000.00" THIN
                   "SEK wood (from the plan)\nPrices.");
}

static void
test_unknown (void)
{
  BsWorking working;

  bs_working_init (&working, "Time", "No glue line yet.", "T = N j", BS_QUANTITY_TIME, "None.");
  g_autofree char *text = bs_words_working (&working, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpstr (text, ==, "Time\nNo glue line yet.\nT = N j\nNone.");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/workings/whole-text", test_whole_text);
  g_test_add_func ("/words/workings/without-a-range", test_without_a_range);
  g_test_add_func ("/words/workings/money", test_money);
  g_test_add_func ("/words/workings/unknown", test_unknown);
  return g_test_run ();
}
