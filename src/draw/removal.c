/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/removal.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/lettering.h"

/* In text sizes. */
#define CAPTION 1.7
#define FOOT 1.6 /* words for the ends */
#define BETWEEN 0.6
#define LABELS 3.2 /* beside the map */
#define RIM 0.5

static gboolean
is_drawable (const BsStack *stack)
{
  return stack->n > 0 && isfinite (stack->length) && isfinite (stack->width) && stack->length > 0.0
         && stack->width > 0.0;
}

double
bs_removal_fit (BsRemovalScale *show_face, BsRemovalScale *underside, const BsStack *stack,
                double width, double height, double text_size, double hairline)
{
  double words = (CAPTION + FOOT) * text_size;
  double along = width - (LABELS + RIM) * text_size;
  double up = 0.5 * (height - BETWEEN * text_size) - words;

  *show_face = *underside = (BsRemovalScale){ .text_size = text_size, .hairline = hairline };
  if (!is_drawable (stack) || !(along > 0.0) || !(up > 0.0))
    return 0.0;
  show_face->left = LABELS * text_size;
  show_face->top = CAPTION * text_size;
  show_face->per_mm = fmin (along / stack->length, up / stack->width);
  *underside = *show_face;
  underside->top += words + BETWEEN * text_size + stack->width * show_face->per_mm;
  return underside->top + stack->width * show_face->per_mm + FOOT * text_size;
}

BsHeat
bs_removal_get_heat (const BsFlattenMap *map, BsUnitSystem units)
{
  return (BsHeat){ 0.0, fmax (map->deepest, 0.1), BS_QUANTITY_LENGTH, units };
}

static double
to_x (const BsRemovalScale *self, double x)
{
  return self->left + x * self->per_mm;
}

static double
to_y (const BsRemovalScale *self, const BsStack *stack, double y)
{
  return self->top + (stack->width - y) * self->per_mm;
}

int
bs_removal_find_place (const BsRemovalScale *self, const BsStack *stack, double x, double y)
{
  double along = (x - self->left) / self->per_mm;
  double across = stack->width - (y - self->top) / self->per_mm;

  if (!(self->per_mm > 0.0))
    return -1;
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];

      if (across >= placed->y && across < placed->y + placed->thickness && along >= placed->x
          && along <= placed->x + placed->length)
        return (int)i;
    }
  return -1;
}

static void
draw_cells (cairo_t *cr, const BsFlattenMap *map, const BsStack *stack, gboolean is_top,
            const BsRemovalScale *scale, const BsPalette *palette)
{
  BsHeat heat = bs_removal_get_heat (map, stack->plan->units);
  double length = stack->length * scale->per_mm, width = stack->width * scale->per_mm;

  cairo_save (cr);
  cairo_translate (cr, scale->left, scale->top + width);
  cairo_scale (cr, 1.0, -1.0); /* the first row of the map is at the front */
  bs_heat_draw_cells (&heat, cr, is_top ? map->top : map->underside, map->n_x, map->n_y, 0.0, 0.0,
                      length, width, palette);
  cairo_restore (cr);
}

static void
trace_lamination (cairo_t *cr, const BsPlaced *placed, const BsStack *stack,
                  const BsRemovalScale *scale)
{
  cairo_rectangle (cr, to_x (scale, placed->x), to_y (scale, stack, placed->y + placed->thickness),
                   placed->length * scale->per_mm, placed->thickness * scale->per_mm);
}

/* Joints are drawn where laminations are at least so wide, in hairlines; else the steps of the
 * shades tell them. */
#define LEAST_JOINT 6.0

static void
draw_outlines (cairo_t *cr, const BsStack *stack, const BsRemovalScale *scale, const char *selected,
               const BsPalette *palette)
{
  const BsPlaced *marked = NULL;
  gboolean has_joints = stack->width * scale->per_mm / stack->n >= LEAST_JOINT * scale->hairline;

  cairo_set_line_width (cr, scale->hairline);
  bs_color_set_faded (&palette->edge, cr, 0.45);
  for (guint i = 0; i < stack->n; i++)
    {
      if (has_joints)
        trace_lamination (cr, &stack->placed[i], stack, scale);
      if (g_strcmp0 (stack->placed[i].lamination->id, selected) == 0)
        marked = &stack->placed[i];
    }
  cairo_stroke (cr);
  if (marked == NULL)
    return;
  trace_lamination (cr, marked, stack, scale);
  bs_color_set (&palette->ground, cr);
  cairo_set_line_width (cr, 5.0 * scale->hairline);
  cairo_stroke_preserve (cr);
  bs_color_set (&palette->accent, cr);
  cairo_set_line_width (cr, 3.0 * scale->hairline);
  cairo_stroke (cr);
}

/* Labels stand where there is room; of laminations too thin for theirs, as many as fit. */
static void
draw_labels (cairo_t *cr, const BsStack *stack, const BsRemovalScale *scale,
             const BsPalette *palette)
{
  BsLettering style = { .size = 0.85 * scale->text_size };
  double room = INFINITY;

  bs_color_set (&palette->ink, cr);
  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      double middle = to_y (scale, stack, placed->y + 0.5 * placed->thickness);

      if (placed->lamination->label == NULL || room - middle < scale->text_size)
        continue;
      room = middle;
      style.size = bs_lettering_fit (cr, placed->lamination->label, &style,
                                     (LABELS - 0.5) * scale->text_size, 0.0);
      bs_lettering_draw (cr, placed->lamination->label, &style,
                         scale->left - 0.4 * scale->text_size, middle, 1.0, 0.5);
      style.size = 0.85 * scale->text_size;
    }
}

static void
draw_words (cairo_t *cr, const BsStack *stack, gboolean is_top, const BsRemovalScale *scale,
            const BsPalette *palette)
{
  BsLettering bold = { .size = scale->text_size, .is_bold = TRUE };
  BsLettering small = { .size = 0.85 * scale->text_size };
  double right = to_x (scale, stack->length);
  double below = to_y (scale, stack, 0.0) + 0.25 * scale->text_size;

  bs_color_set (&palette->ink, cr);
  bs_lettering_draw (cr,
                     is_top ? _ ("Show face, from above") : _ ("Underside, seen through the slab"),
                     &bold, scale->left, scale->top - 0.35 * scale->text_size, 0.0, 1.0);
  bs_color_set (&palette->faint, cr);
  bs_lettering_draw (cr, _ ("left end"), &small, scale->left, below, 0.0, 0.0);
  bs_lettering_draw (cr, _ ("front"), &small, 0.5 * (scale->left + right), below, 0.5, 0.0);
  bs_lettering_draw (cr, _ ("right end"), &small, right, below, 1.0, 0.0);
}

/* A ring on a spot, and the box of the words beside it. */
typedef struct
{
  const BsDeepSpot *spot;
  char *depth;
  BsLettering style;
  double x, y, radius;
  cairo_rectangle_t words;
  gboolean has_words;
} Mark;

static void
set_words (Mark *self, gboolean is_right, double gap)
{
  self->words.x = is_right ? self->x + gap : self->x - gap - self->words.width;
}

static gboolean
overlap (const cairo_rectangle_t *a, const cairo_rectangle_t *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height
         && b->y < a->y + a->height;
}

static gboolean
is_clear (const Mark *marks, guint i)
{
  for (guint j = 0; j < i; j++)
    if (marks[j].has_words && overlap (&marks[i].words, &marks[j].words))
      return FALSE;
  return TRUE;
}

static void
measure_mark (Mark *self, cairo_t *cr, const BsStack *stack, const BsRemovalScale *scale)
{
  const double half = 0.5 * scale->text_size;

  self->radius = 0.32 * scale->text_size;
  self->depth = bs_units_format (self->spot->depth, BS_QUANTITY_LENGTH, stack->plan->units);
  self->x = CLAMP (to_x (scale, self->spot->x), scale->left + self->radius,
                   to_x (scale, stack->length) - self->radius);
  self->y = CLAMP (to_y (scale, stack, self->spot->y), scale->top + half,
                   fmax (scale->top + half, to_y (scale, stack, 0.0) - half));
  bs_lettering_measure (cr, self->depth, &self->style, &self->words.width, &self->words.height);
  self->words.width += 0.4 * scale->text_size;
  self->words.y = self->y - 0.5 * self->words.height;
}

/* Words stand on the side where there is room, and are left out where they would hide those of a
 * deeper spot. */
static void
place_marks (Mark *marks, guint n, cairo_t *cr, const BsStack *stack, const BsRemovalScale *scale)
{
  for (guint i = 0; i < n; i++)
    {
      gboolean is_right;

      measure_mark (&marks[i], cr, stack, scale);
      is_right = marks[i].x < to_x (scale, 0.75 * stack->length);
      set_words (&marks[i], is_right, 1.5 * marks[i].radius);
      if (!is_clear (marks, i))
        set_words (&marks[i], !is_right, 1.5 * marks[i].radius);
      marks[i].has_words = is_clear (marks, i)
                           && marks[i].words.x >= scale->left - LABELS * scale->text_size
                           && marks[i].words.x + marks[i].words.width
                                  <= to_x (scale, stack->length) + RIM * scale->text_size;
    }
}

static void
draw_mark (const Mark *self, cairo_t *cr, const BsRemovalScale *scale, const BsPalette *palette)
{
  if (self->has_words)
    {
      cairo_rectangle (cr, self->words.x, self->words.y, self->words.width, self->words.height);
      bs_color_set_faded (&palette->ground, cr, 0.86);
      cairo_fill (cr);
    }
  cairo_arc (cr, self->x, self->y, self->radius, 0.0, 2.0 * G_PI);
  bs_color_set (&palette->ground, cr);
  cairo_set_line_width (cr, 4.0 * scale->hairline);
  cairo_stroke_preserve (cr);
  bs_color_set (&palette->ink, cr);
  cairo_set_line_width (cr, 1.8 * scale->hairline);
  cairo_stroke (cr);
  if (self->has_words)
    bs_lettering_draw (cr, self->depth, &self->style, self->words.x + 0.2 * scale->text_size,
                       self->y, 0.0, 0.5);
}

static void
draw_spots (cairo_t *cr, const BsDeepSpot *spots, guint n, const BsStack *stack,
            const BsRemovalScale *scale, const BsPalette *palette)
{
  Mark marks[BS_N_DEEP_SPOTS] = { 0 };

  for (guint i = 0; i < n; i++)
    {
      marks[i].spot = &spots[i];
      marks[i].style = (BsLettering){ .size = 0.85 * scale->text_size, .is_bold = i == 0 };
    }
  place_marks (marks, n, cr, stack, scale);
  for (guint i = n; i-- > 0;)
    {
      draw_mark (&marks[i], cr, scale, palette);
      g_free (marks[i].depth);
    }
}

void
bs_draw_removal (cairo_t *cr, const BsFlattenMap *map, const BsStack *stack, gboolean is_top,
                 const BsRemovalScale *scale, const char *selected, const BsPalette *palette)
{
  const BsDeepSpots *deep = is_top ? &map->deep_top : &map->deep_underside;

  if (map->n_x == 0 || !(scale->per_mm > 0.0))
    return;
  cairo_save (cr);
  draw_cells (cr, map, stack, is_top, scale, palette);
  draw_outlines (cr, stack, scale, selected, palette);
  draw_labels (cr, stack, scale, palette);
  draw_words (cr, stack, is_top, scale, palette);
  draw_spots (cr, deep->spots, deep->n, stack, scale, palette);
  cairo_restore (cr);
}

void
bs_draw_removal_legend (cairo_t *cr, const BsFlattenMap *map, BsUnitSystem units, double width,
                        double text_size, double hairline, const BsPalette *palette)
{
  BsHeat heat = bs_removal_get_heat (map, units);
  BsLettering small = { .size = 0.85 * text_size };
  /* Translators: before a scale of depths. */
  const char *words = _ ("comes off:");
  double wide, high;

  bs_color_set (&palette->ink, cr);
  bs_lettering_measure (cr, words, &small, &wide, &high);
  bs_lettering_draw (cr, words, &small, 0.0, 0.0, 0.0, 0.0);
  wide += text_size;
  bs_heat_draw_legend (&heat, cr, wide, 0.0, width - wide - text_size, text_size, hairline,
                       palette);
}
