/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/flattening-page.h"

#include "app/number-row.h"
#include "app/removal-view.h"
#include "desk.h"
#include "slabs.h"
#include "core/text.h"

#include <string.h>

/* A straight slab whose third lamination is crooked: from that most comes off both faces. */
static BsPlan *
crooked_slab (void)
{
  BsPlan *plan = slab_new (5, 2000.0, 40.0, 60.0);

  slab_at (plan, 2)->crook = 3.0;
  for (guint i = 0; i < 5; i++)
    {
      char label[] = { (char)('A' + i), '\0' };
      bs_text_set (&slab_at (plan, i)->label, label);
    }
  return plan;
}

typedef struct
{
  BsSession *session;
  GtkWidget *window;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autoptr (BsPlan) plan = crooked_slab ();

  f->session = bs_session_new (plan);
  f->window = gtk_window_new ();
  gtk_window_set_default_size (GTK_WINDOW (f->window), 900, 900);
  gtk_window_set_child (GTK_WINDOW (f->window), bs_flattening_page_new (f->session));
  gtk_window_present (GTK_WINDOW (f->window));
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  GtkWidget *page = gtk_window_get_child (GTK_WINDOW (f->window));
  GWeakRef gone;

  g_weak_ref_init (&gone, page);
  gtk_window_destroy (GTK_WINDOW (f->window));
  g_assert_null (g_weak_ref_get (&gone));
  g_weak_ref_clear (&gone);
  g_object_unref (f->session);
}

static GtkWidget *
find_label (GtkWidget *below, const char *part)
{
  if (GTK_IS_LABEL (below) && strstr (gtk_label_get_text (GTK_LABEL (below)), part) != NULL
      && gtk_widget_get_child_visible (below))
    return below;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = gtk_widget_get_visible (child) ? find_label (child, part) : NULL;

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
is_done (gpointer session)
{
  return bs_study_is_current (bs_session_get_study (session, &bs_study_forecast));
}

/* The deepest spot is told in words, and its button selects its lamination. */
static void
test_spot (Fixture *f, gconstpointer data)
{
  GtkWidget *label = find_label (f->window, "C: 3");

  g_assert_nonnull (label);
  g_assert_true (GTK_IS_BUTTON (gtk_widget_get_parent (label)));
  g_signal_emit_by_name (gtk_widget_get_parent (label), "clicked");
  g_assert_cmpstr (bs_session_get_selected (f->session), ==, "3");
}

static void
push_work (Fixture *f, BsFlattenWork work, BsFlattenMethod method)
{
  g_autoptr (BsPlan) plan = bs_plan_copy (bs_session_get_plan (f->session));

  plan->slab.flatten_work = work;
  plan->slab.flatten_method = method;
  bs_session_push (f->session, plan, "Work", NULL);
}

/* What is to be done follows the order of work; the planer's part is seen only with a planer. */
static void
test_work (Fixture *f, gconstpointer data)
{
  g_assert_nonnull (find_label (f->window, "shim it, without rocking"));
  g_assert_null (find_label (f->window, "Through the planer"));
  push_work (f, BS_FLATTEN_UNDERSIDE_FIRST, BS_FLATTEN_BY_PLANER);
  g_assert_nonnull (find_label (f->window, "on its show face as it rests"));
  g_assert_nonnull (find_label (f->window, "Through the planer"));
  g_assert_nonnull (find_label (f->window, "goes through whole"));
}

/* An empty slab says so; when there is one again, the maps are back. */
static void
test_empty (Fixture *f, gconstpointer data)
{
  g_autoptr (BsPlan) empty = bs_plan_new (), plan = crooked_slab ();
  GtkWidget *maps = desk_find (f->window, BS_TYPE_REMOVAL_VIEW);

  g_assert_true (gtk_widget_get_visible (maps));
  bs_session_open (f->session, empty);
  g_assert_false (gtk_widget_get_visible (maps));
  g_assert_nonnull (find_label (f->window, "Nothing to flatten yet"));
  g_assert_null (find_label (f->window, "most off"));
  g_assert_null (find_label (f->window, "Deepest spots"));
  desk_wait (is_done, f->session);
  bs_session_open (f->session, plan);
  g_assert_true (gtk_widget_get_visible (maps));
  g_assert_null (find_label (f->window, "Nothing to flatten yet"));
  desk_wait (is_done, f->session);
}

static gboolean
has_width (gpointer maps)
{
  return gtk_widget_get_width (maps) > 0;
}

/* As high as both maps and the legend in its width, and no higher than is seen at once. */
static void
test_maps (Fixture *f, gconstpointer data)
{
  GtkWidget *maps = desk_find (f->window, BS_TYPE_REMOVAL_VIEW);
  int narrow, wide;

  desk_wait (has_width, maps);
  gtk_widget_measure (maps, GTK_ORIENTATION_VERTICAL, 500, &narrow, NULL, NULL, NULL);
  gtk_widget_measure (maps, GTK_ORIENTATION_VERTICAL, 900, &wide, NULL, NULL, NULL);
  g_assert_cmpint (narrow, >, 100);
  g_assert_cmpint (wide, >, narrow);
  g_assert_cmpint (wide, <, 640);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add ("/flattening-page/spot", Fixture, NULL, set_up, test_spot, tear_down);
  g_test_add ("/flattening-page/work", Fixture, NULL, set_up, test_work, tear_down);
  g_test_add ("/flattening-page/empty", Fixture, NULL, set_up, test_empty, tear_down);
  g_test_add ("/flattening-page/maps", Fixture, NULL, set_up, test_maps, tear_down);
  return g_test_run ();
}
