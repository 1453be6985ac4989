/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/heat.h"

#include <math.h>

#include "image.h"

typedef struct
{
  const char *path;
  double part;
  double red, green, blue;
} ShadeRow;

/* Rows 255, 192, 128, 64, 24 and 0 of the published table of 'viridis' (S. van der Walt, N. Smith,
 * mpl-colormaps, 2015, CC0 1.0); part = 1 - row / 255. All but the first and last are between the
 * rows that the program holds. */
static const ShadeRow shade_rows[] = {
  { "/heat/shade/255", 0.0, 0.993248, 0.906157, 0.143936 },
  { "/heat/shade/192", 1.0 - 192.0 / 255.0, 0.369214, 0.788888, 0.382914 },
  { "/heat/shade/128", 1.0 - 128.0 / 255.0, 0.127568, 0.566949, 0.550556 },
  { "/heat/shade/64", 1.0 - 64.0 / 255.0, 0.229739, 0.322361, 0.545706 },
  { "/heat/shade/24", 1.0 - 24.0 / 255.0, 0.282884, 0.135920, 0.453427 },
  { "/heat/shade/0", 1.0, 0.267004, 0.004874, 0.329415 },
};

/* A step of 1 in 255 is what a screen shows. */
#define TOLERANCE (1.0 / 255.0)

static void
test_shade (gconstpointer data)
{
  const ShadeRow *row = data;
  BsColor shade = bs_heat_shade (bs_palette_light (), row->part);

  g_assert_cmpfloat_with_epsilon (shade.red, row->red, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (shade.green, row->green, TOLERANCE);
  g_assert_cmpfloat_with_epsilon (shade.blue, row->blue, TOLERANCE);
}

/* Relative luminance. Source: W3C, Web Content Accessibility Guidelines 2.1 (2018). */
static double
decode (double value)
{
  return value <= 0.03928 ? value / 12.92 : pow ((value + 0.055) / 1.055, 2.4);
}

static double
find_luminance (BsColor color)
{
  return 0.2126 * decode (color.red) + 0.7152 * decode (color.green) + 0.0722 * decode (color.blue);
}

typedef struct
{
  const char *path;
  const BsPalette *(*get) (void);
} PaletteRow;

static const PaletteRow palette_rows[] = {
  { "light", bs_palette_light },
  { "dark", bs_palette_dark },
  { "paper", bs_palette_paper },
};

/* The more, the darker, everywhere; and text on each shade at 4.5 : 1. Source: the same, success
 * criterion 1.4.3. */
static void
test_order (gconstpointer data)
{
  const BsPalette *palette = ((const PaletteRow *)data)->get ();

  for (int i = 1; i <= 100; i++)
    g_assert_cmpfloat (find_luminance (bs_heat_shade (palette, i / 100.0)), <,
                       find_luminance (bs_heat_shade (palette, (i - 1) / 100.0)));
}

static void
test_contrast (gconstpointer data)
{
  const BsPalette *palette = ((const PaletteRow *)data)->get ();

  for (int i = 0; i <= 100; i++)
    {
      double ground = find_luminance (bs_heat_shade (palette, i / 100.0)) + 0.05;
      double text = find_luminance (bs_heat_on_shade (palette, i / 100.0)) + 0.05;

      g_assert_cmpfloat (fmax (ground, text) / fmin (ground, text), >=, 4.5);
    }
}

/* Even in lightness on paper: CIE 15:2004, 8.2.1, L* = 116 Y^(1/3) - 16 of Y = 0.1 and more. */
static void
test_even_greys (void)
{
  double first = 116.0 * cbrt (find_luminance (bs_heat_shade (bs_palette_paper (), 0.0)));
  double half = 116.0 * cbrt (find_luminance (bs_heat_shade (bs_palette_paper (), 0.5)));
  double last = 116.0 * cbrt (find_luminance (bs_heat_shade (bs_palette_paper (), 1.0)));

  g_assert_cmpfloat_with_epsilon (first - half, half - last, 0.05);
}

typedef struct
{
  const char *path;
  BsQuantity quantity;
  BsUnitSystem units;
  double least, step;
} StepRow;

static const StepRow step_rows[] = {
  { "/heat/step/1", BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_METRIC, 0.7, 1.0 },
  { "/heat/step/exact", BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_METRIC, 0.2, 0.2 },
  { "/heat/step/next-ten", BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_METRIC, 6.0, 10.0 },
  { "/heat/step/sixteenth", BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_INCH, 1.2, 25.4 / 16.0 },
  { "/heat/step/thirty-second", BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_INCH, 0.5, 25.4 / 32.0 },
  { "/heat/step/hundredth", BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_INCH, 0.2, 0.254 },
  { "/heat/step/psi", BS_QUANTITY_PRESSURE, BS_UNIT_SYSTEM_INCH, 0.3, 50.0 * BS_MPA_PER_PSI },
};

static void
test_step (gconstpointer data)
{
  const StepRow *row = data;
  BsHeat heat = { 0.0, 1.0, row->quantity, row->units };

  g_assert_cmpfloat_with_epsilon (bs_heat_step (&heat, row->least), row->step, 1e-9);
}

/* Four cells in a square of 40: the one without a value stays white, the others fill theirs. */
static void
test_cells (void)
{
  static const double values[] = { 0.0, NAN, 0.5, 1.0 };
  BsHeat heat = { 0.0, 1.0, BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_METRIC };
  cairo_t *cr = image_new (60, 60);
  cairo_rectangle_int_t box;

  bs_heat_draw_cells (&heat, cr, values, 2, 2, 10.0, 10.0, 40.0, 40.0, bs_palette_paper ());
  g_assert_cmpint (image_count_ink (cr, &box), ==, 1200); /* three of 20 x 20 */
  g_assert_cmpint (box.x, ==, 10);
  g_assert_cmpint (box.height, ==, 40);
  g_assert_true (image_is_grey (cr));
  cairo_destroy (cr);
}

/* All of the legend lies in the height that it asks for. */
static void
test_legend (void)
{
  BsHeat heat = { 0.0, 3.7, BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_METRIC };
  cairo_t *cr = image_new (300, 80);
  cairo_rectangle_int_t box;

  bs_heat_draw_legend (&heat, cr, 40.0, 20.0, 200.0, 14.0, 1.0, bs_palette_paper ());
  image_count_ink (cr, &box);
  g_assert_cmpint (box.y, >=, 19);
  g_assert_cmpint (box.y + box.height, >, 20 + 14 + 7);
  g_assert_cmpfloat (box.y + box.height, <=, 20.0 + BS_HEAT_LEGEND_HEIGHT * 14.0);
  cairo_destroy (cr);
}

static void
test_part (void)
{
  BsHeat heat = { 1.0, 3.0, BS_QUANTITY_LENGTH, BS_UNIT_SYSTEM_METRIC };

  g_assert_cmpfloat_with_epsilon (bs_heat_get_part (&heat, 1.5), 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_heat_get_part (&heat, 9.0), 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_heat_get_part (&heat, NAN), 0.0, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (shade_rows); i++)
    g_test_add_data_func (shade_rows[i].path, &shade_rows[i], test_shade);
  for (gsize i = 0; i < G_N_ELEMENTS (palette_rows); i++)
    {
      g_autofree char *order = g_strconcat ("/heat/order/", palette_rows[i].path, NULL);
      g_autofree char *contrast = g_strconcat ("/heat/contrast/", palette_rows[i].path, NULL);

      g_test_add_data_func (order, &palette_rows[i], test_order);
      g_test_add_data_func (contrast, &palette_rows[i], test_contrast);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (step_rows); i++)
    g_test_add_data_func (step_rows[i].path, &step_rows[i], test_step);
  g_test_add_func ("/heat/part", test_part);
  g_test_add_func ("/heat/even-greys", test_even_greys);
  g_test_add_func ("/heat/cells", test_cells);
  g_test_add_func ("/heat/legend", test_legend);
  return g_test_run ();
}
