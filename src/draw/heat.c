/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/heat.h"

#include <math.h>

#include "draw/lettering.h"

/* Every fifteenth of the 256 rows of 'viridis', sRGB; between them straight lines, which stay
 * within 0.02 of the rows left out. Source: S. van der Walt, N. Smith, mpl-colormaps (2015),
 * released under CC0 1.0. */
#define N_ANCHORS 18
static const double viridis[N_ANCHORS][3] = {
  { 0.267004, 0.004874, 0.329415 }, { 0.281924, 0.089666, 0.412415 },
  { 0.280255, 0.165693, 0.476498 }, { 0.263663, 0.237631, 0.518762 },
  { 0.237441, 0.305202, 0.541921 }, { 0.208623, 0.367752, 0.552675 },
  { 0.182256, 0.426184, 0.557120 }, { 0.159194, 0.482237, 0.558073 },
  { 0.137770, 0.537492, 0.554906 }, { 0.121148, 0.592739, 0.544641 },
  { 0.128087, 0.647749, 0.523491 }, { 0.180653, 0.701402, 0.488189 },
  { 0.274149, 0.751988, 0.436601 }, { 0.395174, 0.797475, 0.367757 },
  { 0.535621, 0.835785, 0.281908 }, { 0.688944, 0.865448, 0.182725 },
  { 0.845561, 0.887322, 0.099702 }, { 0.993248, 0.906157, 0.143936 },
};

/* Lightness L* of the paper's greys: never the white of the paper itself, nor ink. */
#define GREY_LIGHTEST 95.0
#define GREY_DARKEST 30.0

/* From this part on the shades are so dark that white stands out more than black. */
#define DARK_FROM_SCREEN 0.565
#define DARK_FROM_PAPER 0.7

double
bs_heat_get_part (const BsHeat *self, double value)
{
  double part = (value - self->from) / (self->to - self->from);

  return isfinite (part) ? CLAMP (part, 0.0, 1.0) : 0.0;
}

/* 'Viridis' grows lighter; here it is read from its end. */
static BsColor
shade_of_viridis (double part)
{
  double at = (1.0 - part) * (N_ANCHORS - 1);
  int i = MIN ((int)at, N_ANCHORS - 2);
  double rest = at - i;
  const double *a = viridis[i], *b = viridis[i + 1];

  return (BsColor){ a[0] + rest * (b[0] - a[0]), a[1] + rest * (b[1] - a[1]),
                    a[2] + rest * (b[2] - a[2]), 1.0 };
}

/* The four figures of the matrix would give it a tinge. */
static BsColor
shade_of_grey (double part)
{
  BsColor grey
      = bs_color_from_lch (GREY_LIGHTEST + part * (GREY_DARKEST - GREY_LIGHTEST), 0.0, 0.0);

  return (BsColor){ grey.green, grey.green, grey.green, 1.0 };
}

BsColor
bs_heat_shade (const BsPalette *palette, double part)
{
  part = CLAMP (part, 0.0, 1.0);
  return palette->wood_is_tinted ? shade_of_viridis (part) : shade_of_grey (part);
}

BsColor
bs_heat_on_shade (const BsPalette *palette, double part)
{
  double dark_from = palette->wood_is_tinted ? DARK_FROM_SCREEN : DARK_FROM_PAPER;
  double level = part >= dark_from ? 1.0 : 0.0;

  return (BsColor){ level, level, level, 1.0 };
}

/* Inches are halved down to the thirty-second, as they are read; all else goes by 1, 2 and 5. */
double
bs_heat_step (const BsHeat *self, double least)
{
  double one = bs_units_one (self->quantity, self->units), step;
  static const double parts[] = { 1.0, 2.0, 5.0, 10.0 };

  least = fmax (least, 1e-9 * one) / one;
  if (self->quantity == BS_QUANTITY_LENGTH && self->units == BS_UNIT_SYSTEM_INCH
      && least > 1.0 / 64.0)
    return exp2 (fmax (ceil (log2 (least) - 1e-9), -5.0)) * one;

  step = pow (10.0, floor (log10 (least)));
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] * step >= least * (1.0 - 1e-9))
      return parts[i] * step * one;
  g_assert_not_reached ();
}

#define N_SHADES 256

static guint32
pack_pixel (const BsColor *color)
{
  guint red = (guint)lround (255.0 * color->red), green = (guint)lround (255.0 * color->green),
        blue = (guint)lround (255.0 * color->blue);

  return 0xff000000u | red << 16 | green << 8 | blue;
}

static cairo_surface_t *
paint_cells (const BsHeat *self, const double *values, guint n_columns, guint n_rows,
             const BsPalette *palette)
{
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int)n_columns, (int)n_rows);
  unsigned char *data = cairo_image_surface_get_data (surface);
  gsize stride = (gsize)cairo_image_surface_get_stride (surface);
  guint32 shades[N_SHADES];

  for (guint i = 0; i < N_SHADES; i++)
    {
      BsColor shade = bs_heat_shade (palette, i / (N_SHADES - 1.0));

      shades[i] = pack_pixel (&shade);
    }
  cairo_surface_flush (surface);
  for (guint row = 0; data != NULL && row < n_rows; row++)
    {
      guint32 *pixels = (guint32 *)(void *)(data + row * stride);

      for (guint i = 0; i < n_columns; i++)
        {
          double value = values[row * n_columns + i];

          pixels[i] = isfinite (value)
                          ? shades[lround ((N_SHADES - 1) * bs_heat_get_part (self, value))]
                          : 0;
        }
    }
  cairo_surface_mark_dirty (surface);
  return surface;
}

void
bs_heat_draw_cells (const BsHeat *self, cairo_t *cr, const double *values, guint n_columns,
                    guint n_rows, double x, double y, double width, double height,
                    const BsPalette *palette)
{
  cairo_surface_t *surface;

  if (n_columns == 0 || n_rows == 0 || !(width > 0.0) || !(height > 0.0))
    return;
  surface = paint_cells (self, values, n_columns, n_rows, palette);
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, width / n_columns, height / n_rows);
  cairo_set_source_surface (cr, surface, 0.0, 0.0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_rectangle (cr, 0.0, 0.0, n_columns, n_rows);
  cairo_fill (cr);
  cairo_restore (cr);
  cairo_surface_destroy (surface);
}

#define LEGEND_BAR 0.9  /* in text sizes */
#define LEGEND_ROOM 4.5 /* for one value */

static void
draw_tick (const BsHeat *self, cairo_t *cr, double value, double x, double y, double text_size,
           gboolean has_unit, const BsPalette *palette)
{
  BsLettering style = { .size = 0.85 * text_size };
  g_autofree char *text = has_unit ? bs_units_format (value, self->quantity, self->units)
                                   : bs_units_format_number (value, self->quantity, self->units);

  bs_color_set (&palette->faint, cr);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x, y + 0.3 * text_size);
  cairo_stroke (cr);
  bs_color_set (&palette->ink, cr);
  bs_lettering_draw (cr, text, &style, x, y + 0.35 * text_size, 0.5, 0.0);
}

void
bs_heat_draw_legend (const BsHeat *self, cairo_t *cr, double x, double y, double width,
                     double text_size, double hairline, const BsPalette *palette)
{
  double shades[N_SHADES], bottom = y + LEGEND_BAR * text_size, range = self->to - self->from;
  double step = bs_heat_step (self, LEGEND_ROOM * text_size * range / width);

  for (guint i = 0; i < N_SHADES; i++)
    shades[i] = self->from + range * i / (N_SHADES - 1);
  bs_heat_draw_cells (self, cr, shades, N_SHADES, 1, x, y, width, LEGEND_BAR * text_size, palette);
  cairo_save (cr);
  cairo_set_line_width (cr, hairline);
  bs_color_set (&palette->edge, cr);
  cairo_rectangle (cr, x, y, width, LEGEND_BAR * text_size);
  cairo_stroke (cr);
  double first = step * ceil (self->from / step - 1e-9), last = self->to + 1e-9 * range;
  for (guint i = 0; first + i * step <= last; i++)
    {
      double value = first + i * step;

      draw_tick (self, cr, value, x + width * bs_heat_get_part (self, value), bottom, text_size,
                 value + step > last, palette);
    }
  cairo_restore (cr);
}
