/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-layout.h"

#include "core/clamp-search.h"

#include <math.h>

/* Pressures within this part of a limit meet it. */
#define LIMIT_TOLERANCE 1e-3

/* Missing pressure, as a sum of squares, that is as good as the best: more clamps are not worth it.
 */
#define HARDLY_MORE 1.05

/* The share of the work, as progress tells it, that goes into the influences. */
#define INFLUENCE_SHARE 0.7

void
bs_layout_clear (BsLayout *self)
{
  g_free (self->clamps);
  bs_press_result_clear (&self->pressures);
  *self = (BsLayout){ 0 };
}

double
bs_layout_sum_forces (const BsLayout *self)
{
  double force = 0.0;

  for (guint i = 0; i < self->n_clamps; i++)
    force += self->clamps[i].force;
  return force;
}

/* The place of each clamp in the order of tightening: nearest to the middle first. */
void
bs_layout_order_turns (BsLayoutClamp *clamps, guint n)
{
  double middle = n > 0 ? (clamps[0].x + clamps[n - 1].x) / 2.0 : 0.0;

  for (guint i = 0; i < n; i++)
    {
      double distance = fabs (clamps[i].x - middle);

      clamps[i].turn = 0;
      for (guint j = 0; j < n; j++)
        {
          double other = fabs (clamps[j].x - middle);

          if (other < distance - 1e-6 || (fabs (other - distance) <= 1e-6 && j < i))
            clamps[i].turn++;
        }
    }
}

static void
write_clamps (const BsClampSearch *self, BsLayout *layout)
{
  layout->n_clamps = self->n;
  layout->clamps = g_renew (BsLayoutClamp, layout->clamps, self->n);
  for (guint i = 0; i < self->n; i++)
    layout->clamps[i] = (BsLayoutClamp){
      .kind = g_array_index (self->owned, BsClampOwned, self->of_owned[i]).kind,
      .x = self->x[i],
      .force = self->force[i],
      .is_above = i % 2 == 0,
    };
  bs_layout_order_turns (layout->clamps, layout->n_clamps);
}

BsPressClamp *
bs_layout_press_clamps (const BsLayout *self, const BsLayoutProblem *problem)
{
  BsPressClamp *clamps = g_new (BsPressClamp, self->n_clamps);

  for (guint i = 0; i < self->n_clamps; i++)
    clamps[i] = (BsPressClamp){ .x = self->clamps[i].x,
                                .force = self->clamps[i].force,
                                .head = problem->kinds[self->clamps[i].kind].head_width };
  return clamps;
}

/* Solves the layout with all that opens. */
static gboolean
press (BsPressing *pressing, const BsLayoutProblem *problem, BsLayout *layout, GError **error)
{
  g_autofree BsPressClamp *clamps = bs_layout_press_clamps (layout, problem);

  bs_press_result_clear (&layout->pressures);
  if (!bs_pressing_solve (pressing, clamps, layout->n_clamps, &layout->pressures, error))
    return FALSE;
  layout->least_mpa = layout->pressures.lines[layout->pressures.weakest].least_mpa;
  layout->greatest_mpa = layout->pressures.lines[layout->pressures.hardest].greatest_mpa;
  return TRUE;
}

static BsLayoutStatus
judge (const BsLayoutProblem *problem, const BsLayout *layout)
{
  if (!(layout->least_mpa >= problem->least_mpa * (1.0 - LIMIT_TOLERANCE)))
    return BS_LAYOUT_SHORT;
  if (!(layout->greatest_mpa <= problem->most_mpa * (1.0 + LIMIT_TOLERANCE)))
    return BS_LAYOUT_CRUSHES;
  return BS_LAYOUT_REACHED;
}

/* Writes the layout at hand, presses it, and tightens it by what the sums of influences missed:
 * heads of other widths, and places between those computed. */
static gboolean
confirm (BsClampSearch *self, BsPressing *pressing, BsLayout *layout, GError **error)
{
  for (guint attempt = 0; attempt < 3; attempt++)
    {
      gboolean is_at_most = TRUE;

      write_clamps (self, layout);
      if (!press (pressing, self->problem, layout, error))
        return FALSE;
      layout->status = judge (self->problem, layout);
      if (layout->status != BS_LAYOUT_SHORT || !(layout->least_mpa > 0.0))
        return TRUE;
      for (guint i = 0; i < self->n; i++)
        {
          double cap = bs_clamp_search_cap (self, self->of_owned[i]);

          is_at_most &= self->force[i] >= cap;
          self->force[i]
              = fmin (cap, self->force[i] * self->problem->least_mpa / layout->least_mpa);
        }
      if (is_at_most)
        return TRUE;
    }
  return TRUE;
}

/* Of all numbers that were tried in vain, the fewest clamps that miss hardly more than the best. */
static guint
choose_short (const double *ratings, guint first, guint end)
{
  double best = -INFINITY, enough;
  guint n = first;

  for (guint i = first; i < end; i++)
    best = fmax (best, ratings[i]);
  /* Above zero, where only the exact pressures fell short, larger is better likewise. */
  enough = best < 0.0 ? HARDLY_MORE * best : best / HARDLY_MORE;
  while (ratings[n] < enough)
    n++;
  return n;
}

static void
take_over (BsLayout *self, BsLayout *other)
{
  bs_layout_clear (self);
  *self = *other;
  *other = (BsLayout){ 0 };
}

/* Tries more and more clamps, from as many as the force asks for, until the layout is confirmed.
 * What presses enough but crushes is kept in case that nothing else is found. */
static gboolean
search_numbers (BsClampSearch *self, BsLayout *layout, const BsProgress *progress, GError **error)
{
  g_autoptr (BsPressing) pressing = bs_pressing_new (&self->problem->stack, error);
  guint fewest = bs_clamp_search_count_by_force (self, self->influence->area);
  guint most = bs_clamp_search_count_by_room (self);
  guint least = MAX (fewest, self->problem->at_least);
  guint first = fewest > 0 ? MIN (least, most) : most, n = first;
  g_autofree double *ratings = g_new0 (double, most + 1);

  if (pressing == NULL)
    return FALSE;
  for (; n <= most; n++)
    {
      g_auto (BsLayout) trial = { 0 };
      double part = (double)(n - first) / (most - first + 1);

      if (!bs_progress_report (progress, INFLUENCE_SHARE + (1.0 - INFLUENCE_SHARE) * part))
        break;
      ratings[n] = bs_clamp_search_draft (self, n);
      if (ratings[n] < 0.0)
        continue;
      if (!confirm (self, pressing, &trial, error))
        return FALSE;
      if (trial.status == BS_LAYOUT_REACHED)
        {
          take_over (layout, &trial);
          return TRUE;
        }
      if (trial.status == BS_LAYOUT_CRUSHES
          && (layout->n_clamps == 0 || trial.greatest_mpa < layout->greatest_mpa))
        take_over (layout, &trial);
    }
  if (layout->n_clamps > 0 || n == first)
    return TRUE;
  bs_clamp_search_draft (self, choose_short (ratings, first, n));
  return confirm (self, pressing, layout, error);
}

/* `area` is that of the largest glue line. */
static void
sum_forces (const BsClampSearch *self, double area, BsLayout *layout)
{
  layout->n_reaching = self->owned->len;
  layout->fewest_by_force = bs_clamp_search_count_by_force (self, area);
  for (guint i = 0; i < layout->n_clamps; i++)
    layout->mean_mpa += layout->clamps[i].force / area;
  for (guint i = 0; i < self->owned->len; i++)
    layout->mean_possible_mpa += bs_clamp_search_cap (self, i) / area;
}

/* Progress of the influences, as a share of the whole. */
static gboolean
report_influence (double done, gpointer data)
{
  return bs_progress_report (data, INFLUENCE_SHARE * done);
}

gboolean
bs_layout_find (const BsLayoutProblem *problem, const BsProgress *progress, BsLayout *layout,
                GError **error)
{
  g_auto (BsClampSearch) search = { 0 };
  BsProgress of_influence = { report_influence, (gpointer)progress };
  BsClampInfluence *influence;
  g_autoptr (GError) failure = NULL;

  *layout = (BsLayout){ .status = BS_LAYOUT_NO_CLAMPS };
  bs_clamp_search_init (&search, problem);
  layout->n_reaching = search.owned->len;
  if (search.owned->len < 2)
    return TRUE;
  layout->status = BS_LAYOUT_STOPPED;
  influence = bs_clamp_influence_new (&problem->stack, search.head, &of_influence, &failure);
  if (influence == NULL && failure == NULL)
    return TRUE;
  if (influence == NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failure));
      return FALSE;
    }
  bs_clamp_search_take_influence (&search, influence);
  if (!search_numbers (&search, layout, progress, error))
    return FALSE;
  sum_forces (&search, search.influence->area, layout);
  return TRUE;
}

static double
find_largest_area (const BsPressResult *result)
{
  double area = 0.0;

  for (guint i = 0; i < result->n_lines; i++)
    if (result->lines[i].is_glued)
      area = fmax (area, result->lines[i].area);
  return area;
}

gboolean
bs_layout_press (const BsLayoutProblem *problem, BsPressing *pressing, const BsLayoutClamp *clamps,
                 guint n, BsLayout *layout, GError **error)
{
  g_auto (BsClampSearch) search = { 0 };
  g_auto (BsLayout) given
      = { .n_clamps = n, .clamps = g_memdup2 (clamps, sizeof (BsLayoutClamp) * n) };

  *layout = (BsLayout){ .status = BS_LAYOUT_NO_CLAMPS };
  bs_clamp_search_init (&search, problem);
  bs_layout_order_turns (given.clamps, n);
  if (!press (pressing, problem, &given, error))
    return FALSE;
  given.status = judge (problem, &given);
  sum_forces (&search, find_largest_area (&given.pressures), &given);
  take_over (layout, &given);
  return TRUE;
}
