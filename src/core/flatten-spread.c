/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-spread.h"

#include "core/flatten-work.h"
#include "core/random.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

BsFlattenSpread
bs_flatten_spread_of (const BsPlan *plan)
{
  return (BsFlattenSpread){ .deviation = plan->slab.uncertainty, .n_draws = 2000, .seed = 1 };
}

/* What is wrong with one lamination in one draw. */
typedef struct
{
  double left, right; /* height at its ends */
  double crook, cup, twist;
  double offset, rock;
} Errors;

/* A pair of normal deviates. Source: G. Marsaglia and T. A. Bray, "A convenient method for
 * generating normal variables", SIAM Review 6 (1964). */
static void
draw_normal_pair (BsRandom *random, double pair[2])
{
  double square;

  do
    {
      pair[0] = 2.0 * bs_random_uniform (random) - 1.0;
      pair[1] = 2.0 * bs_random_uniform (random) - 1.0;
      square = pair[0] * pair[0] + pair[1] * pair[1];
    }
  while (square >= 1.0 || square <= 0.0);

  double scale = sqrt (-2.0 * log (square) / square);
  pair[0] *= scale;
  pair[1] *= scale;
}

static Errors
draw_errors (BsRandom *random, const BsUncertainty *deviation)
{
  double normal[8];

  for (int i = 0; i < 8; i += 2)
    draw_normal_pair (random, &normal[i]);
  return (Errors){
    .left = deviation->height * normal[0],
    .right = deviation->height * normal[1],
    .crook = deviation->warp * normal[2],
    .cup = deviation->warp * normal[3],
    .twist = deviation->warp * normal[4],
    .offset = deviation->offset * normal[5],
    .rock = deviation->rock * normal[6],
  };
}

/* The faces as measured, with the errors added (sign 1) or taken off (sign -1): draws come in such
 * pairs, which keeps their mean where it belongs. */
static void
add_errors (BsFaces *drawn, const BsFaces *measured, const Errors *errors, double sign,
            BsLayup layup)
{
  for (guint i = 0; i < drawn->n; i++)
    {
      const Errors *error = &errors[i];
      BsFaceStrip *strip = &drawn->strips[i];
      *strip = measured->strips[i];
      strip->height += sign * error->left;
      strip->taper += sign * (error->right - error->left);
      strip->crook += sign * error->crook;
      if (layup == BS_LAYUP_ON_FLAT)
        {
          strip->cup += sign * error->cup;
          strip->twist += sign * error->twist;
        }
      else
        {
          /* A narrow face shows but a part of the twist. */
          strip->twist += sign * error->twist * strip->width / strip->height;
        }
    }
  bs_faces_align (drawn);
  for (guint i = 0; i < drawn->n; i++)
    {
      BsFaceStrip *strip = &drawn->strips[i];
      strip->low += sign * (errors[i].offset - errors[i].rock / 2.0);
      strip->rise += sign * errors[i].rock;
    }
}

/* The spots that held the last slab are the best guess for the next one. */
static double
flatten_drawn (const BsFaces *drawn, BsFlattenWork work, BsFitBasis *basis)
{
  for (int i = 0; i < 4; i++)
    if (basis->spots[i].place >= 0)
      bs_faces_update_spot (drawn, &basis->spots[i]);
  return bs_flatten_fit_rough (drawn, work, basis);
}

static void
draw_distances (const BsFaces *measured, const BsFlattenSpread *spread, const BsSlab *slab,
                double *distances)
{
  g_assert (measured->n > 0);

  BsRandom random = bs_random_init (spread->seed);
  BsFitBasis basis
      = bs_fit_basis_start (measured->x_mid, measured->y_mid, measured->length, measured->width);
  g_autofree Errors *errors = g_new (Errors, measured->n);
  BsFaces drawn = *measured;

  drawn.strips = g_new (BsFaceStrip, measured->n);
  for (guint k = 0; k + 1 < spread->n_draws; k += 2)
    {
      for (guint i = 0; i < measured->n; i++)
        errors[i] = draw_errors (&random, &spread->deviation);
      for (guint half = 0; half < 2; half++)
        {
          add_errors (&drawn, measured, errors, half == 0 ? 1.0 : -1.0, slab->layup);
          distances[k + half] = flatten_drawn (&drawn, slab->flatten_work, &basis);
        }
    }
  bs_faces_clear (&drawn);
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* Quantile by straight interpolation between order statistics (type 7 of R. J. Hyndman and Y. Fan,
 * "Sample quantiles in statistical packages", The American Statistician 50, 1996). */
static double
find_quantile (const double *sorted, guint n, double part)
{
  double position = part * (n - 1);
  guint below = (guint)position;
  guint above = MIN (below + 1, n - 1);

  return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
}

/* Thicknesses of the slabs drawn, allowances taken off, the thinnest first; the caller's. They may
 * be below 0. */
static double *
draw_thicknesses (const BsFaces *faces, const BsStack *stack, const BsFlattenSpread *spread)
{
  const BsSlab *slab = &stack->plan->slab;
  double *thicknesses = g_new (double, spread->n_draws);

  draw_distances (faces, spread, slab, thicknesses);
  for (guint i = 0; i < spread->n_draws; i++)
    thicknesses[i] -= 2.0 * slab->allowance;
  qsort (thicknesses, spread->n_draws, sizeof *thicknesses, compare_doubles);
  return thicknesses;
}

static void
fill_bins (const double *sorted, guint n, BsFlattenOdds *odds)
{
  double step = (odds->most - odds->least) / BS_N_ODDS_BINS;

  for (guint i = 0; i < n; i++)
    {
      double at = step > 0.0 ? (fmax (0.0, sorted[i]) - odds->least) / step : 0.0;

      odds->bins[MIN ((guint)at, BS_N_ODDS_BINS - 1)]++;
    }
}

/* Half a tenth of a micrometre: what is wanted and comes out to the last digit is reached. */
#define ROUNDING 5e-5

static double
find_reached_pct (const double *sorted, guint n, double wanted)
{
  guint n_below = 0;

  while (n_below < n && sorted[n_below] < wanted - ROUNDING)
    n_below++;
  return 100.0 * (n - n_below) / n;
}

static BsFlattenOdds
count_odds (const double *sorted, guint n, double wanted)
{
  BsFlattenOdds odds = {
    .at_50_pct = fmax (0.0, find_quantile (sorted, n, 0.50)),
    .at_90_pct = fmax (0.0, find_quantile (sorted, n, 0.10)),
    .at_95_pct = fmax (0.0, find_quantile (sorted, n, 0.05)),
    .wanted_pct = find_reached_pct (sorted, n, wanted),
    .least = fmax (0.0, sorted[0]),
    .most = fmax (0.0, sorted[n - 1]),
  };

  fill_bins (sorted, n, &odds);
  return odds;
}

BsFlattenOdds
bs_flatten_odds (const BsStack *stack, const BsFlattenSpread *spread)
{
  BsFlattenOdds unknown = { NAN, NAN, NAN, NAN, NAN, NAN, { 0 } };
  BsFaces faces;

  g_return_val_if_fail (spread->n_draws >= 2 && spread->n_draws % 2 == 0, unknown);
  if (!bs_faces_init (&faces, stack))
    return unknown;

  g_autofree double *sorted = draw_thicknesses (&faces, stack, spread);
  bs_faces_clear (&faces);
  return count_odds (sorted, spread->n_draws, stack->plan->slab.thickness);
}

/* A millimetre more on every lamination is a millimetre more of slab, whatever its warp, so one set
 * of draws is enough. */
double
bs_flatten_height_needed (const BsStack *stack, const BsFlattenSpread *spread, double thickness)
{
  BsFaces faces;

  g_return_val_if_fail (spread->n_draws >= 2 && spread->n_draws % 2 == 0, NAN);
  if (!bs_faces_init (&faces, stack))
    return NAN;

  double height = faces.height;
  for (guint i = 0; i < faces.n; i++)
    {
      faces.strips[i].height = height;
      faces.strips[i].taper = 0.0;
    }
  g_autofree double *sorted = draw_thicknesses (&faces, stack, spread);
  bs_faces_clear (&faces);
  return height + thickness - find_quantile (sorted, spread->n_draws, 0.05);
}
