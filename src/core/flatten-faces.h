/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"

G_BEGIN_DECLS

/* The faces of the rough slab as it leaves the press: docs/flattening-model.md, equations (1) to
 * (4). */

/* One lamination's part of both faces, in the slab's frame (mm). With xi and eta from 0 to 1 along
 * its length and across its thickness the underside is low + rise xi + 4 crook xi (1 - xi) + 4 cup
 * eta (1 - eta) + twist (xi - 1/2) (eta - 1/2) and the top lies height + taper xi above it. */
typedef struct
{
  double x, y;          /* left, front corner */
  double length, width; /* along x and y */
  double low, rise;
  double crook, cup, twist;
  double height, taper;
} BsFaceStrip;

typedef struct
{
  guint n;
  BsFaceStrip *strips;
  double length, width; /* of the rough slab */
  double height;        /* of its highest lamination, where the alignment looks for it */
  double x_mid, y_mid;  /* middle of the faces' area */
  BsAlignment alignment;
} BsFaces;

/* A spot on one of the faces. */
typedef struct
{
  double x, y, z;
  int place;       /* of the lamination; -1: none */
  gboolean is_top; /* else on the underside */
} BsFaceSpot;

/* A warp that was not measured counts as none. FALSE when there is no lamination or one without a
 * size; then there is nothing to clear. */
gboolean bs_faces_init (BsFaces *self, const BsStack *stack);
void bs_faces_clear (BsFaces *self);

/* Sets each strip's `low` as the laminations are lined up for the press; to be called again after
 * strips were changed. */
void bs_faces_align (BsFaces *self);

/* Heights at a spot of one strip; xi and eta as above. */
double bs_face_strip_underside (const BsFaceStrip *self, double xi, double eta);
double bs_face_strip_top (const BsFaceStrip *self, double xi, double eta);

/* Looks the height of a spot up again, for strips that changed. */
void bs_faces_update_spot (const BsFaces *self, BsFaceSpot *spot);

typedef enum
{
  BS_EXTREME_LEAST = -1,
  BS_EXTREME_GREATEST = 1,
} BsExtreme;

/* Where z - slope_x x - slope_y y is least or greatest on the top or the underside, of all
 * laminations or of one place alone. Exact. */
BsFaceSpot bs_faces_extreme (const BsFaces *self, gboolean is_top, BsExtreme extreme,
                             double slope_x, double slope_y);
BsFaceSpot bs_faces_extreme_of (const BsFaces *self, guint place, gboolean is_top,
                                BsExtreme extreme, double slope_x, double slope_y);

G_END_DECLS
