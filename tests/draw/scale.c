/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/scale.h"

#include <math.h>

#include "scene.h"

static const BsScale plain
    = { .left = 40.0, .top = 25.0, .per_mm_across = 1.3, .per_mm_along = 0.2 };

static BsStack *
new_stack (int n)
{
  g_autoptr (BsPlan) plan = scene_new_plan (n, BS_LAYUP_ON_EDGE);

  return bs_stack_new (plan);
}

static void
test_round_trip (void)
{
  for (int i = 0; i < 80; i++)
    {
      double mm = -50.0 + 37.3 * i;

      /* to 1e-9 mm: a few roundings of doubles near 3000 */
      g_assert_cmpfloat_with_epsilon (bs_scale_to_y (&plain, bs_scale_from_y (&plain, mm)), mm,
                                      1e-9);
      g_assert_cmpfloat_with_epsilon (bs_scale_to_x (&plain, bs_scale_from_x (&plain, mm)), mm,
                                      1e-9);
    }
  g_assert_cmpfloat_with_epsilon (bs_scale_from_y (&plain, 100.0), 170.0, 1e-9); /* 40 + 130 */
  g_assert_cmpfloat_with_epsilon (bs_scale_from_x (&plain, 100.0), 45.0, 1e-9);  /* 25 + 20 */
}

static void
test_nothing (void)
{
  const BsScale nothing = { .left = 40.0, .top = 25.0 };

  g_assert_cmpfloat_with_epsilon (bs_scale_to_y (&nothing, 500.0), 0.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (bs_scale_to_x (&nothing, 500.0), 0.0, 1e-9);
}

static void
test_find_place (void)
{
  g_autoptr (BsStack) stack = new_stack (16);

  for (int i = 0; i < 16; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double left = bs_scale_from_y (&plain, placed->y);
      double middle = bs_scale_from_y (&plain, placed->y + 0.5 * placed->thickness);

      g_assert_cmpint (bs_scale_find_place (&plain, stack, middle), ==, i);
      g_assert_cmpint (bs_scale_find_place (&plain, stack, left + 1e-6), ==, i);
      g_assert_cmpint (bs_scale_find_place (&plain, stack, left - 1e-6), ==, i - 1);
    }
  g_assert_cmpint (bs_scale_find_place (&plain, stack, bs_scale_from_y (&plain, -1.0)), ==, -1);
  g_assert_cmpint (
      bs_scale_find_place (&plain, stack, bs_scale_from_y (&plain, stack->width + 1.0)), ==, -1);
}

/* A line of exact numbers, so that the device position is the boundary itself. */
static void
test_tie (void)
{
  const BsScale exact = { .per_mm_across = 2.0 };
  g_autoptr (BsStack) stack = new_stack (2);

  g_assert_cmpint (
      bs_scale_find_place (&exact, stack, bs_scale_from_y (&exact, stack->placed[1].y)), ==, 1);
}

static void
test_find_gap (void)
{
  g_autoptr (BsStack) stack = new_stack (16);
  int last = 0;

  for (int step = 0; step < 1300; step++)
    {
      double device = 0.7 * step;
      int gap = bs_scale_find_gap (&plain, stack, device);
      int before = 0;

      /* the gap is behind every lamination whose middle lies before the pointer */
      for (guint i = 0; i < stack->n; i++)
        if (bs_scale_from_y (&plain, stack->placed[i].y + 0.5 * stack->placed[i].thickness)
            < device)
          before++;
      g_assert_cmpint (gap, ==, before);
      g_assert_cmpint (gap, >=, last);
      last = gap;
    }
  g_assert_cmpint (last, ==, 16);
}

static void
test_empty (void)
{
  g_autoptr (BsStack) stack = new_stack (0);
  BsScale section, face;

  g_assert_cmpint (bs_scale_find_place (&plain, stack, 60.0), ==, -1);
  g_assert_cmpint (bs_scale_find_gap (&plain, stack, 60.0), ==, 0);
  bs_scale_fit (&section, &face, stack, 800.0, 600.0, 13.0, 1.0);
  g_assert_cmpfloat_with_epsilon (section.per_mm_across, 0.0, 1e-9);
}

typedef struct
{
  const char *path;
  int n;
  double width, height;
} FitRow;

static const FitRow fit_rows[] = {
  { "/scale/fit/5", 5, 1000.0, 800.0 },        { "/scale/fit/16", 16, 1000.0, 800.0 },
  { "/scale/fit/60", 60, 1000.0, 800.0 },      { "/scale/fit/narrow", 16, 400.0, 900.0 },
  { "/scale/fit/shallow", 16, 1600.0, 300.0 },
};

/* Both pictures lie inside the area, in step, one under the other, and no longer than true. */
static void
test_fit (gconstpointer data)
{
  const FitRow *row = data;
  g_autoptr (BsStack) stack = new_stack (row->n);
  BsScale section, face;

  bs_scale_fit (&section, &face, stack, row->width, row->height, 12.0, 1.0);
  g_assert_cmpfloat (section.per_mm_across, >, 0.0);
  g_assert_cmpfloat (section.left, >, 0.0);
  g_assert_cmpfloat (bs_scale_from_y (&section, stack->width), <, row->width);
  g_assert_cmpfloat_with_epsilon (section.left, face.left, 1e-9);
  g_assert_cmpfloat_with_epsilon (section.per_mm_across, face.per_mm_across, 1e-9);
  g_assert_cmpfloat (section.top + stack->height * section.per_mm_across, <, face.top);
  g_assert_cmpfloat (bs_scale_from_x (&face, stack->length), <, row->height);
  g_assert_cmpfloat (face.per_mm_along, <=, face.per_mm_across);
}

/* An area too small for anything gives a scale of nothing, not a negative one. */
static void
test_fit_small (void)
{
  g_autoptr (BsStack) stack = new_stack (16);
  BsScale section, face;

  bs_scale_fit (&section, &face, stack, 20.0, 10.0, 12.0, 1.0);
  g_assert_cmpfloat (section.per_mm_across, >=, 0.0);
  g_assert_cmpfloat (face.per_mm_along, >=, 0.0);
}

static void
test_labels (void)
{
  g_autoptr (BsStack) few = new_stack (9), many = new_stack (60);
  BsScale scale = { .per_mm_across = 2.0 };

  /* 34 mm at 2 hold one figure of any size here */
  bs_scale_fit_labels (&scale, few, 14.0);
  g_assert_cmpfloat_with_epsilon (scale.label_size, 14.0, 1e-9);
  g_assert_false (scale.labels_stand);

  /* 34 mm at 0.2 are 6.8, too little for two figures of 0.6 x 14 */
  scale.per_mm_across = 0.2;
  bs_scale_fit_labels (&scale, many, 14.0);
  g_assert_true (scale.labels_stand);
  g_assert_cmpfloat (scale.label_size, <, 6.8);
  g_assert_cmpfloat (scale.label_size, >, 0.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scale/round-trip", test_round_trip);
  g_test_add_func ("/scale/nothing", test_nothing);
  g_test_add_func ("/scale/find-place", test_find_place);
  g_test_add_func ("/scale/tie", test_tie);
  g_test_add_func ("/scale/find-gap", test_find_gap);
  g_test_add_func ("/scale/empty", test_empty);
  for (gsize i = 0; i < G_N_ELEMENTS (fit_rows); i++)
    g_test_add_data_func (fit_rows[i].path, &fit_rows[i], test_fit);
  g_test_add_func ("/scale/fit/too-small", test_fit_small);
  g_test_add_func ("/scale/labels", test_labels);
  return g_test_run ();
}
