/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-work.h"

/* The slab at rest on one face: of all planes that do not cut that face, the one that comes nearest
 * to it at the middle. As a fit: upper set the underside, lower set one spot under the middle.
 * Resting on the show face is the same with both turned over. */
static void
find_rest_on_underside (gconstpointer sets, double slope_x, double slope_y, BsFaceSpot *upper,
                        BsFaceSpot *lower)
{
  const BsFaces *faces = sets;

  *upper = bs_faces_extreme (faces, FALSE, BS_EXTREME_LEAST, slope_x, slope_y);
  *lower = (BsFaceSpot){ .x = faces->x_mid, .y = faces->y_mid, .place = -1 };
}

static void
find_rest_on_show_face (gconstpointer sets, double slope_x, double slope_y, BsFaceSpot *upper,
                        BsFaceSpot *lower)
{
  const BsFaces *faces = sets;

  *upper = (BsFaceSpot){ .x = faces->x_mid, .y = faces->y_mid, .z = faces->height, .place = -1 };
  *lower = bs_faces_extreme (faces, TRUE, BS_EXTREME_GREATEST, slope_x, slope_y);
}

/* What decides the tilt. */
static BsFitSpots
get_spots (BsFlattenWork work)
{
  switch (work)
    {
    case BS_FLATTEN_SHIMMED:
      return bs_fit_spots_of_faces;
    case BS_FLATTEN_SHOW_FACE_FIRST:
      return find_rest_on_underside;
    case BS_FLATTEN_UNDERSIDE_FIRST:
      return find_rest_on_show_face;
    default:
      g_return_val_if_reached (bs_fit_spots_of_faces);
    }
}

/* At a given tilt one spot of each face holds the planes apart. */
static BsFitBasis
basis_at (const BsFaces *faces, double slope_x, double slope_y)
{
  BsFitBasis basis = bs_fit_basis_start (faces->x_mid, faces->y_mid, faces->length, faces->width);

  bs_fit_spots_of_faces (faces, slope_x, slope_y, &basis.spots[0], &basis.spots[1]);
  basis.is_upper[0] = TRUE;
  basis.weights[0] = basis.weights[1] = 1.0;
  return basis;
}

BsFit
bs_flatten_fit (const BsFaces *faces, BsFlattenWork work, BsFitBasis *touching)
{
  BsFitSpots find_spots = get_spots (work);

  *touching = bs_fit_basis_start (faces->x_mid, faces->y_mid, faces->length, faces->width);
  BsFit best
      = bs_fit_solve (find_spots, faces, faces->length, faces->width, BS_FIT_EXACT, touching);
  BsFit fit = bs_fit_least_tilt (find_spots, faces, &best);
  if (work == BS_FLATTEN_SHIMMED)
    return fit;

  *touching = basis_at (faces, fit.slope_x, fit.slope_y);
  return bs_fit_at (bs_fit_spots_of_faces, faces, fit.slope_x, fit.slope_y);
}

/* A rest that is off by a thousandth may lean by much more: it has to be exact. */
double
bs_flatten_fit_rough (const BsFaces *faces, BsFlattenWork work, BsFitBasis *basis)
{
  BsFitSpots find_spots = get_spots (work);
  double tolerance = work == BS_FLATTEN_SHIMMED ? BS_FIT_ROUGH : BS_FIT_EXACT;
  BsFit fit = bs_fit_solve (find_spots, faces, faces->length, faces->width, tolerance, basis);

  if (work == BS_FLATTEN_SHIMMED)
    return fit.distance;
  fit = bs_fit_least_tilt (find_spots, faces, &fit);
  return bs_fit_at (bs_fit_spots_of_faces, faces, fit.slope_x, fit.slope_y).distance;
}
