/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/removal.h"

#include <math.h>

#include "image.h"
#include "scene.h"
#include "slabs.h"

#define WIDTH 800
#define TEXT 14.0

/* To scale, side by side in x, and within the room that they were given. */
static void
test_fit (gconstpointer data)
{
  double high = GPOINTER_TO_INT (data);
  g_autoptr (BsPlan) plan = slab_new (10, 2000.0, 40.0, 60.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsRemovalScale show_face, underside;
  double height = bs_removal_fit (&show_face, &underside, stack, WIDTH, high, TEXT, 1.0);

  g_assert_cmpfloat (height, >, 0.0);
  g_assert_cmpfloat (height, <=, high + 1e-6);
  g_assert_cmpfloat (show_face.left + 2000.0 * show_face.per_mm, <=, WIDTH);
  g_assert_cmpfloat_with_epsilon (show_face.per_mm, underside.per_mm, 1e-12);
  g_assert_cmpfloat (underside.top, >=, show_face.top + 400.0 * show_face.per_mm);
}

static void
test_nothing (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsRemovalScale show_face, underside;

  g_assert_cmpfloat_with_epsilon (
      bs_removal_fit (&show_face, &underside, stack, WIDTH, 500.0, TEXT, 1.0), 0.0, 1e-12);
  g_assert_cmpint (bs_removal_find_place (&show_face, stack, 10.0, 10.0), ==, -1);
}

typedef struct
{
  const char *path;
  double x, y; /* mm in the slab */
  int place;
} PlaceRow;

/* Ten of 40 mm, the front one below; the third begins 500 mm from the left end. */
static const PlaceRow place_rows[] = {
  { "front", 10.0, 5.0, 0 },         { "back", 1990.0, 395.0, 9 },  { "third", 600.0, 100.0, 2 },
  { "before-it", 400.0, 100.0, -1 }, { "beyond", 2100.0, 5.0, -1 }, { "in-front", 10.0, -5.0, -1 },
};

static void
test_place (gconstpointer data)
{
  const PlaceRow *row = data;
  g_autoptr (BsPlan) plan = slab_new (10, 2000.0, 40.0, 60.0);
  BsRemovalScale show_face, underside;

  slab_at (plan, 2)->length = 1500.0;
  g_array_index (plan->order, BsPlacement, 2).start = 500.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  bs_removal_fit (&show_face, &underside, stack, WIDTH, 500.0, TEXT, 1.0);
  double x = underside.left + row->x * underside.per_mm;
  double y = underside.top + (400.0 - row->y) * underside.per_mm;
  g_assert_cmpint (bs_removal_find_place (&underside, stack, x, y), ==, row->place);
}

/* All of both maps and the legend lies in the room, in greys on paper. */
static void
test_room (gconstpointer data)
{
  g_autoptr (BsPlan) plan = scene_new_plan (GPOINTER_TO_INT (data), BS_LAYUP_ON_EDGE);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, BS_FLATTEN_SHIMMED, 60, 30);
  const BsPalette *paper = bs_palette_paper ();
  BsRemovalScale show_face, underside;
  cairo_t *cr = image_new (WIDTH + 100, 700);
  cairo_rectangle_int_t box;
  double height = bs_removal_fit (&show_face, &underside, stack, WIDTH, 500.0, TEXT, 1.0);

  bs_draw_removal (cr, map, stack, TRUE, &show_face, NULL, paper);
  bs_draw_removal (cr, map, stack, FALSE, &underside, plan->name, paper);
  cairo_translate (cr, 0.0, height);
  bs_draw_removal_legend (cr, map, plan->units, 300.0, TEXT, 1.0, paper);
  g_assert_cmpint (image_count_ink (cr, &box), >, 1000);
  g_assert_cmpint (box.x, >=, 0);
  g_assert_cmpint (box.x + box.width, <=, WIDTH);
  g_assert_cmpfloat (box.y + box.height, <=, height + BS_HEAT_LEGEND_HEIGHT * TEXT);
  g_assert_true (image_is_grey (cr));
  cairo_destroy (cr);
}

/* The darkest shade is the deepest spot's: of both faces. */
static void
test_heat (void)
{
  g_autoptr (BsPlan) plan = slab_new (5, 2000.0, 40.0, 60.0);
  slab_at (plan, 2)->crook = 3.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, BS_FLATTEN_SHIMMED, 60, 30);
  BsHeat heat = bs_removal_get_heat (map, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpfloat_with_epsilon (heat.from, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (heat.to, 3.0, 1e-4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/removal/fit/high", GINT_TO_POINTER (900), test_fit);
  g_test_add_data_func ("/removal/fit/low", GINT_TO_POINTER (200), test_fit);
  g_test_add_func ("/removal/nothing", test_nothing);
  for (gsize i = 0; i < G_N_ELEMENTS (place_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/removal/place/%s", place_rows[i].path);
      g_test_add_data_func (path, &place_rows[i], test_place);
    }
  g_test_add_data_func ("/removal/room/1", GINT_TO_POINTER (1), test_room);
  g_test_add_data_func ("/removal/room/16", GINT_TO_POINTER (16), test_room);
  g_test_add_data_func ("/removal/room/60", GINT_TO_POINTER (60), test_room);
  g_test_add_func ("/removal/heat", test_heat);
  return g_test_run ();
}
