/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/slab-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/dimension.h"
#include "draw/grain.h"

/* In text sizes. */
#define LEFT 7.0       /* for the thickness and the left end's name */
#define RIGHT 7.0      /* for the width and the right end's name */
#define OVER 1.6       /* for the name of the back */
#define UNDER 2.4      /* for the length */
#define MOST_HIGH 20.0 /* of the slab */

/* What runs away from the eye rises at 45 degrees, at half of its length. */
#define AWAY (0.5 * G_SQRT2 / 2.0)

/* How much is left of the wood on a side that nobody sees. */
#define PALE 0.3

typedef struct
{
  cairo_t *cr;
  const BsStack *stack;
  const BsSlab *slab;
  const BsChart *chart;
  double per_mm;
  double left, foot; /* of the front's lower left corner */
} View;

/* Per mm of x and of z. */
static double
find_scale (const BsSlab *slab, const BsChart *chart)
{
  const double room = fmax (chart->width - (LEFT + RIGHT) * chart->text_size, chart->text_size);

  return fmin (room / (slab->length + AWAY * slab->width),
               MOST_HIGH * chart->text_size / (slab->thickness + AWAY * slab->width));
}

double
bs_slab_view_get_height (const BsStack *stack, const BsChart *chart)
{
  const BsSlab *slab = &stack->plan->slab;

  return (OVER + UNDER) * chart->text_size
         + (slab->thickness + AWAY * slab->width) * find_scale (slab, chart);
}

static double
get_x (const View *self, double x, double y)
{
  return self->left + self->per_mm * (x + AWAY * y);
}

static double
get_y (const View *self, double y, double z)
{
  return self->foot - self->per_mm * (z + AWAY * y);
}

/* The three sides that face the eye. */
typedef enum
{
  TOP,
  FRONT,
  END,
} Side;

/* From here on cr is in mm on a side: across it (from the front to the back; on the front, up) and
 * along the grain (on the end, down). */
static void
turn_to (const View *self, Side side)
{
  const double s = self->per_mm, away = AWAY * s;
  cairo_matrix_t matrix;

  switch (side)
    {
    case TOP:
      cairo_matrix_init (&matrix, away, -away, s, 0.0, get_x (self, 0.0, 0.0),
                         get_y (self, 0.0, self->slab->thickness));
      break;
    case FRONT:
      cairo_matrix_init (&matrix, 0.0, -s, s, 0.0, get_x (self, 0.0, 0.0), get_y (self, 0.0, 0.0));
      break;
    case END:
    default:
      cairo_matrix_init (&matrix, away, -away, 0.0, s, get_x (self, self->slab->length, 0.0),
                         get_y (self, 0.0, self->slab->thickness));
      break;
    }
  cairo_transform (self->cr, &matrix);
}

static void
trace_side (const View *self, Side side)
{
  const BsSlab *slab = self->slab;

  cairo_save (self->cr);
  turn_to (self, side);
  cairo_rectangle (self->cr, 0.0, 0.0, side == FRONT ? slab->thickness : slab->width,
                   side == END ? slab->thickness : slab->length);
  cairo_restore (self->cr);
}

/* Where a lamination begins: what the built slab is too wide is taken off both edges alike, and
 * what is missing is missing at the back. */
static double
get_front (const View *self, const BsPlaced *placed)
{
  return placed->y - 0.5 * fmax (self->stack->width - self->slab->width, 0.0);
}

static void
draw_grain (const View *self, const BsPlaced *placed, Side side, const BsGrainStyle *style)
{
  const double middle = 0.5 * self->slab->thickness;
  BsGrain grain;

  bs_grain_init (&grain, placed->lamination);
  cairo_save (self->cr);
  switch (side)
    {
    case TOP:
      cairo_translate (self->cr, get_front (self, placed) + 0.5 * placed->thickness, placed->x);
      bs_grain_draw_face (&grain, self->cr, bs_orientation_face (placed->orientation, BS_FACE_TOP),
                          style);
      break;
    case FRONT:
      cairo_translate (self->cr, middle, placed->x);
      bs_grain_draw_face (&grain, self->cr, bs_orientation_face (placed->orientation, BS_FACE_LEFT),
                          style);
      break;
    case END:
    default:
      cairo_translate (self->cr, get_front (self, placed) + 0.5 * placed->thickness, middle);
      cairo_scale (self->cr, bs_orientation_sign_y (placed->orientation),
                   bs_orientation_sign_z (placed->orientation));
      bs_grain_draw_end (&grain, self->cr, style);
      break;
    }
  cairo_restore (self->cr);
}

/* One lamination's part of a side: its wood, clipped to it. */
static void
draw_strip (const View *self, const BsPlaced *placed, Side side, gboolean is_seen)
{
  const BsPalette *palette = self->chart->palette;
  const double lightness = placed->lamination->lightness, most = 2.0 * self->slab->length;
  const BsColor tint = bs_palette_wood (palette, placed->wood, lightness);
  const BsGrainStyle style = { .per_mm_across = 1.0,
                               .per_mm_along = 1.0,
                               .hairline = self->chart->hairline / self->per_mm,
                               .color = bs_palette_grain (palette, placed->wood, lightness) };

  cairo_save (self->cr);
  turn_to (self, side);
  if (side == FRONT)
    cairo_rectangle (self->cr, 0.0, 0.0, most, most);
  else
    cairo_rectangle (self->cr, get_front (self, placed), 0.0, placed->thickness, most);
  cairo_clip (self->cr);
  bs_color_set_faded (&tint, self->cr, is_seen ? 1.0 : PALE);
  cairo_paint (self->cr);
  if (is_seen)
    draw_grain (self, placed, side, &style);
  cairo_restore (self->cr);
}

/* Where there is no lamination yet the wood is not known either. */
static void
draw_blank (const View *self, gboolean is_seen)
{
  const BsColor tint = bs_palette_wood (self->chart->palette, NULL, NAN);

  bs_color_set_faded (&tint, self->cr, is_seen ? 1.0 : PALE);
  cairo_paint (self->cr);
}

static gboolean
is_known (const BsPlaced *placed)
{
  return isfinite (placed->x) && isfinite (placed->y) && placed->length > 0.0
         && placed->thickness > 0.0 && placed->height_left > 0.0;
}

static void
draw_side (const View *self, Side side, gboolean is_seen)
{
  const guint n = side == FRONT ? MIN (self->stack->n, 1) : self->stack->n;

  cairo_save (self->cr);
  trace_side (self, side);
  cairo_clip (self->cr);
  draw_blank (self, n == 0 && is_seen);
  for (guint i = 0; i < n; i++)
    if (is_known (&self->stack->placed[i]))
      draw_strip (self, &self->stack->placed[i], side, is_seen);
  cairo_restore (self->cr);
}

/* Over the top and down the end. */
static void
draw_joints (const View *self)
{
  const BsSlab *slab = self->slab;
  const BsColor *edge = &self->chart->palette->edge;

  for (guint i = 1; i < self->stack->n; i++)
    {
      const double y = get_front (self, &self->stack->placed[i]);

      if (!(y > 0.0 && y < slab->width))
        continue;
      const double right = get_x (self, slab->length, y), top = get_y (self, y, slab->thickness);
      bs_chart_line (self->chart, self->cr, get_x (self, 0.0, y), top, right, top, edge, 1.0);
      bs_chart_line (self->chart, self->cr, right, top, right, get_y (self, y, 0.0), edge, 1.0);
    }
}

static void
draw_edges (const View *self)
{
  bs_color_set (&self->chart->palette->edge, self->cr);
  cairo_set_line_width (self->cr, 1.5 * self->chart->hairline);
  cairo_set_line_join (self->cr, CAIRO_LINE_JOIN_ROUND);
  for (Side side = TOP; side <= END; side++)
    {
      trace_side (self, side);
      cairo_stroke (self->cr);
    }
}

static void
draw_size (const View *self, double x_from, double y_from, double x_to, double y_to, double size,
           gboolean is_left)
{
  g_autofree char *value = bs_units_format (size, BS_QUANTITY_LENGTH, self->stack->plan->units);

  bs_dimension_draw (self->cr, x_from, y_from, x_to, y_to, value, is_left, self->chart->text_size,
                     self->chart->hairline, self->chart->palette);
}

static void
draw_sizes (const View *self)
{
  const BsSlab *slab = self->slab;
  const double text = self->chart->text_size, off = 0.6 * text;
  const double below = self->foot + 1.9 * text, beside = self->left - 0.8 * text;
  const double right = get_x (self, slab->length, 0.0);

  draw_size (self, self->left, below, right, below, slab->length, FALSE);
  draw_size (self, right + off, self->foot + off, get_x (self, slab->length, slab->width) + off,
             get_y (self, slab->width, 0.0) + off, slab->width, FALSE);
  draw_size (self, beside, get_y (self, 0.0, slab->thickness), beside, self->foot, slab->thickness,
             TRUE);
}

/* On the front itself, or above its edge when it is too low for a text. */
static void
draw_front_name (const View *self)
{
  const BsSlab *slab = self->slab;
  const BsPalette *palette = self->chart->palette;
  const BsPlaced *first = self->stack->n > 0 ? &self->stack->placed[0] : NULL;
  const BsColor on_wood = bs_palette_on_wood (palette, first != NULL ? first->wood : NULL,
                                              first != NULL ? first->lamination->lightness : NAN);
  const gboolean has_room = self->per_mm * slab->thickness > 1.4 * self->chart->text_size;

  bs_chart_text (self->chart, self->cr, _ ("front"), 1.0,
                 has_room && !slab->shows_front ? &palette->ink : &on_wood,
                 get_x (self, 0.5 * slab->length, 0.0),
                 get_y (self, 0.0, has_room ? 0.5 * slab->thickness : slab->thickness), 0.5,
                 has_room ? 0.5 : 1.0);
}

/* Outside of the slab, beside the edge of the top that each belongs to. */
static void
draw_names (const View *self)
{
  const BsSlab *slab = self->slab;
  const BsColor *faint = &self->chart->palette->faint;
  const double gap = 0.5 * self->chart->text_size, top = slab->thickness;

  bs_chart_text (self->chart, self->cr, _ ("back"), 1.0, faint,
                 get_x (self, 0.5 * slab->length, slab->width),
                 get_y (self, slab->width, top) - 0.3 * gap, 0.5, 1.0);
  bs_chart_text (self->chart, self->cr, _ ("left end"), 1.0, faint,
                 get_x (self, 0.0, 0.5 * slab->width) - gap, get_y (self, 0.5 * slab->width, top),
                 1.0, 0.8);
  bs_chart_text (self->chart, self->cr, _ ("right end"), 1.0, faint,
                 get_x (self, slab->length, slab->width) + gap, get_y (self, slab->width, top), 0.0,
                 0.2);
  draw_front_name (self);
}

void
bs_draw_slab_view (cairo_t *cr, const BsStack *stack, const BsChart *chart)
{
  const BsSlab *slab = &stack->plan->slab;
  const double per_mm = find_scale (slab, chart);
  const View self = {
    .cr = cr,
    .stack = stack,
    .slab = slab,
    .chart = chart,
    .per_mm = per_mm,
    .left = LEFT * chart->text_size,
    .foot = OVER * chart->text_size + per_mm * (slab->thickness + AWAY * slab->width),
  };

  cairo_save (cr);
  draw_side (&self, TOP, TRUE);
  draw_side (&self, FRONT, slab->shows_front);
  draw_side (&self, END, slab->shows_ends);
  draw_joints (&self);
  draw_edges (&self);
  draw_sizes (&self);
  draw_names (&self);
  cairo_restore (cr);
}
