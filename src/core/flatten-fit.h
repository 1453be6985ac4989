/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/flatten-faces.h"

G_BEGIN_DECLS

/* Two parallel planes as far apart as can be, the lower one nowhere under one set of spots, the
 * upper one nowhere over another: docs/flattening-model.md, equations (5) to (8). */

/* How far from the greatest distance the answer may lie, mm. Rounding is some 1e-10; each factor of
 * 100 costs a step or two. */
#define BS_FIT_EXACT 2e-7
#define BS_FIT_ROUGH 1e-3 /* for one draw among thousands: a tenth of what a caliper shows */

/* The most binding spots at a tilt: the one of the upper set with the least z - slope_x x - slope_y
 * y, the one of the lower set with the greatest. */
typedef void (*BsFitSpots) (gconstpointer sets, double slope_x, double slope_y, BsFaceSpot *upper,
                            BsFaceSpot *lower);

/* Spots that hold the planes apart and how much each of them does: when its spot moves by a little,
 * the distance changes by `weight` times as much. Spots with no weight may not touch. */
typedef struct
{
  BsFaceSpot spots[4];
  gboolean is_upper[4];
  double weights[4];
} BsFitBasis;

typedef struct
{
  double distance;         /* mm, along z */
  double slope_x, slope_y; /* lower plane: z = slope_x x + slope_y y + offset */
  double offset;
  double gap; /* the greatest distance is not larger by more than this, mm */
} BsFit;

/* A basis to start from when nothing is known: spots far above and below. */
BsFitBasis bs_fit_basis_start (double x, double y, double length, double width);

/* The best tilt, to a tolerance (mm). basis: where to start (a basis of an earlier call, whose
 * spots have new heights, is a good one) and, on return, what holds the planes apart. length and
 * width only scale the sums. */
BsFit bs_fit_solve (BsFitSpots find_spots, gconstpointer sets, double length, double width,
                    double tolerance, BsFitBasis *basis);

/* The planes at a given tilt. */
BsFit bs_fit_at (BsFitSpots find_spots, gconstpointer sets, double slope_x, double slope_y);

/* The least tilt that gives a distance of as much as `best`, but for twice BS_FIT_EXACT. */
BsFit bs_fit_least_tilt (BsFitSpots find_spots, gconstpointer sets, const BsFit *best);

/* Between the faces of a slab; sets is a BsFaces. */
void bs_fit_spots_of_faces (gconstpointer sets, double slope_x, double slope_y, BsFaceSpot *upper,
                            BsFaceSpot *lower);

G_END_DECLS
