/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/pressing-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "draw/lettering.h"

/* In text sizes: beside the slab, over its clamps' heads (their order and force, in two rows),
 * under them (their places), and the heads themselves. */
#define LEFT 3.6
#define RIGHT 2.0
#define OVER 4.9
#define UNDER 2.3
#define HEAD 0.6
#define GAP 0.25
#define LEAST_PITCH 0.75 /* of a lamination across */

static gboolean
has_sizes (const BsStack *stack)
{
  return stack->n > 0 && isfinite (stack->length) && isfinite (stack->width) && stack->length > 0.0
         && stack->width > 0.0;
}

void
bs_pressing_scale_fit (BsPressingScale *self, const BsResults *results, double width, double height,
                       double text_size, double hairline)
{
  const BsStack *stack = results->stack;
  double beside = (LEFT + RIGHT) * text_size;
  double room = fmax (height - (OVER + UNDER + 2.0 * (HEAD + GAP)) * text_size, text_size);

  *self = (BsPressingScale){ .left = LEFT * text_size,
                             .text_size = text_size,
                             .hairline = hairline,
                             .caul = results->clamps.caul_thickness };
  if (!has_sizes (stack) || !(width > beside))
    return;
  self->per_mm_along = (width - beside) / stack->length;
  self->length = stack->length;
  self->width = stack->width;
  self->per_mm_across
      = fmin (fmax (self->per_mm_along, LEAST_PITCH * text_size * stack->n / stack->width),
              room / (stack->width + 2.0 * self->caul));
  self->top = (OVER + HEAD + GAP) * text_size + self->caul * self->per_mm_across;
}

double
bs_pressing_scale_get_height (const BsPressingScale *self)
{
  if (!(self->per_mm_along > 0.0))
    return 0.0;
  return self->top + (self->width + self->caul) * self->per_mm_across
         + (UNDER + HEAD + GAP) * self->text_size;
}

double
bs_pressing_scale_from_x (const BsPressingScale *self, double x)
{
  return self->left + x * self->per_mm_along;
}

double
bs_pressing_scale_to_x (const BsPressingScale *self, double device)
{
  return self->per_mm_along > 0.0 ? (device - self->left) / self->per_mm_along : 0.0;
}

double
bs_pressing_scale_from_y (const BsPressingScale *self, double y)
{
  return self->top + (self->width - y) * self->per_mm_across;
}

/* Outer edges of what lies between the heads. */
static double
get_back (const BsPressingScale *self)
{
  return self->top - self->caul * self->per_mm_across;
}

static double
get_front (const BsPressingScale *self)
{
  return self->top + (self->width + self->caul) * self->per_mm_across;
}

int
bs_pressing_scale_find_clamp (const BsPressingScale *self, const BsResults *results, double x,
                              double y)
{
  double nearest = 0.9 * self->text_size;
  int found = -1;

  if (!(self->per_mm_along > 0.0) || y < 0.0 || y > bs_pressing_scale_get_height (self))
    return -1;
  for (guint i = 0; i < results->set_clamps->len; i++)
    {
      const BsLayoutClamp *clamp = &g_array_index (results->set_clamps, BsLayoutClamp, i);
      double distance = fabs (bs_pressing_scale_from_x (self, clamp->x) - x);

      if (distance >= nearest)
        continue;
      nearest = distance;
      found = (int)i;
    }
  return found;
}

int
bs_pressing_scale_find_line (const BsPressingScale *self, const BsResults *results, double x,
                             double y)
{
  const BsStack *stack = results->stack;
  double nearest = INFINITY;
  int found = -1;

  if (!(self->per_mm_along > 0.0) || x < 0.0 || y < get_back (self) || y > get_front (self))
    return -1;
  for (guint i = 0; i + 1 < stack->n; i++)
    {
      double distance = fabs (bs_pressing_scale_from_y (self, stack->placed[i + 1].y) - y);

      if (distance >= nearest)
        continue;
      nearest = distance;
      found = (int)i;
    }
  return found;
}

static void
draw_wood (cairo_t *cr, const BsStack *stack, const BsPressingScale *scale,
           const BsPalette *palette)
{
  cairo_set_line_width (cr, scale->hairline);
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      BsColor wood = bs_palette_wood (palette, placed->wood, placed->lamination->lightness);

      cairo_rectangle (cr, bs_pressing_scale_from_x (scale, placed->x),
                       bs_pressing_scale_from_y (scale, placed->y + placed->thickness),
                       placed->length * scale->per_mm_along,
                       placed->thickness * scale->per_mm_across);
      bs_color_set (&wood, cr);
      cairo_fill_preserve (cr);
      bs_color_set_faded (&palette->edge, cr, 0.5);
      cairo_stroke (cr);
    }
}

static void
draw_cauls (cairo_t *cr, const BsPressure *pressure, const BsPressingScale *scale,
            const BsPalette *palette)
{
  const GArray *pieces = pressure->press.pieces;

  bs_color_set (&palette->faint, cr);
  cairo_set_line_width (cr, scale->hairline);
  for (guint i = 0; pieces != NULL && i < pieces->len; i++)
    {
      const BsPressPiece *piece = &g_array_index (pieces, BsPressPiece, i);
      double y = piece->course == 0 ? bs_pressing_scale_from_y (scale, 0.0) : get_back (scale);

      if (!piece->is_caul)
        continue;
      cairo_rectangle (cr, bs_pressing_scale_from_x (scale, piece->start), y,
                       piece->length * scale->per_mm_along, scale->caul * scale->per_mm_across);
      cairo_stroke (cr);
    }
}

/* At the left, where there is room for them all: the laminations' labels; and which side is which.
 */
static void
draw_labels (cairo_t *cr, const BsStack *stack, const BsPressingScale *scale,
             const BsPalette *palette)
{
  double right = scale->left - 0.5 * scale->text_size, least = INFINITY;
  BsLettering small = { .size = 0.85 * scale->text_size };

  for (guint i = 0; i < stack->n; i++)
    least = fmin (least, stack->placed[i].thickness * scale->per_mm_across);
  bs_color_set (&palette->faint, cr);
  bs_lettering_draw (cr, _ ("back"), &small, right, get_back (scale) - 0.2 * scale->text_size, 1.0,
                     1.0);
  bs_lettering_draw (cr, _ ("front"), &small, right, get_front (scale) + 0.2 * scale->text_size,
                     1.0, 0.0);
  bs_color_set (&palette->ink, cr);
  for (guint i = 0; i < stack->n && least > 1.05 * small.size; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      BsLettering style = small;

      if (placed->lamination->label == NULL)
        continue;
      style.size = bs_lettering_fit (cr, placed->lamination->label, &small,
                                     right - 0.3 * scale->text_size, 0.5 * small.size);
      if (style.size > 0.0)
        bs_lettering_draw (cr, placed->lamination->label, &style, right,
                           bs_pressing_scale_from_y (scale, placed->y + 0.5 * placed->thickness),
                           1.0, 0.5);
    }
}

/* The heads on both sides, filled above and open below, and the bar between them. */
static void
draw_heads (cairo_t *cr, const BsResults *results, const BsLayoutClamp *clamp,
            const BsPressingScale *scale, const BsPalette *palette, gboolean is_chosen)
{
  const BsClampKind *kind = g_ptr_array_index (results->stack->plan->shop.clamps, clamp->kind);
  double x = bs_pressing_scale_from_x (scale, clamp->x);
  double wide = fmax (kind->head_width * scale->per_mm_along, 0.45 * scale->text_size);
  double thick = HEAD * scale->text_size, back = get_back (scale), front = get_front (scale);
  double dashes[] = { 4.0 * scale->hairline, 3.0 * scale->hairline };
  const BsColor *color = is_chosen ? &palette->accent : &palette->ink;

  bs_color_set_faded (color, cr, is_chosen ? 1.0 : 0.6);
  cairo_set_line_width (cr, scale->hairline);
  cairo_set_dash (cr, dashes, clamp->is_above ? 0 : 2, 0.0);
  cairo_move_to (cr, x, back);
  cairo_line_to (cr, x, front);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0.0);

  bs_color_set (color, cr);
  cairo_set_line_width (cr, (is_chosen ? 2.0 : 1.0) * scale->hairline);
  cairo_rectangle (cr, x - 0.5 * wide, back - thick - scale->hairline, wide, thick);
  cairo_rectangle (cr, x - 0.5 * wide, front + scale->hairline, wide, thick);
  if (clamp->is_above)
    cairo_fill_preserve (cr);
  cairo_stroke (cr);
}

/* Texts over or under the clamps: in the first of two rows that has room, else none. */
typedef struct
{
  double ends[2]; /* where the last text of a row ends */
} Rows;

static int
find_row (Rows *self, double x, double width, double gap, int n_rows)
{
  for (int row = 0; row < n_rows; row++)
    if (x - 0.5 * width >= self->ends[row] + gap)
      {
        self->ends[row] = x + 0.5 * width;
        return row;
      }
  return -1;
}

static void
write_value (cairo_t *cr, const char *text, Rows *rows, int n_rows, double x, double y, double up,
             const BsPressingScale *scale)
{
  BsLettering style = { .size = 0.85 * scale->text_size };
  double width, height;
  int row;

  bs_lettering_measure (cr, text, &style, &width, &height);
  row = find_row (rows, x, width, 0.4 * scale->text_size, n_rows);
  if (row >= 0)
    bs_lettering_draw (cr, text, &style, x, y + row * up, 0.5, 0.5);
}

/* Its number in the order of tightening, in a ring. */
static void
write_turn (cairo_t *cr, const BsLayoutClamp *clamp, Rows *rows, double x, double y,
            const BsPressingScale *scale)
{
  BsLettering style = { .size = 0.8 * scale->text_size, .is_bold = TRUE };
  double radius = 0.72 * scale->text_size;
  g_autofree char *text = g_strdup_printf ("%u", clamp->turn + 1);

  if (find_row (rows, x, 2.0 * radius, 0.0, 1) < 0)
    return;
  bs_lettering_draw (cr, text, &style, x, y, 0.5, 0.5);
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, radius, 0.0, 2.0 * G_PI);
  cairo_set_line_width (cr, scale->hairline);
  cairo_stroke (cr);
}

static void
draw_clamps (cairo_t *cr, const BsResults *results, const BsPressingScale *scale,
             const BsPalette *palette, int chosen)
{
  Rows turns = { { -INFINITY, -INFINITY } }, forces = turns, places = turns;
  BsUnitSystem units = results->stack->plan->units;
  double over = get_back (scale) - (HEAD + GAP) * scale->text_size;
  double under = get_front (scale) + (HEAD + GAP) * scale->text_size;

  for (guint i = 0; i < results->set_clamps->len; i++)
    {
      const BsLayoutClamp *clamp = &g_array_index (results->set_clamps, BsLayoutClamp, i);
      g_autofree char *force = bs_units_format (clamp->force, BS_QUANTITY_FORCE, units);
      g_autofree char *place = bs_units_format_number (clamp->x, BS_QUANTITY_LENGTH, units);
      double x = bs_pressing_scale_from_x (scale, clamp->x), text = scale->text_size;

      draw_heads (cr, results, clamp, scale, palette, (int)i == chosen);
      bs_color_set ((int)i == chosen ? &palette->accent : &palette->ink, cr);
      write_turn (cr, clamp, &turns, x, over - 0.85 * text, scale);
      write_value (cr, force, &forces, 2, x, over - 2.3 * text, -1.2 * text, scale);
      write_value (cr, place, &places, 2, x, under + 0.5 * text, 1.0 * text, scale);
    }
}

/* Arrows at both ends of the glue line that the curve is about. */
static void
draw_chosen_line (cairo_t *cr, const BsStack *stack, const BsPressingScale *scale,
                  const BsPalette *palette, guint line)
{
  double y = bs_pressing_scale_from_y (scale, stack->placed[line + 1].y);
  double right = bs_pressing_scale_from_x (scale, scale->length), size = 0.45 * scale->text_size;

  bs_color_set (&palette->accent, cr);
  cairo_move_to (cr, right + 0.4 * size, y);
  cairo_line_to (cr, right + 2.2 * size, y - size);
  cairo_line_to (cr, right + 2.2 * size, y + size);
  cairo_close_path (cr);
  cairo_fill (cr);
  cairo_set_line_width (cr, 1.5 * scale->hairline);
  cairo_rectangle (
      cr, scale->left, y - bs_pressing_half_band (scale, stack, line) - scale->hairline,
      right - scale->left, 2.0 * (bs_pressing_half_band (scale, stack, line) + scale->hairline));
  cairo_stroke (cr);
}

void
bs_draw_pressing (cairo_t *cr, const BsResults *results, const BsPressure *pressure,
                  const BsPressingScale *scale, const BsPalette *palette, BsPressingChoice choice)
{
  const BsStack *stack = results->stack;

  if (!(scale->per_mm_along > 0.0))
    return;
  cairo_save (cr);
  draw_wood (cr, stack, scale, palette);
  if (pressure != NULL && pressure->stack->n == stack->n)
    {
      draw_cauls (cr, pressure, scale, palette);
      bs_pressing_draw_bands (cr, pressure, scale, palette);
    }
  draw_labels (cr, stack, scale, palette);
  if (choice.line >= 0 && (guint)choice.line + 1 < stack->n)
    draw_chosen_line (cr, stack, scale, palette, (guint)choice.line);
  draw_clamps (cr, results, scale, palette, choice.clamp);
  cairo_restore (cr);
}
