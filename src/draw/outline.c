/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/outline.h"

/* Solid corners inside the outline, so that a selection is seen without its colour. */
static void
trace_corners (cairo_t *cr, double x, double y, double width, double height, double size)
{
  for (int corner = 0; corner < 4; corner++)
    {
      double at_x = corner & 1 ? x + width : x;
      double at_y = corner & 2 ? y + height : y;
      double in_x = corner & 1 ? -size : size;
      double in_y = corner & 2 ? -size : size;

      cairo_move_to (cr, at_x, at_y);
      cairo_line_to (cr, at_x + in_x, at_y);
      cairo_line_to (cr, at_x, at_y + in_y);
      cairo_close_path (cr);
    }
}

void
bs_outline_draw (cairo_t *cr, double x, double y, double width, double height, const BsScale *scale,
                 const BsPalette *palette, BsMark marks)
{
  double line = scale->hairline, inset;

  cairo_save (cr);
  if (!(marks & (BS_MARK_SELECTED | BS_MARK_HELD)))
    {
      cairo_rectangle (cr, x, y, width, height);
      bs_color_set (&palette->edge, cr);
      cairo_set_line_width (cr, line);
      cairo_stroke (cr);
      cairo_restore (cr);
      return;
    }

  line = 2.0 * scale->hairline;
  inset = 0.5 * line;
  bs_color_set (&palette->accent, cr);
  if (marks & BS_MARK_SELECTED)
    {
      trace_corners (cr, x, y, width, height, MIN (7.0 * scale->hairline, 0.4 * width));
      cairo_fill (cr);
    }
  if (marks & BS_MARK_HELD)
    {
      double dashes[] = { 5.0 * scale->hairline, 3.0 * scale->hairline };

      cairo_set_dash (cr, dashes, 2, 0.0);
    }
  cairo_rectangle (cr, x + inset, y + inset, width - line, height - line);
  cairo_set_line_width (cr, line);
  cairo_stroke (cr);
  cairo_restore (cr);
}
