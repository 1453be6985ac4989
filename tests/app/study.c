/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/study.h"

#include "app/session.h"
#include "core/forecast.h"
#include "desk.h"
#include "plan/edits.h"
#include "slabs.h"

static const BsPlan *
get_plan (BsStudy *study)
{
  const BsForecast *forecast = bs_study_get_result (study);

  return forecast->stack->plan;
}

static gboolean
is_done (gpointer study)
{
  return bs_study_is_current (study);
}

/* The same numbers as when it is worked out without a thread. */
static void
test_same (void)
{
  g_autoptr (BsPlan) plan = slab_new (6, 1000.0, 40.0, 60.0);
  g_autoptr (BsForecast) wanted = bs_forecast_new (plan, NULL);
  BsStudy *study = bs_study_new (&bs_study_forecast);

  bs_study_set_plan (study, plan);
  g_assert_null (bs_study_get_result (study));
  desk_wait (is_done, study);

  const BsForecast *forecast = bs_study_get_result (study);
  g_assert_true (forecast->stack->plan == plan);
  g_assert_cmpfloat_with_epsilon (forecast->odds.at_95_pct, wanted->odds.at_95_pct, 1e-9);
  g_assert_cmpfloat_with_epsilon (forecast->height_needed, wanted->height_needed, 1e-9);
  g_assert_finalize_object (study);
}

/* Of many plans in a row, the last one is what is worked out. */
static void
test_superseded (void)
{
  g_autoptr (BsPlan) last = slab_new (3, 1000.0, 40.0, 60.0);
  BsStudy *study = bs_study_new (&bs_study_forecast);

  for (guint n = 2; n < 40; n++)
    {
      g_autoptr (BsPlan) plan = slab_new (n, 1000.0, 40.0, 60.0);

      bs_study_set_plan (study, plan);
    }
  bs_study_set_plan (study, last);
  desk_wait (is_done, study);
  g_assert_true (get_plan (study) == last);
  g_assert_finalize_object (study);
}

/* It follows a preview, as in a drag, and keeps what it had until the new is there. */
static void
test_preview (void)
{
  g_autoptr (BsPlan) plan = slab_new (4, 1000.0, 40.0, 60.0);
  BsSession *session = bs_session_new (plan);
  BsStudy *study = bs_session_get_study (session, &bs_study_forecast);
  g_autoptr (BsPlan) moved = bs_edit_move (plan, 0, 2);

  desk_wait (is_done, study);
  bs_session_set_preview (session, moved);
  g_assert_false (bs_study_is_current (study));
  g_assert_true (get_plan (study) == plan);
  desk_wait (is_done, study);
  g_assert_true (get_plan (study) == moved);
  bs_session_push (session, moved, "Move", NULL);
  g_assert_true (bs_study_is_current (study));
  g_assert_finalize_object (session);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/study/same-as-without-a-thread", test_same);
  g_test_add_func ("/study/superseded", test_superseded);
  g_test_add_func ("/study/of-a-preview", test_preview);
  return g_test_run ();
}
