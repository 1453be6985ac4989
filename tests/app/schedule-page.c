/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/schedule-page.h"

#include "desk.h"
#include "slabs.h"

static gboolean
is_done (gpointer session)
{
  return bs_study_is_current (bs_session_get_study (session, &bs_study_forecast));
}

static GtkWidget *
find_label (GtkWidget *below, const char *text)
{
  if (GTK_IS_LABEL (below) && g_str_equal (gtk_label_get_text (GTK_LABEL (below)), text))
    return below;
  for (GtkWidget *child = gtk_widget_get_first_child (below); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_label (child, text);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* What it says before the thread is done, and after it. */
static void
test_words (void)
{
  BsWindow *window = desk_open (); /* on the first example, whose 16 laminations go in one press */
  BsSession *session = bs_window_get_session (window);
  g_autoptr (GtkWidget) page = g_object_ref_sink (bs_schedule_page_new (session));
  g_autoptr (BsPlan) single = slab_new (1, 1000.0, 40.0, 60.0);

  desk_wait (is_done, session);
  g_assert_nonnull (find_label (page, "Press 1, round 1: A1 to H2"));
  g_assert_null (find_label (page, "Working…"));

  bs_session_open (session, single);
  g_assert_nonnull (find_label (page, "Working…"));
  g_assert_null (find_label (page, "Press 1, round 1: A1 to H2"));

  desk_wait (is_done, session);
  g_assert_nonnull (
      find_label (page, "A schedule needs at least two laminations with a size in the slab."));
  g_clear_object (&page);
  desk_close (window);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/schedule-page/words", test_words);
  return g_test_run ();
}
