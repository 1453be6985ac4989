/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-map.h"

#include "core/flatten.h"
#include "slabs.h"

#include <math.h>

static double
thickness_by (const BsStack *stack, BsFlattenWork work)
{
  BsFlattenResult result;

  bs_flatten_by (stack, work, &result);
  return result.thickness;
}

static BsPlan *
warped_slab (GRand *random)
{
  BsPlan *plan = slab_new ((guint)g_rand_int_range (random, 1, 12), 2000.0, 40.0, 90.0);

  plan->slab.allowance = 0.5;
  for (guint i = 0; i < plan->order->len; i++)
    {
      BsLamination *lamination = slab_at (plan, i);
      lamination->height = g_rand_double_range (random, 88.0, 92.0);
      lamination->crook = g_rand_double_range (random, -3.0, 3.0);
      lamination->twist = g_rand_double_range (random, -5.0, 5.0);
    }
  return plan;
}

static void
check_deep (const BsDeepSpots *deep, double allowance)
{
  g_assert_cmpuint (deep->n, >, 0);
  for (guint i = 0; i < deep->n; i++)
    {
      g_assert_cmpfloat (deep->spots[i].depth, >, allowance);
      if (i > 0)
        g_assert_cmpfloat (deep->spots[i].depth, <=, deep->spots[i - 1].depth);
    }
}

/* No cell loses less than the allowance or more than the deepest spot; the three deepest are in
 * order. */
static void
check_map (const BsFlattenMap *map, double allowance)
{
  for (guint i = 0; i < map->n_x * map->n_y; i++)
    {
      g_assert_cmpfloat (map->top[i], >=, allowance - 1e-6);
      g_assert_cmpfloat (map->top[i], <=, map->deep_top.spots[0].depth + 1e-9);
      g_assert_cmpfloat (map->underside[i], >=, allowance - 1e-6);
      g_assert_cmpfloat (map->underside[i], <=, map->deep_underside.spots[0].depth + 1e-9);
    }
  check_deep (&map->deep_top, allowance);
  check_deep (&map->deep_underside, allowance);
  g_assert_cmpfloat (map->top_mean, <=, map->deep_top.spots[0].depth);
  g_assert_cmpfloat (map->top_mean, >=, allowance);
}

static void
test_cells (gconstpointer data)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (21);

  for (int i = 0; i < 60; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random);
      g_autoptr (BsStack) stack = bs_stack_new (plan);
      g_autoptr (BsFlattenMap) map
          = bs_flatten_map_new (stack, (BsFlattenWork)GPOINTER_TO_INT (data), 60, 30);
      check_map (map, 0.5);
      g_assert_cmpfloat_with_epsilon (map->thickness, thickness_by (stack, map->work), 1e-12);
    }
}

static void
test_shimmed_is_best (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (22);

  for (int i = 0; i < 100; i++)
    {
      g_autoptr (BsPlan) plan = warped_slab (random);
      g_autoptr (BsStack) stack = bs_stack_new (plan);
      double best = thickness_by (stack, BS_FLATTEN_SHIMMED);
      BsFlattenResult result;

      bs_flatten (stack, &result);
      g_assert_cmpfloat_with_epsilon (best, result.thickness, 1e-6);
      g_assert_cmpfloat (thickness_by (stack, BS_FLATTEN_SHOW_FACE_FIRST), <=, best + 1e-6);
      g_assert_cmpfloat (thickness_by (stack, BS_FLATTEN_UNDERSIDE_FIRST), <=, best + 1e-6);
    }
}

/* Straight undersides on a bench, tops that fall by half a millimetre from each lamination to the
 * next. Resting on its underside the slab lies flat and keeps the least height, 84 - 8/2 = 80.
 * Resting on its show face it leans on the back edges of the tops, along 84.5 - y/(2 w): the tops'
 * front edges stand 0.5 off that line, the underside is nearest to it at the back, 84.5 - 9/2 = 80:
 * less 0.5 is 79.5. */
static void
test_wedge (void)
{
  guint n = 9;
  g_autoptr (BsPlan) plan = slab_new (n, 1500.0, 40.0, 80.0);

  for (guint i = 0; i < n; i++)
    slab_at (plan, i)->height = 84.0 - 0.5 * i;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_assert_cmpfloat_with_epsilon (thickness_by (stack, BS_FLATTEN_SHIMMED), 80.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (thickness_by (stack, BS_FLATTEN_SHOW_FACE_FIRST), 80.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (thickness_by (stack, BS_FLATTEN_UNDERSIDE_FIRST), 79.5, 1e-6);
}

/* The same wedge. Its undersides on the bench: nothing to shim. Its tops on the bench: the front
 * lamination is 84 mm high and its underside the lowest, the last one is 80 mm high and stands 4 mm
 * over it; 80 mm are left at no tilt, which is the least of the best ones. */
static void
test_shims (void)
{
  g_autoptr (BsPlan) plan = slab_new (9, 1500.0, 40.0, 80.0);
  double shims[BS_N_CORNERS];
  BsFlattenResult result;

  for (guint i = 0; i < 9; i++)
    slab_at (plan, i)->height = 84.0 - 0.5 * i;
  g_autoptr (BsStack) down = bs_stack_new (plan);
  bs_flatten (down, &result);
  bs_flatten_shims (down, &result, shims);
  for (int i = 0; i < BS_N_CORNERS; i++)
    g_assert_cmpfloat_with_epsilon (shims[i], 0.0, 1e-5);

  plan->slab.alignment = BS_ALIGNMENT_SHOW_FACES_DOWN;
  g_autoptr (BsStack) turned = bs_stack_new (plan);
  bs_flatten (turned, &result);
  g_assert_cmpfloat_with_epsilon (result.slope_y, 0.0, 1e-6);
  bs_flatten_shims (turned, &result, shims);
  g_assert_cmpfloat_with_epsilon (shims[BS_CORNER_LEFT_FRONT], 0.0, 1e-4);
  g_assert_cmpfloat_with_epsilon (shims[BS_CORNER_RIGHT_FRONT], 0.0, 1e-4);
  g_assert_cmpfloat_with_epsilon (shims[BS_CORNER_LEFT_BACK], 4.0, 1e-4);
  g_assert_cmpfloat_with_epsilon (shims[BS_CORNER_RIGHT_BACK], 4.0, 1e-4);
}

/* Straight laminations between two that are crooked upwards: the slab rests level. */
static void
test_rests_level (void)
{
  g_autoptr (BsPlan) plan = slab_new (7, 1500.0, 40.0, 80.0);

  slab_at (plan, 0)->crook = slab_at (plan, 6)->crook = 2.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, BS_FLATTEN_SHOW_FACE_FIRST, 15, 7);
  g_assert_cmpfloat_with_epsilon (map->slope_x, 0.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (map->slope_y, 0.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (map->thickness, 78.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (map->deep_top.spots[0].depth, 2.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (map->deep_top.spots[0].x, 750.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (map->deep_top.spots[1].depth, 2.0, 1e-6);
  g_assert_cmpuint (map->deep_top.n, ==, 2);
  g_assert_cmpfloat_with_epsilon (map->deep_underside.spots[0].depth, 2.0, 1e-6);
}

/* Cells where a short lamination does not reach hold no wood. */
static void
test_short_lamination (void)
{
  g_autoptr (BsPlan) plan = slab_new (3, 1000.0, 40.0, 80.0);

  slab_at (plan, 1)->length = 500.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, BS_FLATTEN_SHIMMED, 10, 3);
  for (guint i = 0; i < 10; i++)
    {
      g_assert_false (isnan (map->top[i]));
      g_assert_cmpint (isnan (map->top[10 + i]), ==, i >= 5);
      g_assert_cmpint (isnan (map->underside[10 + i]), ==, i >= 5);
    }
}

static void
test_empty (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, BS_FLATTEN_SHIMMED, 10, 3);

  g_assert_true (isnan (map->thickness));
  g_assert_cmpuint (map->n_x, ==, 0);
  g_assert_true (isnan (thickness_by (stack, BS_FLATTEN_UNDERSIDE_FIRST)));
}

typedef struct
{
  const char *path;
  double planer_width;
  guint n;
  int wanted; /* laminations of 40 mm, by hand */
} PlanerRow;

static const PlanerRow planer_rows[] = {
  { "whole", 280.0, 7, 1 },   { "two", 300.0, 8, 2 },     { "three", 299.0, 15, 3 },
  { "too-wide", 39.0, 3, 0 }, { "no-planer", 0.0, 3, 0 }, { "empty", 300.0, 0, 0 },
};

static void
test_planer (gconstpointer data)
{
  const PlanerRow *row = data;
  g_autoptr (BsPlan) plan = slab_new (row->n, 1000.0, 40.0, 80.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  g_assert_cmpint (bs_flatten_packs_for_planer (stack, row->planer_width), ==, row->wanted);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_data_func ("/flatten-map/cells/shimmed", GINT_TO_POINTER (BS_FLATTEN_SHIMMED),
                        test_cells);
  g_test_add_data_func ("/flatten-map/cells/show-face-first",
                        GINT_TO_POINTER (BS_FLATTEN_SHOW_FACE_FIRST), test_cells);
  g_test_add_data_func ("/flatten-map/cells/underside-first",
                        GINT_TO_POINTER (BS_FLATTEN_UNDERSIDE_FIRST), test_cells);
  g_test_add_func ("/flatten-map/shimmed-is-best", test_shimmed_is_best);
  g_test_add_func ("/flatten-map/wedge", test_wedge);
  g_test_add_func ("/flatten-map/shims", test_shims);
  g_test_add_func ("/flatten-map/rests-level", test_rests_level);
  g_test_add_func ("/flatten-map/short-lamination", test_short_lamination);
  g_test_add_func ("/flatten-map/empty", test_empty);
  for (gsize i = 0; i < G_N_ELEMENTS (planer_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/flatten-map/planer/%s", planer_rows[i].path);
      g_test_add_data_func (path, &planer_rows[i], test_planer);
    }
  return g_test_run ();
}
