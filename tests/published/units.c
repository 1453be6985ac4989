/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/units.h"

#include <math.h>

/* Conversions against NIST Special Publication 811 (2008), Guide for the Use of the International
 * System of Units, appendix B.8; figures from memory, to the digits printed there. The board foot:
 * American Hardwood Export Council, Grading sawn lumber: 12 in x 12 in x 1 in. */

typedef struct
{
  const char *path;
  const char *text;
  BsQuantity quantity;
  double wanted;
  double tolerance; /* half of the last digit printed, or the last bits where it is exact */
} Row;

static const Row rows[] = {
  { "inch-exact", "1 in", BS_QUANTITY_LENGTH, 25.4, 1e-12 },
  { "foot-exact", "1 ft", BS_QUANTITY_LENGTH, 304.8, 1e-12 },
  { "square-foot", "1 ft2", BS_QUANTITY_AREA, 9.290304e-2 * 1e6, 1e-6 },
  { "square-inch", "1 in2", BS_QUANTITY_AREA, 645.16, 1e-9 },
  { "cubic-foot", "1 ft3", BS_QUANTITY_VOLUME, 2.831685e-2 * 1e9, 5e-9 * 1e9 },
  { "board-foot", "1 bd ft", BS_QUANTITY_VOLUME, 2.359737e-3 * 1e9, 5e-10 * 1e9 },
  { "pound-exact", "1 lb", BS_QUANTITY_MASS, 0.45359237, 1e-15 },
  { "pound-force", "1 lbf", BS_QUANTITY_FORCE, 4.448222, 5e-7 },
  { "kilogram-force-exact", "1 kgf", BS_QUANTITY_FORCE, 9.80665, 1e-12 },
  { "psi", "1 psi", BS_QUANTITY_PRESSURE, 6.894757e-3, 5e-10 },
  { "bar-exact", "1 bar", BS_QUANTITY_PRESSURE, 0.1, 1e-15 },
  { "pound-force-foot", "1 lbf ft", BS_QUANTITY_TORQUE, 1.355818e3, 5e-4 },
  { "pound-force-inch", "1 lbf in", BS_QUANTITY_TORQUE, 0.1129848e3, 5e-5 },
  { "pound-force-an-inch", "1 lbf/in", BS_QUANTITY_LINE_FORCE, 175.1268e-3, 5e-8 },
  { "pound-a-cubic-foot", "1 lb/ft3", BS_QUANTITY_DENSITY, 16.01846, 5e-6 },
  { "pound-a-square-foot", "1000 lb/1000 ft2", BS_QUANTITY_SPREAD, 4.882428e3, 5e-4 },
  { "boiling-water", "212 F", BS_QUANTITY_TEMPERATURE, 100.0, 1e-12 },
  { "freezing-water", "32 F", BS_QUANTITY_TEMPERATURE, 0.0, 1e-12 },
};

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (GError) error = NULL;
  double value = NAN;

  bs_units_parse (row->text, row->quantity, BS_UNIT_SYSTEM_METRIC, &value, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (value, row->wanted, row->tolerance);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/nist-sp-811/%s", rows[i].path);
      g_test_add_data_func (path, &rows[i], test_row);
    }
  return g_test_run ();
}
