/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/proposal.h"

#include "image.h"
#include "scene.h"

#define WIDTH 900
#define TEXT 13.0

/* The slab with its laminations in reverse, the first of them turned end for end. */
static BsPlan *
reverse (const BsPlan *plan)
{
  BsPlan *reversed = bs_plan_copy (plan);

  g_array_set_size (reversed->order, 0);
  for (guint i = 0; i < plan->order->len; i++)
    {
      const BsPlacement *placement = &g_array_index (plan->order, BsPlacement, i);
      bs_plan_insert_placement (reversed, 0, placement->lamination,
                                placement->orientation ^ (i == 0 ? BS_ORIENTATION_END_FOR_END : 0),
                                placement->start);
    }
  return reversed;
}

static cairo_t *
draw (const BsPlan *present, const BsPlan *proposed, double per_mm, const char *selected,
      double *height)
{
  g_autoptr (BsResults) now = bs_evaluate (present), then = bs_evaluate (proposed);
  cairo_t *cr;
  BsScale scale;

  bs_proposal_fit (&scale, now->stack, then->stack, per_mm, WIDTH, TEXT);
  *height = bs_proposal_get_height (then->stack, &scale);
  cr = image_new (WIDTH + 50, (int)*height + 50);
  bs_draw_proposal_section (cr, then, &scale, bs_palette_paper (), selected);
  bs_draw_proposal_changes (cr, now->stack, then, &scale, bs_palette_paper (), selected);
  return cr;
}

/* All of it lies within the width and the height that it asks for, in ink alone on paper, however
 * large the scale that is wished. */
static void
test_room (gconstpointer data)
{
  static const double scales[] = { 0.1, 0.3, 1.0, 8.0 }; /* pixels for each mm */
  g_autoptr (BsPlan) plan = scene_new_plan (GPOINTER_TO_INT (data), BS_LAYUP_ON_EDGE);
  g_autoptr (BsPlan) reversed = reverse (plan);

  for (guint i = 0; i < G_N_ELEMENTS (scales); i++)
    {
      double height;
      cairo_t *cr = draw (plan, reversed, scales[i], NULL, &height);
      cairo_rectangle_int_t box;

      g_assert_cmpint (image_count_ink (cr, &box), >, 0);
      g_assert_cmpint (box.x, >=, 0);
      g_assert_cmpint (box.x + box.width, <=, WIDTH);
      g_assert_cmpint (box.y + box.height, <=, (int)height);
      g_assert_true (image_is_grey (cr));
      cairo_destroy (cr);
    }
}

/* The scale asked for where it fits, and the slab in the middle, as in the section's own picture.
 */
static void
test_scale (void)
{
  g_autoptr (BsPlan) plan = scene_new_plan (8, BS_LAYUP_ON_EDGE);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  double width = stack->width;
  BsScale scale;

  bs_proposal_fit (&scale, stack, stack, 0.5, WIDTH, TEXT);
  g_assert_cmpfloat_with_epsilon (scale.per_mm_across, 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (scale.left + 0.25 * width, 0.5 * WIDTH, 1.0);
  bs_proposal_fit (&scale, stack, stack, 100.0, WIDTH, TEXT);
  g_assert_cmpfloat (scale.left, >, 0.0);
  g_assert_cmpfloat (scale.left + scale.per_mm_across * width, <, WIDTH);
}

/* Another order, another turn and another selection are each seen. */
static void
test_shows (void)
{
  g_autoptr (BsPlan) plan = scene_new_plan (6, BS_LAYUP_ON_EDGE);
  g_autoptr (BsPlan) reversed = reverse (plan), turned = bs_plan_copy (plan);
  const char *id = g_array_index (plan->order, BsPlacement, 2).lamination;
  double height;

  g_array_index (turned->order, BsPlacement, 2).orientation ^= BS_ORIENTATION_OVER;
  cairo_t *same = draw (plan, plan, 0.5, NULL, &height);
  cairo_t *others[]
      = { draw (plan, reversed, 0.5, NULL, &height), draw (plan, turned, 0.5, NULL, &height),
          draw (plan, plan, 0.5, id, &height) };
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    {
      g_assert_cmpint (image_difference (same, others[i], FALSE), >, 64);
      cairo_destroy (others[i]);
    }
  cairo_destroy (same);
}

/* Nothing to draw, or sizes that nobody knows: no picture and no harm. */
static void
test_nothing (void)
{
  g_autoptr (BsPlan) empty = bs_plan_new (), unknown = scene_new_unknown_plan (3);
  double height;
  cairo_t *first = draw (empty, empty, 1.0, NULL, &height);
  cairo_t *second = draw (unknown, unknown, 1.0, NULL, &height);
  cairo_rectangle_int_t box;

  g_assert_cmpint (image_count_ink (first, &box), ==, 0);
  g_assert_cmpint (image_count_ink (second, &box), ==, 0);
  cairo_destroy (first);
  cairo_destroy (second);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/proposal/room/5", GINT_TO_POINTER (5), test_room);
  g_test_add_data_func ("/proposal/room/60", GINT_TO_POINTER (60), test_room);
  g_test_add_func ("/proposal/scale", test_scale);
  g_test_add_func ("/proposal/shows", test_shows);
  g_test_add_func ("/proposal/nothing", test_nothing);
  return g_test_run ();
}
