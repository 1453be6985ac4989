/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/palette.h"

#include <math.h>
#include <string.h>

static const BsPalette light = {
  .ground = { 0.980, 0.976, 0.969, 1.0 },
  .ink = { 0.137, 0.122, 0.110, 1.0 },
  .faint = { 0.455, 0.431, 0.408, 1.0 },
  .edge = { 0.137, 0.122, 0.110, 0.70 },
  .accent = { 0.106, 0.353, 0.573, 1.0 },
  .caution = { 0.620, 0.376, 0.000, 1.0 },
  .stop = { 0.690, 0.114, 0.125, 1.0 },
  .wood_is_tinted = TRUE,
};

static const BsPalette dark = {
  .ground = { 0.129, 0.125, 0.122, 1.0 },
  .ink = { 0.914, 0.898, 0.878, 1.0 },
  .faint = { 0.620, 0.596, 0.569, 1.0 },
  .edge = { 0.060, 0.050, 0.045, 0.85 },
  .accent = { 0.478, 0.722, 0.937, 1.0 },
  .caution = { 0.949, 0.741, 0.361, 1.0 },
  .stop = { 1.000, 0.518, 0.486, 1.0 },
  .wood_is_tinted = TRUE,
};

static const BsPalette paper = {
  .ground = { 1.0, 1.0, 1.0, 1.0 },
  .ink = { 0.0, 0.0, 0.0, 1.0 },
  .faint = { 0.35, 0.35, 0.35, 1.0 },
  .edge = { 0.0, 0.0, 0.0, 1.0 },
  .accent = { 0.0, 0.0, 0.0, 1.0 },
  .caution = { 0.0, 0.0, 0.0, 1.0 },
  .stop = { 0.0, 0.0, 0.0, 1.0 },
  .wood_is_tinted = FALSE,
};

const BsPalette *
bs_palette_light (void)
{
  return &light;
}

const BsPalette *
bs_palette_dark (void)
{
  return &dark;
}

const BsPalette *
bs_palette_paper (void)
{
  return &paper;
}

/* Planed heartwood as CIE L*, chroma and hue angle; the first word found in the id counts. Chosen
 * by eye, for telling woods apart in a picture and for nothing else. */
typedef struct
{
  const char *word;
  double lightness, chroma, hue_deg;
} Tint;

static const Tint tints[] = {
  { "walnut", 47.0, 19.0, 58.0 },   { "cherry", 62.0, 31.0, 56.0 },
  { "mahogany", 53.0, 30.0, 52.0 }, { "sapele", 50.0, 28.0, 50.0 },
  { "padauk", 45.0, 42.0, 44.0 },   { "alder", 68.0, 26.0, 62.0 },
  { "beech", 75.0, 23.0, 66.0 },    { "red-oak", 71.0, 24.0, 65.0 },
  { "oak-red", 71.0, 24.0, 65.0 },  { "oak", 71.0, 23.0, 77.0 },
  { "hickory", 74.0, 25.0, 72.0 },  { "elm", 65.0, 22.0, 70.0 },
  { "maple", 83.0, 19.0, 77.0 },    { "birch", 80.0, 21.0, 74.0 },
  { "ash", 81.0, 18.0, 82.0 },      { "poplar", 77.0, 20.0, 92.0 },
  { "basswood", 84.0, 17.0, 80.0 }, { "larch", 69.0, 33.0, 66.0 },
  { "fir", 75.0, 31.0, 68.0 },      { "pine", 80.0, 29.0, 77.0 },
  { "spruce", 83.0, 22.0, 81.0 },   { "cedar", 64.0, 30.0, 58.0 },
};

/* A wood that no row names: a quiet brown whose hue follows its id. */
static Tint
tint_of (const BsWood *wood)
{
  Tint tint = { NULL, 74.0, 20.0, 72.0 };

  if (wood == NULL || wood->id == NULL)
    return (Tint){ NULL, 76.0, 9.0, 78.0 };
  for (gsize i = 0; i < G_N_ELEMENTS (tints); i++)
    if (strstr (wood->id, tints[i].word) != NULL)
      return tints[i];
  tint.hue_deg = 60.0 + g_str_hash (wood->id) % 24;
  if (!wood->is_hardwood)
    tint.chroma = 28.0;
  return tint;
}

static double
encode_srgb (double linear)
{
  linear = CLAMP (linear, 0.0, 1.0);
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * pow (linear, 1.0 / 2.4) - 0.055;
}

static double
lab_inverse (double t)
{
  return t > 6.0 / 29.0 ? t * t * t : 3.0 * (6.0 / 29.0) * (6.0 / 29.0) * (t - 4.0 / 29.0);
}

BsColor
bs_color_from_lch (double lightness, double chroma, double hue_deg)
{
  double a = chroma * cos (hue_deg * G_PI / 180.0);
  double b = chroma * sin (hue_deg * G_PI / 180.0);
  double fy = (lightness + 16.0) / 116.0;
  double x = 0.95047 * lab_inverse (fy + a / 500.0);
  double y = lab_inverse (fy);
  double z = 1.08883 * lab_inverse (fy - b / 200.0);

  return (BsColor){
    encode_srgb (3.2406 * x - 1.5372 * y - 0.4986 * z),
    encode_srgb (-0.9689 * x + 1.8758 * y + 0.0415 * z),
    encode_srgb (0.0557 * x - 0.2040 * y + 1.0570 * z),
    1.0,
  };
}

/* In the dark a bright board would glare. Boards keep their order from dark to light, in a part of
 * the range where white text stands out from all of them: L* 16 to 49. */
#define DARK_FROM 16.0
#define DARK_RANGE 0.33
#define DARK_CHROMA 0.72

static Tint
tint_board (const BsPalette *self, const BsWood *wood, double lightness)
{
  Tint tint = tint_of (wood);

  if (isfinite (lightness))
    {
      /* Pale boards are greyer than dark ones of the same wood. */
      double of_wood = tint.lightness;

      tint.lightness = CLAMP (lightness, 15.0, 95.0);
      tint.chroma *= CLAMP ((100.0 - tint.lightness) / (100.0 - of_wood), 0.7, 1.2);
    }
  if (self == &dark)
    {
      tint.lightness = DARK_FROM + DARK_RANGE * tint.lightness;
      tint.chroma *= DARK_CHROMA;
    }
  return tint;
}

BsColor
bs_palette_wood (const BsPalette *self, const BsWood *wood, double lightness)
{
  Tint tint = tint_board (self, wood, lightness);

  if (!self->wood_is_tinted)
    return self->ground;
  return bs_color_from_lch (tint.lightness, tint.chroma, tint.hue_deg);
}

#define LATE_WOOD 0.45 /* of the lightness of the rest */

BsColor
bs_palette_grain (const BsPalette *self, const BsWood *wood, double lightness)
{
  Tint tint = tint_board (self, wood, lightness);

  if (!self->wood_is_tinted)
    return self->ink;
  return bs_color_from_lch (tint.lightness * LATE_WOOD, tint.chroma, tint.hue_deg);
}

/* Only full black and full white both reach a contrast of 4.5 : 1 with every tint, and they meet
 * where the luminance is 0.179, which is L* 49.4: 1.05 / (Y + 0.05) = (Y + 0.05) / 0.05. */
BsColor
bs_palette_on_wood (const BsPalette *self, const BsWood *wood, double lightness)
{
  double level = tint_board (self, wood, lightness).lightness > 49.4 ? 0.0 : 1.0;

  if (!self->wood_is_tinted)
    return self->ink;
  return (BsColor){ level, level, level, 1.0 };
}

void
bs_color_set (const BsColor *self, cairo_t *cr)
{
  cairo_set_source_rgba (cr, self->red, self->green, self->blue, self->alpha);
}

void
bs_color_set_faded (const BsColor *self, cairo_t *cr, double alpha)
{
  cairo_set_source_rgba (cr, self->red, self->green, self->blue, self->alpha * alpha);
}
