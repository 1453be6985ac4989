/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-fields.h"

#include <math.h>

#include "core/text.h"
#include "core/units.h"
#include "desk.h"

#define THIN "\u202f"

/* What is typed for a price, and what the record holds afterwards: 250.0 where it was before. */
typedef struct
{
  const char *path;
  const BsField *field;
  const char *typed;
  double wanted;       /* minor units */
  const char *formats; /* back again; NULL: refused */
  BsUnitSystem units;
} Row;

/* A board foot is 144 in3 = 0.002359737 m3: 4.50 for one are 1907.00 for a m3. */
static const Row rows[] = {
  { "wood", &bs_wood_price_field, "1900", 190000.0, "1900.00" THIN "EUR/m³",
    BS_UNIT_SYSTEM_METRIC },
  { "wood/board-foot", &bs_wood_price_field, "4.50/bf", 190699.3, "1906.99" THIN "EUR/m³",
    BS_UNIT_SYSTEM_METRIC },
  { "wood/board-foot-in-inches", &bs_wood_price_field, "4.50", 190699.3, "4.50" THIN "EUR/bd ft",
    BS_UNIT_SYSTEM_INCH },
  { "wood/cubic-metre-in-inches", &bs_wood_price_field, "1900 EUR/m3", 190000.0,
    "4.48" THIN "EUR/bd ft", BS_UNIT_SYSTEM_INCH },
  { "wood/empty", &bs_wood_price_field, "", NAN, "", BS_UNIT_SYSTEM_METRIC },
  { "wood/negative", &bs_wood_price_field, "-5", 250.0, NULL, BS_UNIT_SYSTEM_METRIC },
  { "wood/by-the-mile", &bs_wood_price_field, "5/mile", 250.0, NULL, BS_UNIT_SYSTEM_METRIC },
  { "wood/by-nothing", &bs_wood_price_field, "5/", 500.0, "5.00" THIN "EUR/m³",
    BS_UNIT_SYSTEM_METRIC },
  { "wood/words", &bs_wood_price_field, "dear", 250.0, NULL, BS_UNIT_SYSTEM_METRIC },
  { "glue", &bs_glue_price_field, "12,50", 1250.0, "12.50" THIN "EUR", BS_UNIT_SYSTEM_METRIC },
  { "glue/empty", &bs_glue_price_field, "", NAN, "", BS_UNIT_SYSTEM_METRIC },
  { "glue/endless", &bs_glue_price_field, "99999999999", 250.0, NULL, BS_UNIT_SYSTEM_METRIC },
};

static void
test_price (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsWood) wood = bs_wood_new ("wood");
  g_autoptr (GError) error = NULL;
  gpointer record = row->field == &bs_wood_price_field ? (gpointer)wood : &plan->adhesive;
  double *place = (double *)(gpointer)((char *)record + row->field->offset);

  *place = 250.0;
  plan->units = row->units;
  g_assert_cmpint (row->field->parse (record, plan, row->typed, &error), ==, row->formats != NULL);
  if (row->formats == NULL)
    {
      g_assert_nonnull (error);
      g_assert_cmpuint (error->domain, ==, BS_UNITS_ERROR);
      g_assert_cmpfloat_with_epsilon (*place, 250.0, 1e-12);
      return;
    }
  g_autofree char *text = row->field->format (record, plan);
  g_assert_cmpint (isnan (*place), ==, isnan (row->wanted));
  if (!isnan (row->wanted))
    g_assert_cmpfloat_with_epsilon (*place, row->wanted, 0.1);
  g_assert_cmpstr (text, ==, row->formats);
}

static void
test_currency (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (bs_currency_field.parse (plan, plan, "usd", &error));
  g_assert_cmpstr (plan->currency, ==, "USD");
  g_assert_false (bs_currency_field.parse (plan, plan, "dollar", &error));
  g_assert_error (error, BS_UNITS_ERROR, BS_UNITS_ERROR_SYNTAX);
  g_assert_cmpstr (plan->currency, ==, "USD");
}

/* A wood keeps a name. */
static void
test_name (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsWood) wood = bs_wood_new ("wood");
  g_autoptr (GError) error = NULL;

  bs_text_set (&wood->name, "Plum");
  g_assert_false (bs_wood_fields[0].parse (wood, plan, "", &error));
  g_assert_cmpstr (wood->name, ==, "Plum");
  g_assert_true (bs_wood_fields[0].parse (wood, plan, "Damson", NULL));
  g_assert_cmpstr (wood->name, ==, "Damson");
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/wood-fields/price/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_price);
    }
  g_test_add_func ("/wood-fields/currency", test_currency);
  g_test_add_func ("/wood-fields/name", test_name);
  return g_test_run ();
}
