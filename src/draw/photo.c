/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/photo.h"

#include <math.h>

BsPhotoPart
bs_photo_part_of_cut (const BsBoard *board, const BsCut *cut, BsFace face)
{
  double from_front = cut->y / board->width;
  double height = cut->width / board->width;

  return (BsPhotoPart){
    .x = cut->x / board->length,
    .y = face == BS_FACE_TOP ? 1.0 - from_front - height : from_front,
    .width = cut->length / board->length,
    .height = height,
  };
}

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
