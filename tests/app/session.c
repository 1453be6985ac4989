/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/session.h"

#include "plan/edits.h"
#include "slabs.h"

/* The session as a script: what is done, and what is seen after it. */

typedef struct
{
  BsSession *session;
  int n_changed;
} Fixture;

static void
changed_cb (BsSession *session, Fixture *f)
{
  f->n_changed++;
}

static void
set_up (Fixture *f, gconstpointer unused)
{
  g_autoptr (BsPlan) plan = slab_new (4, 1000.0, 40.0, 60.0);

  f->session = bs_session_new (plan);
  g_signal_connect (f->session, "changed", G_CALLBACK (changed_cb), f);
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  g_assert_finalize_object (G_OBJECT (f->session));
}

static BsPlan *
moved (Fixture *f, int from, int to)
{
  return bs_edit_move (bs_session_get_plan (f->session), from, to);
}

static const char *
first_shown (Fixture *f)
{
  return bs_session_get_results (f->session)->stack->placed[0].lamination->id;
}

static void
test_preview (Fixture *f, gconstpointer unused)
{
  g_autoptr (BsPlan) plan = moved (f, 3, 0);

  bs_session_set_preview (f->session, plan);
  g_assert_true (bs_session_has_preview (f->session));
  g_assert_cmpstr (first_shown (f), ==, "4");
  g_assert_false (bs_history_can_undo (bs_session_get_history (f->session)));
  g_assert_cmpint (f->n_changed, ==, 1);

  bs_session_set_preview (f->session, NULL);
  g_assert_false (bs_session_has_preview (f->session));
  g_assert_cmpstr (first_shown (f), ==, "1");
  g_assert_cmpint (f->n_changed, ==, 2);
}

static void
test_preview_of_present (Fixture *f, gconstpointer unused)
{
  bs_session_set_preview (f->session, bs_session_get_plan (f->session));
  g_assert_true (bs_session_has_preview (f->session));
  bs_session_set_preview (f->session, NULL);
  g_assert_false (bs_session_has_preview (f->session));
  g_assert_cmpint (f->n_changed, ==, 2);
}

/* What was shown while it was held is what is pushed: it is not worked out again. */
static void
test_push_preview (Fixture *f, gconstpointer unused)
{
  g_autoptr (BsPlan) plan = moved (f, 3, 0);

  bs_session_set_preview (f->session, plan);
  const BsResults *shown = bs_session_get_results (f->session);
  bs_session_push (f->session, plan, "Move", NULL);
  g_assert_true (bs_session_get_results (f->session) == shown);
  g_assert_false (bs_session_has_preview (f->session));
  g_assert_cmpint (f->n_changed, ==, 2);
  g_assert_true (bs_history_can_undo (bs_session_get_history (f->session)));
}

static void
test_undo (Fixture *f, gconstpointer unused)
{
  BsHistory *history = bs_session_get_history (f->session);
  g_autoptr (BsPlan) plan = moved (f, 3, 0);

  bs_session_select (f->session, "4");
  bs_session_push (f->session, plan, "Move", NULL);
  bs_session_select (f->session, "2");
  bs_history_undo (history);
  g_assert_cmpstr (first_shown (f), ==, "1");
  bs_history_redo (history);
  g_assert_cmpstr (first_shown (f), ==, "4");
  g_assert_cmpstr (bs_session_get_selected (f->session), ==, "4");
}

static void
notify_cb (GObject *object, GParamSpec *pspec, int *count)
{
  (*count)++;
}

static void
test_select (Fixture *f, gconstpointer unused)
{
  int count = 0;

  g_signal_connect (f->session, "notify::selected", G_CALLBACK (notify_cb), &count);
  bs_session_select (f->session, "2");
  bs_session_select (f->session, "2");
  g_assert_cmpint (count, ==, 1);
  bs_session_select (f->session, "not there");
  g_assert_null (bs_session_get_selected (f->session));
  g_assert_cmpint (count, ==, 2);
}

static void
test_open (Fixture *f, gconstpointer unused)
{
  g_autoptr (BsPlan) edit = moved (f, 3, 0);
  g_autoptr (BsPlan) other = slab_new (2, 500.0, 30.0, 50.0);

  bs_session_push (f->session, edit, "Move", NULL);
  bs_session_select (f->session, "1");
  bs_session_open (f->session, other);
  g_assert_cmpuint (bs_session_get_results (f->session)->stack->n, ==, 2);
  g_assert_null (bs_session_get_selected (f->session));
  g_assert_false (bs_history_can_undo (bs_session_get_history (f->session)));
  g_assert_false (bs_history_is_modified (bs_session_get_history (f->session)));
}

#define ADD(path, function)                                                                        \
  g_test_add ("/session/" path, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("preview/shown-and-ended", test_preview);
  ADD ("preview/of-the-present-plan", test_preview_of_present);
  ADD ("preview/pushed", test_push_preview);
  ADD ("undo/brings-the-selection-back", test_undo);
  ADD ("select/once-and-only-what-is-there", test_select);
  ADD ("open/starts-afresh", test_open);
  return g_test_run ();
}
