/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "draw/sheet-private.h"

#include <glib/gi18n-lib.h>

#include "draw/timeline.h"
#include "words/press-steps.h"
#include "words/schedule.h"

static void
add_timeline (BsFlow *flow, const BsSchedule *schedule, const BsStagesPlan *presses)
{
  BsTimeline timeline = {
    .schedule = schedule,
    .presses = presses,
    .width = bs_flow_get_column_width (flow),
    .text_size = 0.9 * BS_SHEET_TEXT,
    .hairline = BS_SHEET_HAIRLINE,
    .palette = bs_palette_paper (),
  };
  double height = bs_timeline_get_height (&timeline);
  cairo_rectangle_t box = { 0.0, 0.0, timeline.width, height };
  cairo_surface_t *picture = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &box);
  cairo_t *cr = cairo_create (picture);

  bs_timeline_draw (&timeline, cr);
  cairo_destroy (cr);
  bs_flow_add_picture (flow, picture, height);
  cairo_surface_destroy (picture);
}

static void
add_remedies (BsFlow *flow, const BsSchedule *schedule)
{
  for (guint i = 0; i < schedule->remedies->len; i++)
    {
      const BsStagesRemedy *remedy = &g_array_index (schedule->remedies, BsStagesRemedy, i);
      g_autofree char *text = bs_words_stages_remedy (remedy, schedule->stack->plan->units);

      if (i == 0)
        bs_flow_add_text (flow, bs_words_remedies_heading (schedule), BS_FLOW_TITLE,
                          BS_FLOW_SIGN_NONE);
      bs_flow_add_text (flow, text, BS_FLOW_PLAIN, BS_FLOW_SIGN_BLANK);
    }
}

static void
add_steps (BsFlow *flow, const BsSchedule *schedule, const BsStage *stage)
{
  static const BsFlowCell cells[] = {
    { .from = 0.00, .width = 0.14, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.16, .width = 0.32 },
    { .from = 0.48, .width = 0.14, .is_right = TRUE, .is_bold = TRUE },
    { .from = 0.64, .width = 0.36 },
  };
  const char *head[]
      = { _ ("Spread at"), _ ("The joint of"), _ ("Place at"), C_ ("what is placed", "The piece") };
  g_autoptr (GArray) steps = bs_words_press_steps (schedule, stage);

  bs_flow_begin_table (flow, cells, G_N_ELEMENTS (cells), head);
  for (guint i = 0; i < steps->len; i++)
    {
      const BsPressStep *step = &g_array_index (steps, BsPressStep, i);
      g_autofree char *spread = bs_words_clock (step->spread_s);
      g_autofree char *place = bs_words_clock (step->place_s);
      const char *texts[] = { spread, step->joint, place, step->piece };

      bs_flow_add_row (flow, texts);
    }
  bs_flow_add_space (flow);
}

static void
add_press (BsFlow *flow, const BsSchedule *schedule, const BsStagesPlan *presses, guint number)
{
  const BsStage *stage = &g_array_index (presses->stages, BsStage, number);
  g_autofree char *title = bs_words_press_title (schedule, presses, number);
  g_autofree char *text = bs_words_press (schedule, presses, number);
  g_autofree char *beginning = bs_words_press_beginning (schedule, stage);
  g_autofree char *end = bs_words_press_end (schedule, stage);

  bs_flow_add_heading (flow, title);
  if (stage->limit != BS_STAGE_LIMIT_NONE)
    bs_flow_add_text (flow, bs_words_stage_limit (stage->limit), BS_FLOW_TITLE, BS_FLOW_SIGN_STOP);
  bs_flow_add_text (flow, text, BS_FLOW_KEPT, BS_FLOW_SIGN_NONE);
  bs_flow_add_text (flow, beginning, BS_FLOW_KEPT, BS_FLOW_SIGN_NONE);
  add_steps (flow, schedule, stage);
  bs_flow_add_text (flow, end, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
}

void
bs_sheet_add_schedule (BsFlow *flow, const BsSchedule *schedule)
{
  const BsStagesPlan *presses = bs_schedule_get_presses (schedule);
  gboolean is_possible = bs_schedule_is_possible (schedule);
  g_autofree char *summary = bs_words_schedule (schedule);

  if (!schedule->has_job)
    return;
  bs_flow_add_heading (flow, _ ("Schedule"));
  bs_flow_add_text (flow, summary, BS_FLOW_PLAIN,
                    is_possible ? BS_FLOW_SIGN_NONE : BS_FLOW_SIGN_STOP);
  add_remedies (flow, schedule);
  if (presses == NULL)
    return;

  g_autofree char *numbers = bs_words_presses (presses, schedule->stack->plan->units);
  bs_flow_add_text (flow, numbers, BS_FLOW_PLAIN, BS_FLOW_SIGN_NONE);
  add_timeline (flow, schedule, presses);
  bs_flow_add_text (flow,
                    _ ("Each press has its own clock, in minutes and seconds: start it when the "
                       "first piece is taken up. Try the hardest press dry before any glue is "
                       "spread."),
                    BS_FLOW_PLAIN, BS_FLOW_SIGN_CAUTION);
  for (guint i = 0; i < presses->stages->len; i++)
    add_press (flow, schedule, presses, i);
}
