/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/profile.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/units.h"
#include "draw/lettering.h"

/* In text sizes. */
#define CAPTION 1.7
#define BAND 2.6 /* what the deepest spot takes at most, on either side */
#define BODY 2.2 /* what is left of the thickness */
#define RIM 0.5

typedef struct
{
  cairo_t *cr;
  const BsFlattenMap *map;
  const BsStack *stack;
  const BsPalette *palette;
  BsProfile profile;
  guint cut;           /* the column or row of the map */
  double left, per_mm; /* along the picture */
  double top, bottom;  /* of the finished slab, drawn */
  double high_per_mm;  /* of what comes off */
  double text, hairline;
} Picture;

double
bs_profile_times (double deepest, double per_mm, double text_size)
{
  static const double steps[] = { 500.0, 200.0, 100.0, 50.0, 20.0, 10.0, 5.0, 2.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * per_mm * deepest <= BAND * text_size)
      return steps[i];
  return 1.0;
}

static guint
count_cells (const Picture *self)
{
  return self->profile == BS_PROFILE_ACROSS ? self->map->n_y : self->map->n_x;
}

static double
get_off (const Picture *self, gboolean is_top, guint cell)
{
  const double *values = is_top ? self->map->top : self->map->underside;

  return self->profile == BS_PROFILE_ACROSS ? values[cell * self->map->n_x + self->cut]
                                            : values[self->cut * self->map->n_x + cell];
}

static double
cell_size (const Picture *self)
{
  return self->per_mm
         * (self->profile == BS_PROFILE_ACROSS ? self->map->cell_y : self->map->cell_x);
}

/* The part of one face that comes off: cells where wood is, from the finished face outwards. */
static void
trace_off (const Picture *self, gboolean is_top)
{
  double face = is_top ? self->top : self->bottom, out = is_top ? -1.0 : 1.0;
  double size = cell_size (self);

  for (guint i = 0; i < count_cells (self); i++)
    {
      double off = get_off (self, is_top, i);

      if (isfinite (off))
        cairo_rectangle (self->cr, self->left + i * size, face, size,
                         out * off * self->high_per_mm);
    }
}

/* The rough surface as one line, broken where there is no wood. */
static void
trace_surface (const Picture *self, gboolean is_top)
{
  double face = is_top ? self->top : self->bottom, out = is_top ? -1.0 : 1.0;
  double size = cell_size (self);
  gboolean is_begun = FALSE;

  for (guint i = 0; i < count_cells (self); i++)
    {
      double off = get_off (self, is_top, i), y = face + out * off * self->high_per_mm;
      double x = self->left + i * size;

      if (isfinite (off))
        {
          if (is_begun)
            cairo_line_to (self->cr, x, y);
          else
            cairo_move_to (self->cr, x, y);
          cairo_line_to (self->cr, x + size, y);
        }
      is_begun = isfinite (off);
    }
}

static void
draw_face (const Picture *self, gboolean is_top)
{
  trace_off (self, is_top);
  bs_color_set_faded (&self->palette->ink, self->cr, 0.28);
  cairo_fill (self->cr);
  trace_surface (self, is_top);
  bs_color_set (&self->palette->ink, self->cr);
  cairo_set_line_width (self->cr, 1.3 * self->hairline);
  cairo_stroke (self->cr);
}

/* The finished slab, and the line along which its middle is left out. */
static void
draw_body (const Picture *self)
{
  double width = count_cells (self) * cell_size (self), middle = 0.5 * (self->top + self->bottom);
  double dash[] = { 0.8 * self->text, 0.4 * self->text };
  BsLettering small = { .size = 0.85 * self->text };
  g_autofree char *thickness
      = bs_units_format (self->map->thickness, BS_QUANTITY_LENGTH, self->stack->plan->units);
  /* Translators: %s is the thickness of the finished slab. */
  g_autofree char *text = g_strdup_printf (_ ("finished: %s"), thickness);
  double wide, high;

  bs_color_set_faded (&self->palette->ink, self->cr, 0.07);
  cairo_rectangle (self->cr, self->left, self->top, width, self->bottom - self->top);
  cairo_fill (self->cr);
  bs_color_set (&self->palette->faint, self->cr);
  cairo_set_line_width (self->cr, self->hairline);
  cairo_move_to (self->cr, self->left, self->top);
  cairo_rel_line_to (self->cr, width, 0.0);
  cairo_move_to (self->cr, self->left, self->bottom);
  cairo_rel_line_to (self->cr, width, 0.0);
  cairo_stroke (self->cr);

  bs_lettering_measure (self->cr, text, &small, &wide, &high);
  cairo_set_dash (self->cr, dash, G_N_ELEMENTS (dash), 0.0);
  cairo_move_to (self->cr, self->left + wide + 1.2 * self->text, middle);
  cairo_line_to (self->cr, self->left + width, middle);
  cairo_stroke (self->cr);
  cairo_set_dash (self->cr, NULL, 0, 0.0);
  bs_color_set (&self->palette->ink, self->cr);
  bs_lettering_draw (self->cr, text, &small, self->left + 0.6 * self->text, middle, 0.0, 0.5);
}

/* Joints between laminations, through the body. */
static void
draw_joints (const Picture *self)
{
  bs_color_set_faded (&self->palette->faint, self->cr, 0.5);
  cairo_set_line_width (self->cr, self->hairline);
  for (guint i = 1; i < self->stack->n; i++)
    {
      double x = self->left + self->stack->placed[i].y * self->per_mm;

      cairo_move_to (self->cr, x, self->top);
      cairo_line_to (self->cr, x, self->bottom);
    }
  cairo_stroke (self->cr);
}

static const char *
find_label (const Picture *self, double at)
{
  for (guint i = self->stack->n; i-- > 0;)
    if (at >= self->stack->placed[i].y)
      return self->stack->placed[i].lamination->label;
  return NULL;
}

static void
draw_caption (const Picture *self, double at, double times)
{
  BsUnitSystem units = self->stack->plan->units;
  BsLettering bold = { .size = self->text, .is_bold = TRUE }, small = { .size = 0.85 * self->text };
  g_autofree char *where = bs_units_format (round (at), BS_QUANTITY_LENGTH, units);
  const char *label = find_label (self, at);
  g_autofree char *title
      = self->profile == BS_PROFILE_ACROSS
            /* Translators: %s is a length. */
            ? g_strdup_printf (_ ("Cut across, %s from the left end"), where)
            /* Translators: the label of a lamination. */
            : g_strdup_printf (_ ("Cut along lamination %s"), label != NULL ? label : "");
  /* Translators: %g is a round number such as 20. */
  g_autofree char *note = g_strdup_printf (_ ("what comes off: heights %g ×"), times);
  double wide, high;

  bs_lettering_measure (self->cr, title, &bold, &wide, &high);
  bs_color_set (&self->palette->ink, self->cr);
  bs_lettering_draw (self->cr, title, &bold, self->left, 1.2 * self->text, 0.0, 1.0);
  bs_color_set (&self->palette->faint, self->cr);
  bs_lettering_draw (self->cr, note, &small, self->left + wide + self->text, 1.2 * self->text, 0.0,
                     1.0);
}

static guint
find_cell (double at, double size, guint n)
{
  return (guint)CLAMP (floor (at / size), 0.0, n - 1.0);
}

void
bs_draw_profile (cairo_t *cr, const BsFlattenMap *map, const BsStack *stack, BsProfile profile,
                 double at, double width, double text_size, double hairline,
                 const BsPalette *palette)
{
  gboolean is_across = profile == BS_PROFILE_ACROSS;
  Picture self = { .cr = cr,
                   .map = map,
                   .stack = stack,
                   .palette = palette,
                   .profile = profile,
                   .left = RIM * text_size,
                   .top = (CAPTION + BAND + RIM) * text_size,
                   .text = text_size,
                   .hairline = hairline };
  double times;

  if (map->n_x == 0)
    return;
  self.bottom = self.top + BODY * text_size;
  self.cut
      = is_across ? find_cell (at, map->cell_x, map->n_x) : find_cell (at, map->cell_y, map->n_y);
  self.per_mm = (width - 2.0 * RIM * text_size) / (is_across ? stack->width : stack->length);
  times = bs_profile_times (map->deepest, self.per_mm, text_size);
  self.high_per_mm = times * self.per_mm;

  cairo_save (cr);
  draw_body (&self);
  if (is_across)
    draw_joints (&self);
  draw_face (&self, TRUE);
  draw_face (&self, FALSE);
  draw_caption (&self, at, times);
  cairo_restore (cr);
}
