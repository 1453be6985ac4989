/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/clamping-page.h"

#include <string.h>

#include "app/clamp-finder.h"
#include "app/clamping-canvas.h"
#include "app/live-pressure.h"
#include "app/session.h"
#include "desk.h"
#include "plan/edits.h"
#include "shops.h"

/* A page on a slab of ten laminations in a window of its own. */
typedef struct
{
  BsSession *session;
  GtkWidget *window;
  BsClampingCanvas *canvas;
} Page;

static void
open_page (Page *self, BsPlan *plan)
{
  self->session = bs_session_new (plan);
  self->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (self->window), 900, 700);
  gtk_window_set_child (GTK_WINDOW (self->window), bs_clamping_page_new (self->session));
  gtk_window_present (GTK_WINDOW (self->window));
  self->canvas = BS_CLAMPING_CANVAS (desk_find (self->window, BS_TYPE_CLAMPING_CANVAS));
}

static void
close_page (Page *self)
{
  gtk_window_destroy (GTK_WINDOW (self->window));
  g_assert_finalize_object (self->session);
}

static const BsPlacedClamp *
get_clamp (const Page *self, guint i)
{
  return &g_array_index (bs_session_get_plan (self->session)->placed_clamps, BsPlacedClamp, i);
}

static guint
count_clamps (const Page *self)
{
  return bs_session_get_plan (self->session)->placed_clamps->len;
}

static void
act (const Page *self, const char *action, int by)
{
  gboolean has_target = by != 0;

  g_assert_true (
      gtk_widget_activate_action (GTK_WIDGET (self->canvas), action, has_target ? "i" : NULL, by));
}

static gboolean
has_exact (gpointer session)
{
  return bs_study_is_current (bs_session_get_study (session, &bs_study_pressing));
}

static gboolean
has_live (gpointer session)
{
  return bs_live_pressure_is_current (session);
}

static gboolean
has_advice (gpointer session)
{
  return bs_study_is_current (bs_session_get_study (session, &bs_study_clamp_advice));
}

static gboolean
has_found (gpointer finder)
{
  return bs_clamp_finder_has_found (finder);
}

static GtkWidget *
find_button (GtkWidget *below, const char *prefix)
{
  if (GTK_IS_BUTTON (below) && gtk_button_get_label (GTK_BUTTON (below)) != NULL
      && g_str_has_prefix (gtk_button_get_label (GTK_BUTTON (below)), prefix))
    return below;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_button (child, prefix);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkLabel *
find_label (GtkWidget *below, const char *part)
{
  if (GTK_IS_LABEL (below) && strstr (gtk_label_get_text (GTK_LABEL (below)), part) != NULL)
    return GTK_LABEL (below);
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkLabel *found = find_label (child, part);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The keys: one clamp of the hand rule is changed, and with it all of them are placed. */
static void
test_keys (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  BsHistory *history;
  Page page;

  open_page (&page, plan);
  history = bs_session_get_history (page.session);
  guint n = bs_session_get_results (page.session)->set_clamps->len;
  g_assert_cmpuint (count_clamps (&page), ==, 0);
  g_assert_cmpint (bs_clamping_canvas_get_clamp (page.canvas), ==, -1);

  act (&page, "clamp.choose", 1);
  act (&page, "clamp.choose", 1);
  g_assert_cmpint (bs_clamping_canvas_get_clamp (page.canvas), ==, 1);
  g_assert_cmpuint (count_clamps (&page), ==, 0);

  double x = g_array_index (bs_session_get_results (page.session)->set_clamps, BsLayoutClamp, 1).x;
  act (&page, "clamp.move", 10);
  act (&page, "clamp.move", 10);
  act (&page, "clamp.move", -1);
  g_assert_cmpuint (count_clamps (&page), ==, n);
  g_assert_cmpfloat_with_epsilon (get_clamp (&page, 1)->x, x + 19.0, 1e-9);

  double force = get_clamp (&page, 1)->force_n;
  act (&page, "clamp.tighten", 1); /* by a twentieth of 6 kN */
  g_assert_cmpfloat_with_epsilon (get_clamp (&page, 1)->force_n, MIN (force + 300.0, 6000.0), 1e-9);
  gboolean is_above = get_clamp (&page, 1)->is_above;
  act (&page, "clamp.turn-over", 0);
  g_assert_cmpint (get_clamp (&page, 1)->is_above, !=, is_above);
  act (&page, "clamp.add", 0);
  g_assert_cmpuint (count_clamps (&page), ==, n + 1);
  act (&page, "clamp.take-off", 0);
  g_assert_cmpuint (count_clamps (&page), ==, n);

  /* Steps of one key are one step of undo: moved, tightened, turned, added, taken off. */
  for (guint i = 0; i < 5; i++)
    {
      g_assert_true (bs_history_can_undo (history));
      bs_history_undo (history);
    }
  g_assert_false (bs_history_can_undo (history));
  g_assert_cmpuint (count_clamps (&page), ==, 0);
  close_page (&page);
}

/* A clamp stays on the work, however often the key is pressed. */
static void
test_ends (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  Page page;

  bs_plan_place_clamp (plan, "clamp", 30.0, 3000.0, TRUE);
  bs_plan_place_clamp (plan, "clamp", 1000.0, 3000.0, TRUE);
  open_page (&page, plan);
  desk_wait (has_live, page.session);
  act (&page, "clamp.choose", 1);
  for (guint i = 0; i < 6; i++)
    act (&page, "clamp.move", -10);
  g_assert_cmpfloat_with_epsilon (get_clamp (&page, 0)->x, 1.0, 1e-9);
  g_assert_cmpuint (count_clamps (&page), ==, 2);
  close_page (&page);
}

/* First the faster form, then the exact one, which the page then shows. */
static void
test_forms (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  Page page;

  open_page (&page, plan);
  desk_wait (has_live, page.session);
  g_assert_nonnull (bs_live_pressure_get (page.session));
  desk_wait (has_exact, page.session);
  const BsPressure *pressure = bs_live_pressure_get (page.session);
  g_assert_cmpint (pressure->press.problem.stack.model, ==, BS_PRESS_MODEL_SQUEEZE);
  g_assert_nonnull (find_label (page.window, "where the adhesive asks for"));

  g_autoptr (BsPlan) moved
      = bs_edit_place_clamp (plan, &(BsLayoutClamp){ 0, 700.0, 5000.0, TRUE, 0 }, NULL);
  bs_session_set_preview (page.session, moved);
  desk_wait (has_live, page.session);
  g_assert_true (bs_live_pressure_get (page.session)->stack->plan == moved);
  close_page (&page);
}

/* The most helpful change is made by one click and taken back by one undo; it helps. */
static void
test_help (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  Page page;

  for (guint i = 0; i < 5; i++)
    bs_plan_place_clamp (plan, "clamp", 150.0 + 300.0 * i, 4000.0, i % 2 == 0);
  open_page (&page, plan);
  desk_wait (has_advice, page.session);
  desk_wait (has_exact, page.session);
  double before = bs_live_pressure_get (page.session)->below_length;
  GtkWidget *button = find_button (page.window, "One more clamp at");
  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpuint (count_clamps (&page), ==, 6);
  desk_wait (has_exact, page.session);
  g_assert_cmpfloat (bs_live_pressure_get (page.session)->below_length, <, before);
  bs_history_undo (bs_session_get_history (page.session));
  g_assert_true (bs_session_get_plan (page.session) == plan);
  close_page (&page);
}

/* Found in a thread, taken over in one step; another plan forgets it. */
static void
test_finder (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  Page page;

  open_page (&page, plan);
  GtkWidget *finder = desk_find (page.window, BS_TYPE_CLAMP_FINDER);
  g_signal_emit_by_name (find_button (finder, "Find the fewest"), "clicked");
  g_assert_false (bs_clamp_finder_has_found (BS_CLAMP_FINDER (finder)));
  desk_wait (has_found, finder);
  g_assert_nonnull (find_label (finder, "press every spot enough"));
  g_assert_nonnull (find_label (finder, "45 degrees"));
  g_signal_emit_by_name (find_button (finder, "Take the clamps"), "clicked");
  g_assert_cmpuint (count_clamps (&page), >=, 5); /* 0.25 MPa x 0.12 m2 / 6 kN */
  g_assert_false (bs_clamp_finder_has_found (BS_CLAMP_FINDER (finder)));
  desk_wait (has_exact, page.session);
  g_assert_cmpint (bs_live_pressure_get (page.session)->layout.status, ==, BS_LAYOUT_REACHED);
  bs_history_undo (bs_session_get_history (page.session));
  g_assert_cmpuint (count_clamps (&page), ==, 0);
  close_page (&page);
}

/* Stopped, or the page closed, while the thread still works. */
static void
test_stopped (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  Page page;

  open_page (&page, plan);
  GtkWidget *finder = desk_find (page.window, BS_TYPE_CLAMP_FINDER);
  g_signal_emit_by_name (find_button (finder, "Find the fewest"), "clicked");
  g_signal_emit_by_name (find_button (finder, "Stop looking"), "clicked");
  g_assert_false (bs_clamp_finder_has_found (BS_CLAMP_FINDER (finder)));
  g_signal_emit_by_name (find_button (finder, "Find the fewest"), "clicked");
  desk_wait (has_found, finder);
  g_signal_emit_by_name (find_button (finder, "Take the clamps"), "clicked");
  g_signal_emit_by_name (find_button (finder, "Find the fewest"), "clicked");
  gtk_window_destroy (GTK_WINDOW (page.window));
  g_object_unref (page.session);
}

/* No laminations, no clamps: words instead of pressures, and no key does harm. */
static void
test_empty (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  Page page;

  open_page (&page, plan);
  desk_wait (has_exact, page.session);
  g_assert_nonnull (find_label (page.window, "at least two laminations"));
  act (&page, "clamp.choose", 1);
  act (&page, "clamp.move", 10);
  act (&page, "clamp.choose-line", 1);
  act (&page, "clamp.tighten", 1);
  act (&page, "clamp.take-off", 0);
  act (&page, "clamp.add", 0);
  g_assert_true (bs_session_get_plan (page.session) == plan);
  close_page (&page);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/clamping-page/keys", test_keys);
  g_test_add_func ("/clamping-page/ends", test_ends);
  g_test_add_func ("/clamping-page/forms", test_forms);
  g_test_add_func ("/clamping-page/help", test_help);
  g_test_add_func ("/clamping-page/finder", test_finder);
  g_test_add_func ("/clamping-page/stopped", test_stopped);
  g_test_add_func ("/clamping-page/empty", test_empty);
  return g_test_run ();
}
