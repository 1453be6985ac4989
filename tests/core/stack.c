/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stack.h"

#include "slabs.h"

#include <math.h>

#define EXACT 1e-12

/* One lamination 2000 x 40 x 90 mm, all of its values different, lying as told at x = 100 behind
 * another. */
static BsStack *
stack_turned (BsOrientation orientation, BsLayup layup)
{
  g_autoptr (BsPlan) plan = slab_new (2, 2000.0, 40.0, 90.0);
  BsLamination *lamination = slab_at (plan, 1);
  BsPlacement *placement = &g_array_index (plan->order, BsPlacement, 1);
  BsDefect knot = { BS_DEFECT_KNOT, BS_FACE_TOP, 200.0, 260.0, 5.0, 15.0, 1.0, NULL };
  BsDefect hole = { BS_DEFECT_HOLE, BS_FACE_LEFT, 300.0, 310.0, 70.0, 80.0, 1.0, NULL };

  lamination->bow = 1.0;
  lamination->crook = 2.0;
  lamination->cup = 3.0;
  lamination->twist = 4.0;
  lamination->taper = 5.0;
  lamination->pith_y = 60.0;
  lamination->pith_z = 50.0;
  lamination->run_out_top = 1;
  lamination->run_out_underside = 0;
  g_array_append_val (lamination->defects, knot);
  g_array_append_val (lamination->defects, hole);
  placement->orientation = orientation;
  placement->start = 100.0;
  plan->slab.layup = layup;
  return bs_stack_new (plan);
}

/* Signs by hand: y and z values follow the turn, the hand of a twist does not change, the higher
 * end changes ends with the wood, and run-out looks the other way when the ends change. */
typedef struct
{
  const char *path;
  BsOrientation orientation;
  int heart_side;
  double bow, crook, cup_on_edge, cup_on_flat;
  double height_left, height_right;
  double pith_y, pith_z;
  int run_out_top, run_out_underside;
  BsFace knot_face, hole_face;
  double knot_x_from, knot_across_from;
  double hole_x_from, hole_across_from;
} Row;

static const Row rows[] = {
  { "as-marked", BS_ORIENTATION_AS_MARKED, 1, 1, 2, 3, 3, 90, 95, 60, 50, 1, 0, BS_FACE_TOP,
    BS_FACE_LEFT, 300, 45, 400, 70 },
  { "over", BS_ORIENTATION_OVER, -1, -1, -2, -3, -3, 90, 95, -60, -50, 0, 1, BS_FACE_UNDERSIDE,
    BS_FACE_RIGHT, 300, 65, 400, 10 },
  { "end-for-end", BS_ORIENTATION_END_FOR_END, -1, -1, 2, -3, 3, 95, 90, -60, 50, -1, 0,
    BS_FACE_TOP, BS_FACE_RIGHT, 1840, 65, 1790, 70 },
  { "over-and-end", BS_ORIENTATION_OVER_AND_END, 1, 1, -2, 3, -3, 95, 90, 60, -50, 0, -1,
    BS_FACE_UNDERSIDE, BS_FACE_LEFT, 1840, 45, 1790, 10 },
};

static void
test_turned (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsStack) stack = stack_turned (row->orientation, BS_LAYUP_ON_EDGE);
  const BsPlaced *placed = &stack->placed[1];

  g_assert_cmpfloat_with_epsilon (placed->bow, row->bow, EXACT);
  g_assert_cmpfloat_with_epsilon (placed->crook, row->crook, EXACT);
  g_assert_cmpfloat_with_epsilon (placed->cup, row->cup_on_edge, EXACT);
  g_assert_cmpfloat_with_epsilon (placed->twist, 4.0, EXACT);
  g_assert_cmpfloat_with_epsilon (placed->height_left, row->height_left, EXACT);
  g_assert_cmpfloat_with_epsilon (placed->height_right, row->height_right, EXACT);
  g_assert_cmpfloat_with_epsilon (placed->pith_y, row->pith_y, EXACT);
  g_assert_cmpfloat_with_epsilon (placed->pith_z, row->pith_z, EXACT);
  g_assert_cmpint (placed->run_out_top, ==, row->run_out_top);
  g_assert_cmpint (placed->run_out_underside, ==, row->run_out_underside);
  g_assert_cmpint (placed->heart_side, ==, row->heart_side);
}

static void
test_cup_on_flat (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsStack) stack = stack_turned (row->orientation, BS_LAYUP_ON_FLAT);

  g_assert_cmpfloat_with_epsilon (stack->placed[1].cup, row->cup_on_flat, EXACT);
  g_assert_cmpint (stack->placed[1].heart_side, ==, 0); /* 60 across, 50 up: quartersawn */
}

static void
test_defects (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsStack) stack = stack_turned (row->orientation, BS_LAYUP_ON_EDGE);
  const BsPlaced *placed = &stack->placed[1];
  const GArray *defects = placed->lamination->defects;
  BsPlacedDefect knot = bs_placed_defect (placed, &g_array_index (defects, BsDefect, 0));
  BsPlacedDefect hole = bs_placed_defect (placed, &g_array_index (defects, BsDefect, 1));

  g_assert_cmpint (knot.face, ==, row->knot_face);
  g_assert_cmpfloat_with_epsilon (knot.x_from, row->knot_x_from, EXACT);
  g_assert_cmpfloat_with_epsilon (knot.x_to, row->knot_x_from + 60.0, EXACT);
  g_assert_cmpfloat_with_epsilon (knot.across_from, row->knot_across_from, EXACT);
  g_assert_cmpfloat_with_epsilon (knot.across_to, row->knot_across_from + 10.0, EXACT);
  g_assert_cmpint (hole.face, ==, row->hole_face);
  g_assert_cmpfloat_with_epsilon (hole.x_from, row->hole_x_from, EXACT);
  g_assert_cmpfloat_with_epsilon (hole.across_from, row->hole_across_from, EXACT);
  g_assert_cmpfloat_with_epsilon (hole.across_to, row->hole_across_from + 10.0, EXACT);
}

static void
test_extent (void)
{
  g_autoptr (BsStack) stack = stack_turned (BS_ORIENTATION_AS_MARKED, BS_LAYUP_ON_EDGE);

  g_assert_cmpuint (stack->n, ==, 2);
  g_assert_cmpfloat_with_epsilon (stack->length, 2100.0, EXACT);
  g_assert_cmpfloat_with_epsilon (stack->width, 80.0, EXACT);
  g_assert_cmpfloat_with_epsilon (stack->height, 95.0, EXACT);
  g_assert_cmpfloat_with_epsilon (stack->placed[1].y, 40.0, EXACT);
  g_assert_cmpfloat_with_epsilon (bs_stack_covered_length (stack), 1900.0, EXACT);
  /* 1900 mm in common, 90 mm against a mean of 92.5. */
  g_assert_cmpfloat_with_epsilon (bs_stack_glue_area (stack, 0), 1900.0 * 90.0, 1e-9);
}

static void
test_apart (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 500.0, 40.0, 90.0);

  g_array_index (plan->order, BsPlacement, 1).start = 800.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_assert_cmpfloat_with_epsilon (bs_stack_covered_length (stack), 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_stack_glue_area (stack, 0), 0.0, 1e-12);
}

static void
test_empty (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  g_assert_cmpuint (stack->n, ==, 0);
  g_assert_cmpfloat_with_epsilon (stack->width, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_stack_covered_length (stack), 0.0, 1e-12);
}

/* The laminations are borrowed from the plan, which the stack keeps. */
static void
test_keeps_its_plan (void)
{
  BsPlan *plan = slab_new (1, 500.0, 40.0, 90.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  bs_plan_unref (plan);
  g_assert_cmpstr (stack->placed[0].lamination->id, ==, "1");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *turned = g_strdup_printf ("/stack/turned/%s", rows[i].path);
      g_autofree char *cup = g_strdup_printf ("/stack/cup-on-flat/%s", rows[i].path);
      g_autofree char *defects = g_strdup_printf ("/stack/defects/%s", rows[i].path);
      g_test_add_data_func (turned, &rows[i], test_turned);
      g_test_add_data_func (cup, &rows[i], test_cup_on_flat);
      g_test_add_data_func (defects, &rows[i], test_defects);
    }
  g_test_add_func ("/stack/extent", test_extent);
  g_test_add_func ("/stack/apart", test_apart);
  g_test_add_func ("/stack/empty", test_empty);
  g_test_add_func ("/stack/keeps-its-plan", test_keeps_its_plan);
  return g_test_run ();
}
