/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/palette.h"

#include <math.h>

/* Relative luminance and contrast of sRGB colours. Source: W3C, Web Content Accessibility
 * Guidelines 2.1 (2018), definitions of relative luminance and contrast ratio. */
static double
decode (double value)
{
  return value <= 0.03928 ? value / 12.92 : pow ((value + 0.055) / 1.055, 2.4);
}

static double
find_luminance (const BsColor *color)
{
  return 0.2126 * decode (color->red) + 0.7152 * decode (color->green)
         + 0.0722 * decode (color->blue);
}

static double
find_contrast (BsColor a, BsColor b)
{
  double one = find_luminance (&a), other = find_luminance (&b);

  return (fmax (one, other) + 0.05) / (fmin (one, other) + 0.05);
}

typedef struct
{
  const char *path;
  const BsPalette *(*get) (void);
} PaletteRow;

static const PaletteRow rows[] = {
  { "light", bs_palette_light },
  { "dark", bs_palette_dark },
  { "paper", bs_palette_paper },
};

static BsWood
make_wood (GRefString *id)
{
  return (BsWood){ .id = id, .is_hardwood = TRUE };
}

/* Text at 4.5 : 1, signs at 3 : 1. Source: the same, success criteria 1.4.3 and 1.4.11. */
static void
test_contrast (gconstpointer data)
{
  const BsPalette *palette = ((const PaletteRow *)data)->get ();

  g_assert_cmpfloat (find_contrast (palette->ink, palette->ground), >=, 4.5);
  g_assert_cmpfloat (find_contrast (palette->faint, palette->ground), >=, 4.5);
  g_assert_cmpfloat (find_contrast (palette->accent, palette->ground), >=, 3.0);
  g_assert_cmpfloat (find_contrast (palette->caution, palette->ground), >=, 3.0);
  g_assert_cmpfloat (find_contrast (palette->stop, palette->ground), >=, 3.0);
}

static void
test_label_contrast (gconstpointer data)
{
  static const char *const ids[]
      = { "beech-european", "walnut-black", "maple-sugar", "unheard-of" };
  const BsPalette *palette = ((const PaletteRow *)data)->get ();

  for (gsize i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      g_autoptr (GRefString) id = g_ref_string_new (ids[i]);
      BsWood wood = make_wood (id);

      for (int lightness = 0; lightness <= 100; lightness += 5)
        g_assert_cmpfloat (find_contrast (bs_palette_on_wood (palette, &wood, lightness),
                                          bs_palette_wood (palette, &wood, lightness)),
                           >=, 4.5);
    }
}

typedef struct
{
  const char *path;
  double lightness, luminance, tolerance;
} LightnessRow;

/* Source: CIE 15:2004, 8.2.1: L* = 116 (Y/Yn)^(1/3) - 16, so Y = ((L* + 16)/116)^3, by hand.
 * Tolerance: the four figures of the matrix, and the chroma cut off at white. */
static const LightnessRow lightness_rows[] = {
  { "/palette/lightness/30", 30.0, 0.06237, 0.001 },
  { "/palette/lightness/50", 50.0, 0.18419, 0.001 },
  { "/palette/lightness/70", 70.0, 0.40749, 0.001 },
  { "/palette/lightness/85", 85.0, 0.66000, 0.002 },
};

static void
test_lightness (gconstpointer data)
{
  const LightnessRow *row = data;
  g_autoptr (GRefString) id = g_ref_string_new ("beech-european");
  BsWood wood = make_wood (id);
  BsColor tint = bs_palette_wood (bs_palette_light (), &wood, row->lightness);

  g_assert_cmpfloat_with_epsilon (find_luminance (&tint), row->luminance, row->tolerance);
}

/* Black on white: no tint on paper. */
static void
test_paper (void)
{
  g_autoptr (GRefString) id = g_ref_string_new ("walnut-black");
  BsWood wood = make_wood (id);
  BsColor tint = bs_palette_wood (bs_palette_paper (), &wood, 40.0);

  g_assert_cmpfloat_with_epsilon (find_luminance (&tint), 1.0, 1e-12);
}

/* Late wood is darker than the rest, in every wood and also where neither wood nor lightness is
 * known. */
static void
test_grain (void)
{
  g_autoptr (GRefString) id = g_ref_string_new ("ash-white");
  BsWood wood = make_wood (id);
  BsColor tint = bs_palette_wood (bs_palette_light (), &wood, NAN);
  BsColor grain = bs_palette_grain (bs_palette_light (), &wood, NAN);

  g_assert_cmpfloat (find_luminance (&grain), <, find_luminance (&tint));
  tint = bs_palette_wood (bs_palette_dark (), NULL, NAN);
  grain = bs_palette_grain (bs_palette_dark (), NULL, NAN);
  g_assert_cmpfloat (find_luminance (&grain), <, find_luminance (&tint));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *contrast = g_strconcat ("/palette/contrast/", rows[i].path, NULL);
      g_autofree char *label = g_strconcat ("/palette/label-contrast/", rows[i].path, NULL);

      g_test_add_data_func (contrast, &rows[i], test_contrast);
      g_test_add_data_func (label, &rows[i], test_label_contrast);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (lightness_rows); i++)
    g_test_add_data_func (lightness_rows[i].path, &lightness_rows[i], test_lightness);
  g_test_add_func ("/palette/paper", test_paper);
  g_test_add_func ("/palette/grain", test_grain);
  return g_test_run ();
}
