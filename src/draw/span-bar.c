/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/span-bar.h"

#define HATCH_STEP 0.36 /* of the bar's height */

typedef struct
{
  double tone; /* of the ground, 0 to 1 of the ink */
  gboolean is_outlined;
  int n_slants;
  double slants[2]; /* across for a height of one: 0 upright */
} Look;

static const Look looks[] = {
  [BS_SPAN_SPREAD] = { .tone = 1.0 },
  [BS_SPAN_TIGHTEN] = { .is_outlined = TRUE, .n_slants = 1, .slants = { 1.0 } },
  [BS_SPAN_OPEN] = { .tone = 0.5 },
  [BS_SPAN_PRESS] = { .tone = 0.25, .n_slants = 1, .slants = { 0.0 } },
  [BS_SPAN_REST] = { .is_outlined = TRUE },
  [BS_SPAN_PLANE] = { .is_outlined = TRUE, .n_slants = 2, .slants = { 1.0, -1.0 } },
};

static void
hatch (cairo_t *cr, double x, double y, double width, double height, double slant)
{
  double reach = height * (slant < 0.0 ? -slant : slant);
  int n = (int)((width + 2.0 * reach) / (HATCH_STEP * height)) + 1;

  for (int i = 0; i < n; i++)
    {
      double at = x - reach + i * HATCH_STEP * height;

      cairo_move_to (cr, at, y + height);
      cairo_line_to (cr, at + slant * height, y);
    }
  cairo_stroke (cr);
}

void
bs_span_bar_draw (cairo_t *cr, BsSpan span, double x, double y, double width, double height,
                  double hairline, const BsPalette *palette)
{
  const Look *look = &looks[span];

  cairo_save (cr);
  cairo_set_line_width (cr, hairline);
  cairo_rectangle (cr, x, y, width, height);
  if (look->tone > 0.0)
    {
      bs_color_set_faded (&palette->ink, cr, look->tone);
      cairo_fill_preserve (cr);
    }
  cairo_clip (cr);
  bs_color_set (&palette->ink, cr);
  for (int i = 0; i < look->n_slants; i++)
    hatch (cr, x, y, width, height, look->slants[i]);
  if (look->is_outlined)
    {
      /* The clip leaves the inner half of it. */
      cairo_set_line_width (cr, 2.0 * hairline);
      cairo_rectangle (cr, x, y, width, height);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}
