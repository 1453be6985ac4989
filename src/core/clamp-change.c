/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-change.h"

#include <math.h>

typedef struct
{
  BsPressing *pressing;
  const BsPressClamp *clamps;
  guint n_clamps;
  double wanted_mpa;
  const BsProgress *progress;
  guint n_tried;
  GArray *changes; /* BsClampChange */
} Trial;

static void
measure (BsClampChange *change, const BsPressResult *result, double wanted_mpa)
{
  change->least_mpa = result->lines[result->weakest].least_mpa;
  change->greatest_mpa = result->lines[result->hardest].greatest_mpa;
  for (guint i = 0; i < result->n_lines; i++)
    if (result->lines[i].is_glued)
      change->less_than_wanted += bs_press_line_length_below (&result->lines[i], wanted_mpa);
}

/* Presses with one clamp changed, or with one more at the end of the array; which it is does not
 * matter to the solver. FALSE when asked to stop. */
static gboolean
try_change (Trial *self, BsClampChange change)
{
  guint n = self->n_clamps + (change.kind == BS_CLAMP_CHANGE_ADD ? 1 : 0);
  guint at = change.kind == BS_CLAMP_CHANGE_ADD ? self->n_clamps : change.clamp;
  g_autofree BsPressClamp *clamps = g_new (BsPressClamp, n);
  g_auto (BsPressResult) result = { 0 };

  for (guint i = 0; i < self->n_clamps; i++)
    clamps[i] = self->clamps[i];
  clamps[at] = (BsPressClamp){ .x = change.x,
                               .force = change.force,
                               .head = self->clamps[MIN (at, self->n_clamps - 1)].head };
  if (bs_pressing_solve (self->pressing, clamps, n, &result, NULL)
      && result.status == BS_PRESS_STATUS_SOLVED)
    {
      measure (&change, &result, self->wanted_mpa);
      g_array_append_val (self->changes, change);
    }
  return bs_progress_report (self->progress, ++self->n_tried / (4.0 * self->n_clamps + 1.0));
}

static gboolean
try_tighten_and_move (Trial *self, guint i)
{
  const BsPressClamp *clamp = &self->clamps[i];
  BsClampChange tighten = { .kind = BS_CLAMP_CHANGE_TIGHTEN,
                            .clamp = i,
                            .x = clamp->x,
                            .force = clamp->force * (1.0 + BS_CLAMP_CHANGE_TIGHTEN_BY) };
  BsClampChange left = { .kind = BS_CLAMP_CHANGE_MOVE,
                         .clamp = i,
                         .x = clamp->x - BS_CLAMP_CHANGE_MOVE_BY,
                         .force = clamp->force };
  BsClampChange right = left;

  right.x = clamp->x + BS_CLAMP_CHANGE_MOVE_BY;
  return try_change (self, tighten) && try_change (self, left) && try_change (self, right);
}

/* One more between a clamp and the one before it; half their distance beyond the outer ones. */
static gboolean
try_add (Trial *self, guint i)
{
  guint last = self->n_clamps - 1;
  double force = 0.0, x;

  for (guint j = 0; j < self->n_clamps; j++)
    force += self->clamps[j].force / self->n_clamps;
  if (i == 0)
    x = self->clamps[0].x - (self->clamps[1].x - self->clamps[0].x) / 2.0;
  else if (i > last)
    x = self->clamps[last].x + (self->clamps[last].x - self->clamps[last - 1].x) / 2.0;
  else
    x = (self->clamps[i - 1].x + self->clamps[i].x) / 2.0;
  x = floor (x + 0.5); /* a tape is read no finer */
  return try_change (
      self, (BsClampChange){ .kind = BS_CLAMP_CHANGE_ADD, .clamp = i, .x = x, .force = force });
}

static int
compare_changes (gconstpointer a, gconstpointer b)
{
  const BsClampChange *first = a, *second = b;
  double difference = first->less_than_wanted - second->less_than_wanted;

  if (fabs (difference) > 1.0)
    return difference > 0.0 ? 1 : -1;
  return (first->least_mpa < second->least_mpa) - (first->least_mpa > second->least_mpa);
}

GArray *
bs_clamp_changes (BsPressing *pressing, const BsPressClamp *clamps, guint n_clamps,
                  double wanted_mpa, const BsProgress *progress)
{
  g_autoptr (GArray) changes = g_array_new (FALSE, FALSE, sizeof (BsClampChange));
  Trial trial = { .pressing = pressing,
                  .clamps = clamps,
                  .n_clamps = n_clamps,
                  .wanted_mpa = wanted_mpa,
                  .progress = progress,
                  .changes = changes };

  g_return_val_if_fail (n_clamps >= 2, NULL);
  for (guint i = 0; i < n_clamps; i++)
    if (!try_tighten_and_move (&trial, i))
      return NULL;
  for (guint i = 0; i <= n_clamps; i++)
    if (!try_add (&trial, i))
      return NULL;
  g_array_sort (changes, compare_changes);
  return g_steal_pointer (&changes);
}
