/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/lamination.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* The growth rings of one lamination in its own frame (mm; x from its left end, y and z from the
 * middle of the section). They are circles round the pith, irregular and a little wavy by a seed of
 * its id, and lie along a trunk that leans by the run-out. The section shows where they cut its
 * end, a face where they cut the face: one set of rings makes both, the same each time. Only the
 * place of the pith and the direction of the run-out are the lamination's; the rest is invented to
 * look like wood. */
typedef struct
{
  guint32 seed;
  gboolean has_rings; /* FALSE: the pith is unknown, and none are claimed */
  double length, thickness, height;
  double pith_y, pith_z; /* at the left end */
  double ring_width;     /* mean */
  double lean;           /* rise of the fibres, mm over mm of length */
  double phases[4];
} BsGrain;

void bs_grain_init (BsGrain *self, const BsLamination *lamination);

/* Radius of the ring of a number, from 1; grows with it. */
double bs_grain_ring (const BsGrain *self, int ring);

/* How a picture is drawn: device units per mm across (and up) and along, and the finest line. */
typedef struct
{
  double per_mm_across, per_mm_along;
  double hairline;
  BsColor color;
} BsGrainStyle;

/* Draw with the middle of the section, or the middle of the face's left end, at the origin of cr; y
 * to the right and z up, or x down, in device units. Turned laminations are drawn by a flipped cr.
 * Inside the lamination's outline; the caller clips. */
void bs_grain_draw_end (const BsGrain *self, cairo_t *cr, const BsGrainStyle *style);
void bs_grain_draw_face (const BsGrain *self, cairo_t *cr, BsFace face, const BsGrainStyle *style);

G_END_DECLS
