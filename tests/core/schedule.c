/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/schedule.h"

#include "core/stages-remedy.h"
#include "shops.h"

#include <math.h>

static const BsStage *
get_stage (const BsStagesPlan *presses, guint i)
{
  return &g_array_index (presses->stages, BsStage, i);
}

/* Takes a plan; now it is of a wood whose stiffness is known. */
static BsPlan *
stiffen (BsPlan *plan)
{
  BsWood *wood = bs_wood_copy (g_ptr_array_index (plan->woods, 0));

  wood->moe_mpa = 11000.0;
  wood->is_hardwood = TRUE;
  bs_wood_unref (g_ptr_array_index (plan->woods, 0));
  g_ptr_array_index (plan->woods, 0) = wood;
  return plan;
}

static void
test_nothing_to_glue (void)
{
  g_autoptr (BsPlan) plan = slab_new (1, 1000.0, 40.0, 60.0);
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, NULL);

  g_assert_false (schedule->has_job);
  g_assert_null (bs_schedule_get_presses (schedule));
  g_assert_true (bs_schedule_is_possible (schedule));
  g_assert_cmpuint (schedule->remedies->len, ==, 0);
}

static void
test_one_press (void)
{
  g_autoptr (BsPlan) plan = stiffen (shop_new_perfect ());
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
  const BsStagesPlan *presses = bs_schedule_get_presses (schedule);

  g_assert_null (schedule->own);
  g_assert_true (presses == schedule->stages->shortest);
  g_assert_cmpuint (presses->stages->len, ==, 1);
  g_assert_null (bs_schedule_get_pressing (schedule, get_stage (presses, 0)));
  /* 1200 / (50 + 2 x 40) = 9.2 */
  g_assert_cmpint (get_stage (presses, 0)->n_clamps, ==, 10);
}

/* With the pressing engine asked, a press has as many clamps as its own layout, or as the hand rule
 * if that says more. */
static void
test_layouts (void)
{
  g_autoptr (BsPlan) plan = stiffen (shop_new_hasty ());
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, NULL);
  const BsStagesPlan *presses = bs_schedule_get_presses (schedule);

  g_assert_cmpuint (presses->stages->len, >, 1);
  for (guint i = 0; i < presses->stages->len; i++)
    {
      const BsStage *stage = get_stage (presses, i);
      const BsStagePressing *pressing = bs_schedule_get_pressing (schedule, stage);
      int by_rule = bs_stages_job_count_by_rule (&schedule->job, stage);

      g_assert_nonnull (pressing);
      g_assert_cmpint (stage->n_clamps, >=, by_rule);
      if (pressing->status == BS_LAYOUT_REACHED)
        g_assert_cmpint (stage->n_clamps, >=, pressing->n_clamps);
    }
}

/* Clamps that the person placed are those of the last press; a pack has its own number. */
static void
test_placed_clamps (void)
{
  g_autoptr (BsPlan) plan = stiffen (shop_new_perfect ());
  const BsPack pack = { 0, 4 };

  for (int i = 0; i < 7; i++)
    {
      BsPlacedClamp placed = { .x = 100.0 + 150.0 * i, .force_n = 5000.0 };
      bs_text_set (&placed.kind, "clamp");
      g_array_append_val (plan->placed_clamps, placed);
    }
  g_array_append_val (plan->packs, pack);
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, NULL);
  g_assert_cmpint (get_stage (schedule->own, 0)->n_clamps, >=, 10);
  g_assert_cmpint (get_stage (schedule->own, 1)->n_clamps, ==, 7);
  g_assert_cmpint (get_stage (schedule->stages->shortest, 0)->n_clamps, ==, 7);
}

static void
test_own_packs (void)
{
  g_autoptr (BsPlan) plan = stiffen (shop_new_perfect ());
  const BsPack packs[] = { { 0, 4 }, { 4, 4 } };

  g_array_append_vals (plan->packs, packs, 2);
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
  g_assert_true (bs_schedule_get_presses (schedule) == schedule->own);
  g_assert_cmpuint (schedule->own->stages->len, ==, 3);
  g_assert_cmpuint (schedule->stages->shortest->stages->len, ==, 1);
}

static void
test_impossible (void)
{
  g_autoptr (BsPlan) plan = stiffen (shop_new_hasty ());
  const BsPack packs[] = { { 0, 8 } };

  g_array_append_vals (plan->packs, packs, 1);
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
  g_assert_false (bs_schedule_is_possible (schedule));
  g_assert_cmpuint (schedule->remedies->len, >, 0);
  /* other packs would do */
  g_assert_cmpint (g_array_index (schedule->remedies, BsStagesRemedy, 0).kind, ==,
                   BS_STAGES_REMEDY_SMALLER_PACKS);
  g_assert_nonnull (schedule->stages->shortest);
}

typedef struct
{
  double last;
  int left; /* reports until it says stop, and says so ever after; -1: never */
} Watch;

static gboolean
watch (double done, gpointer data)
{
  Watch *self = data;

  g_assert_cmpfloat (done, >=, 0.0);
  g_assert_cmpfloat (done, <=, 1.0);
  self->last = done;
  if (self->left > 0)
    self->left--;
  return self->left != 0;
}

/* Asked to stop at any moment there is no schedule, and nothing is lost. */
static void
test_stopped (void)
{
  g_autoptr (BsPlan) plan = stiffen (shop_new_hasty ());
  Watch whole = { .left = -1 };
  BsProgress progress = { watch, &whole };
  int n_reports = 0;

  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, &progress);
  g_assert_nonnull (schedule);
  g_assert_cmpfloat_with_epsilon (whole.last, 1.0, 1e-12);
  for (int i = 1;; i = 2 * i + 1)
    {
      Watch part = { .left = i };
      BsProgress of_part = { watch, &part };
      g_autoptr (BsSchedule) stopped = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, &of_part);
      if (stopped != NULL)
        break;
      n_reports = i;
    }
  g_assert_cmpint (n_reports, >, 3);
}

/* Each working's value is what its formula makes of its terms, by hand. The largest glue line is
 * 1200 x 45 mm; a joint takes j + r A / w = 5 + 200 x 0.054 = 15.8 s; placing 8, lining up 7 s; ten
 * clamps of 12 s. */
static void
test_whys (void)
{
  g_autoptr (BsPlan) plan = stiffen (shop_new_perfect ());
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
  const BsStagesPlan *presses = bs_schedule_get_presses (schedule);
  const BsStage *stage = get_stage (presses, 0);
  BsWorking why;

  bs_schedule_why_assembly (schedule, stage, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 7.0 * (15.8 + 8.0 + 7.0) + 120.0, 1e-9);
  bs_schedule_why_open (schedule, stage, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 15.8 + 8.0, 1e-9);
  bs_schedule_why_closed (schedule, stage, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 6.0 * (15.8 + 8.0 + 7.0) + 7.0 + 120.0, 1e-9);
  bs_schedule_why_clamps (schedule, stage, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 10.0, 1e-9);
  bs_schedule_why_elapsed (schedule, presses, &why);
  g_assert_cmpfloat_with_epsilon (
      why.value, 7.0 * (15.8 + 8.0 + 7.0) + 120.0 + 8.0 + schedule->job.input.press_s, 1e-6);
  for (guint i = 0; i < why.n_terms; i++)
    g_assert_true (isfinite (why.terms[i].value));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/schedule/nothing-to-glue", test_nothing_to_glue);
  g_test_add_func ("/schedule/one-press", test_one_press);
  g_test_add_func ("/schedule/layouts", test_layouts);
  g_test_add_func ("/schedule/placed-clamps", test_placed_clamps);
  g_test_add_func ("/schedule/own-packs", test_own_packs);
  g_test_add_func ("/schedule/impossible", test_impossible);
  g_test_add_func ("/schedule/stopped", test_stopped);
  g_test_add_func ("/schedule/whys", test_whys);
  return g_test_run ();
}
