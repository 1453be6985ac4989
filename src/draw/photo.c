/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/photo.h"

#include "core/sawing-lamination.h"

void
bs_photo_draw (cairo_t *cr, cairo_surface_t *photo, const BsPhotoPart *part, double x, double y,
               double width, double height)
{
  double pixels_x = part->width * cairo_image_surface_get_width (photo);
  double pixels_y = part->height * cairo_image_surface_get_height (photo);

  if (!(width > 0.0 && height > 0.0 && pixels_x > 0.0 && pixels_y > 0.0))
    return;
  cairo_save (cr);
  cairo_rectangle (cr, x, y, width, height);
  cairo_clip (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, width / pixels_x, height / pixels_y);
  cairo_set_source_surface (cr, photo, -part->x * cairo_image_surface_get_width (photo),
                            -part->y * cairo_image_surface_get_height (photo));
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_PAD);
  cairo_paint (cr);
  cairo_restore (cr);
}

BsFacePhoto
bs_photo_find (const BsPlan *plan, const BsLamination *lamination, BsFace face)
{
  BsFace side = bs_saw_face_of_board (plan->slab.layup, face);
  gboolean is_top = side == BS_FACE_TOP;
  BsSawnFrom from;

  if (!(is_top || side == BS_FACE_UNDERSIDE) || !bs_saw_find_origin (plan, lamination, &from))
    return (BsFacePhoto){ 0 };

  const BsBoard *board = from.board;
  double upper = is_top ? board->width - from.y - from.width : from.y;

  return (BsFacePhoto){
    .path = is_top ? board->photo_top : board->photo_underside,
    .part = { from.x / board->length, upper / board->width, from.length / board->length,
              from.width / board->width },
    .is_underside = !is_top,
  };
}

BsFacePhoto
bs_photo_find_shown (const BsPlan *plan, const BsPlaced *placed)
{
  return bs_photo_find (plan, placed->lamination,
                        bs_orientation_face (placed->orientation, BS_FACE_TOP));
}

void
bs_photo_draw_face (cairo_t *cr, const BsFacePhoto *photo, double across, double along)
{
  cairo_matrix_t turn; /* along the photo is along the face; down it is across the board */

  if (photo->is_underside)
    cairo_matrix_init (&turn, 0.0, 1.0, 1.0, 0.0, 0.0, 0.0);
  else
    cairo_matrix_init (&turn, 0.0, 1.0, -1.0, 0.0, across, 0.0);
  cairo_save (cr);
  cairo_transform (cr, &turn);
  bs_photo_draw (cr, photo->surface, &photo->part, 0.0, 0.0, along, across);
  cairo_restore (cr);
}
