/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/lettering.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* What the charts share. Sizes in device units; a chart's top left corner is the origin, and it
 * draws nothing outside its width and the height that it says. */
typedef struct
{
  double width;
  double text_size;
  double hairline;
  const BsPalette *palette;
} BsChart;

/* A line of the chart's hairline width times `times`, in a colour. */
void bs_chart_line (const BsChart *self, cairo_t *cr, double x_from, double y_from, double x_to,
                    double y_to, const BsColor *color, double times);

/* A text in a colour, `part` of the chart's text size large. See bs_lettering_draw. */
void bs_chart_text (const BsChart *self, cairo_t *cr, const char *text, double part,
                    const BsColor *color, double x, double y, double part_x, double part_y);

/* A round step of a scale, 1, 2 or 5 times a power of ten, at least `least` (> 0). */
double bs_chart_step (double least);

/* Moves sorted positions apart so that none is nearer than `gap` to the next and all lie between
 * the ends, each as little as possible (least squares). They must have room. */
void bs_chart_spread (double *positions, guint n, double gap, double first, double last);

G_END_DECLS
