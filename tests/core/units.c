/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/units.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define METRIC BS_UNIT_SYSTEM_METRIC
#define INCH BS_UNIT_SYSTEM_INCH

/* The signs that the module puts in: narrow no-break space, no-break space, minus. */
#define THIN "\u202f"
#define HARD "\u00a0"
#define MINUS "\u2212"

typedef struct
{
  const char *path;
  double value;
  BsQuantity quantity;
  BsUnitSystem system;
  const char *wanted;
} FormatRow;

/* Wanted texts: the value in the unit by hand, to the precision that units.h promises. */
static const FormatRow format_rows[] = {
  { "length/tenth", 87.84, BS_QUANTITY_LENGTH, METRIC, "87.8" THIN "mm" },
  { "length/whole", 2440.0, BS_QUANTITY_LENGTH, METRIC, "2440" THIN "mm" },
  { "length/carries", 99.96, BS_QUANTITY_LENGTH, METRIC, "100" THIN "mm" },
  { "length/nothing-below", -0.04, BS_QUANTITY_LENGTH, METRIC, "0" THIN "mm" },
  { "length/negative", -3.0, BS_QUANTITY_LENGTH, METRIC, MINUS "3" THIN "mm" },
  { "length/unknown", NAN, BS_QUANTITY_LENGTH, METRIC, "\u2013" },
  { "length/endless", INFINITY, BS_QUANTITY_LENGTH, INCH, "\u2013" },
  { "inch/whole", 50.8, BS_QUANTITY_LENGTH, INCH, "2" THIN "in" },
  { "inch/fraction", 87.3125, BS_QUANTITY_LENGTH, INCH, "3" HARD "7/16" THIN "in" },
  { "inch/thirty-second", 0.79375, BS_QUANTITY_LENGTH, INCH, "1/32" THIN "in" },
  { "inch/lowest-terms", 12.7, BS_QUANTITY_LENGTH, INCH, "1/2" THIN "in" },
  { "inch/carries", 50.7, BS_QUANTITY_LENGTH, INCH, "2" THIN "in" },
  { "inch/thousandths", 0.5, BS_QUANTITY_LENGTH, INCH, "0.02" THIN "in" },
  { "inch/negative", -38.1, BS_QUANTITY_LENGTH, INCH, MINUS "1" HARD "1/2" THIN "in" },
  { "inch/nothing", 0.0, BS_QUANTITY_LENGTH, INCH, "0" THIN "in" },
  { "fine/hundredth", 0.154, BS_QUANTITY_FINE_LENGTH, METRIC, "0.15" THIN "mm" },
  { "fine/thousandth", 0.15, BS_QUANTITY_FINE_LENGTH, INCH, "0.006" THIN "in" },
  { "force/small", 850.4, BS_QUANTITY_FORCE, METRIC, "850" THIN "N" },
  { "force/large", 4450.0, BS_QUANTITY_FORCE, METRIC, "4.45" THIN "kN" },
  { "force/hundreds", 120400.0, BS_QUANTITY_FORCE, METRIC, "120" THIN "kN" },
  { "force/rounds-into-kilo", 999.7, BS_QUANTITY_FORCE, METRIC, "1" THIN "kN" },
  { "force/pounds", 4448.2216, BS_QUANTITY_FORCE, INCH, "1000" THIN "lbf" },
  { "time/seconds", 45.2, BS_QUANTITY_TIME, METRIC, "45" THIN "s" },
  { "time/minutes", 300.0, BS_QUANTITY_TIME, METRIC, "5" THIN "min" },
  { "time/both", 750.0, BS_QUANTITY_TIME, METRIC, "12" THIN "min 30" THIN "s" },
  { "time/carries", 59.7, BS_QUANTITY_TIME, METRIC, "1" THIN "min" },
  { "time/hours", 5400.0, BS_QUANTITY_TIME, METRIC, "1" THIN "h 30" THIN "min" },
  { "time/negative", -150.0, BS_QUANTITY_TIME, METRIC, MINUS "2" THIN "min 30" THIN "s" },
  { "time/nothing", 0.0, BS_QUANTITY_TIME, METRIC, "0" THIN "s" },
  { "area/metric", 216000.0, BS_QUANTITY_AREA, METRIC, "0.216" THIN "m²" },
  { "area/feet", 92903.04, BS_QUANTITY_AREA, INCH, "1" THIN "ft²" },
  { "volume/board-feet", 2359737.216, BS_QUANTITY_VOLUME, INCH, "1" THIN "bd ft" },
  { "pressure/metric", 1.2, BS_QUANTITY_PRESSURE, METRIC, "1.2" THIN "MPa" },
  { "pressure/stiffness", 12000.0, BS_QUANTITY_PRESSURE, METRIC, "12000" THIN "MPa" },
  { "pressure/inch", 1.0, BS_QUANTITY_PRESSURE, INCH, "145" THIN "psi" },
  { "temperature/metric", 20.0, BS_QUANTITY_TEMPERATURE, METRIC, "20" THIN "°C" },
  { "temperature/inch", 20.0, BS_QUANTITY_TEMPERATURE, INCH, "68" THIN "°F" },
  { "temperature/below", -40.0, BS_QUANTITY_TEMPERATURE, INCH, MINUS "40" THIN "°F" },
  { "mass/metric", 59.34, BS_QUANTITY_MASS, METRIC, "59.3" THIN "kg" },
  { "mass/grams", 0.29176, BS_QUANTITY_MASS, METRIC, "292" THIN "g" },
  { "mass/grams-up-to-a-kilogram", 0.9996, BS_QUANTITY_MASS, METRIC, "1" THIN "kg" },
  { "mass/pounds", 0.45359237, BS_QUANTITY_MASS, INCH, "1" THIN "lb" },
  { "percent", 8.27, BS_QUANTITY_PERCENT, METRIC, "8.3" THIN "%" },
  { "ratio/small", 0.00369, BS_QUANTITY_RATIO, METRIC, "0.00369" },
  { "count", 24.0, BS_QUANTITY_COUNT, METRIC, "24" },
};

static void
test_format (gconstpointer data)
{
  const FormatRow *row = data;
  g_autofree char *text = bs_units_format (row->value, row->quantity, row->system);

  g_assert_cmpstr (text, ==, row->wanted);
}

typedef struct
{
  const char *path;
  const char *text;
  BsQuantity quantity;
  BsUnitSystem system;
  double wanted; /* exact but for the last bits: by the definitions of the units, by hand */
} ParseRow;

static const ParseRow parse_rows[] = {
  { "length/bare-metric", "2440", BS_QUANTITY_LENGTH, METRIC, 2440.0 },
  { "length/bare-inch", "96", BS_QUANTITY_LENGTH, INCH, 2438.4 },
  { "length/metres", "2.44 m", BS_QUANTITY_LENGTH, METRIC, 2440.0 },
  { "length/decimal-comma", "2,44 m", BS_QUANTITY_LENGTH, METRIC, 2440.0 },
  { "length/metres-in-inch", "2.44m", BS_QUANTITY_LENGTH, INCH, 2440.0 },
  { "length/feet-sign", "8'", BS_QUANTITY_LENGTH, METRIC, 2438.4 },
  { "length/feet", "12 ft", BS_QUANTITY_LENGTH, METRIC, 3657.6 },
  { "length/inch-sign", "4 1/2\"", BS_QUANTITY_LENGTH, METRIC, 114.3 },
  { "length/two-single-signs", "4 1/2''", BS_QUANTITY_LENGTH, METRIC, 114.3 },
  { "length/typographic", "8’ 6½”", BS_QUANTITY_LENGTH, METRIC, 2603.5 },
  { "length/feet-and-inches", "8' 6 1/2\"", BS_QUANTITY_LENGTH, INCH, 2603.5 },
  { "length/feet-then-bare", "8' 6", BS_QUANTITY_LENGTH, METRIC, 2590.8 },
  { "length/no-spaces", "8'6\"", BS_QUANTITY_LENGTH, METRIC, 2590.8 },
  { "length/hyphen", "4-1/2 in", BS_QUANTITY_LENGTH, METRIC, 114.3 },
  { "length/quarters", "8/4", BS_QUANTITY_LENGTH, INCH, 50.8 },
  { "length/quarters-metric", "8/4", BS_QUANTITY_LENGTH, METRIC, 50.8 },
  { "length/mixed-bare", "1 3/4", BS_QUANTITY_LENGTH, METRIC, 44.45 },
  { "length/fraction-of-metre", "1/2 m", BS_QUANTITY_LENGTH, METRIC, 500.0 },
  { "length/metres-and-centimetres", "2 m 44 cm", BS_QUANTITY_LENGTH, METRIC, 2440.0 },
  { "length/negative", "-3 mm", BS_QUANTITY_LENGTH, METRIC, -3.0 },
  { "length/minus-sign", MINUS "1/8\"", BS_QUANTITY_LENGTH, METRIC, -3.175 },
  { "length/spaces", "  40" HARD "mm ", BS_QUANTITY_LENGTH, METRIC, 40.0 },
  { "length/capitals", "40 MM", BS_QUANTITY_LENGTH, METRIC, 40.0 },
  { "length/leading-mark", ".5 in", BS_QUANTITY_LENGTH, METRIC, 12.7 },
  { "length/three-decimals", "0,125 in", BS_QUANTITY_LENGTH, METRIC, 3.175 },
  /* groups of three, as ISO 80000-1, 7.3.1, has them */
  { "groups/bare", "2 440", BS_QUANTITY_LENGTH, METRIC, 2440.0 },
  { "groups/thin-space", "12\u202f500.5 mm", BS_QUANTITY_LENGTH, METRIC, 12500.5 },
  { "groups/million", "1 234 567 N", BS_QUANTITY_FORCE, METRIC, 1234567.0 },
  { "groups/no-group", "5 125/1000 in", BS_QUANTITY_LENGTH, METRIC, 130.175 },
  { "fine/bare", "0.15", BS_QUANTITY_FINE_LENGTH, METRIC, 0.15 },
  { "fine/inch", "0.006", BS_QUANTITY_FINE_LENGTH, INCH, 0.1524 },
  { "fine/other-unit", "1/64\"", BS_QUANTITY_FINE_LENGTH, METRIC, 0.396875 },
  { "force/kilonewtons", "4.5 kN", BS_QUANTITY_FORCE, METRIC, 4500.0 },
  { "force/pounds", "1000 lbf", BS_QUANTITY_FORCE, METRIC, 4448.2216152605 },
  { "force/bare-inch", "1000", BS_QUANTITY_FORCE, INCH, 4448.2216152605 },
  { "time/both", "12 min 30 s", BS_QUANTITY_TIME, METRIC, 750.0 },
  { "time/hours", "1.5 h", BS_QUANTITY_TIME, METRIC, 5400.0 },
  { "temperature/fahrenheit", "68 F", BS_QUANTITY_TEMPERATURE, METRIC, 20.0 },
  { "temperature/sign", "68 °F", BS_QUANTITY_TEMPERATURE, METRIC, 20.0 },
  { "temperature/below", "-40", BS_QUANTITY_TEMPERATURE, INCH, -40.0 },
  { "pressure/inch", "150 psi", BS_QUANTITY_PRESSURE, METRIC, 1.0342135939753 },
  { "area/feet", "2 sq ft", BS_QUANTITY_AREA, METRIC, 185806.08 },
  { "volume/board-feet", "20 bd ft", BS_QUANTITY_VOLUME, METRIC, 47194744.32 },
  { "spread/pounds", "35 lb/1000 ft²", BS_QUANTITY_SPREAD, METRIC, 170.88496727 },
  { "torque", "10 N·m", BS_QUANTITY_TORQUE, METRIC, 10000.0 },
  { "percent", "8.5 %", BS_QUANTITY_PERCENT, METRIC, 8.5 },
  { "percent/bare", "8.5", BS_QUANTITY_PERCENT, METRIC, 8.5 },
  { "ratio", "0.63", BS_QUANTITY_RATIO, METRIC, 0.63 },
  { "count", "12", BS_QUANTITY_COUNT, METRIC, 12.0 },
};

static void
test_parse (gconstpointer data)
{
  const ParseRow *row = data;
  g_autoptr (GError) error = NULL;
  double value = NAN;

  g_assert_true (bs_units_parse (row->text, row->quantity, row->system, &value, &error));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (value, row->wanted, 1e-9 * fmax (1.0, fabs (row->wanted)));
}

typedef struct
{
  const char *path;
  const char *text;
  BsQuantity quantity;
  BsUnitsError code;
  const char *part; /* of the message */
} RefuseRow;

static const RefuseRow refuse_rows[] = {
  { "empty", "", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "Nothing is written. A length" },
  { "blank", "  ", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "Nothing is written" },
  { "only-a-sign", "-", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "Nothing is written" },
  { "words", "about two metres", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "about two metres: " },
  { "strange-unit", "3 kg", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_UNIT, "not known" },
  { "longer-word", "3 miles", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_UNIT, "not known" },
  { "thousands", "2,440", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "thousands" },
  { "two-digits", "1 20", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_UNIT, "missing" },
  { "two-marks", "1.250,5", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_UNIT, "A length is expected" },
  { "divides-by-nothing", "1/0", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "divides" },
  { "wrong-order", "6 in 8 ft", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "cannot be read" },
  { "missing-second-unit", "1 m 20", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_UNIT, "missing" },
  { "exponent", "1e5", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_UNIT, "A length is expected" },
  { "endless", "1000000000000000000000", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "cannot" },
  { "infinite", "inf", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "cannot be read" },
  { "not-a-number", "nan", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "cannot be read" },
  { "time-without-unit", "5", BS_QUANTITY_TIME, BS_UNITS_ERROR_UNIT, "unit is missing. A time" },
  { "part-of-a-piece", "2.5", BS_QUANTITY_COUNT, BS_UNITS_ERROR_SYNTAX, "whole number" },
  { "two-temperatures", "20 C 3 F", BS_QUANTITY_TEMPERATURE, BS_UNITS_ERROR_SYNTAX, "temperature" },
  { "not-text", "\xff\xfe", BS_QUANTITY_LENGTH, BS_UNITS_ERROR_SYNTAX, "not text" },
};

static void
test_refuse (gconstpointer data)
{
  const RefuseRow *row = data;
  g_autoptr (GError) error = NULL;
  double value = NAN;

  g_assert_false (bs_units_parse (row->text, row->quantity, METRIC, &value, &error));
  g_assert_error (error, BS_UNITS_ERROR, (int)row->code);
  g_assert_nonnull (strstr (error->message, row->part));
  g_assert_true (isnan (value)); /* nothing is half read */
}

/* What is shown can be typed, and comes back to the precision shown: 0.05 mm, 1/64 in, half a
 * second of a minute, half the last figure of three. */
typedef struct
{
  const char *path;
  BsQuantity quantity;
  BsUnitSystem system;
  double from, to;
  double absolute, relative;
} RoundTripRow;

static const RoundTripRow round_trip_rows[] = {
  { "length/metric", BS_QUANTITY_LENGTH, METRIC, -50.0, 5000.0, 0.05, 0.0 },
  { "length/inch", BS_QUANTITY_LENGTH, INCH, -50.0, 5000.0, 25.4 / 64.0, 0.0 },
  { "area/metric", BS_QUANTITY_AREA, METRIC, 1e4, 1e7, 50.0, 0.005 },
  { "area/inch", BS_QUANTITY_AREA, INCH, 1e4, 1e7, 50.0, 0.005 },
  { "force/metric", BS_QUANTITY_FORCE, METRIC, 10.0, 200000.0, 0.5, 0.005 },
  { "force/inch", BS_QUANTITY_FORCE, INCH, 10.0, 200000.0, 2.3, 0.005 },
  { "time", BS_QUANTITY_TIME, METRIC, -7000.0, 100000.0, 30.0, 0.0 },
  { "temperature/inch", BS_QUANTITY_TEMPERATURE, INCH, -40.0, 60.0, 0.03, 0.0 },
  { "pressure/inch", BS_QUANTITY_PRESSURE, INCH, 0.01, 20.0, 0.0004, 0.005 },
  { "mass/inch", BS_QUANTITY_MASS, INCH, 0.1, 500.0, 0.003, 0.005 },
  { "spread/inch", BS_QUANTITY_SPREAD, INCH, 50.0, 500.0, 0.3, 0.005 },
  { "volume/inch", BS_QUANTITY_VOLUME, INCH, 1e7, 1e9, 12000.0, 0.005 },
};

static void
test_round_trip (gconstpointer data)
{
  const RoundTripRow *row = data;

  for (int i = 0; i <= 1000; i++)
    {
      g_autoptr (GError) error = NULL;
      double value = row->from + (row->to - row->from) * i / 1000.0;
      double read = NAN;
      g_autofree char *text = bs_units_format (value, row->quantity, row->system);

      bs_units_parse (text, row->quantity, row->system, &read, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (read, value,
                                      row->absolute + row->relative * fabs (value) + 1e-9);
    }
}

/* A number and its unit stand apart in a table, and always in the unit of the heading. */
static void
test_number_and_symbol (void)
{
  g_autofree char *force = bs_units_format_number (14000.0, BS_QUANTITY_FORCE, METRIC);
  g_autofree char *length = bs_units_format_number (44.45, BS_QUANTITY_LENGTH, INCH);

  g_assert_cmpstr (force, ==, "14000");
  g_assert_cmpstr (bs_units_symbol (BS_QUANTITY_FORCE, METRIC), ==, "N");
  g_assert_cmpstr (length, ==, "1" HARD "3/4");
  g_assert_cmpstr (bs_units_symbol (BS_QUANTITY_LENGTH, INCH), ==, "in");
  g_assert_cmpstr (bs_units_symbol (BS_QUANTITY_RATIO, INCH), ==, "");
  g_assert_cmpfloat_with_epsilon (bs_units_one (BS_QUANTITY_LENGTH, INCH), 25.4, 1e-12);
}

/* With a decimal comma of its own a locale writes and reads it; what was thousands is then plain.
 */
static void
test_locale (void)
{
  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL && setlocale (LC_NUMERIC, "de_DE.utf8") == NULL)
    {
      g_test_skip ("the locale de_DE.UTF-8 is not installed");
      return;
    }
  g_autoptr (GError) error = NULL;
  double value = NAN;
  g_autofree char *text = bs_units_format (87.84, BS_QUANTITY_LENGTH, METRIC);
  g_autofree char *whole = bs_units_format (2440.0, BS_QUANTITY_LENGTH, METRIC);

  g_assert_cmpstr (text, ==, "87,8" THIN "mm");
  g_assert_cmpstr (whole, ==, "2440" THIN "mm");
  g_assert_true (bs_units_parse ("2,440 m", BS_QUANTITY_LENGTH, METRIC, &value, &error));
  g_assert_cmpfloat_with_epsilon (value, 2440.0, 1e-9);
  g_assert_false (bs_units_parse ("2.440", BS_QUANTITY_LENGTH, METRIC, &value, NULL));
  g_assert_nonnull (setlocale (LC_NUMERIC, "C"));
}

int
main (int argc, char *argv[])
{
  g_assert_nonnull (setlocale (LC_ALL, ""));
  g_test_init (&argc, &argv, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (format_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/units/format/%s", format_rows[i].path);
      g_test_add_data_func (path, &format_rows[i], test_format);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (parse_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/units/parse/%s", parse_rows[i].path);
      g_test_add_data_func (path, &parse_rows[i], test_parse);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (refuse_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/units/refuse/%s", refuse_rows[i].path);
      g_test_add_data_func (path, &refuse_rows[i], test_refuse);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (round_trip_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/units/round-trip/%s", round_trip_rows[i].path);
      g_test_add_data_func (path, &round_trip_rows[i], test_round_trip);
    }
  g_test_add_func ("/units/number-and-symbol", test_number_and_symbol);
  g_test_add_func ("/units/locale", test_locale);
  return g_test_run ();
}
