/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/results.h"
#include "draw/palette.h"
#include "draw/photo.h"
#include "draw/scale.h"

G_BEGIN_DECLS

/* The two pictures of the glue-up, in step: the end section (y to the right, z up) and under it the
 * show face (y to the right at the same scale, x downwards from the left end). The section is the
 * slab's left end as seen by looking at it from the right end, so that both pictures have the front
 * at their left. */

typedef enum
{
  BS_MARK_NONE = 0,
  BS_MARK_SELECTED = 1 << 0,
  BS_MARK_HELD = 1 << 1,
  BS_MARK_CAUTION = 1 << 2, /* a finding is about this lamination */
  BS_MARK_STOP = 1 << 3,
} BsMark;

/* One lamination with its front, bottom corner of the section (or front, left end of the face) at
 * the origin of cr: end grain, label, which edge is up; side grain or the photo, run-out arrow,
 * defects. These are what a canvas caches. photo: of its show face; NULL: none. */
void bs_draw_end (cairo_t *cr, const BsPlaced *placed, const BsScale *scale,
                  const BsPalette *palette, BsMark marks);
void bs_draw_face (cairo_t *cr, const BsPlaced *placed, const BsFacePhoto *photo,
                   const BsScale *scale, const BsPalette *palette, BsMark marks);

/* What the findings say about the lamination at a place. */
BsMark bs_marks_from_findings (const BsResults *results, int place);

/* The whole pictures at the scale's left and top, each lamination in its place, marked by the
 * findings: the section with its finished faces and dimensions; the face with the tape, the clamps,
 * the words for the ends and sides, and how much shorter than true its length is drawn.
 * bs_scale_fit () leaves the room that they need. photos: cairo_surface_t by the path that the plan
 * has, or NULL. */
void bs_draw_section_picture (cairo_t *cr, const BsResults *results, const BsScale *scale,
                              const BsPalette *palette);
void bs_draw_face_picture (cairo_t *cr, const BsResults *results, GHashTable *photos,
                           const BsScale *scale, const BsPalette *palette);

/* Parts of the whole pictures, for a canvas that draws its own laminations. */

/* The finished slab's faces across the section as at its left end, and the spots that decide them.
 */
void bs_draw_finished_faces (cairo_t *cr, const BsResults *results, const BsScale *scale,
                             const BsPalette *palette);

/* Around the section: its width and height as built, and its thickness when finished. */
void bs_draw_dimensions (cairo_t *cr, const BsResults *results, const BsScale *scale,
                         const BsPalette *palette);

/* Around the face: which end and which side is which; the note on its scale along the grain. */
void bs_draw_surroundings (cairo_t *cr, const BsResults *results, const BsScale *scale,
                           const BsPalette *palette);

/* A tape scale along x beside the face picture, in the plan's units, with the clamps where they go.
 */
void bs_draw_tape (cairo_t *cr, const BsResults *results, const BsScale *scale,
                   const BsPalette *palette);

G_END_DECLS
