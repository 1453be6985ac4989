/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/assembly.h"

#include "shops.h"

#include <math.h>

#define EXACT 1e-9

static BsAssembly
times_of (const BsPlan *plan, int n_clamps)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsAssembly assembly;

  bs_assembly_times (stack, n_clamps, &assembly);
  return assembly;
}

/* Eight laminations, joints of 0.054 m2 at 200 s/m2: 10.8 + 5 s to spread, 8 to place, 7 to line
 * up; seven of them and ten clamps of 12 s. */
static void
test_by_hand (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsAssembly assembly = times_of (plan, 10);

  g_assert_cmpint (assembly.n_joints, ==, 7);
  g_assert_cmpfloat_with_epsilon (assembly.area, 7.0 * 54000.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (assembly.open_s, 23.8, EXACT);
  g_assert_cmpfloat_with_epsilon (assembly.total_s, 7.0 * 30.8 + 120.0, EXACT);
  g_assert_cmpfloat_with_epsilon (assembly.closed_s, 7.0 * 30.8 + 120.0 - 23.8, EXACT);
  g_assert_cmpfloat_with_epsilon (assembly.limit_s, 600.0, EXACT);
  g_assert_cmpfloat_with_epsilon (assembly.left_s, 600.0 - assembly.total_s, EXACT);
  g_assert_cmpfloat_with_epsilon (assembly.clamp_s, 5400.0, EXACT);
}

/* Two people halve the spreading and the tightening, not the placing: 7 (5 + 5.4 + 8 + 7) + 60. */
static void
test_two_people (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  plan->shop.people = 2;
  BsAssembly assembly = times_of (plan, 10);

  g_assert_cmpfloat_with_epsilon (assembly.total_s, 7.0 * 25.4 + 60.0, EXACT);
}

/* The joint that takes longest is open longest, wherever it is: here the last, of twice the length.
 */
static void
test_uneven_joints (void)
{
  g_autoptr (BsPlan) plan = slab_new (3, 1000.0, 40.0, 50.0);
  slab_at (plan, 1)->length = 2000.0;
  slab_at (plan, 2)->length = 2000.0;
  BsAssembly assembly = times_of (plan, 0);

  /* 0.05 m2: 10 + 5 + 8 = 23 s; 0.1 m2: 20 + 5 + 8 = 33 s. */
  g_assert_cmpfloat_with_epsilon (assembly.open_s, 33.0, EXACT);
  g_assert_cmpfloat_with_epsilon (assembly.total_s, 23.0 + 33.0 + 14.0, EXACT);
  g_assert_cmpfloat_with_epsilon (assembly.closed_s, assembly.total_s - 23.0, EXACT);
}

/* Two packs of four: three joints each, and one between them; the longest press counts. */
static void
test_packs (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsPack packs[] = { { 0, 4 }, { 4, 4 } };
  g_array_append_vals (plan->packs, packs, 2);
  BsAssembly assembly = times_of (plan, 10);

  g_assert_cmpint (assembly.n_joints, ==, 3);
  g_assert_cmpfloat_with_epsilon (assembly.total_s, 3.0 * 30.8 + 120.0, EXACT);
}

/* Two pairs glued to a pack of five with the one between them: pair, pair, two joints; three in the
 * final press. */
static void
test_packs_of_packs (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  const BsPack packs[] = { { 0, 5 }, { 0, 2 }, { 3, 2 } };
  g_array_append_vals (plan->packs, packs, G_N_ELEMENTS (packs));
  BsAssembly assembly = times_of (plan, 10);

  g_assert_cmpint (assembly.n_joints, ==, 3);
  g_assert_cmpfloat_with_epsilon (assembly.total_s, 3.0 * 30.8 + 120.0, EXACT);
  g_array_set_size (plan->packs, 1); /* the pack of five in one press */
  g_assert_cmpint (times_of (plan, 10).n_joints, ==, 4);
}

static void
test_nothing_to_glue (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  BsAssembly assembly = times_of (plan, 0);

  g_assert_cmpint (assembly.n_joints, ==, 0);
  g_assert_cmpfloat_with_epsilon (assembly.total_s, 0.0, EXACT);
  g_assert_cmpfloat_with_epsilon (assembly.left_s, 600.0, EXACT);
}

/* The planning rule of docs/models.md, Assembly time, by hand: an adhesive of 300 s open, 600 s in
 * all. */
typedef struct
{
  const char *path;
  double temperature_c, humidity_pct, moisture_pct;
  gboolean is_waterborne, is_moisture_curing;
  double open_s, total_s, clamp_s;
} ClimateRow;

static const ClimateRow climate_rows[] = {
  { "reference", 20, 50, 9, TRUE, FALSE, 300, 600, 5400 },
  { "ten-colder", 10, 50, 9, TRUE, FALSE, 600, 1200, 10800 },
  { "ten-warmer", 30, 50, 9, TRUE, FALSE, 150, 300, 2700 },
  { "no-colder-counts", 0, 50, 9, TRUE, FALSE, 600, 1200, 10800 },
  { "dry-air", 20, 39, 9, TRUE, FALSE, 210, 510, 5400 },
  { "not-yet-dry", 20, 40, 9, TRUE, FALSE, 300, 600, 5400 },
  { "damp-air", 20, 71, 9, TRUE, FALSE, 360, 660, 5400 },
  { "no-water-in-it", 20, 30, 9, FALSE, FALSE, 300, 600, 5400 },
  { "curing/damp-air", 20, 71, 9, FALSE, TRUE, 210, 420, 5400 },
  { "curing/moist-wood", 20, 50, 11, FALSE, TRUE, 210, 420, 5400 },
  { "curing/dry", 20, 30, 7, FALSE, TRUE, 300, 600, 5400 },
  { "curing/unknown-wood", 20, 50, NAN, FALSE, TRUE, 300, 600, 5400 },
};

static void
test_climate (gconstpointer data)
{
  const ClimateRow *row = data;
  BsAdhesive adhesive = {
    .open_s = 300.0,
    .total_s = 600.0,
    .clamp_s = 5400.0,
    .is_waterborne = row->is_waterborne,
    .is_moisture_curing = row->is_moisture_curing,
  };
  BsClimate climate = { row->temperature_c, row->humidity_pct };
  BsAdhesiveTimes times = bs_assembly_limits (&adhesive, &climate, row->moisture_pct);

  g_assert_cmpfloat_with_epsilon (times.open_s, row->open_s, EXACT);
  g_assert_cmpfloat_with_epsilon (times.total_s, row->total_s, EXACT);
  g_assert_cmpfloat_with_epsilon (times.clamp_s, row->clamp_s, EXACT);
}

/* A warmer shop never allows more time. */
static void
test_warmer_is_shorter (void)
{
  BsAdhesive adhesive = { .open_s = 300.0, .total_s = 600.0, .clamp_s = 5400.0 };
  double former = INFINITY;

  for (int t = -10; t <= 50; t++)
    {
      BsClimate climate = { t, 50.0 };
      double total = bs_assembly_limits (&adhesive, &climate, 9.0).total_s;
      g_assert_cmpfloat (total, <=, former);
      former = total;
    }
}

static void
test_parts (void)
{
  BsShop shop = { .people = 2, .times = { .spread_s_per_m2 = 200, .joint_s = 5, .tighten_s = 12 } };

  g_assert_cmpfloat_with_epsilon (bs_assembly_joint_s (&shop, 100000.0), 15.0, EXACT);
  g_assert_cmpfloat_with_epsilon (bs_assembly_tighten_s (&shop, 5), 30.0, EXACT);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/assembly/by-hand", test_by_hand);
  g_test_add_func ("/assembly/two-people", test_two_people);
  g_test_add_func ("/assembly/uneven-joints", test_uneven_joints);
  g_test_add_func ("/assembly/packs", test_packs);
  g_test_add_func ("/assembly/packs/nested", test_packs_of_packs);
  g_test_add_func ("/assembly/nothing-to-glue", test_nothing_to_glue);
  for (gsize i = 0; i < G_N_ELEMENTS (climate_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/assembly/climate/%s", climate_rows[i].path);
      g_test_add_data_func (path, &climate_rows[i], test_climate);
    }
  g_test_add_func ("/assembly/warmer-is-shorter", test_warmer_is_shorter);
  g_test_add_func ("/assembly/parts", test_parts);
  return g_test_run ();
}
