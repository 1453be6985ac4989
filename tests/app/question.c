/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/question.h"

#include "desk.h"

typedef struct
{
  GtkWindow *parent, *question;
  int answer; /* -1: none yet */
} Fixture;

static void
answered_cb (GObject *parent, GAsyncResult *result, gpointer user_data)
{
  ((Fixture *)user_data)->answer = bs_question_ask_finish (result);
}

static GtkWindow *
find_other_window (GtkWindow *than)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *l = windows; l != NULL; l = l->next)
    if (l->data != than && gtk_widget_get_visible (l->data))
      return l->data;
  g_assert_not_reached ();
}

static void
set_up (Fixture *f, gconstpointer unused)
{
  const char *const answers[] = { "_Back", "_Other", "_Do it", NULL };

  f->answer = -1;
  f->parent = GTK_WINDOW (gtk_window_new ());
  gtk_window_present (f->parent);
  bs_question_ask_async (f->parent, "Really?", "It cannot be taken back.", answers, answered_cb, f);
  f->question = find_other_window (f->parent);
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  gtk_window_destroy (f->parent);
}

static gboolean
has_answer (gpointer f)
{
  return ((Fixture *)f)->answer >= 0;
}

static void
test_default (Fixture *f, gconstpointer unused)
{
  GtkWidget *button = gtk_window_get_default_widget (f->question);

  g_assert_true (gtk_window_get_modal (f->question));
  g_assert_true (gtk_window_get_transient_for (f->question) == f->parent);
  g_signal_emit_by_name (button, "clicked");
  desk_wait (has_answer, f);
  g_assert_cmpint (f->answer, ==, 2);
}

static void
test_close (Fixture *f, gconstpointer unused)
{
  gtk_window_close (f->question);
  desk_wait (has_answer, f);
  g_assert_cmpint (f->answer, ==, 0);
}

static void
test_destroyed (Fixture *f, gconstpointer unused)
{
  gtk_window_destroy (f->question);
  desk_wait (has_answer, f);
  g_assert_cmpint (f->answer, ==, 0);
}

#define ADD(path, function)                                                                        \
  g_test_add ("/question/" path, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  ADD ("return-gives-the-last-answer", test_default);
  ADD ("closing-gives-the-first", test_close);
  ADD ("so-does-its-end", test_destroyed);
  return g_test_run ();
}
