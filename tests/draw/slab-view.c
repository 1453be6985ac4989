/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/slab-view.h"

#include <math.h>

#include "image.h"
#include "scene.h"
#include "slabs.h"

#define WIDTH 700
#define MARGIN 40
#define TEXT 10.0

static BsChart
paper_chart (void)
{
  return (BsChart){
    .width = WIDTH, .text_size = TEXT, .hairline = 1.0, .palette = bs_palette_paper ()
  };
}

typedef struct
{
  const char *path;
  guint n;
  double length, width, thickness;
} Row;

static const Row rows[] = {
  { "counter", 12, 1800.0, 600.0, 60.0 }, { "wish", 0, 1800.0, 600.0, 60.0 },
  { "cube", 4, 300.0, 300.0, 300.0 },     { "least", 1, 50.0, 20.0, 5.0 },
  { "longest", 3, 15000.0, 20.0, 5.0 },   { "widest", 40, 50.0, 5000.0, 1000.0 },
};

static BsPlan *
new_plan (const Row *row)
{
  BsPlan *plan = slab_new (row->n, row->length, row->width / MAX (row->n, 1), row->thickness);

  plan->slab.length = row->length;
  plan->slab.width = row->width;
  plan->slab.thickness = row->thickness;
  return plan;
}

static cairo_t *
draw (const BsPlan *plan)
{
  const BsChart chart = paper_chart ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  const int height = (int)ceil (bs_slab_view_get_height (stack, &chart));
  cairo_t *cr = image_new (WIDTH + 2 * MARGIN, height + 2 * MARGIN);

  cairo_translate (cr, MARGIN, MARGIN);
  bs_draw_slab_view (cr, stack, &chart);
  return cr;
}

static void
test_room (gconstpointer data)
{
  const BsChart chart = paper_chart ();
  g_autoptr (BsPlan) plan = new_plan (data);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  const int height = (int)ceil (bs_slab_view_get_height (stack, &chart));
  cairo_rectangle_int_t box;
  cairo_t *cr = draw (plan);

  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.x, >=, MARGIN);
  g_assert_cmpint (box.y, >=, MARGIN);
  g_assert_cmpint (box.x + box.width, <=, MARGIN + WIDTH);
  g_assert_cmpint (box.y + box.height, <=, MARGIN + height);
  g_assert_true (image_is_grey (cr));
  cairo_destroy (cr);
}

/* By hand: what runs away from the eye is drawn at 45 degrees and half of its length, so that 1414
 * mm of width take 500 across and 500 up (ISO 5456-3:1996, cabinet axonometry; from memory). Of 700
 * 14 texts are for words, which leaves 560 for 900 + 500 mm; over and under the picture there are 4
 * texts. */
static void
test_height_by_hand (void)
{
  const Row row = { NULL, 0, 900.0, 1000.0 * G_SQRT2, 0.0 };
  const BsChart chart = paper_chart ();
  g_autoptr (BsPlan) plan = new_plan (&row);
  g_autoptr (BsStack) stack = bs_stack_new (plan);

  g_assert_cmpfloat_with_epsilon (bs_slab_view_get_height (stack, &chart),
                                  4.0 * TEXT + 500.0 * 560.0 / 1400.0, 1e-6);
}

/* Laminations whose sizes are not known are left out. */
static void
test_unknown (void)
{
  g_autoptr (BsPlan) plan = scene_new_unknown_plan (5);
  cairo_t *cr = draw (plan);
  cairo_rectangle_int_t box;

  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  cairo_destroy (cr);
}

/* What people see is told by the picture, each side by itself. */
static void
test_pale_sides (void)
{
  g_autoptr (BsPlan) plan = new_plan (&rows[0]);

  plan->slab.shows_front = plan->slab.shows_ends = TRUE;
  cairo_t *seen = draw (plan);
  plan->slab.shows_front = FALSE;
  cairo_t *no_front = draw (plan);
  plan->slab.shows_front = TRUE;
  plan->slab.shows_ends = FALSE;
  cairo_t *no_ends = draw (plan);
  g_assert_cmpint (image_difference (seen, no_front, FALSE), >, 0);
  g_assert_cmpint (image_difference (seen, no_ends, FALSE), >, 0);
  g_assert_cmpint (image_difference (no_front, no_ends, FALSE), >, 0);
  cairo_destroy (seen);
  cairo_destroy (no_front);
  cairo_destroy (no_ends);
}

/* Two laminations of one wood have a joint, which one as wide as both has not. */
static void
test_joints (void)
{
  const Row one = { NULL, 1, 1800.0, 600.0, 60.0 }, two = { NULL, 2, 1800.0, 600.0, 60.0 };
  g_autoptr (BsPlan) whole = new_plan (&one);
  g_autoptr (BsPlan) halves = new_plan (&two);
  cairo_rectangle_int_t box;
  cairo_t *without = draw (whole), *with = draw (halves);

  g_assert_cmpint (image_count_ink (with, &box), >, image_count_ink (without, &box));
  cairo_destroy (without);
  cairo_destroy (with);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/slab-view/room/%s", rows[i].path);
      g_test_add_data_func (path, &rows[i], test_room);
    }
  g_test_add_func ("/slab-view/height-by-hand", test_height_by_hand);
  g_test_add_func ("/slab-view/unknown", test_unknown);
  g_test_add_func ("/slab-view/pale-sides", test_pale_sides);
  g_test_add_func ("/slab-view/joints", test_joints);
  return g_test_run ();
}
