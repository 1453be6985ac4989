/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "core/schedule.h"

#include <glib/gi18n-lib.h>

#define HANDS_CERTAINTY N_ ("As sure as the times of the shop’s hands: time yourselves once.")
#define SET_BY_YOU N_ ("set by you")

static void
add_joint (const BsSchedule *self, BsWorking *working)
{
  const BsStagesInput *input = &self->job.input;

  bs_working_add (working, N_ ("fixed part of a joint"), "j", input->joint_s, BS_QUANTITY_TIME,
                  SET_BY_YOU);
  bs_working_add (working, N_ ("spreading"), "r", input->spread_s_per_m2, BS_QUANTITY_SPREAD_TIME,
                  SET_BY_YOU);
  bs_working_add (working, N_ ("largest glue line"), "A", input->length * input->height,
                  BS_QUANTITY_AREA, NULL);
  bs_working_add (working, N_ ("people"), "w", input->people, BS_QUANTITY_COUNT, SET_BY_YOU);
  bs_working_add (working, N_ ("placing a piece"), "p", input->place_s, BS_QUANTITY_TIME,
                  SET_BY_YOU);
}

static void
add_press (const BsSchedule *self, const BsStage *stage, BsWorking *working)
{
  const BsStagesInput *input = &self->job.input;

  bs_working_add (working, N_ ("lining it up"), "q", input->align_s, BS_QUANTITY_TIME, SET_BY_YOU);
  bs_working_add (working, N_ ("pieces"), "k", stage->n_pieces, BS_QUANTITY_COUNT, NULL);
  bs_working_add (working, N_ ("clamps"), "m", stage->n_clamps, BS_QUANTITY_COUNT, NULL);
  bs_working_add (working, N_ ("tightening a clamp"), "c", input->tighten_s, BS_QUANTITY_TIME,
                  SET_BY_YOU);
}

static void
add_limit (const BsSchedule *self, double limit_s, BsWorking *working)
{
  bs_working_add (working, N_ ("time allowed in this shop"), "", limit_s, BS_QUANTITY_TIME,
                  self->stack->plan->adhesive.source);
}

void
bs_schedule_why_assembly (const BsSchedule *self, const BsStage *stage, BsWorking *working)
{
  bs_working_init (working, N_ ("Assembly time"),
                   N_ ("From the first glue spread to the last clamp tight, spreading a joint and "
                       "placing a piece in turn. All people spread and tighten; one places."),
                   "T = (k − 1) (j + r A / w + p + q) + m c / w", BS_QUANTITY_TIME,
                   HANDS_CERTAINTY);
  working->value = stage->times.total_s;
  add_joint (self, working);
  add_press (self, stage, working);
  add_limit (self, self->job.input.total_s, working);
}

void
bs_schedule_why_open (const BsSchedule *self, const BsStage *stage, BsWorking *working)
{
  bs_working_init (working, N_ ("Worst joint open"),
                   N_ ("From the glue spread to the faces touching. Spreading and placing in turn, "
                       "all joints are open alike."),
                   "o = j + r A / w + p", BS_QUANTITY_TIME, HANDS_CERTAINTY);
  working->value = stage->times.open_s;
  add_joint (self, working);
  add_limit (self, self->job.input.open_s, working);
}

void
bs_schedule_why_closed (const BsSchedule *self, const BsStage *stage, BsWorking *working)
{
  bs_working_init (working, N_ ("Worst joint closed"),
                   N_ ("From the faces touching to the last clamp tight, of the joint that was "
                       "spread first: it waits for all the others."),
                   "T − o = (k − 2) (j + r A / w + p + q) + q + m c / w", BS_QUANTITY_TIME,
                   HANDS_CERTAINTY);
  working->value = stage->times.closed_s;
  add_joint (self, working);
  add_press (self, stage, working);
}

/* How the number of a press compares with what the pressing engine found. */
static const char *
explain_clamps (const BsStagePressing *pressing, int by_rule)
{
  if (pressing == NULL)
    return N_ ("By the hand rule: near enough to cover the length, and enough for the force or all "
               "that fit.");
  switch (pressing->status)
    {
    case BS_LAYOUT_REACHED:
      return pressing->n_clamps > by_rule
                 ? N_ ("So many press every spot of this press’s glue lines enough; the hand rule "
                       "asks for fewer.")
                 : N_ ("By the hand rule; so many, or fewer, can be placed to press every spot of "
                       "this press’s glue lines enough.");
    case BS_LAYOUT_CRUSHES:
      return N_ ("By the hand rule. Pressing every spot enough would press the wood beyond its "
                 "strength under the clamps.");
    case BS_LAYOUT_SHORT:
    case BS_LAYOUT_NO_CLAMPS:
    case BS_LAYOUT_STOPPED:
    default:
      return N_ ("By the hand rule: the clamps owned cannot press every spot as much as the "
                 "adhesive asks for.");
    }
}

void
bs_schedule_why_clamps (const BsSchedule *self, const BsStage *stage, BsWorking *working)
{
  const BsStagePressing *pressing = bs_schedule_get_pressing (self, stage);
  gboolean is_placed = !stage->is_pack && self->job.input.slab_clamps > 0;
  int by_rule = bs_stages_job_count_by_rule (&self->job, stage);

  bs_working_init (working, N_ ("Clamps"),
                   is_placed ? N_ ("As many as you placed: see Clamping.")
                             : explain_clamps (pressing, by_rule),
                   is_placed ? "" : "m = max(hand rule, layout)", BS_QUANTITY_COUNT,
                   N_ ("The layout is that of this press alone, a pack being one stiff piece."));
  working->value = stage->n_clamps;
  bs_working_add (working, N_ ("clamps by the hand rule"), "", by_rule, BS_QUANTITY_COUNT, NULL);
  if (pressing != NULL && pressing->n_clamps > 0)
    {
      bs_working_add (working, N_ ("clamps of its pressing layout"), "", pressing->n_clamps,
                      BS_QUANTITY_COUNT, N_ ("docs/pressing-model.md"));
      bs_working_add (working, N_ ("pressure at its weakest spot"), "", pressing->least_mpa,
                      BS_QUANTITY_PRESSURE, NULL);
    }
  bs_working_add (working, N_ ("least pressure that the adhesive asks for"), "",
                  self->stack->plan->adhesive.min_pressure_mpa, BS_QUANTITY_PRESSURE,
                  self->stack->plan->adhesive.source);
}

void
bs_schedule_why_elapsed (const BsSchedule *self, const BsStagesPlan *presses, BsWorking *working)
{
  const BsStagesInput *input = &self->job.input;
  double assembly = 0.0;
  int n_packs = 0;

  for (guint i = 0; i < presses->stages->len; i++)
    {
      const BsStage *stage = &g_array_index (presses->stages, BsStage, i);

      assembly += stage->times.assembly_s;
      n_packs += stage->is_pack && input->planes_packs;
    }
  bs_working_init (working, N_ ("From the first glue to the last clamp off"),
                   N_ ("All presses of a round are closed one after another and then stand in the "
                       "clamps together. Packs rest before planing, since joints swell with the "
                       "water of the glue. Breaks and nights are not counted."),
                   "E = Σ (T + p) + n P + (n − 1) R + b B", BS_QUANTITY_TIME, HANDS_CERTAINTY);
  working->value = presses->elapsed_s;
  bs_working_add (working, N_ ("assembly of all presses"), "Σ (T + p)", assembly, BS_QUANTITY_TIME,
                  NULL);
  bs_working_add (working, N_ ("rounds"), "n", presses->n_rounds, BS_QUANTITY_COUNT, NULL);
  bs_working_add (working, N_ ("time in the clamps"), "P", input->press_s, BS_QUANTITY_TIME,
                  self->stack->plan->adhesive.source);
  bs_working_add (working, N_ ("rest before planing"), "R",
                  input->planes_packs ? input->rest_s : 0.0, BS_QUANTITY_TIME,
                  N_ ("common practice, no source"));
  bs_working_add (working, N_ ("packs to be planed"), "b", n_packs, BS_QUANTITY_COUNT, NULL);
  bs_working_add (working, N_ ("planing a pack"), "B", input->plane_s, BS_QUANTITY_TIME,
                  N_ ("common practice, no source"));
}
