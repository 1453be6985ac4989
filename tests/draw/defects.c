/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/defects.h"

#include <math.h>

#include "image.h"

static const BsColor black = { 0.0, 0.0, 0.0, 1.0 };

static cairo_t *
draw (int kind, double severity, double width, double height)
{
  cairo_t *cr = image_new (120, 120);

  bs_defect_draw (cr, (BsDefectKind)kind, severity, 40.0, 30.0, width, height, 1.0, &black);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  return cr;
}

/* In its place, give or take half a line. */
static void
test_place (gconstpointer data)
{
  cairo_t *cr = draw (GPOINTER_TO_INT (data), 1.0, 40.0, 60.0);
  cairo_rectangle_int_t box;

  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.x, >=, 38);
  g_assert_cmpint (box.y, >=, 28);
  g_assert_cmpint (box.x + box.width, <=, 82);
  g_assert_cmpint (box.y + box.height, <=, 92);
  g_assert_cmpint (box.height, >=, 50); /* along the grain it is as long as it was measured */
  cairo_destroy (cr);
}

/* Seen however small, and told apart in one colour. */
static void
test_small (gconstpointer data)
{
  cairo_t *cr = draw (GPOINTER_TO_INT (data), 0.0, 0.0, 0.0);
  cairo_rectangle_int_t box;

  g_assert_cmpint (image_count_ink (cr, &box), >=, 6);
  cairo_destroy (cr);
}

static void
test_distinct (void)
{
  for (int i = 0; i < BS_N_DEFECT_KINDS; i++)
    for (int j = 0; j < i; j++)
      {
        cairo_t *one = draw (i, 1.0, 30.0, 50.0), *other = draw (j, 1.0, 30.0, 50.0);

        g_assert_cmpint (image_difference (one, other, FALSE), >, 60);
        cairo_destroy (one);
        cairo_destroy (other);
      }
}

static void
test_unknown_size (void)
{
  cairo_t *cr = draw (BS_DEFECT_KNOT, NAN, NAN, 10.0);
  cairo_rectangle_int_t box;

  g_assert_cmpint (image_count_ink (cr, &box), ==, 0);
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  static const char *const names[BS_N_DEFECT_KINDS]
      = { "knot", "check", "wane", "stain", "bark-pocket", "sapwood", "pith", "hole" };

  g_test_init (&argc, &argv, NULL);
  for (int i = 0; i < BS_N_DEFECT_KINDS; i++)
    {
      g_autofree char *place = g_strconcat ("/defects/place/", names[i], NULL);
      g_autofree char *small = g_strconcat ("/defects/small/", names[i], NULL);

      g_test_add_data_func (place, GINT_TO_POINTER (i), test_place);
      g_test_add_data_func (small, GINT_TO_POINTER (i), test_small);
    }
  g_test_add_func ("/defects/distinct", test_distinct);
  g_test_add_func ("/defects/unknown-size", test_unknown_size);
  return g_test_run ();
}
