/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamping.h"

#include "shops.h"

#include <math.h>

/* The hand rules against what handbooks print. The pressure bands: Selbo 1975, Adhesive bonding of
 * wood, USDA Technical Bulletin 1512, and extension practice: 0.7 to 1.0 MPa (100 to 150 lbf/in2)
 * for light woods, 1.0 to 1.4 (150 to 200) for medium, 1.2 to 1.7 (175 to 250) for dense ones; from
 * memory. The same ends, about 0.7 and up to 1.7 MPa: Wood handbook, FPL-GTR-190 (2010), chapter
 * 10; from memory. The limits between the bands, 0.45 and 0.60, are ours. */
typedef struct
{
  const char *path;
  double sg_12;
  double low, high;
} BandRow;

static const BandRow band_rows[] = {
  { "ponderosa-pine", 0.40, 0.7, 1.0 }, { "just-light", 0.449, 0.7, 1.0 },
  { "medium", 0.45, 1.0, 1.4 },         { "cherry", 0.50, 1.0, 1.4 },
  { "just-dense", 0.60, 1.2, 1.7 },     { "beech", 0.64, 1.2, 1.7 },
};

static void
test_band (gconstpointer data)
{
  const BandRow *row = data;
  g_autoptr (BsPlan) plan = slab_new (2, 2000.0, 40.0, 60.0);
  shop_set_wood (plan, row->sg_12, 8.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsPressureRange range = bs_clamping_pressure (stack);

  g_assert_cmpfloat_with_epsilon (range.low, row->low, 1e-9);
  g_assert_cmpfloat_with_epsilon (range.high, row->high, 1e-9);
}

/* F = p A by its definition: a line 2000 x 60 mm takes 120 kN at 1.0 MPa and 84 kN at 0.7 MPa; with
 * clamps of 5 kN those are 24 and 17. */
typedef struct
{
  const char *path;
  double sg_12;
  double force_n;
  int n;
} ForceRow;

static const ForceRow force_rows[] = {
  { "medium", 0.50, 120000.0, 24 },
  { "light", 0.40, 84000.0, 17 },
};

static BsClampRule
rule_of (const BsPlan *plan)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsClampRule rule = { .positions = g_array_new (FALSE, FALSE, sizeof (double)) };

  bs_clamping_rule (stack, &rule);
  return rule;
}

static void
test_force (gconstpointer data)
{
  const ForceRow *row = data;
  g_autoptr (BsPlan) plan = slab_new (4, 2000.0, 40.0, 60.0);
  shop_set_wood (plan, row->sg_12, 8.0);
  shop_add_clamps (plan, 30, 5000.0, 600.0, 100.0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.force_n, row->force_n, 1e-6);
  g_assert_cmpint (rule.n_by_force, ==, row->n);
}

/* The 45 degree rule as textbooks of woodworking give it, from memory: head 35 mm on a board 70 mm
 * wide, 175 mm apart at most; with a caul of 40 mm, 255 mm. */
static void
test_spacing (gconstpointer data)
{
  double caul = *(const double *)data;
  g_autoptr (BsPlan) plan = slab_new (4, 2000.0, 70.0, 30.0);
  shop_set_wood (plan, 0.50, 8.0);
  shop_add_clamps (plan, 30, 5000.0, 600.0, 35.0);
  if (caul > 0.0)
    shop_add_cauls (plan, 2, 2000.0, caul, 30.0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.spacing, 175.0 + 2.0 * caul, 1e-9);
}

/* Crushing by the stress at the proportional limit across the grain, as ASTM D143 measures it:
 * ponderosa pine bears 4.0 MPa at 12 % (Wood handbook, table 5-3, from memory), which 4.9 kN under
 * a head of 35 x 35 mm are. */
static void
test_crushing (void)
{
  g_autoptr (BsPlan) plan = slab_new (4, 2000.0, 70.0, 60.0);
  shop_set_wood (plan, 0.40, 4.0);
  shop_add_clamps (plan, 12, 4900.0, 600.0, 35.0);
  BsClampRule rule = rule_of (plan);
  g_autoptr (GArray) positions = rule.positions;

  g_assert_cmpfloat_with_epsilon (rule.head_stress_mpa, 4.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (rule.head_strength_mpa, 4.0, 1e-9);
}

int
main (int argc, char *argv[])
{
  static const double no_caul = 0.0;
  static const double caul = 40.0;

  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (band_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/pressing/band/%s", band_rows[i].path);
      g_test_add_data_func (path, &band_rows[i], test_band);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (force_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/pressing/force/%s", force_rows[i].path);
      g_test_add_data_func (path, &force_rows[i], test_force);
    }
  g_test_add_data_func ("/pressing/spacing/bare", &no_caul, test_spacing);
  g_test_add_data_func ("/pressing/spacing/caul", &caul, test_spacing);
  g_test_add_func ("/pressing/crushing", test_crushing);
  return g_test_run ();
}
