/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-search.h"

#include <math.h>
#include <string.h>

/* Distances of the first clamp from the end that are tried for an even layout, in spacings. Beyond
 * a half the ends open; below 0.3 the middle suffers. */
#define END_SHARE_FROM 0.30
#define END_SHARE_STEP 0.02
#define N_END_SHARES 11 /* up to 0.50 */

/* How far single clamps are moved to better a layout, mm, coarse to fine, and how often at most. */
static const double moves[] = { 40.0, 20.0, 10.0 };
#define MOST_ROUNDS 12

static int
compare_caps (gconstpointer a, gconstpointer b)
{
  double x = ((const BsClampOwned *)a)->cap, y = ((const BsClampOwned *)b)->cap;

  return (x < y) - (x > y);
}

/* Every clamp that reaches, with the most that it may press: its own most, or what the wood bears
 * under its head. */
static void
list_owned (BsClampSearch *self)
{
  const BsLayoutProblem *problem = self->problem;

  self->owned = g_array_new (FALSE, FALSE, sizeof (BsClampOwned));
  self->head = INFINITY;
  for (guint i = 0; i < problem->n_kinds; i++)
    {
      const BsLayoutKind *kind = &problem->kinds[i];
      double height = fmin (kind->head_height, problem->bearing_height);
      BsClampOwned one
          = { .kind = i,
              .cap = fmin (kind->max_force, problem->bearing_mpa * kind->head_width * height) };

      if (kind->reach < problem->reach_needed)
        continue;
      if (kind->count > 0)
        self->head = fmin (self->head, kind->head_width);
      for (guint j = 0; j < kind->count; j++)
        g_array_append_val (self->owned, one);
    }
  g_array_sort (self->owned, compare_caps);
}

void
bs_clamp_search_init (BsClampSearch *self, const BsLayoutProblem *problem)
{
  *self = (BsClampSearch){ .problem = problem };
  list_owned (self);
}

void
bs_clamp_search_clear (BsClampSearch *self)
{
  g_clear_pointer (&self->influence, bs_clamp_influence_free);
  g_clear_pointer (&self->owned, g_array_unref);
  g_free (self->x);
  g_free (self->force);
  g_free (self->of_owned);
  g_free (self->pressure);
  g_free (self->trial);
}

void
bs_clamp_search_take_influence (BsClampSearch *self, BsClampInfluence *influence)
{
  self->influence = influence;
  self->x = g_new0 (double, self->owned->len);
  self->force = g_new0 (double, self->owned->len);
  self->of_owned = g_new0 (guint, self->owned->len);
  self->pressure = g_new (double, influence->n_spots);
  self->trial = g_new (double, influence->n_spots);
}

double
bs_clamp_search_cap (const BsClampSearch *self, guint owned)
{
  return g_array_index (self->owned, BsClampOwned, owned).cap;
}

/* The n strongest of those owned, strong and weak by turns, each at its most. */
static void
take_strongest (BsClampSearch *self, guint n)
{
  guint owned = 0;

  self->n = n;
  for (guint start = 0; start < 2; start++)
    for (guint i = start; i < n; i += 2)
      {
        self->of_owned[i] = owned;
        self->force[i] = bs_clamp_search_cap (self, owned++);
      }
}

/* How good pressures are. Above zero, all spots are pressed enough: the least pressure. Else what
 * is missing, as the sum of squares, below zero: so spots that nothing can press do not keep the
 * rest from being bettered. */
static double
rate (const BsClampSearch *self, const double *pressure)
{
  double wanted = self->problem->least_mpa, least = INFINITY, missing = 0.0;

  for (guint i = 0; i < self->influence->n_spots; i++)
    {
      double short_by = pressure[i] < wanted ? wanted - pressure[i] : 0.0;

      least = pressure[i] < least ? pressure[i] : least;
      missing += short_by * short_by;
    }
  return missing > 0.0 ? -missing : least;
}

static void
add_up (BsClampSearch *self)
{
  memcpy (self->pressure, self->influence->of_bows, sizeof (double) * self->influence->n_spots);
  for (guint i = 0; i < self->n; i++)
    bs_clamp_influence_add (self->influence, self->x[i], self->force[i], self->pressure);
}

static void
spread_evenly (BsClampSearch *self, double end_share)
{
  double from = self->influence->from - self->head / 2.0;
  double length = self->influence->to + self->head / 2.0 - from;
  double spacing = length / (self->n - 1 + 2.0 * end_share);

  for (guint i = 0; i < self->n; i++)
    self->x[i]
        = CLAMP (from + spacing * (end_share + i), self->influence->from, self->influence->to);
  add_up (self);
}

/* The best even layout of the n strongest clamps; its rating. */
static double
find_even (BsClampSearch *self, guint n)
{
  double best = -INFINITY, best_share = END_SHARE_FROM;

  take_strongest (self, n);
  for (int i = 0; i < N_END_SHARES; i++)
    {
      double share = END_SHARE_FROM + i * END_SHARE_STEP;
      double rating;

      spread_evenly (self, share);
      rating = rate (self, self->pressure);
      if (rating > best)
        {
          best = rating;
          best_share = share;
        }
    }
  spread_evenly (self, best_share);
  return best;
}

/* Moves one clamp if that betters the layout. Heads keep off each other. */
static gboolean
try_move (BsClampSearch *self, guint i, double by, double *rating)
{
  double x = self->x[i] + by, moved;

  if (x < self->influence->from || x > self->influence->to
      || (i > 0 && x < self->x[i - 1] + self->head)
      || (i + 1 < self->n && x > self->x[i + 1] - self->head))
    return FALSE;
  memcpy (self->trial, self->pressure, sizeof (double) * self->influence->n_spots);
  bs_clamp_influence_add (self->influence, self->x[i], -self->force[i], self->trial);
  bs_clamp_influence_add (self->influence, x, self->force[i], self->trial);
  moved = rate (self, self->trial);
  if (moved <= *rating)
    return FALSE;
  self->x[i] = x;
  *rating = moved;
  memcpy (self->pressure, self->trial, sizeof (double) * self->influence->n_spots);
  return TRUE;
}

/* Moves clamps until enough is pressed, or no move betters it; the rating. */
static double
move_clamps (BsClampSearch *self, double rating)
{
  for (guint size = 0; size < G_N_ELEMENTS (moves); size++)
    for (guint round = 0; round < MOST_ROUNDS; round++)
      {
        gboolean has_moved = FALSE;

        for (guint i = 0; i < self->n && rating < 0.0; i++)
          has_moved |= try_move (self, i, moves[size], &rating)
                       || try_move (self, i, -moves[size], &rating);
        if (!has_moved)
          break;
      }
  return rating;
}

/* Eases all clamps alike until the weakest spot has just what is wanted. */
static void
ease (BsClampSearch *self)
{
  double factor = 0.0;

  for (guint i = 0; i < self->influence->n_spots; i++)
    {
      double of_bows = self->influence->of_bows[i];

      factor = fmax (factor, (self->problem->least_mpa - of_bows) / (self->pressure[i] - of_bows));
    }
  for (guint i = 0; i < self->n; i++)
    self->force[i] *= fmin (factor, 1.0);
  add_up (self);
}

guint
bs_clamp_search_count_by_force (const BsClampSearch *self, double area)
{
  double wanted = self->problem->least_mpa * area, force = 0.0;

  for (guint i = 0; i < self->owned->len; i++)
    {
      force += bs_clamp_search_cap (self, i);
      if (force >= wanted)
        return MAX (2, i + 1);
    }
  return 0;
}

guint
bs_clamp_search_count_by_room (const BsClampSearch *self)
{
  double room = self->influence->to - self->influence->from;

  return MAX (2, MIN (self->owned->len, (guint)(room / self->head) + 1));
}

double
bs_clamp_search_draft (BsClampSearch *self, guint n)
{
  double rating = find_even (self, n);

  if (rating < 0.0)
    rating = move_clamps (self, rating);
  if (rating > 0.0)
    ease (self);
  return rating;
}
