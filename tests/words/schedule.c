/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/schedule.h"

#include "shops.h"
#include "words/press-steps.h"

#include <string.h>

/* Eight laminations "1" to "8", in packs of four. */
static BsSchedule *
schedule_new (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  const BsPack packs[] = { { 0, 4 }, { 4, 4 } };

  shop_add_clamps (plan, 12, 6000.0, 600.0, 50.0);
  g_array_append_vals (plan->packs, packs, 2);
  return bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
}

static const BsStage *
get_stage (const BsSchedule *schedule, guint i)
{
  return &g_array_index (schedule->own->stages, BsStage, i);
}

typedef struct
{
  const char *path;
  int from, to;
  const char *wanted;
} PieceRow;

static const PieceRow piece_rows[] = {
  { "/words/schedule/piece/one", 2, 3, "3" },
  { "/words/schedule/piece/two", 2, 4, "3 and 4" },
  { "/words/schedule/piece/more", 2, 6, "3 to 6" },
};

static void
test_piece (gconstpointer data)
{
  const PieceRow *row = data;
  g_autoptr (BsSchedule) schedule = schedule_new ();
  g_autofree char *name = bs_words_piece_name (schedule, row->from, row->to);

  g_assert_cmpstr (name, ==, row->wanted);
}

/* Two packs are in the clamps at once: 24 of each are owned, ten are needed for each. */
static void
test_press (void)
{
  g_autoptr (BsSchedule) schedule = schedule_new ();
  g_autofree char *title = bs_words_press_title (schedule, schedule->own, 0);
  g_autofree char *text = bs_words_press (schedule, schedule->own, 0);
  g_autofree char *last = bs_words_press (schedule, schedule->own, 2);

  g_assert_cmpstr (title, ==, "Press 1, round 1: 1 to 4");
  g_assert_true (g_str_has_prefix (text, "4 pieces: 1; 2; 3; 4. 10 clamps by the hand rule."));
  g_assert_true (g_str_has_suffix (text, "In the clamps together with press 2: 20 of 24 clamps."));
  g_assert_true (g_str_has_prefix (last, "2 pieces: 1 to 4; 5 to 8."));
}

/* Every limit has a sentence of its own, but for none. */
static void
test_limits (void)
{
  g_assert_cmpstr (bs_words_stage_limit (BS_STAGE_LIMIT_NONE), ==, "");
  for (BsStageLimit i = 1; i < BS_N_STAGE_LIMITS; i++)
    for (BsStageLimit j = 0; j < i; j++)
      g_assert_cmpstr (bs_words_stage_limit (i), !=, bs_words_stage_limit (j));
}

typedef struct
{
  const char *path;
  BsStagesRemedy remedy;
  BsUnitSystem units;
  const char *wanted;
} RemedyRow;

static const RemedyRow remedy_rows[] = {
  { "/words/schedule/remedy/packs",
    { BS_STAGES_REMEDY_SMALLER_PACKS, 3.0 },
    BS_UNIT_SYSTEM_METRIC,
    "Smaller packs: at most 3 pieces in one press." },
  { "/words/schedule/remedy/adhesive",
    { BS_STAGES_REMEDY_SLOWER_ADHESIVE, 1.25 },
    BS_UNIT_SYSTEM_METRIC,
    "A slower adhesive, with 1.25 times the open and the total time." },
  { "/words/schedule/remedy/people",
    { BS_STAGES_REMEDY_MORE_PEOPLE, 2.0 },
    BS_UNIT_SYSTEM_METRIC,
    "2 people in all." },
  { "/words/schedule/remedy/clamps",
    { BS_STAGES_REMEDY_MORE_CLAMPS, 15.0 },
    BS_UNIT_SYSTEM_METRIC,
    "15 clamps in all, as long as your longest." },
};

static void
test_remedy (gconstpointer data)
{
  const RemedyRow *row = data;
  g_autofree char *text = bs_words_stages_remedy (&row->remedy, row->units);

  g_assert_cmpstr (text, ==, row->wanted);
}

static void
test_difference (void)
{
  BsStagesPlan own = { .n_rounds = 3, .elapsed_s = 7200.0, .imbalance = 40.0 };
  BsStagesPlan other = { .n_rounds = 2, .elapsed_s = 3600.0, .imbalance = 0.0 };
  g_autofree char *text = bs_words_presses_difference (&other, &own, BS_UNIT_SYSTEM_METRIC);
  g_autofree char *back = bs_words_presses_difference (&own, &other, BS_UNIT_SYSTEM_METRIC);
  g_autofree char *same = bs_words_presses_difference (&own, &own, BS_UNIT_SYSTEM_METRIC);

  g_assert_true (g_str_has_prefix (text, "1 round fewer."));
  g_assert_nonnull (strstr (text, "sooner"));
  g_assert_true (g_str_has_prefix (back, "1 round more."));
  g_assert_nonnull (strstr (back, "later"));
  g_assert_true (g_str_has_prefix (same, "As many rounds. Done at the same time."));
}

typedef struct
{
  const char *path;
  double seconds;
  const char *clock, *hours;
} ClockRow;

static const ClockRow clock_rows[] = {
  { "/words/schedule/clock/zero", 0.0, "0:00", "0:00" },
  { "/words/schedule/clock/seconds", 59.4, "0:59", "0:01" },
  { "/words/schedule/clock/carry", 59.6, "1:00", "0:01" },
  { "/words/schedule/clock/hour", 3600.0, "1:00:00", "1:00" },
  { "/words/schedule/clock/day", 92400.0, "25:40:00", "25:40" },
};

static void
test_clock (gconstpointer data)
{
  const ClockRow *row = data;
  g_autofree char *clock = bs_words_clock (row->seconds);
  g_autofree char *hours = bs_words_hours (row->seconds);

  g_assert_cmpstr (clock, ==, row->clock);
  g_assert_cmpstr (hours, ==, row->hours);
}

/* From the first piece taken up: set down 8 s; then each joint takes 15.8 to spread, 8 to place and
 * 7 to line up (tests/core/schedule.c). */
static void
test_steps (void)
{
  g_autoptr (BsSchedule) schedule = schedule_new ();
  g_autoptr (GArray) steps = bs_words_press_steps (schedule, get_stage (schedule, 0));
  g_autoptr (GArray) last = bs_words_press_steps (schedule, get_stage (schedule, 2));
  const BsPressStep *step = &g_array_index (steps, BsPressStep, 2);

  g_assert_cmpuint (steps->len, ==, 3);
  g_assert_cmpfloat_with_epsilon (step->spread_s, 8.0 + 2.0 * 30.8, 1e-9);
  g_assert_cmpfloat_with_epsilon (step->place_s, 8.0 + 2.0 * 30.8 + 15.8, 1e-9);
  g_assert_cmpstr (step->joint, ==, "3 and 4");
  g_assert_cmpstr (step->piece, ==, "4");
  step = &g_array_index (last, BsPressStep, 0);
  g_assert_cmpstr (step->joint, ==, "4 and 5");
  g_assert_cmpstr (step->piece, ==, "5 to 8");
}

/* 8 + 3 x 30.8 = 100.4 s, then ten clamps of 12 s. */
static void
test_end (void)
{
  g_autoptr (BsSchedule) schedule = schedule_new ();
  g_autofree char *beginning = bs_words_press_beginning (schedule, get_stage (schedule, 0));
  g_autofree char *end = bs_words_press_end (schedule, get_stage (schedule, 0));

  g_assert_cmpstr (beginning, ==, "0:00  Set down 1.");
  g_assert_true (g_str_has_prefix (
      end, "1:40  Tighten 10 clamps from the middle outwards; the last is tight at 3:40."));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (piece_rows); i++)
    g_test_add_data_func (piece_rows[i].path, &piece_rows[i], test_piece);
  g_test_add_func ("/words/schedule/press", test_press);
  g_test_add_func ("/words/schedule/limits", test_limits);
  for (gsize i = 0; i < G_N_ELEMENTS (remedy_rows); i++)
    g_test_add_data_func (remedy_rows[i].path, &remedy_rows[i], test_remedy);
  g_test_add_func ("/words/schedule/difference", test_difference);
  for (gsize i = 0; i < G_N_ELEMENTS (clock_rows); i++)
    g_test_add_data_func (clock_rows[i].path, &clock_rows[i], test_clock);
  g_test_add_func ("/words/schedule/steps", test_steps);
  g_test_add_func ("/words/schedule/end", test_end);
  return g_test_run ();
}
