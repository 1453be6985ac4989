/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/proposal-pane.h"

#include <string.h>

#include "app/proposal-picture.h"
#include "desk.h"
#include "plan/edits.h"

/* On the first example, whose 16 laminations are proved in a moment; two more stand in the rack. */

static GtkWidget *
find_pane (BsWindow *window)
{
  return desk_find (GTK_WIDGET (window), BS_TYPE_PROPOSAL_PANE);
}

static const char *
get_status (GtkWidget *pane)
{
  return gtk_label_get_text (GTK_LABEL (desk_get_child (pane, 1)));
}

static gboolean
is_proved (gpointer pane)
{
  return strstr (get_status (pane), "Proved: no order is better.") != NULL;
}

static gboolean
shows_text (GtkWidget *below, const char *text)
{
  if (GTK_IS_LABEL (below) && gtk_widget_get_mapped (below)
      && strstr (gtk_label_get_text (GTK_LABEL (below)), text) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (shows_text (child, text))
      return TRUE;
  return FALSE;
}

static void
act (BsWindow *window, const char *action)
{
  gtk_widget_activate_action (desk_find_button (GTK_WIDGET (window), action), action, NULL);
}

static gboolean
can (BsWindow *window, const char *action)
{
  return gtk_widget_get_sensitive (desk_find_button (GTK_WIDGET (window), action));
}

/* The window with the proposal that was looked for and proved. */
static BsWindow *
open_proved (void)
{
  BsWindow *window = desk_open ();

  act (window, "win.propose");
  act (window, "order.look");
  desk_wait (is_proved, find_pane (window));
  return window;
}

/* Opened, it asks; looked for, the order is shown and the plan stays; used, one undo leads back. */
static void
test_use (void)
{
  BsWindow *window = desk_open ();
  BsSession *session = bs_window_get_session (window);
  g_autofree char *before = desk_get_order (window);
  BsPlan *plan = bs_session_get_plan (session);

  g_assert_null (find_pane (window));
  act (window, "win.propose");
  GtkWidget *pane = find_pane (window);
  g_assert_nonnull (pane);
  g_assert_false (can (window, "order.use"));
  g_assert_false (can (window, "order.stop"));
  act (window, "order.look");
  desk_wait (is_proved, pane);
  g_assert_true (bs_session_get_plan (session) == plan);

  act (window, "order.use");
  g_autofree char *after = desk_get_order (window);
  g_assert_cmpstr (after, !=, before);
  g_assert_false (can (window, "order.use"));
  g_assert_true (shows_text (pane, "The slab lies in this order."));
  g_assert_cmpint (bs_session_get_results (session)->order.total, <, 61000);

  bs_history_undo (bs_session_get_history (session));
  g_assert_true (bs_session_get_plan (session) == plan);
  g_assert_true (can (window, "order.use"));
  desk_close (window);
}

/* The plan becomes another one: the proposal says so and cannot be used, until it is looked for
 * again. */
static void
test_stale (void)
{
  BsWindow *window = open_proved ();
  BsSession *session = bs_window_get_session (window);
  GtkWidget *pane = find_pane (window);
  g_autoptr (BsPlan) aside = bs_edit_set_aside (bs_session_get_plan (session), 0);

  bs_session_push (session, aside, "Set aside", NULL);
  g_assert_nonnull (strstr (get_status (pane), "was found for the plan as it was before"));
  g_assert_false (can (window, "order.use"));
  gtk_widget_activate_action (pane, "order.use", NULL);
  g_assert_true (bs_session_get_plan (session) == aside);

  act (window, "order.look");
  desk_wait (is_proved, pane);
  g_assert_true (can (window, "order.use"));
  desk_close (window);
}

/* A lamination that is moved by hand changes what the proposal is compared with, and no more. */
static void
test_moved_by_hand (void)
{
  BsWindow *window = open_proved ();
  BsSession *session = bs_window_get_session (window);
  g_autoptr (BsPlan) moved = bs_edit_move (bs_session_get_plan (session), 0, 7);

  bs_session_push (session, moved, "Move", NULL);
  g_assert_true (is_proved (find_pane (window)));
  g_assert_true (can (window, "order.use"));
  desk_close (window);
}

static void
test_discard_and_close (void)
{
  BsWindow *window = open_proved ();
  GtkWidget *pane = find_pane (window);
  GtkWidget *picture = desk_find (pane, BS_TYPE_PROPOSAL_PICTURE);

  g_assert_true (gtk_widget_is_visible (picture));
  act (window, "order.discard");
  g_assert_false (gtk_widget_is_visible (picture));
  g_assert_nonnull (strstr (get_status (pane), "Nothing moves before you use it."));
  act (window, "order.close");
  g_assert_null (find_pane (window));
  act (window, "win.propose");
  g_assert_nonnull (find_pane (window));
  desk_close (window);
}

/* Why the selected lamination stands where it is proposed. */
static void
test_why (void)
{
  BsWindow *window = open_proved ();
  BsSession *session = bs_window_get_session (window);

  bs_session_select (session, "a1");
  g_assert_true (shows_text (find_pane (window), "A1 stands at place ")
                 || shows_text (find_pane (window), "A1 could as well "));
  bs_session_select (session, "i1"); /* in the rack, and left there */
  g_assert_false (shows_text (find_pane (window), "I1 "));
  desk_close (window);
}

/* By the actions of the lamination: each pins as it lies now, and takes the pin off again. */
static void
test_pins (void)
{
  static const struct
  {
    const char *action, *words;
  } rows[] = {
    { "lamination.pin-place", "C1 at place 5" },
    { "lamination.pin-neighbour", "C1 beside C2" },
    { "lamination.pin-face", "C1 with its " },
  };
  BsWindow *window = desk_open ();
  BsSession *session = bs_window_get_session (window);

  bs_session_select (session, "c1");
  act (window, "win.propose");
  GtkWidget *pane = find_pane (window);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gtk_widget_activate_action (pane, rows[i].action, NULL);
      g_assert_cmpuint (bs_session_get_plan (session)->pins->len, ==, 1);
      g_assert_true (shows_text (pane, rows[i].words));
      gtk_widget_activate_action (pane, rows[i].action, NULL);
      g_assert_cmpuint (bs_session_get_plan (session)->pins->len, ==, 0);
      g_assert_false (shows_text (pane, rows[i].words));
    }
  desk_close (window);
}

/* Two at one place: said at once, and nothing is looked for. */
static void
test_contradiction (void)
{
  BsWindow *window = desk_open ();
  BsSession *session = bs_window_get_session (window);
  const char *const ids[] = { "a1", "b2" };
  const char *sentence = "A1 and B2 are pinned to the same place; take off one of the two pins.";

  act (window, "win.propose");
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      BsPlan *plan = bs_session_get_plan (session);
      BsPin pin = { .kind = BS_PIN_PLACE,
                    .lamination = bs_plan_find_lamination (plan, ids[i])->id,
                    .place = 0 };
      g_autoptr (BsPlan) pinned = bs_edit_add_pin (plan, &pin);
      bs_session_push (session, pinned, "Pin", NULL);
    }
  g_assert_true (shows_text (find_pane (window), sentence));
  act (window, "order.look");
  g_assert_cmpstr (get_status (find_pane (window)), ==, sentence);
  g_assert_false (can (window, "order.stop"));
  desk_close (window);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/proposal-pane/use", test_use);
  g_test_add_func ("/proposal-pane/stale", test_stale);
  g_test_add_func ("/proposal-pane/moved-by-hand", test_moved_by_hand);
  g_test_add_func ("/proposal-pane/discard-and-close", test_discard_and_close);
  g_test_add_func ("/proposal-pane/why", test_why);
  g_test_add_func ("/proposal-pane/pins", test_pins);
  g_test_add_func ("/proposal-pane/contradiction", test_contradiction);
  return g_test_run ();
}
