/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-remedy.h"

#include <math.h>

/* The share of a schedule's work that is done before, as progress tells it. */
#define REMEDIES_FROM 0.8

/* How a kind of change is made in steps: step 1 the smallest, each more of the same, so that what
 * one step allows the next one does. FALSE: there is no such step. */
typedef gboolean (*TakeStep) (BsPlan *plan, int step, double *value);

static gboolean
slow_adhesive (BsPlan *plan, int step, double *value)
{
  *value = 1.0 + 0.25 * step;
  plan->adhesive.open_s *= *value;
  plan->adhesive.total_s *= *value;
  return TRUE;
}

static gboolean
add_people (BsPlan *plan, int step, double *value)
{
  plan->shop.people += step;
  *value = plan->shop.people;
  return TRUE;
}

static gboolean
cool_shop (BsPlan *plan, int step, double *value)
{
  *value = plan->shop.climate.temperature_c - step;
  plan->shop.climate.temperature_c = *value;
  return *value >= plan->adhesive.min_temperature_c;
}

static guint
find_longest (const GPtrArray *clamps)
{
  guint longest = 0;

  for (guint i = 1; i < clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (clamps, i);
      const BsClampKind *other = g_ptr_array_index (clamps, longest);
      if (kind->reach > other->reach)
        longest = i;
    }
  return longest;
}

/* A kind of the plan with another count and reach. The rest is copied: no text of it is read here.
 */
static void
replace_kind (BsPlan *plan, guint place, int count, double reach)
{
  BsClampKind *former = g_ptr_array_index (plan->shop.clamps, place);
  BsClampKind *kind = bs_clamp_kind_new (former->id);

  kind->count = count;
  kind->reach = reach;
  kind->max_force_n = former->max_force_n;
  kind->head_width = former->head_width;
  kind->head_height = former->head_height;
  g_ptr_array_remove_index (plan->shop.clamps, place);
  g_ptr_array_insert (plan->shop.clamps, (int)place, kind);
}

static gboolean
add_clamps (BsPlan *plan, int step, double *value)
{
  if (plan->shop.clamps->len == 0)
    return FALSE;

  guint longest = find_longest (plan->shop.clamps);
  const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, longest);
  replace_kind (plan, longest, kind->count + step, kind->reach);
  *value = step;
  for (guint i = 0; i < plan->shop.clamps->len; i++)
    *value += i != longest ? ((const BsClampKind *)g_ptr_array_index (plan->shop.clamps, i))->count
                           : kind->count;
  return TRUE;
}

#define REACH_STEP 50.0 /* mm */

static gboolean
lengthen_clamps (BsPlan *plan, int step, double *value)
{
  if (plan->shop.clamps->len == 0)
    return FALSE;

  const BsClampKind *longest
      = g_ptr_array_index (plan->shop.clamps, find_longest (plan->shop.clamps));
  double reach = REACH_STEP * (floor (longest->reach / REACH_STEP) + step);
  for (guint i = 0; i < plan->shop.clamps->len; i++)
    {
      const BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, i);
      replace_kind (plan, i, kind->count, reach);
    }
  *value = reach;
  return TRUE;
}

#define PLANER_STEP 50.0 /* mm */

static gboolean
widen_planer (BsPlan *plan, int step, double *value)
{
  if (!(plan->shop.planer_width > 0.0))
    return FALSE;
  *value = PLANER_STEP * (floor (plan->shop.planer_width / PLANER_STEP) + step);
  plan->shop.planer_width = *value;
  return TRUE;
}

typedef struct
{
  TakeStep take_step;
  BsStagesRemedyKind kind;
  int most_steps;
} Kind;

static const Kind kinds[] = {
  { slow_adhesive, BS_STAGES_REMEDY_SLOWER_ADHESIVE, 36 }, /* ten times: beyond the slowest */
  { add_people, BS_STAGES_REMEDY_MORE_PEOPLE, 3 },
  { cool_shop, BS_STAGES_REMEDY_COOLER_SHOP, 25 },
  { add_clamps, BS_STAGES_REMEDY_MORE_CLAMPS, 64 },
  { lengthen_clamps, BS_STAGES_REMEDY_LONGER_CLAMPS, 40 },
  { widen_planer, BS_STAGES_REMEDY_WIDER_PLANER, 12 },
};

/* The question: what would make this job possible. */
typedef struct
{
  const BsStagesJob *job;
  gboolean keeps_packs;
  GArray *remedies;
} Search;

static gboolean
is_possible (const Search *self, const BsPlan *plan)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;
  gboolean possible;

  if (!bs_stages_job_init (&job, stack))
    return FALSE;
  bs_stages_job_take_layouts (&job, self->job);
  if (self->keeps_packs)
    {
      g_autoptr (BsStagesPlan) own = bs_stages_job_own_packs (&job, plan);
      possible = bs_stages_plan_is_possible (own);
    }
  else
    {
      possible = bs_stages_is_possible (&job.input);
    }
  bs_stages_job_clear (&job);
  return possible;
}

static gboolean
helps (const Search *self, const Kind *kind, int step, double *value)
{
  g_autoptr (BsPlan) changed = bs_plan_copy (self->job->stack->plan);
  return kind->take_step (changed, step, value) && is_possible (self, changed);
}

static void
add_remedy (const Search *self, BsStagesRemedyKind kind, double value)
{
  BsStagesRemedy remedy = { kind, value };
  g_array_append_val (self->remedies, remedy);
}

/* More of a change never spoils what less of it made possible, so the least is found by halving,
 * but for the steps that there are not. */
static void
find_remedy (const Search *self, const Kind *kind)
{
  int low = 0, high = kind->most_steps;
  double value;

  while (high > 0)
    {
      g_autoptr (BsPlan) trial = bs_plan_copy (self->job->stack->plan);
      if (kind->take_step (trial, high, &value))
        break;
      high--;
    }
  if (high == 0 || !helps (self, kind, high, &value))
    return;
  while (high - low > 1)
    {
      int middle = (low + high) / 2;
      if (helps (self, kind, middle, &value))
        high = middle;
      else
        low = middle;
    }
  helps (self, kind, high, &value);
  add_remedy (self, kind->kind, value);
}

/* Most pieces that any press of a plan in stages joins; 0 when there is no such plan. */
static int
find_smaller_packs (const BsStagesJob *job)
{
  g_autoptr (BsStages) stages = bs_stages_solve (&job->input, NULL);
  int most = 0;

  for (guint i = 0; stages->shortest != NULL && i < stages->shortest->stages->len; i++)
    most = MAX (most, g_array_index (stages->shortest->stages, BsStage, i).n_pieces);
  return most;
}

GArray *
bs_stages_remedies (const BsStagesJob *job, gboolean keeps_packs, const BsProgress *progress)
{
  Search self = { job, keeps_packs, g_array_new (FALSE, FALSE, sizeof (BsStagesRemedy)) };
  guint n_kinds = G_N_ELEMENTS (kinds);

  if (is_possible (&self, job->stack->plan))
    return self.remedies;
  int smaller = keeps_packs ? find_smaller_packs (job) : 0;
  if (smaller > 0)
    add_remedy (&self, BS_STAGES_REMEDY_SMALLER_PACKS, smaller);
  for (guint i = 0; i < n_kinds; i++)
    {
      double done = REMEDIES_FROM + (1.0 - REMEDIES_FROM) * i / n_kinds;
      if (!bs_progress_report (progress, done))
        break;
      find_remedy (&self, &kinds[i]);
    }
  return self.remedies;
}
