/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/profile.h"

#include "image.h"
#include "scene.h"
#include "slabs.h"

#define WIDTH 700
#define TEXT 14.0

typedef struct
{
  const char *path;
  double deepest, per_mm, times;
} TimesRow;

/* By hand: the most that keeps deepest x per_mm x times within 2.6 text sizes, 36.4. */
static const TimesRow times_rows[] = {
  { "ten", 2.0, 1.0, 10.0 },
  { "fifty", 2.0, 0.3, 50.0 },
  { "true", 50.0, 1.0, 1.0 },
  { "most", 0.01, 0.3, 500.0 },
};

static void
test_times (gconstpointer data)
{
  const TimesRow *row = data;

  g_assert_cmpfloat_with_epsilon (bs_profile_times (row->deepest, row->per_mm, TEXT), row->times,
                                  1e-9);
}

static void
test_room (gconstpointer data)
{
  BsProfile profile = (BsProfile)GPOINTER_TO_INT (data);
  g_autoptr (BsPlan) plan = scene_new_plan (16, BS_LAYUP_ON_EDGE);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, BS_FLATTEN_SHIMMED, 120, 60);

  for (guint i = 0; i <= 4; i++)
    {
      double part = -0.1 + 0.3 * i;
      cairo_t *cr = image_new (WIDTH + 100, 300);
      cairo_rectangle_int_t box;
      double at = part * (profile == BS_PROFILE_ACROSS ? stack->length : stack->width);

      bs_draw_profile (cr, map, stack, profile, at, WIDTH, TEXT, 1.0, bs_palette_paper ());
      g_assert_cmpint (image_count_ink (cr, &box), >, 1000);
      g_assert_cmpint (box.x + box.width, <=, WIDTH);
      g_assert_cmpfloat (box.y + box.height, <=, BS_PROFILE_HEIGHT * TEXT);
      g_assert_true (image_is_grey (cr));
      cairo_destroy (cr);
    }
}

/* A crook is seen in the cut along its own lamination and not in that along another. */
static void
test_crook (void)
{
  g_autoptr (BsPlan) plan = slab_new (5, 2000.0, 40.0, 60.0);
  slab_at (plan, 2)->crook = 3.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, BS_FLATTEN_SHIMMED, 120, 60);
  cairo_t *crooked = image_new (WIDTH, 200), *straight = image_new (WIDTH, 200);
  cairo_t *other = image_new (WIDTH, 200);

  bs_draw_profile (crooked, map, stack, BS_PROFILE_ALONG, 100.0, WIDTH, TEXT, 1.0,
                   bs_palette_paper ());
  bs_draw_profile (straight, map, stack, BS_PROFILE_ALONG, 20.0, WIDTH, TEXT, 1.0,
                   bs_palette_paper ());
  bs_draw_profile (other, map, stack, BS_PROFILE_ALONG, 30.0, WIDTH, TEXT, 1.0,
                   bs_palette_paper ());
  g_assert_cmpint (image_difference (crooked, straight, FALSE), >, 0);
  g_assert_cmpint (image_difference (straight, other, FALSE), ==, 0);
  cairo_destroy (crooked);
  cairo_destroy (straight);
  cairo_destroy (other);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (times_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/profile/times/%s", times_rows[i].path);
      g_test_add_data_func (path, &times_rows[i], test_times);
    }
  g_test_add_data_func ("/profile/room/across", GINT_TO_POINTER (BS_PROFILE_ACROSS), test_room);
  g_test_add_data_func ("/profile/room/along", GINT_TO_POINTER (BS_PROFILE_ALONG), test_room);
  g_test_add_func ("/profile/crook", test_crook);
  return g_test_run ();
}
