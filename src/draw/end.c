/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture.h"

#include <math.h>

#include "draw/grain.h"
#include "draw/marks.h"
#include "draw/outline.h"

/* The rings as they lie in the slab: drawn in the lamination's own frame, turned by flips. */
static void
draw_rings (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, double width, double height,
            const BsColor *color)
{
  const BsGrainStyle style = {
    .per_mm_across = scale->per_mm_across,
    .per_mm_along = scale->per_mm_along,
    .hairline = scale->hairline,
    .color = *color,
  };
  BsGrain grain;

  bs_grain_init (&grain, placed->lamination);
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, -height, width, height);
  cairo_clip (cr);
  cairo_translate (cr, 0.5 * width, -0.5 * height);
  cairo_scale (cr, bs_orientation_sign_y (placed->orientation),
               bs_orientation_sign_z (placed->orientation));
  bs_grain_draw_end (&grain, cr, &style);
  cairo_restore (cr);
}

/* The label in the middle, the sign of the top edge at that edge, the sign of a finding at the
 * other. */
static void
draw_signs (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, const BsPalette *palette,
            BsMark marks, double width, double height)
{
  const BsLamination *lamination = placed->lamination;
  BsColor text = bs_palette_on_wood (palette, placed->wood, lamination->lightness);
  BsColor patch = bs_palette_wood (palette, placed->wood, lamination->lightness);
  BsLettering style = { .size = bs_scale_get_label_size (scale), .is_bold = TRUE };
  double sign = MIN (MIN (0.62 * scale->text_size, 0.6 * width), height / 6.0);
  /* Far enough in to stay clear of the finished face. */
  double edge = 0.5 * sign + MAX (0.06 * height, 0.5 * scale->hairline);
  gboolean is_up = bs_orientation_sign_z (placed->orientation) > 0;
  double label_room = height - 2.0 * (edge + 0.55 * sign);
  double finding = MIN (MIN (0.85 * scale->text_size, 0.8 * width), 0.22 * height);

  bs_mark_top_edge (cr, 0.5 * width, is_up ? edge - height : -edge, sign, is_up, &text);
  if (marks & (BS_MARK_CAUTION | BS_MARK_STOP))
    {
      gboolean is_stop = (marks & BS_MARK_STOP) != 0;
      double in = edge - 0.5 * sign + 0.6 * finding;

      bs_mark_finding (cr, 0.5 * width, is_up ? -in : in - height, finding,
                       is_stop ? BS_SEVERITY_STOP : BS_SEVERITY_CAUTION,
                       is_stop ? &palette->stop : &palette->caution, &palette->ground);
    }
  if (lamination->label != NULL)
    bs_mark_label (cr, lamination->label, &style, scale->labels_stand, 0.0,
                   -0.5 * (height + label_room), width, label_room, &text, &patch);
}

void
bs_draw_end (cairo_t *cr, const BsPlaced *placed, const BsScale *scale, const BsPalette *palette,
             BsMark marks)
{
  const BsLamination *lamination = placed->lamination;
  double width = placed->thickness * scale->per_mm_across;
  double height = placed->height_left * scale->per_mm_across;
  BsColor tint = bs_palette_wood (palette, placed->wood, lamination->lightness);
  BsColor grain = bs_palette_grain (palette, placed->wood, lamination->lightness);

  if (!(isfinite (width) && width > 0.0 && isfinite (height) && height > 0.0))
    return;
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rectangle (cr, 0.0, -height, width, height);
  bs_color_set (&tint, cr);
  cairo_fill (cr);
  draw_rings (cr, placed, scale, width, height, &grain);
  bs_outline_draw (cr, 0.0, -height, width, height, scale, palette, marks);
  draw_signs (cr, placed, scale, palette, marks, width, height);
  cairo_restore (cr);
}
