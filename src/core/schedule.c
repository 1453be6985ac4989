/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/schedule.h"

#include <math.h>

#include "core/stages-remedy.h"

/* Presses are laid out and the stages searched anew with what was learnt, so many times at most. */
#define MOST_ATTEMPTS 2

/* Shares of the work, as progress tells it. */
#define SEARCH_DONE 0.1
#define LAYOUTS_DONE 0.8

/* A part of the work that tells its own progress. */
typedef struct
{
  const BsProgress *whole;
  double from, to;
} Part;

static gboolean
report_part (double done, gpointer data)
{
  const Part *part = data;

  return bs_progress_report (part->whole, part->from + done * (part->to - part->from));
}

static char *
name_stage (const BsStage *stage)
{
  GString *name = g_string_new (NULL);

  for (int i = 0; i <= stage->n_pieces; i++)
    g_string_append_printf (name, "%d,", stage->bounds[i]);
  return g_string_free (name, FALSE);
}

/* The presses to look at. The evenest are among them only once it is known what presses need. */
static GPtrArray *
list_stages (const BsSchedule *self)
{
  gboolean is_first = g_hash_table_size (self->pressings) == 0;
  const BsStagesPlan *plans[]
      = { self->own, self->stages->shortest, is_first ? NULL : self->stages->balanced };
  GPtrArray *list = g_ptr_array_new ();

  for (guint i = 0; i < G_N_ELEMENTS (plans); i++)
    for (guint j = 0; plans[i] != NULL && j < plans[i]->stages->len; j++)
      g_ptr_array_add (list, &g_array_index (plans[i]->stages, BsStage, j));
  return list;
}

static void
forget_plans (BsSchedule *self)
{
  g_clear_pointer (&self->own, bs_stages_plan_free);
  g_clear_pointer (&self->stages, bs_stages_free);
}

static void
find_plans (BsSchedule *self, const BsProgress *progress)
{
  Part part = { progress, 0.0, SEARCH_DONE };
  BsProgress of_part = { report_part, &part };

  forget_plans (self);
  if (self->stack->plan->packs->len > 0)
    self->own = bs_stages_job_own_packs (&self->job, self->stack->plan);
  self->stages = bs_stages_solve (&self->job.input, &of_part);
}

/* Lays out one press. TRUE when it has other clamps by that than were counted. */
static gboolean
lay_out_stage (BsSchedule *self, const BsStage *stage, const BsProgress *progress)
{
  g_autofree char *name = name_stage (stage);
  int by_rule = bs_stages_job_count_by_rule (&self->job, stage), counted = by_rule;
  BsStagePressing pressing;

  if ((!stage->is_pack && self->job.input.slab_clamps > 0)
      || g_hash_table_contains (self->pressings, name)
      || !bs_stage_press (self->stack, stage, by_rule, progress, &pressing))
    return FALSE;
  g_hash_table_insert (self->pressings, g_steal_pointer (&name),
                       g_memdup2 (&pressing, sizeof pressing));
  if (pressing.status == BS_LAYOUT_REACHED)
    counted = MAX (by_rule, pressing.n_clamps);
  bs_stages_job_set_layout (&self->job, stage, counted);
  return counted != stage->n_clamps;
}

/* Lays out the presses that were not yet. TRUE when some number of clamps became another. */
static gboolean
lay_out (BsSchedule *self, const BsProgress *progress)
{
  g_autoptr (GPtrArray) stages = list_stages (self);
  gboolean has_changed = FALSE;

  for (guint i = 0; i < stages->len; i++)
    {
      double each = (LAYOUTS_DONE - SEARCH_DONE) / stages->len;
      Part part = { progress, SEARCH_DONE + each * i, SEARCH_DONE + each * (i + 1) };
      BsProgress of_part = { report_part, &part };

      if (!bs_progress_report (&of_part, 0.0))
        return FALSE;
      has_changed |= lay_out_stage (self, g_ptr_array_index (stages, i), &of_part);
    }
  return has_changed;
}

/* A layout that asks for other clamps than the search counted sends it back with that number. */
static void
settle_clamps (BsSchedule *self, const BsProgress *progress)
{
  for (int i = 0; i < MOST_ATTEMPTS && lay_out (self, progress); i++)
    find_plans (self, progress);
}

gboolean
bs_schedule_is_possible (const BsSchedule *self)
{
  const BsStagesPlan *presses = bs_schedule_get_presses (self);

  return !self->has_job || (presses != NULL && bs_stages_plan_is_possible (presses));
}

BsSchedule *
bs_schedule_new (const BsPlan *plan, BsScheduleClamps clamps, const BsProgress *progress)
{
  g_autoptr (BsSchedule) self = g_new0 (BsSchedule, 1);

  self->stack = bs_stack_new (plan);
  self->pressings = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  self->has_job = bs_stages_job_init (&self->job, self->stack);
  self->remedies = g_array_new (FALSE, FALSE, sizeof (BsStagesRemedy));
  if (self->has_job)
    find_plans (self, progress);
  if (!bs_progress_report (progress, SEARCH_DONE))
    return NULL;
  if (self->has_job && clamps == BS_SCHEDULE_BY_LAYOUT)
    settle_clamps (self, progress);
  if (!bs_progress_report (progress, LAYOUTS_DONE))
    return NULL;
  if (!bs_schedule_is_possible (self))
    {
      g_array_unref (self->remedies);
      self->remedies = bs_stages_remedies (&self->job, self->own != NULL, progress);
    }
  return bs_progress_report (progress, 1.0) ? g_steal_pointer (&self) : NULL;
}

void
bs_schedule_free (BsSchedule *self)
{
  forget_plans (self);
  if (self->has_job)
    bs_stages_job_clear (&self->job);
  g_array_unref (self->remedies);
  g_hash_table_unref (self->pressings);
  bs_stack_free (self->stack);
  g_free (self);
}

const BsStagesPlan *
bs_schedule_get_presses (const BsSchedule *self)
{
  if (self->own != NULL)
    return self->own;
  return self->stages != NULL ? self->stages->shortest : NULL;
}

const BsStagePressing *
bs_schedule_get_pressing (const BsSchedule *self, const BsStage *stage)
{
  g_autofree char *name = name_stage (stage);

  return g_hash_table_lookup (self->pressings, name);
}
