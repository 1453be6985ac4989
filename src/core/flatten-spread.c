/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-spread.h"

#include "core/flatten-fit.h"
#include "core/random.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

BsFlattenSpread
bs_flatten_spread_default (void)
{
  return (BsFlattenSpread){
    .height = 0.15,
    .warp = 0.3,
    .offset = 0.4,
    .rock = 0.4,
    .n_draws = 2000,
    .seed = 1,
  };
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
draw_errors (BsRandom *random, const BsFlattenSpread *spread)
{
  double normal[8];

  for (int i = 0; i < 8; i += 2)
    draw_normal_pair (random, &normal[i]);
  return (Errors){
    .left = spread->height * normal[0],
    .right = spread->height * normal[1],
    .crook = spread->warp * normal[2],
    .cup = spread->warp * normal[3],
    .twist = spread->warp * normal[4],
    .offset = spread->offset * normal[5],
    .rock = spread->rock * normal[6],
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
flatten_drawn (const BsFaces *drawn, BsFitBasis *basis)
{
  for (int i = 0; i < 4; i++)
    if (basis->spots[i].place >= 0)
      bs_faces_update_spot (drawn, &basis->spots[i]);
  return bs_fit_solve (bs_fit_spots_of_faces, drawn, drawn->length, drawn->width, BS_FIT_ROUGH,
                       basis)
      .distance;
}

static void
draw_distances (const BsFaces *measured, const BsFlattenSpread *spread, BsLayup layup,
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
        errors[i] = draw_errors (&random, spread);
      for (guint half = 0; half < 2; half++)
        {
          add_errors (&drawn, measured, errors, half == 0 ? 1.0 : -1.0, layup);
          distances[k + half] = flatten_drawn (&drawn, &basis);
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

static BsFlattenOdds
find_odds (const BsFaces *faces, const BsStack *stack, const BsFlattenSpread *spread)
{
  guint n = spread->n_draws / 2 * 2;
  double allowances = 2.0 * stack->plan->slab.allowance;
  g_autofree double *distances = g_new (double, n);

  draw_distances (faces, spread, stack->plan->slab.layup, distances);
  qsort (distances, n, sizeof *distances, compare_doubles);
  return (BsFlattenOdds){
    .at_50_pct = find_quantile (distances, n, 0.50) - allowances,
    .at_90_pct = find_quantile (distances, n, 0.10) - allowances,
    .at_95_pct = find_quantile (distances, n, 0.05) - allowances,
  };
}

BsFlattenOdds
bs_flatten_odds (const BsStack *stack, const BsFlattenSpread *spread)
{
  BsFlattenOdds odds = { NAN, NAN, NAN };
  BsFaces faces;

  g_return_val_if_fail (spread->n_draws >= 2, odds);
  if (!bs_faces_init (&faces, stack))
    return odds;
  odds = find_odds (&faces, stack, spread);
  bs_faces_clear (&faces);

  odds.at_50_pct = fmax (0.0, odds.at_50_pct);
  odds.at_90_pct = fmax (0.0, odds.at_90_pct);
  odds.at_95_pct = fmax (0.0, odds.at_95_pct);
  return odds;
}

/* A millimetre more on every lamination is a millimetre more of slab, whatever its warp, so one set
 * of draws is enough. */
double
bs_flatten_height_needed (const BsStack *stack, const BsFlattenSpread *spread, double thickness)
{
  BsFaces faces;

  g_return_val_if_fail (spread->n_draws >= 2, NAN);
  if (!bs_faces_init (&faces, stack))
    return NAN;

  double height = faces.height;
  for (guint i = 0; i < faces.n; i++)
    {
      faces.strips[i].height = height;
      faces.strips[i].taper = 0.0;
    }
  BsFlattenOdds odds = find_odds (&faces, stack, spread);
  bs_faces_clear (&faces);
  return height + thickness - odds.at_95_pct;
}
