/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dimension.h"

#include "core/units.h"
#include "image.h"

typedef struct
{
  const char *path;
  double least;
  BsUnitSystem units;
  double step, minor; /* mm */
} StepRow;

static const StepRow step_rows[] = {
  { "/dimension/step/1", 0.2, BS_UNIT_SYSTEM_METRIC, 1.0, 1.0 },
  { "/dimension/step/200", 140.0, BS_UNIT_SYSTEM_METRIC, 200.0, 100.0 },
  { "/dimension/step/exact", 500.0, BS_UNIT_SYSTEM_METRIC, 500.0, 100.0 },
  { "/dimension/step/most", 1e6, BS_UNIT_SYSTEM_METRIC, 2000.0, 1000.0 },
  { "/dimension/step/foot", 160.0, BS_UNIT_SYSTEM_INCH, 304.8, 152.4 },
  { "/dimension/step/half-inch", 8.0, BS_UNIT_SYSTEM_INCH, 12.7, 6.35 },
};

static void
test_step (gconstpointer data)
{
  const StepRow *row = data;
  double minor, step = bs_dimension_step (row->least, row->units, &minor);

  g_assert_cmpfloat_with_epsilon (step, row->step, 1e-9);
  g_assert_cmpfloat_with_epsilon (minor, row->minor, 1e-9);
}

/* The bar is as long as the length written over it: 0.4 x 90 / 0.8 = 45, so 50 mm at 0.8 are 40. */
static void
test_scale_bar (void)
{
  cairo_t *cr = image_new (140, 40);
  cairo_rectangle_int_t box;

  bs_dimension_scale_bar (cr, 20.0, 30.0, 0.8, 90.0, BS_UNIT_SYSTEM_METRIC, 0.001, 1.0,
                          bs_palette_paper ());
  image_count_ink (cr, &box);
  g_assert_cmpint (ABS (box.width - 40), <=, 2);
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (step_rows); i++)
    g_test_add_data_func (step_rows[i].path, &step_rows[i], test_step);
  g_test_add_func ("/dimension/scale-bar", test_scale_bar);
  return g_test_run ();
}
