/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/chart.h"

#include <math.h>

void
bs_chart_line (const BsChart *self, cairo_t *cr, double x_from, double y_from, double x_to,
               double y_to, const BsColor *color, double times)
{
  bs_color_set (color, cr);
  cairo_set_line_width (cr, times * self->hairline);
  cairo_move_to (cr, x_from, y_from);
  cairo_line_to (cr, x_to, y_to);
  cairo_stroke (cr);
}

void
bs_chart_text (const BsChart *self, cairo_t *cr, const char *text, double part,
               const BsColor *color, double x, double y, double part_x, double part_y)
{
  const BsLettering style = { .size = part * self->text_size };

  bs_color_set (color, cr);
  bs_lettering_draw (cr, text, &style, x, y, part_x, part_y);
}

double
bs_chart_step (double least)
{
  const double power = pow (10.0, floor (log10 (least)));
  static const double rounds[] = { 1.0, 2.0, 5.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (rounds); i++)
    if (rounds[i] * power >= least * (1.0 - 1e-9))
      return rounds[i] * power;
  return 10.0 * power;
}

/* Neighbours that stand in one another's way. */
typedef struct
{
  double sum; /* of where they would be, each less the gaps before it */
  guint n;
} Pool;

static double
get_mean (const Pool *pool)
{
  return pool->sum / pool->n;
}

/* With the gaps taken off, positions must only not fall; the nearest such sequence is found by
 * pooling neighbours that do (isotonic regression). */
void
bs_chart_spread (double *positions, guint n, double gap, double first, double last)
{
  g_autofree Pool *pools = g_new (Pool, n + 1);
  guint n_pools = 0, k = 0;

  for (guint i = 0; i < n; i++)
    {
      pools[n_pools++] = (Pool){ positions[i] - i * gap, 1 };
      for (; n_pools > 1 && get_mean (&pools[n_pools - 2]) > get_mean (&pools[n_pools - 1]);
           n_pools--)
        {
          pools[n_pools - 2].sum += pools[n_pools - 1].sum;
          pools[n_pools - 2].n += pools[n_pools - 1].n;
        }
    }
  for (guint i = 0; i < n_pools; i++)
    for (guint j = 0; j < pools[i].n; j++, k++)
      positions[k] = CLAMP (get_mean (&pools[i]), first, last - (n - 1) * gap) + k * gap;
}
