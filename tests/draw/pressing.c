/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/pressing.h"

#include "image.h"
#include "shops.h"

#include <math.h>

#define WIDTH 900
#define HEIGHT 500
#define TEXT 13.0

typedef struct
{
  BsPlan *plan;
  BsResults *results;
  BsPressure *pressure;
  BsPressingScale scale;
} Scene;

/* n clamps; few of them leave spots that are pressed too little, and open. */
static void
scene_init (Scene *self, guint n, double force_n)
{
  self->plan = shop_new_pressed (0);
  for (guint i = 0; i < n; i++)
    bs_plan_place_clamp (self->plan, "clamp", 1500.0 / n * (i + 0.5), force_n, i % 2 == 0);
  self->results = bs_evaluate (self->plan);
  self->pressure = bs_pressure_new (self->plan, BS_PRESS_MODEL_SQUEEZE);
  bs_pressing_scale_fit (&self->scale, self->results, WIDTH - 20, HEIGHT - 20, TEXT, 1.0);
}

static void
scene_clear (Scene *self)
{
  bs_pressure_free (self->pressure);
  bs_results_unref (self->results);
  bs_plan_unref (self->plan);
}

/* The slab is to scale, within its area, and a device position leads back to its millimetre. */
static void
test_scale (void)
{
  Scene scene;

  scene_init (&scene, 8, 4000.0);
  g_assert_cmpfloat_with_epsilon (scene.scale.per_mm_along, scene.scale.per_mm_across, 1e-9);
  g_assert_cmpfloat (bs_pressing_scale_get_height (&scene.scale), <=, HEIGHT - 20);
  g_assert_cmpfloat (bs_pressing_scale_from_x (&scene.scale, 1500.0), <, WIDTH - 20);
  for (guint i = 0; i <= 6; i++)
    g_assert_cmpfloat_with_epsilon (
        bs_pressing_scale_to_x (&scene.scale, bs_pressing_scale_from_x (&scene.scale, 250.0 * i)),
        250.0 * i, 1e-9);
  /* The front is at the bottom. */
  g_assert_cmpfloat (bs_pressing_scale_from_y (&scene.scale, 0.0), >,
                     bs_pressing_scale_from_y (&scene.scale, 400.0));
  scene_clear (&scene);
}

/* A wide slab in a low area is drawn narrower than true, and still lies within. */
static void
test_low (void)
{
  Scene scene;

  scene_init (&scene, 8, 4000.0);
  bs_pressing_scale_fit (&scene.scale, scene.results, WIDTH, 220.0, TEXT, 1.0);
  g_assert_cmpfloat (scene.scale.per_mm_across, <, scene.scale.per_mm_along);
  g_assert_cmpfloat_with_epsilon (bs_pressing_scale_get_height (&scene.scale), 220.0, 1e-6);
  scene_clear (&scene);
}

static void
test_find (void)
{
  Scene scene;

  scene_init (&scene, 8, 4000.0);
  const BsPressingScale *scale = &scene.scale;
  for (guint i = 0; i < 8; i++)
    {
      double x = bs_pressing_scale_from_x (scale, 1500.0 / 8.0 * (i + 0.5));

      g_assert_cmpint (bs_pressing_scale_find_clamp (scale, scene.results, x + 3.0, 40.0), ==,
                       (int)i);
      g_assert_cmpint (bs_pressing_scale_find_clamp (scale, scene.results, x + 30.0, 40.0), ==, -1);
    }
  for (guint i = 0; i < 9; i++)
    g_assert_cmpint (bs_pressing_scale_find_line (scale, scene.results, 300.0,
                                                  bs_pressing_scale_from_y (scale, 40.0 * (i + 1))),
                     ==, (int)i);
  g_assert_cmpint (bs_pressing_scale_find_line (scale, scene.results, 300.0, 2.0), ==, -1);
  scene_clear (&scene);
}

/* All of it lies within its area, on paper in greys alone. */
static void
test_paper (gconstpointer n)
{
  cairo_t *cr = image_new (WIDTH, HEIGHT);
  cairo_rectangle_int_t box;
  Scene scene;

  scene_init (&scene, GPOINTER_TO_UINT (n), 5000.0);
  bs_draw_pressing (cr, scene.results, scene.pressure, &scene.scale, bs_palette_paper (),
                    (BsPressingChoice){ 1, 2 });
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.x + box.width, <=, WIDTH - 20);
  g_assert_cmpint (box.y + box.height, <=, (int)ceil (bs_pressing_scale_get_height (&scene.scale)));
  g_assert_true (image_is_grey (cr));
  cairo_destroy (cr);
  scene_clear (&scene);
}

/* Number of pixels of one colour (to a level of 2 in 255) in the band of a glue line. */
static guint
count_shade (cairo_t *cr, const Scene *scene, guint line, const BsColor *color)
{
  cairo_surface_t *surface = cairo_get_target (cr);
  int stride = cairo_image_surface_get_stride (surface);
  int y = (int)bs_pressing_scale_from_y (&scene->scale, 40.0 * (line + 1));
  guint count = 0;

  cairo_surface_flush (surface);
  const guint32 *row = (const guint32 *)(void *)(cairo_image_surface_get_data (surface)
                                                 + (gsize)y * (gsize)stride);
  for (int x = 0; x < WIDTH; x++)
    if (fabs ((row[x] >> 16 & 255) / 255.0 - color->red) < 0.009
        && fabs ((row[x] >> 8 & 255) / 255.0 - color->green) < 0.009
        && fabs ((row[x] & 255) / 255.0 - color->blue) < 0.009)
      count++;
  return count;
}

/* Where a line stands open there is the ground, and not the shade of nothing; where all is pressed
 * there is none of it. Two clamps of 3 kN leave the outer lines open in the middle. */
static void
test_open (void)
{
  const BsPalette *light = bs_palette_light ();
  Scene open, closed;
  cairo_t *cr;

  scene_init (&open, 2, 3000.0);
  scene_init (&closed, 15, 4000.0);
  g_assert_cmpfloat (open.pressure->open_length, >, 100.0);
  g_assert_cmpfloat_with_epsilon (closed.pressure->open_length, 0.0, 1e-9);

  cr = image_new (WIDTH, HEIGHT);
  bs_draw_pressing (cr, open.results, open.pressure, &open.scale, light,
                    (BsPressingChoice){ -1, -1 });
  g_assert_cmpuint (count_shade (cr, &open, 0, &light->ground), >, 40);
  cairo_destroy (cr);

  cr = image_new (WIDTH, HEIGHT);
  bs_draw_pressing (cr, closed.results, closed.pressure, &closed.scale, light,
                    (BsPressingChoice){ -1, -1 });
  g_assert_cmpuint (count_shade (cr, &closed, 0, &light->ground), ==, 0);
  cairo_destroy (cr);
  scene_clear (&open);
  scene_clear (&closed);
}

/* Spots that are pressed too little are hatched: another picture than the same pressures under an
 * adhesive that asks for less. */
static void
test_hatch (void)
{
  cairo_t *hatched = image_new (WIDTH, HEIGHT), *plain = image_new (WIDTH, HEIGHT);
  Scene scene;

  scene_init (&scene, 6, 5000.0);
  g_assert_cmpfloat (scene.pressure->below_length, >, 0.0);
  bs_draw_pressing (hatched, scene.results, scene.pressure, &scene.scale, bs_palette_light (),
                    (BsPressingChoice){ -1, -1 });
  scene.pressure->press.problem.least_mpa = 0.0;
  bs_draw_pressing (plain, scene.results, scene.pressure, &scene.scale, bs_palette_light (),
                    (BsPressingChoice){ -1, -1 });
  g_assert_cmpint (image_difference (hatched, plain, FALSE), >, 60);
  cairo_destroy (hatched);
  cairo_destroy (plain);
  scene_clear (&scene);
}

/* The legend takes what it says, and the curve lies under it. */
static void
test_legend_and_curve (void)
{
  cairo_t *cr = image_new (WIDTH, HEIGHT);
  cairo_rectangle_int_t box;
  Scene scene;

  scene_init (&scene, 6, 5000.0);
  double height = bs_draw_pressing_legend (cr, scene.pressure, &scene.scale, WIDTH,
                                           bs_palette_paper (), FALSE);
  g_assert_cmpint (image_count_ink (cr, &box), ==, 0);
  g_assert_cmpfloat_with_epsilon (
      bs_draw_pressing_legend (cr, scene.pressure, &scene.scale, WIDTH, bs_palette_paper (), TRUE),
      height, 1e-9);
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.y + box.height, <=, (int)ceil (height));
  cairo_destroy (cr);

  cr = image_new (WIDTH, HEIGHT);
  bs_draw_pressing_curve (cr, scene.pressure, 0, &scene.scale, 100.0, 150.0, bs_palette_paper ());
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.y, >=, 100);
  g_assert_cmpint (box.y + box.height, <=, 250);
  cairo_destroy (cr);
  scene_clear (&scene);
}

/* Nothing to draw yet, and pressures of another slab a moment ago: no crash, no bands. */
static void
test_nothing (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  cairo_t *cr = image_new (WIDTH, HEIGHT);
  cairo_rectangle_int_t box;
  BsPressingScale scale;
  Scene scene;

  scene_init (&scene, 6, 5000.0);
  bs_pressing_scale_fit (&scale, results, WIDTH, HEIGHT, TEXT, 1.0);
  bs_draw_pressing (cr, results, scene.pressure, &scale, bs_palette_light (),
                    (BsPressingChoice){ 3, 3 });
  bs_draw_pressing (cr, results, NULL, &scale, bs_palette_light (), (BsPressingChoice){ -1, -1 });
  g_assert_cmpint (image_count_ink (cr, &box), ==, 0);
  g_assert_cmpfloat_with_epsilon (bs_pressing_scale_get_height (&scale), 0.0, 1e-12);
  g_assert_cmpint (bs_pressing_scale_find_clamp (&scale, results, 10.0, 10.0), ==, -1);
  cairo_destroy (cr);
  scene_clear (&scene);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pressing/scale", test_scale);
  g_test_add_func ("/pressing/low", test_low);
  g_test_add_func ("/pressing/find", test_find);
  g_test_add_data_func ("/pressing/paper/2", GUINT_TO_POINTER (2), test_paper);
  g_test_add_data_func ("/pressing/paper/6", GUINT_TO_POINTER (6), test_paper);
  g_test_add_data_func ("/pressing/paper/20", GUINT_TO_POINTER (20), test_paper);
  g_test_add_func ("/pressing/open", test_open);
  g_test_add_func ("/pressing/hatch", test_hatch);
  g_test_add_func ("/pressing/legend-and-curve", test_legend_and_curve);
  g_test_add_func ("/pressing/nothing", test_nothing);
  return g_test_run ();
}
