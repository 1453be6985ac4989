/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "words/press-steps.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "words/schedule.h"

char *
bs_words_clock (double seconds)
{
  long all = lround (seconds);

  if (all >= 3600)
    return g_strdup_printf ("%ld:%02ld:%02ld", all / 3600, all / 60 % 60, all % 60);
  return g_strdup_printf ("%ld:%02ld", all / 60, all % 60);
}

char *
bs_words_hours (double seconds)
{
  long all = lround (seconds / 60.0);

  return g_strdup_printf ("%ld:%02ld", all / 60, all % 60);
}

static void
clear_step (gpointer data)
{
  BsPressStep *step = data;

  g_free (step->joint);
  g_free (step->piece);
}

/* When its spreading begins and its piece is taken up, from the first piece taken up. */
static void
time_joint (const BsStagesInput *input, const BsStage *stage, int joint, BsPressStep *step)
{
  double open, closed, contact;

  bs_stage_joint_times (input, stage->n_pieces, stage->n_clamps, joint, &open, &closed);
  contact = input->place_s + stage->times.total_s - closed;
  step->spread_s = contact - open;
  step->place_s = contact - input->place_s;
}

GArray *
bs_words_press_steps (const BsSchedule *schedule, const BsStage *stage)
{
  GArray *steps = g_array_new (FALSE, TRUE, sizeof (BsPressStep));

  g_array_set_clear_func (steps, clear_step);
  for (int i = 0; i + 1 < stage->n_pieces; i++)
    {
      BsPressStep step = {
        .joint = bs_words_joint_name (schedule, stage->bounds[i + 1]),
        .piece = bs_words_piece_name (schedule, stage->bounds[i + 1], stage->bounds[i + 2]),
      };

      time_joint (&schedule->job.input, stage, i, &step);
      g_array_append_val (steps, step);
    }
  return steps;
}

char *
bs_words_press_beginning (const BsSchedule *schedule, const BsStage *stage)
{
  g_autofree char *first = bs_words_piece_name (schedule, stage->bounds[0], stage->bounds[1]);
  g_autofree char *begin = bs_words_hours (stage->begin_s);

  if (!(stage->begin_s > 0.0))
    /* Translators: the label of a piece. */
    return g_strdup_printf (_ ("0:00  Set down %s."), first);
  /* Translators: the label of a piece; a time in hours and minutes: "25:40". */
  return g_strdup_printf (
      _ ("0:00  Set down %s. This clock starts %s h after the first glue of all."), first, begin);
}

static char *
describe_tightening (const BsSchedule *schedule, const BsStage *stage)
{
  const BsStagesInput *input = &schedule->job.input;
  double tighten = stage->n_clamps * input->tighten_s / input->people;
  g_autofree char *from = bs_words_clock (stage->times.assembly_s - tighten);
  g_autofree char *to = bs_words_clock (stage->times.assembly_s);
  g_autofree char *limit = bs_words_clock (input->place_s + input->total_s);

  /* Translators: a clock time; how many clamps; two more clock times. */
  return g_strdup_printf (
      ngettext ("%s  Tighten %d clamp; it is tight at %s. The glue allows until %s.",
                "%s  Tighten %d clamps from the middle outwards; the last is tight at %s. The glue "
                "allows until %s.",
                (unsigned long)stage->n_clamps),
      from, stage->n_clamps, to, limit);
}

static char *
describe_waiting (const BsSchedule *schedule, const BsStage *stage)
{
  g_autofree char *off = bs_words_hours (stage->released_s);
  g_autofree char *plane = bs_words_hours (stage->planing_s);

  if (stage->end_s > stage->released_s)
    /* Translators: times in hours and minutes from the first glue of all: "25:40". */
    return g_strdup_printf (
        _ ("Clamps off at %s h, planing from %s h, after the first glue of all."), off, plane);
  /* Translators: a time in hours and minutes from the first glue of all: "25:40". */
  return g_strdup_printf (_ ("Clamps off at %s h after the first glue of all."), off);
}

char *
bs_words_press_end (const BsSchedule *schedule, const BsStage *stage)
{
  g_autofree char *tightening = describe_tightening (schedule, stage);
  g_autofree char *waiting = describe_waiting (schedule, stage);

  return g_strjoin ("\n", tightening, waiting, NULL);
}
