/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/press-row.h"

#include <glib/gi18n.h>

#include "app/blocks.h"
#include "app/number-row.h"
#include "app/page.h"
#include "core/units.h"
#include "words/schedule.h"

#define NUMBER_WIDTH 186

/* limit_s: what the glue allows; 0: nothing is said of it. */
static void
add_number (BsBlocks *numbers, const BsWorking *why, BsUnitSystem units, double limit_s)
{
  GtkWidget *row = bs_number_row_new ();
  g_autofree char *limit = bs_units_format (limit_s, BS_QUANTITY_TIME, units);
  /* Translators: a time that the glue allows. */
  g_autofree char *note = limit_s > 0.0 ? g_strdup_printf (_ ("at most %s"), limit) : NULL;

  bs_number_row_show (BS_NUMBER_ROW (row), why, units, note);
  gtk_widget_set_size_request (row, NUMBER_WIDTH, -1);
  bs_blocks_append (numbers, row);
}

static GtkWidget *
numbers_new (const BsSchedule *schedule, const BsStage *stage)
{
  BsBlocks *numbers = BS_BLOCKS (bs_blocks_new (4, 12, 0));
  BsUnitSystem units = schedule->stack->plan->units;
  const BsStagesInput *input = &schedule->job.input;
  BsWorking why;

  bs_schedule_why_assembly (schedule, stage, &why);
  add_number (numbers, &why, units, input->total_s);
  bs_schedule_why_open (schedule, stage, &why);
  add_number (numbers, &why, units, input->open_s);
  bs_schedule_why_closed (schedule, stage, &why);
  add_number (numbers, &why, units, 0.0);
  bs_schedule_why_clamps (schedule, stage, &why);
  add_number (numbers, &why, units, 0.0);
  return GTK_WIDGET (numbers);
}

GtkWidget *
bs_press_row_new (const BsSchedule *schedule, const BsStagesPlan *presses, guint number)
{
  const BsStage *stage = &g_array_index (presses->stages, BsStage, number);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *title = bs_words_press_title (schedule, presses, number);
  g_autofree char *text = bs_words_press (schedule, presses, number);

  gtk_box_append (GTK_BOX (box), bs_page_text_new (title, "strong"));
  if (stage->limit != BS_STAGE_LIMIT_NONE)
    gtk_box_append (GTK_BOX (box),
                    bs_page_text_new (bs_words_stage_limit (stage->limit), "strong"));
  gtk_box_append (GTK_BOX (box), bs_page_text_new (text, NULL));
  gtk_box_append (GTK_BOX (box), numbers_new (schedule, stage));
  return box;
}
