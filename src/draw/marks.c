/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/marks.h"

#include <math.h>

void
bs_mark_top_edge (cairo_t *cr, double x, double y, double size, gboolean is_up,
                  const BsColor *color)
{
  double tip = is_up ? -0.45 * size : 0.45 * size;

  cairo_move_to (cr, x, y + tip);
  cairo_line_to (cr, x + 0.5 * size, y - tip);
  cairo_line_to (cr, x - 0.5 * size, y - tip);
  cairo_close_path (cr);
  bs_color_set (color, cr);
  cairo_fill (cr);
}

void
bs_mark_left_end (cairo_t *cr, double x, double y, double size, const BsColor *color)
{
  cairo_rectangle (cr, x - 0.5 * size, y - 0.3 * size, size, 0.2 * size);
  cairo_rectangle (cr, x - 0.5 * size, y + 0.1 * size, size, 0.2 * size);
  bs_color_set (color, cr);
  cairo_fill (cr);
}

void
bs_mark_heart (cairo_t *cr, double x, double y, double size, int side, const BsColor *color)
{
  double heart = x + side * 0.4 * size;
  double middle = side > 0 ? G_PI : 0.0;

  bs_color_set (color, cr);
  cairo_arc (cr, heart, y, 0.11 * size, 0.0, 2.0 * G_PI);
  cairo_fill (cr);
  for (int ring = 1; ring <= 2; ring++)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, heart, y, 0.38 * ring * size, middle - 0.7, middle + 0.7);
    }
  cairo_set_line_width (cr, 0.1 * size);
  cairo_stroke (cr);
}

static void
trace_polygon (cairo_t *cr, double x, double y, double radius, int n_corners, double first)
{
  for (int i = 0; i < n_corners; i++)
    {
      double angle = first + 2.0 * G_PI * i / n_corners;

      cairo_line_to (cr, x + radius * cos (angle), y + radius * sin (angle));
    }
  cairo_close_path (cr);
}

void
bs_mark_finding (cairo_t *cr, double x, double y, double size, BsSeverity severity,
                 const BsColor *color, const BsColor *ground)
{
  gboolean is_stop = severity == BS_SEVERITY_STOP;
  double middle = is_stop ? y : y + 0.08 * size;

  if (is_stop)
    trace_polygon (cr, x, y, 0.52 * size, 8, G_PI / 8.0);
  else
    trace_polygon (cr, x, y + 0.14 * size, 0.62 * size, 3, -G_PI / 2.0);
  bs_color_set (color, cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, 0.1 * size);
  cairo_fill_preserve (cr);
  cairo_stroke (cr);

  bs_color_set (ground, cr);
  cairo_rectangle (cr, x - 0.065 * size, middle - 0.24 * size, 0.13 * size, 0.30 * size);
  cairo_rectangle (cr, x - 0.065 * size, middle + 0.13 * size, 0.13 * size, 0.13 * size);
  cairo_fill (cr);
}

void
bs_mark_run_out (cairo_t *cr, double x, double y, double length, double head, double line_width,
                 const BsColor *color)
{
  double tip = y + length;
  double back = length < 0.0 ? head : -head;

  bs_color_set (color, cr);
  cairo_set_line_width (cr, line_width);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x, tip + 0.7 * back);
  cairo_stroke (cr);

  cairo_move_to (cr, x, tip);
  cairo_line_to (cr, x + 0.38 * head, tip + back);
  cairo_line_to (cr, x, tip + 0.75 * back);
  cairo_line_to (cr, x - 0.38 * head, tip + back);
  cairo_close_path (cr);
  cairo_fill (cr);
}

void
bs_mark_ground (cairo_t *cr, double x, double y, double width, double height, const BsColor *color)
{
  cairo_rectangle (cr, x, y, width, height);
  bs_color_set_faded (color, cr, 0.82);
  cairo_fill (cr);
}

#define LEAST_PART 0.7
#define PART_OVER 0.76     /* of the room, so that there is air above and below */
#define LABEL_PADDING 0.18 /* of the size */

void
bs_mark_label (cairo_t *cr, const char *label, const BsLettering *style, gboolean is_standing,
               double x, double y, double width, double height, const BsColor *color,
               const BsColor *patch)
{
  BsLettering fitted = *style;
  double along = is_standing ? height : 0.96 * width, over = is_standing ? width : height;
  double text_width, text_height, padding;

  fitted.size = bs_lettering_fit (cr, label, style, along, 0.0);
  fitted.size = MIN (fitted.size, PART_OVER * over);
  if (fitted.size < LEAST_PART * style->size)
    return;
  bs_lettering_measure (cr, label, &fitted, &text_width, &text_height);

  padding = LABEL_PADDING * fitted.size;
  cairo_save (cr);
  cairo_translate (cr, x + 0.5 * width, y + 0.5 * height);
  if (is_standing)
    cairo_rotate (cr, -G_PI / 2.0);
  bs_mark_ground (cr, -0.5 * text_width - padding, -0.42 * text_height, text_width + 2.0 * padding,
                  0.84 * text_height, patch);
  bs_color_set (color, cr);
  bs_lettering_draw (cr, label, &fitted, 0.0, 0.0, 0.5, 0.5);
  cairo_restore (cr);
}
