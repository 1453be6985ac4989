/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/grain.h"

#include <math.h>

#include "image.h"

#define SIDE 240

static BsLamination *
new_lamination (const char *id, double pith_y, double pith_z, int run_out)
{
  BsLamination *lamination = bs_lamination_new (id);

  lamination->length = 2000.0;
  lamination->thickness = lamination->height = 60.0;
  lamination->pith_y = pith_y;
  lamination->pith_z = pith_z;
  lamination->run_out_top = run_out;
  return lamination;
}

static const BsGrainStyle style = {
  .per_mm_across = SIDE / 60.0,
  .per_mm_along = SIDE / 2000.0,
  .hairline = 1.0,
  .color = { 0.0, 0.0, 0.0, 1.0 },
};

static cairo_t *
draw_end (const char *id, double pith_y, double pith_z)
{
  g_autoptr (BsLamination) lamination = new_lamination (id, pith_y, pith_z, 0);
  cairo_t *cr = image_new (SIDE, SIDE);
  BsGrain grain;

  bs_grain_init (&grain, lamination);
  cairo_translate (cr, SIDE / 2.0, SIDE / 2.0);
  bs_grain_draw_end (&grain, cr, &style);
  return cr;
}

/* Rings keep their order whatever the seed, and are as wide on the mean as said. */
static void
test_order (void)
{
  static const char *const ids[] = { "a", "b", "lamination-1", "lamination-2", "a long name" };

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      g_autoptr (BsLamination) lamination = new_lamination (ids[i], 0.0, 0.0, 0);
      double last = 0.0;
      BsGrain grain;

      bs_grain_init (&grain, lamination);
      g_assert_true (grain.has_rings);
      for (int ring = 2; ring < 400; ring++)
        {
          double radius = bs_grain_ring (&grain, ring);

          g_assert_cmpfloat (radius, >, last);
          last = radius;
        }
      /* ring 399 with at most two rings of good or bad years and jitter */
      g_assert_cmpfloat_with_epsilon (last / 399.0, grain.ring_width,
                                      2.0 / 399.0 * grain.ring_width);
    }
}

static void
test_same_each_time (void)
{
  cairo_t *one = draw_end ("board", 10.0, -50.0), *again = draw_end ("board", 10.0, -50.0);
  cairo_t *other = draw_end ("another", 10.0, -50.0);

  g_assert_cmpint (image_difference (one, again, FALSE), ==, 0);
  g_assert_cmpint (image_difference (one, other, FALSE), >, 60);
  cairo_destroy (one);
  cairo_destroy (again);
  cairo_destroy (other);
}

/* Where the pith is not known every board looks the same: nothing is claimed. */
static void
test_unknown_pith (void)
{
  cairo_t *one = draw_end ("board", NAN, NAN), *other = draw_end ("another", NAN, 20.0);
  cairo_rectangle_int_t box;

  g_assert_cmpint (image_difference (one, other, FALSE), ==, 0);
  g_assert_cmpint (image_count_ink (one, &box), >, 0);
  cairo_destroy (one);
  cairo_destroy (other);
}

/* Rings that are circles round a pith are crossed, from the pith outwards, in any direction about
 * as often; and their shape is that of the pith's place: far below, the lines run level. */
static void
test_rings_lie_round_the_pith (void)
{
  cairo_t *cr = draw_end ("board", 0.0, -400.0);
  cairo_surface_t *surface = cairo_get_target (cr);
  const unsigned char *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface), down = 0, across = 0;

  cairo_surface_flush (surface);
  for (int i = 1; i < SIDE; i++)
    {
      const unsigned char *middle = data + (gsize)i * (gsize)stride + (gsize)4 * (SIDE / 2);
      const unsigned char *before = middle - stride;
      const unsigned char *right = data + (gsize)(SIDE / 2) * (gsize)stride + 4 * (gsize)i;

      down += *middle < 200 && *before >= 200;
      across += *right < 200 && *(right - 4) >= 200;
    }
  g_assert_cmpint (down, >=, 12); /* 60 mm of rings of at most 3.6 mm, one missed of four */
  g_assert_cmpint (across, <=, 6);
  cairo_destroy (cr);
}

typedef struct
{
  const char *path;
  double pith_y, pith_z;
  int run_out;
} FaceRow;

static const FaceRow face_rows[] = {
  { "/grain/face/flat-sawn", 0.0, -80.0, 1 },  { "/grain/face/quarter-sawn", 200.0, 0.0, 0 },
  { "/grain/face/pith-inside", 2.0, 3.0, -1 }, { "/grain/face/pith-at-the-face", 0.0, 30.0, 1 },
  { "/grain/face/unknown", NAN, NAN, 1 },      { "/grain/face/far", 4000.0, 4000.0, 1 },
};

static cairo_t *
draw_face (const FaceRow *row, BsFace face)
{
  g_autoptr (BsLamination) lamination
      = new_lamination ("board", row->pith_y, row->pith_z, row->run_out);
  cairo_t *cr = image_new (SIDE, SIDE);
  BsGrain grain;

  bs_grain_init (&grain, lamination);
  cairo_translate (cr, SIDE / 2.0, 0.0);
  bs_grain_draw_face (&grain, cr, face, &style);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  return cr;
}

static void
test_face (gconstpointer data)
{
  cairo_t *one = draw_face (data, BS_FACE_TOP), *again = draw_face (data, BS_FACE_TOP);
  cairo_rectangle_int_t box;

  g_assert_cmpint (image_difference (one, again, FALSE), ==, 0);
  g_assert_cmpint (image_count_ink (one, &box), >, 0);
  cairo_destroy (one);
  cairo_destroy (again);
}

/* The two faces of a board with the pith far below are cut by other rings. */
static void
test_faces_differ (void)
{
  cairo_t *top = draw_face (&face_rows[0], BS_FACE_TOP);
  cairo_t *underside = draw_face (&face_rows[0], BS_FACE_UNDERSIDE);

  g_assert_cmpint (image_difference (top, underside, FALSE), >, 60);
  cairo_destroy (top);
  cairo_destroy (underside);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/grain/order", test_order);
  g_test_add_func ("/grain/same-each-time", test_same_each_time);
  g_test_add_func ("/grain/unknown-pith", test_unknown_pith);
  g_test_add_func ("/grain/round-the-pith", test_rings_lie_round_the_pith);
  for (gsize i = 0; i < G_N_ELEMENTS (face_rows); i++)
    g_test_add_data_func (face_rows[i].path, &face_rows[i], test_face);
  g_test_add_func ("/grain/faces-differ", test_faces_differ);
  return g_test_run ();
}
