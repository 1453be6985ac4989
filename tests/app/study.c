/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/study.h"

#include "app/session.h"
#include "core/forecast.h"
#include "core/pressure.h"
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

/* Hands over 1, 2, 3 and so on, each when it is asked to go on, until it is stopped or has handed
 * over five. */
typedef struct
{
  int number;
} Number;

static void
free_number (gpointer data)
{
  g_free (data);
}

static Number *
number_new (int number)
{
  Number *self = g_new (Number, 1);

  self->number = number;
  return self;
}

static gint n_wanted = 0; /* how many the thread may hand over, told by the test */

static gpointer
count_up (const BsPlan *plan, const BsProgress *progress)
{
  for (int number = 1; number <= 5; number++)
    {
      while (g_atomic_int_get (&n_wanted) < number)
        {
          if (!bs_progress_report (progress, number / 10.0))
            return NULL;
          g_usleep (1000);
        }
      progress->better (number_new (number), progress->data);
    }
  return number_new (6);
}

static const BsStudyKind counting = { count_up, free_number, 0 };

static int
get_number (BsStudy *study)
{
  const Number *number = bs_study_get_result (study);

  return number != NULL ? number->number : 0;
}

static gboolean
shows_two (gpointer study)
{
  return get_number (study) == 2;
}

static gboolean
has_ended (gpointer study)
{
  return !bs_study_is_working (study);
}

/* Better results are shown while it works, and the last one stays. */
static void
test_better (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 1000.0, 40.0, 60.0);
  BsStudy *study = bs_study_new (&counting);

  g_atomic_int_set (&n_wanted, 2);
  bs_study_set_plan (study, plan);
  desk_wait (shows_two, study);
  g_assert_true (bs_study_is_current (study));
  g_assert_true (bs_study_is_working (study));
  g_atomic_int_set (&n_wanted, 5);
  desk_wait (has_ended, study);
  g_assert_cmpint (get_number (study), ==, 6);
  g_assert_cmpfloat (bs_study_get_progress (study), >=, 1.0);
  g_assert_finalize_object (study);
}

/* Enough: what is shown stays, and nothing begins anew until there is another plan. */
static void
test_stop (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 1000.0, 40.0, 60.0);
  g_autoptr (BsPlan) other = slab_new (3, 1000.0, 40.0, 60.0);
  BsStudy *study = bs_study_new (&counting);

  g_atomic_int_set (&n_wanted, 2);
  bs_study_set_plan (study, plan);
  desk_wait (shows_two, study);
  bs_study_stop (study);
  g_assert_false (bs_study_is_working (study));
  g_assert_true (bs_study_is_current (study));
  g_assert_cmpint (get_number (study), ==, 2);

  g_atomic_int_set (&n_wanted, 5);
  bs_study_set_plan (study, other);
  g_assert_false (bs_study_is_current (study));
  g_assert_true (bs_study_is_working (study));
  desk_wait (has_ended, study);
  g_assert_cmpint (get_number (study), ==, 6);
  g_assert_finalize_object (study);
}

/* Writes down of which plan each result was that came. */
static void
changed_cb (BsStudy *study, GPtrArray *seen)
{
  const BsPressure *pressure = bs_study_get_result (study);

  if (pressure != NULL)
    g_ptr_array_add (seen, pressure->stack->plan);
}

/* What cannot be stopped is still shown when it comes, though it is of an older plan; then the
 * wanted one follows. */
static void
test_behind (void)
{
  g_autoptr (BsPlan) first = slab_new (3, 1000.0, 40.0, 60.0);
  g_autoptr (BsPlan) last = slab_new (4, 1000.0, 40.0, 60.0);
  g_autoptr (GPtrArray) seen = g_ptr_array_new ();
  BsStudy *study = bs_study_new (&bs_study_live_pressing);

  g_signal_connect (study, "changed", G_CALLBACK (changed_cb), seen);
  bs_study_set_plan (study, first);
  bs_study_set_plan (study, last);
  desk_wait (is_done, study);
  g_assert_cmpuint (seen->len, ==, 2);
  g_assert_true (g_ptr_array_index (seen, 0) == first);
  g_assert_true (g_ptr_array_index (seen, 1) == last);
  g_assert_finalize_object (study);
}

/* What waits for a plan to have stood begins with the last one only. */
static void
test_rest (void)
{
  g_autoptr (BsPlan) last = slab_new (3, 1000.0, 40.0, 60.0);
  g_autoptr (GPtrArray) seen = g_ptr_array_new ();
  BsStudy *study = bs_study_new (&bs_study_pressing);

  g_signal_connect (study, "changed", G_CALLBACK (changed_cb), seen);
  for (guint n = 2; n < 20; n++)
    {
      g_autoptr (BsPlan) plan = slab_new (n, 1000.0, 40.0, 60.0);

      bs_study_set_plan (study, plan);
    }
  bs_study_set_plan (study, last);
  desk_wait (is_done, study);
  g_assert_cmpuint (seen->len, ==, 1);
  g_assert_true (g_ptr_array_index (seen, 0) == last);

  /* Dropped while it rests. */
  bs_study_set_plan (study, NULL);
  bs_study_set_plan (study, last);
  bs_study_set_plan (study, NULL);
  g_assert_finalize_object (study);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/study/same-as-without-a-thread", test_same);
  g_test_add_func ("/study/superseded", test_superseded);
  g_test_add_func ("/study/of-a-preview", test_preview);
  g_test_add_func ("/study/better-and-better", test_better);
  g_test_add_func ("/study/stopped-by-hand", test_stop);
  g_test_add_func ("/study/behind", test_behind);
  g_test_add_func ("/study/rest", test_rest);
  return g_test_run ();
}
