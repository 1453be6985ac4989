/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/wide-faces.h"

#include "core/sawing-lamination.h"
#include "draw/defects.h"

#define GAP 4.0

BsFace
bs_wide_face (BsLayup layup, int number)
{
  static const BsFace on_edge[] = { BS_FACE_LEFT, BS_FACE_RIGHT };
  static const BsFace on_flat[] = { BS_FACE_TOP, BS_FACE_UNDERSIDE };

  return layup == BS_LAYUP_ON_EDGE ? on_edge[number] : on_flat[number];
}

static void
draw_defects (cairo_t *cr, const BsLamination *lamination, BsFace face, double per_mm,
              const BsColor *color)
{
  for (guint i = 0; i < lamination->defects->len; i++)
    {
      const BsDefect *defect = &g_array_index (lamination->defects, BsDefect, i);

      if (defect->face == face)
        bs_defect_draw (cr, defect->kind, defect->severity, per_mm * defect->across_from,
                        per_mm * defect->x_from, per_mm * (defect->across_to - defect->across_from),
                        per_mm * (defect->x_to - defect->x_from), 1.0, color);
    }
}

/* Along to the right; across upwards on the board's upper face, else downwards, as its photo lies.
 */
static void
draw_face (cairo_t *cr, const BsPlan *plan, const BsLamination *lamination, BsFace face,
           const BsFacePhoto *photo, double across, double along, const BsPalette *palette)
{
  const BsWood *wood = bs_plan_find_wood (plan, lamination->wood);
  BsColor tint = bs_palette_wood (palette, wood, lamination->lightness);
  BsColor text = bs_palette_on_wood (palette, wood, lamination->lightness);
  gboolean is_upper = bs_saw_face_of_board (plan->slab.layup, face) == BS_FACE_TOP;
  cairo_matrix_t turn;

  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, along, across);
  cairo_clip_preserve (cr);
  bs_color_set (&tint, cr);
  cairo_fill (cr);
  cairo_matrix_init (&turn, 0.0, is_upper ? -1.0 : 1.0, 1.0, 0.0, 0.0, is_upper ? across : 0.0);
  cairo_transform (cr, &turn);
  if (photo->surface != NULL)
    bs_photo_draw_face (cr, photo, across, along);
  draw_defects (cr, lamination, face, along / lamination->length, &text);
  cairo_restore (cr);
  cairo_rectangle (cr, 0.0, 0.0, along, across);
  bs_color_set (&palette->edge, cr);
  cairo_set_line_width (cr, 1.0);
  cairo_stroke (cr);
}

void
bs_draw_wide_faces (cairo_t *cr, const BsPlan *plan, const BsLamination *lamination,
                    const BsFacePhoto photos[BS_N_WIDE_FACES], double width, double height,
                    const BsPalette *palette)
{
  double breadth
      = plan->slab.layup == BS_LAYUP_ON_EDGE ? lamination->height : lamination->thickness;
  double per_mm = MIN ((width - 2.0) / lamination->length, (0.5 * (height - GAP) - 2.0) / breadth);
  double across = per_mm * breadth;

  if (!(per_mm > 0.0))
    return;
  cairo_save (cr);
  cairo_translate (cr, 1.0, 1.0);
  for (int i = 0; i < BS_N_WIDE_FACES; i++)
    {
      draw_face (cr, plan, lamination, bs_wide_face (plan->slab.layup, i), &photos[i], across,
                 per_mm * lamination->length, palette);
      cairo_translate (cr, 0.0, across + GAP);
    }
  cairo_restore (cr);
}
