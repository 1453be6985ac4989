/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "image.h"

cairo_t *
image_new (int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_surface_destroy (surface);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  return cr;
}

/* 0xRRGGBB */
static guint32
get_pixel (cairo_t *cr, int x, int y)
{
  cairo_surface_t *surface = cairo_get_target (cr);
  const unsigned char *row = cairo_image_surface_get_data (surface)
                             + (gsize)y * (gsize)cairo_image_surface_get_stride (surface);

  return ((const guint32 *)(const void *)row)[x] & 0xffffffu;
}

int
image_difference (cairo_t *a, cairo_t *b, gboolean is_turned)
{
  int width = cairo_image_surface_get_width (cairo_get_target (a));
  int height = cairo_image_surface_get_height (cairo_get_target (a));
  int most = 0;

  cairo_surface_flush (cairo_get_target (a));
  cairo_surface_flush (cairo_get_target (b));
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        guint32 p = get_pixel (a, x, y);
        guint32 q = is_turned ? get_pixel (b, width - 1 - x, height - 1 - y) : get_pixel (b, x, y);

        for (int shift = 0; shift < 24; shift += 8)
          most = MAX (most, ABS ((int)(p >> shift & 0xff) - (int)(q >> shift & 0xff)));
      }
  return most;
}

int
image_count_ink (cairo_t *cr, cairo_rectangle_int_t *box)
{
  int width = cairo_image_surface_get_width (cairo_get_target (cr));
  int height = cairo_image_surface_get_height (cairo_get_target (cr));
  int n = 0, left = width, top = height, right = 0, bottom = 0;

  cairo_surface_flush (cairo_get_target (cr));
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      if (get_pixel (cr, x, y) != 0xffffffu)
        {
          n++;
          left = MIN (left, x);
          right = MAX (right, x + 1);
          top = MIN (top, y);
          bottom = MAX (bottom, y + 1);
        }
  *box = (cairo_rectangle_int_t){ left, top, right - left, bottom - top };
  return n;
}

gboolean
image_is_grey (cairo_t *cr)
{
  int width = cairo_image_surface_get_width (cairo_get_target (cr));
  int height = cairo_image_surface_get_height (cairo_get_target (cr));

  cairo_surface_flush (cairo_get_target (cr));
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        guint32 pixel = get_pixel (cr, x, y), blue = pixel & 0xff;

        if ((pixel >> 16 & 0xff) != blue || (pixel >> 8 & 0xff) != blue)
          return FALSE;
      }
  return TRUE;
}

int
image_get_darkness (cairo_t *cr, int x, int y)
{
  cairo_surface_flush (cairo_get_target (cr));

  guint32 pixel = get_pixel (cr, x, y);
  return 255 - (int)MAX (pixel & 0xff, MAX (pixel >> 8 & 0xff, pixel >> 16 & 0xff));
}
