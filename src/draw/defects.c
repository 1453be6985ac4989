/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/defects.h"

#include <math.h>

typedef struct
{
  double x, y, width, height;
  double hairline, alpha;
  const BsColor *color;
} Place;

static void
fill (cairo_t *cr, const Place *place, double alpha)
{
  bs_color_set_faded (place->color, cr, alpha * place->alpha);
  cairo_fill (cr);
}

static void
stroke (cairo_t *cr, const Place *place, double hairlines)
{
  bs_color_set_faded (place->color, cr, place->alpha);
  cairo_set_line_width (cr, hairlines * place->hairline);
  cairo_stroke (cr);
}

/* An ellipse that fills a part of the rectangle; its outline is as wide all round. */
static void
trace_ellipse (cairo_t *cr, const Place *place, double part)
{
  cairo_save (cr);
  cairo_translate (cr, place->x + 0.5 * place->width, place->y + 0.5 * place->height);
  cairo_scale (cr, 0.5 * part * place->width, 0.5 * part * place->height);
  cairo_new_sub_path (cr);
  cairo_arc (cr, 0.0, 0.0, 1.0, 0.0, 2.0 * G_PI);
  cairo_restore (cr);
}

/* Rings round a dark middle. */
static void
draw_knot (cairo_t *cr, const Place *place)
{
  trace_ellipse (cr, place, 1.0);
  fill (cr, place, 0.30);
  trace_ellipse (cr, place, 0.45);
  fill (cr, place, 1.0);
  trace_ellipse (cr, place, 1.0);
  trace_ellipse (cr, place, 0.72);
  stroke (cr, place, 1.0);
}

/* A crooked line along the grain. */
static void
draw_check (cairo_t *cr, const Place *place)
{
  static const double off[] = { 0.5, 0.35, 0.6, 0.4, 0.62, 0.5 };
  double swing = MIN (place->width, 8.0 * place->hairline);
  int n = (int)G_N_ELEMENTS (off);

  for (int i = 0; i < n; i++)
    cairo_line_to (cr, place->x + 0.5 * place->width + (off[i] - 0.5) * swing,
                   place->y + place->height * i / (n - 1));
  stroke (cr, place, 2.0);
}

/* Short slanted strokes: the edge that is missing. */
static void
draw_wane (cairo_t *cr, const Place *place)
{
  double step = 4.5 * place->hairline;
  int n = (int)CLAMP (ceil (place->height / step), 1.0, 1000.0);

  cairo_rectangle (cr, place->x, place->y, place->width, place->height);
  fill (cr, place, 0.12);
  for (int i = 0; i < n; i++)
    {
      double at = place->y + i * step;
      double rise = MIN (0.5 * place->width, place->y + place->height - at);

      cairo_move_to (cr, place->x, at);
      cairo_line_to (cr, place->x + place->width, at + rise);
    }
  stroke (cr, place, 1.0);
}

/* A soft cloud with a dotted edge. */
static void
draw_stain (cairo_t *cr, const Place *place)
{
  double dots[] = { place->hairline, 3.0 * place->hairline };

  trace_ellipse (cr, place, 1.0);
  fill (cr, place, 0.22);
  cairo_save (cr);
  trace_ellipse (cr, place, 1.0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (cr, dots, 2, 0.0);
  stroke (cr, place, 1.3);
  cairo_restore (cr);
}

/* A dark lens, pointed along the grain. */
static void
draw_bark_pocket (cairo_t *cr, const Place *place)
{
  double middle = place->x + 0.5 * place->width, bottom = place->y + place->height;
  double low = place->y + 0.35 * place->height, high = place->y + 0.65 * place->height;

  cairo_move_to (cr, middle, place->y);
  cairo_curve_to (cr, place->x + place->width, low, place->x + place->width, high, middle, bottom);
  cairo_curve_to (cr, place->x, high, place->x, low, middle, place->y);
  fill (cr, place, 0.85);
}

/* A light band between dashed lines. */
static void
draw_sapwood (cairo_t *cr, const Place *place)
{
  double dashes[] = { 5.0 * place->hairline, 3.0 * place->hairline };

  cairo_rectangle (cr, place->x, place->y, place->width, place->height);
  cairo_set_source_rgba (cr, 1.0, 1.0, 1.0, 0.34 * place->alpha);
  cairo_fill (cr);
  cairo_save (cr);
  cairo_set_dash (cr, dashes, 2, 0.0);
  cairo_rectangle (cr, place->x, place->y, place->width, place->height);
  stroke (cr, place, 1.0);
  cairo_restore (cr);
}

/* A line of small crosses. */
static void
draw_pith (cairo_t *cr, const Place *place)
{
  double middle = place->x + 0.5 * place->width, arm = 2.2 * place->hairline;
  int n = (int)CLAMP (place->height / (4.0 * arm), 1.0, 400.0);

  for (int i = 0; i < n; i++)
    {
      double y = place->y + place->height * (i + 0.5) / n;

      cairo_move_to (cr, middle - arm, y - arm);
      cairo_line_to (cr, middle + arm, y + arm);
      cairo_move_to (cr, middle + arm, y - arm);
      cairo_line_to (cr, middle - arm, y + arm);
    }
  stroke (cr, place, 1.2);
}

/* A ring with a cross in it. */
static void
draw_hole (cairo_t *cr, const Place *place)
{
  double x = place->x + 0.5 * place->width, y = place->y + 0.5 * place->height;

  trace_ellipse (cr, place, 1.0);
  cairo_move_to (cr, place->x, y);
  cairo_line_to (cr, place->x + place->width, y);
  cairo_move_to (cr, x, place->y);
  cairo_line_to (cr, x, place->y + place->height);
  stroke (cr, place, 1.5);
}

void
bs_defect_draw (cairo_t *cr, BsDefectKind kind, double severity, double x, double y, double width,
                double height, double hairline, const BsColor *color)
{
  /* Too small a defect would not be seen, and none told from another. */
  double least = 8.0 * hairline;
  Place place = {
    .x = x - 0.5 * MAX (least - width, 0.0),
    .y = y - 0.5 * MAX (least - height, 0.0),
    .width = MAX (width, least),
    .height = MAX (height, least),
    .hairline = hairline,
    .alpha = 0.55 + 0.225 * CLAMP (severity, 0.0, 2.0),
    .color = color,
  };
  static void (*const draw[BS_N_DEFECT_KINDS]) (cairo_t *, const Place *) = {
    [BS_DEFECT_KNOT] = draw_knot,
    [BS_DEFECT_CHECK] = draw_check,
    [BS_DEFECT_WANE] = draw_wane,
    [BS_DEFECT_STAIN] = draw_stain,
    [BS_DEFECT_BARK_POCKET] = draw_bark_pocket,
    [BS_DEFECT_SAPWOOD] = draw_sapwood,
    [BS_DEFECT_PITH] = draw_pith,
    [BS_DEFECT_HOLE] = draw_hole,
  };

  if (isfinite (place.x + place.y + place.width + place.height))
    draw[kind](cr, &place);
}
