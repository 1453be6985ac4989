/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/timeline.h"

#include "image.h"
#include "scene.h"

#define WIDTH 900

typedef struct
{
  const char *path;
  double least, step; /* s */
} StepRow;

static const StepRow step_rows[] = {
  { "/timeline/step/shortest", 0.5, 10.0 },   { "/timeline/step/exact", 60.0, 60.0 },
  { "/timeline/step/next", 61.0, 120.0 },     { "/timeline/step/hours", 3500.0, 3600.0 },
  { "/timeline/step/day", 50000.0, 86400.0 }, { "/timeline/step/days", 90000.0, 172800.0 },
};

static void
test_step (gconstpointer data)
{
  const StepRow *row = data;

  g_assert_cmpfloat_with_epsilon (bs_timeline_step (row->least), row->step, 1e-9);
}

/* All of it lies within the width and the height that it asks for, in ink alone on paper. */
static void
test_room (gconstpointer data)
{
  g_autoptr (BsPlan) plan = scene_new_plan (GPOINTER_TO_INT (data), BS_LAYUP_ON_EDGE);
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
  BsTimeline timeline = { schedule,   bs_schedule_get_presses (schedule),
                          WIDTH - 50, 13.0,
                          1.0,        bs_palette_paper () };

  g_assert_nonnull (timeline.presses);
  double height = bs_timeline_get_height (&timeline);
  cairo_t *cr = image_new (WIDTH, (int)height + 100);
  cairo_rectangle_int_t box;

  bs_timeline_draw (&timeline, cr);
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.x + box.width, <=, WIDTH - 50);
  g_assert_cmpint (box.y + box.height, <=, (int)height);
  g_assert_true (image_is_grey (cr));
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (step_rows); i++)
    g_test_add_data_func (step_rows[i].path, &step_rows[i], test_step);
  g_test_add_data_func ("/timeline/room/5", GINT_TO_POINTER (5), test_room);
  g_test_add_data_func ("/timeline/room/16", GINT_TO_POINTER (16), test_room);
  return g_test_run ();
}
