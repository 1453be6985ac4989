/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/lettering.h"

#include "image.h"

static double
find_width (const char *text, const BsLettering *style)
{
  cairo_t *cr = image_new (10, 10);
  double width, height;

  bs_lettering_measure (cr, text, style, &width, &height);
  g_assert_cmpfloat (height, >, 0.0);
  cairo_destroy (cr);
  return width;
}

/* Figures of equal width: columns of numbers stand under one another. */
static void
test_tabular (void)
{
  BsLettering style = { .size = 20.0 };

  g_assert_cmpfloat_with_epsilon (find_width ("1111", &style), find_width ("8888", &style), 0.01);
  g_assert_cmpfloat_with_epsilon (find_width ("0707", &style), find_width ("4141", &style), 0.01);
}

/* As wide in proportion at any size: what is measured once holds on screen and on paper. */
static void
test_proportion (void)
{
  BsLettering small = { .size = 9.0 }, large = { .size = 90.0 };
  const char *text = "Lamination 12, end for end";

  g_assert_cmpfloat_with_epsilon (10.0 * find_width (text, &small), find_width (text, &large),
                                  0.01 * find_width (text, &large));
}

static void
test_wrap (void)
{
  BsLettering style = { .size = 12.0, .wrap = 80.0 };

  g_assert_cmpfloat (find_width ("a sentence that is longer than eighty units of paper", &style),
                     <=, 80.0);
  g_assert_cmpfloat (find_width ("Donaudampfschifffahrtsgesellschaftskapitän", &style), <=, 80.0);
}

static void
test_fit (void)
{
  BsLettering style = { .size = 12.0 }, fitted = style;
  cairo_t *cr = image_new (10, 10);

  g_assert_cmpfloat_with_epsilon (bs_lettering_fit (cr, "7", &style, 100.0, 6.0), 12.0, 1e-9);
  fitted.size = bs_lettering_fit (cr, "177", &style, 20.0, 6.0);
  g_assert_cmpfloat (fitted.size, <, 12.0);
  g_assert_cmpfloat (find_width ("177", &fitted), <=, 20.3); /* hinting of outlines: 1 % */
  g_assert_cmpfloat_with_epsilon (bs_lettering_fit (cr, "1777777", &style, 20.0, 6.0), 0.0, 1e-9);
  cairo_destroy (cr);
}

/* (1, 1) puts the lower right corner at the point. */
static void
test_parts (void)
{
  BsLettering style = { .size = 20.0 };
  cairo_t *cr = image_new (100, 100);
  cairo_rectangle_int_t box;

  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  bs_lettering_draw (cr, "HH", &style, 60.0, 70.0, 1.0, 1.0);
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.x + box.width, <=, 60);
  g_assert_cmpint (box.y + box.height, <=, 70);
  g_assert_false (cairo_has_current_point (cr));
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lettering/tabular", test_tabular);
  g_test_add_func ("/lettering/proportion", test_proportion);
  g_test_add_func ("/lettering/wrap", test_wrap);
  g_test_add_func ("/lettering/fit", test_fit);
  g_test_add_func ("/lettering/parts", test_parts);
  return g_test_run ();
}
