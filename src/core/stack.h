/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* One lamination as it stands in the slab: every value turned into the slab's frame (mm; x from the
 * left end, y from the front, z from the underside). The lamination is borrowed from the plan. */
typedef struct
{
  const BsLamination *lamination;
  const BsWood *wood; /* NULL when the plan does not know it */
  BsOrientation orientation;
  double x, y;              /* its left, front corner */
  double length, thickness; /* along x and y */
  double height_left;       /* along z at the left end and at the right end; a taper that was not */
  double height_right;      /* measured counts as none */
  double bow, crook, cup, twist; /* towards +y, +z, as in BsLamination; NAN not measured */
  double pith_y, pith_z;         /* from the middle of the section; NAN unknown */
  int run_out_top;               /* +1: its top planes cleanly towards the right end */
  int run_out_underside;
  int heart_side; /* -1 heart towards smaller y (on edge) or down (on flat), +1 the
                   * other way, 0 neither or unknown */
} BsPlaced;

/* What a lamination of the plan is in the slab's frame when it lies like this with its front face
 * at y. */
BsPlaced bs_placed_new (const BsPlan *plan, const BsPlacement *placement, double y);

/* The slab as built, from front to back. */
typedef struct
{
  BsPlan *plan;
  guint n;
  BsPlaced *placed;
  double length; /* x of the farthest right end */
  double width;  /* sum of the thicknesses */
  double height; /* greatest height */
} BsStack;

BsStack *bs_stack_new (const BsPlan *plan);
void bs_stack_free (BsStack *self);

/* Some neighbours as a stack of their own. Borrows from self, which must outlive it; not to be
 * freed. */
BsStack bs_stack_part (const BsStack *self, guint first, guint count);

/* Area (mm2) of the glue line between a place and the next: length that both cover x lesser mean
 * height. */
double bs_stack_glue_area (const BsStack *self, guint place);

/* Length (mm) along which every lamination lies; 0 when there is none. */
double bs_stack_covered_length (const BsStack *self);

/* A defect's extent in the slab's frame: the face of the slab (BS_FACE_TOP: show face,
 * BS_FACE_LEFT: towards the front) and its rectangle on it; across runs along z on left and right
 * faces and along y (from the slab's front) on top and underside. */
typedef struct
{
  const BsDefect *defect;
  BsFace face;
  double x_from, x_to;
  double across_from, across_to;
} BsPlacedDefect;

BsPlacedDefect bs_placed_defect (const BsPlaced *self, const BsDefect *defect);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsStack, bs_stack_free)

G_END_DECLS
