/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-fit.h"

#include <math.h>
#include <string.h>

/* The linear programme is solved on its dual side: weights on upper and on lower spots, each set's
 * adding up to 1 and both with the same middle, so that the weighted distance is least. Four
 * equations, so a basis is four spots; the planes through them are the prices, and the spot that a
 * plane cuts off most comes in next. Spots are found on the curved faces themselves, so no list of
 * them is kept. */

#define ROWS 4
#define MAX_STEPS 400
#define FAR_AWAY 1e4 /* mm: above and below any slab */
#define TINY 1e-11   /* for numbers that are about 1 by scaling */

typedef double Matrix[ROWS][ROWS];

typedef struct
{
  double length, width;
  double tolerance;
  BsFitBasis *basis;
  Matrix start;   /* columns of the first basis: the order among ties is told by it */
  Matrix inverse; /* of the columns of the present basis */
} Simplex;

static void
fill_column (const Simplex *self, const BsFaceSpot *spot, gboolean is_upper, double column[ROWS])
{
  double sign = is_upper ? 1.0 : -1.0;

  column[0] = is_upper ? 1.0 : 0.0;
  column[1] = is_upper ? 0.0 : 1.0;
  column[2] = sign * spot->x / self->length;
  column[3] = sign * spot->y / self->width;
}

static void
fill_matrix (const Simplex *self, Matrix matrix)
{
  for (int j = 0; j < ROWS; j++)
    {
      double column[ROWS];
      fill_column (self, &self->basis->spots[j], self->basis->is_upper[j], column);
      for (int i = 0; i < ROWS; i++)
        matrix[i][j] = column[i];
    }
}

static void
swap_rows (Matrix matrix, int i, int j)
{
  double row[ROWS];

  memcpy (row, matrix[i], sizeof row);
  memcpy (matrix[i], matrix[j], sizeof row);
  memcpy (matrix[j], row, sizeof row);
}

/* Gauss and Jordan, with the largest pivot of each column. */
static gboolean
invert (Matrix matrix, Matrix inverse)
{
  for (int i = 0; i < ROWS; i++)
    for (int j = 0; j < ROWS; j++)
      inverse[i][j] = i == j ? 1.0 : 0.0;

  for (int k = 0; k < ROWS; k++)
    {
      int pivot = k;
      for (int i = k + 1; i < ROWS; i++)
        if (fabs (matrix[i][k]) > fabs (matrix[pivot][k]))
          pivot = i;
      if (fabs (matrix[pivot][k]) < TINY)
        return FALSE;
      swap_rows (matrix, k, pivot);
      swap_rows (inverse, k, pivot);

      double scale = 1.0 / matrix[k][k];
      for (int j = 0; j < ROWS; j++)
        {
          matrix[k][j] *= scale;
          inverse[k][j] *= scale;
        }
      for (int i = 0; i < ROWS; i++)
        {
          double factor = matrix[i][k];
          if (i == k)
            continue;
          for (int j = 0; j < ROWS; j++)
            {
              matrix[i][j] -= factor * matrix[k][j];
              inverse[i][j] -= factor * inverse[k][j];
            }
        }
    }
  return TRUE;
}

/* The right-hand side is (1, 1, 0, 0). */
static gboolean
update_weights (Simplex *self)
{
  Matrix matrix;

  fill_matrix (self, matrix);
  if (!invert (matrix, self->inverse))
    return FALSE;
  for (int i = 0; i < ROWS; i++)
    self->basis->weights[i] = fmax (0.0, self->inverse[i][0] + self->inverse[i][1]);
  return TRUE;
}

/* Prices: upper plane at the origin, lower plane there with its sign changed, slopes. */
static void
find_prices (const Simplex *self, double prices[ROWS])
{
  for (int j = 0; j < ROWS; j++)
    {
      prices[j] = 0.0;
      for (int i = 0; i < ROWS; i++)
        prices[j] += (self->basis->is_upper[i] ? 1.0 : -1.0) * self->basis->spots[i].z
                     * self->inverse[i][j];
    }
}

static double
multiply_row (const double row[ROWS], const double column[ROWS])
{
  double sum = 0.0;
  for (int i = 0; i < ROWS; i++)
    sum += row[i] * column[i];
  return sum;
}

/* Which of two rows meets 0 first when the new spot gains weight. Weights are often 0 for several
 * rows at once; then the columns of the first basis decide, which keeps the steps from going in a
 * circle (lexicographic rule of Dantzig, Orden and Wolfe, Pacific J. Math. 5, 1955). */
static gboolean
leaves_before (const Simplex *self, int row, double rate, int other, double other_rate)
{
  double difference = self->basis->weights[row] / rate - self->basis->weights[other] / other_rate;

  for (int j = 0; j < ROWS && fabs (difference) <= TINY; j++)
    {
      double column[ROWS];
      for (int i = 0; i < ROWS; i++)
        column[i] = self->start[i][j];
      difference = multiply_row (self->inverse[row], column) / rate
                   - multiply_row (self->inverse[other], column) / other_rate;
    }
  return difference < 0.0;
}

/* Takes a spot into the basis. FALSE when the planes keep clear of it, or when it cannot be told
 * apart from those that are there. */
static gboolean
enter_spot (Simplex *self, const BsFaceSpot *spot, gboolean is_upper)
{
  double column[ROWS], prices[ROWS], rates[ROWS];
  int leaving = -1;

  fill_column (self, spot, is_upper, column);
  find_prices (self, prices);
  double cost = (is_upper ? spot->z : -spot->z) - multiply_row (prices, column);
  if (cost > -self->tolerance / 4.0)
    return FALSE;

  for (int i = 0; i < ROWS; i++)
    {
      rates[i] = multiply_row (self->inverse[i], column);
      if (rates[i] > 1e-9
          && (leaving < 0 || leaves_before (self, i, rates[i], leaving, rates[leaving])))
        leaving = i;
    }
  if (leaving < 0)
    return FALSE;

  self->basis->spots[leaving] = *spot;
  self->basis->is_upper[leaving] = is_upper;
  return update_weights (self);
}

BsFitBasis
bs_fit_basis_start (double x, double y, double length, double width)
{
  BsFaceSpot under = { .x = x, .y = y, .z = -FAR_AWAY, .place = -1 };
  BsFitBasis self = { .spots = { under, under, under, under }, .is_upper = { TRUE } };

  self.spots[0].z = FAR_AWAY;
  self.spots[2].x += length;
  self.spots[3].y += width;
  return self;
}

static BsFit
fit_between (const BsFaceSpot *upper, const BsFaceSpot *lower, double slope_x, double slope_y)
{
  double high = upper->z - slope_x * upper->x - slope_y * upper->y;
  double low = lower->z - slope_x * lower->x - slope_y * lower->y;

  return (BsFit){ .distance = high - low, .slope_x = slope_x, .slope_y = slope_y, .offset = low };
}

BsFit
bs_fit_at (BsFitSpots find_spots, gconstpointer sets, double slope_x, double slope_y)
{
  BsFaceSpot upper, lower;

  find_spots (sets, slope_x, slope_y, &upper, &lower);
  return fit_between (&upper, &lower, slope_x, slope_y);
}

BsFit
bs_fit_solve (BsFitSpots find_spots, gconstpointer sets, double length, double width,
              double tolerance, BsFitBasis *basis)
{
  Simplex self = { .length = length, .width = width, .tolerance = tolerance, .basis = basis };
  BsFit best = { .distance = -INFINITY };
  double bound = INFINITY;
  gboolean goes_on = TRUE;

  fill_matrix (&self, self.start);
  if (!update_weights (&self))
    goes_on = FALSE;
  for (int step = 0; goes_on && step < MAX_STEPS; step++)
    {
      double prices[ROWS];
      BsFaceSpot upper, lower;

      find_prices (&self, prices);
      bound = fmin (bound, prices[0] + prices[1]);
      double slope_x = prices[2] / length;
      double slope_y = prices[3] / width;
      find_spots (sets, slope_x, slope_y, &upper, &lower);

      BsFit fit = fit_between (&upper, &lower, slope_x, slope_y);
      if (fit.distance > best.distance)
        best = fit;
      if (bound - best.distance <= tolerance)
        break;
      goes_on = enter_spot (&self, &upper, TRUE);
      goes_on = enter_spot (&self, &lower, FALSE) || goes_on;
    }
  best.gap = fmax (0.0, bound - best.distance);
  return best;
}

/* A half-plane of slopes: along slope_x + across slope_y <= limit. */
typedef struct
{
  double along, across, limit;
} Cut;

#define MAX_CUTS 24

static gboolean
keeps_cuts (const Cut *cuts, int n, double slope_x, double slope_y)
{
  for (int i = 0; i < n; i++)
    {
      double scale = hypot (cuts[i].along, cuts[i].across);
      if (cuts[i].along * slope_x + cuts[i].across * slope_y > cuts[i].limit + 1e-12 * scale)
        return FALSE;
    }
  return TRUE;
}

static void
consider_tilt (const Cut *cuts, int n, double slope_x, double slope_y, double best[2])
{
  if (hypot (slope_x, slope_y) < hypot (best[0], best[1]) && keeps_cuts (cuts, n, slope_x, slope_y))
    {
      best[0] = slope_x;
      best[1] = slope_y;
    }
}

/* The point nearest to no tilt within the cuts is that itself, its foot on one cut or the corner of
 * two; few cuts, so all are tried. FALSE when rounding leaves none. */
static gboolean
find_least_tilt (const Cut *cuts, int n, double best[2])
{
  best[0] = best[1] = INFINITY;
  consider_tilt (cuts, n, 0.0, 0.0, best);
  for (int i = 0; i < n; i++)
    {
      double square = cuts[i].along * cuts[i].along + cuts[i].across * cuts[i].across;
      consider_tilt (cuts, n, cuts[i].limit * cuts[i].along / square,
                     cuts[i].limit * cuts[i].across / square, best);
      for (int j = 0; j < i; j++)
        {
          double determinant = cuts[i].along * cuts[j].across - cuts[j].along * cuts[i].across;
          consider_tilt (
              cuts, n,
              (cuts[i].limit * cuts[j].across - cuts[j].limit * cuts[i].across) / determinant,
              (cuts[i].along * cuts[j].limit - cuts[j].along * cuts[i].limit) / determinant, best);
        }
    }
  return isfinite (best[0]);
}

BsFit
bs_fit_least_tilt (BsFitSpots find_spots, gconstpointer sets, const BsFit *best)
{
  double wanted = best->distance - BS_FIT_EXACT;
  double tilt[2] = { 0.0, 0.0 };
  Cut cuts[MAX_CUTS];

  for (int n = 0; n < MAX_CUTS; n++)
    {
      BsFaceSpot upper, lower;

      if (!find_least_tilt (cuts, n, tilt))
        break;
      find_spots (sets, tilt[0], tilt[1], &upper, &lower);
      BsFit fit = fit_between (&upper, &lower, tilt[0], tilt[1]);
      if (fit.distance >= wanted - BS_FIT_EXACT)
        {
          fit.gap = best->gap + fmax (0.0, best->distance - fit.distance);
          return fit;
        }
      cuts[n] = (Cut){ upper.x - lower.x, upper.y - lower.y, upper.z - lower.z - wanted };
    }
  return *best;
}

void
bs_fit_spots_of_faces (gconstpointer sets, double slope_x, double slope_y, BsFaceSpot *upper,
                       BsFaceSpot *lower)
{
  const BsFaces *faces = sets;

  *upper = bs_faces_extreme (faces, TRUE, BS_EXTREME_LEAST, slope_x, slope_y);
  *lower = bs_faces_extreme (faces, FALSE, BS_EXTREME_GREATEST, slope_x, slope_y);
}
