/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/findings-list.h"

#include "app/finding-item.h"
#include "core/text.h"
#include "desk.h"
#include "plan/edits.h"

#include <glib/gstdio.h>
#include <string.h>

/* A session with one board that has the photo "top.png" in an empty folder, and its findings. */
typedef struct
{
  char *folder;
  BsSession *session;
  GtkWidget *list; /* BsFindingsList */
} Fixture;

static void
set_up (Fixture *self, gconstpointer unused)
{
  g_autoptr (BsPlan) empty = bs_plan_new ();
  g_autoptr (BsBoard) board = bs_board_new ("board-1");

  board->length = 2400.0;
  board->width = 200.0;
  board->thickness = 50.0;
  bs_text_set (&board->label, "R7");
  bs_text_set (&board->photo_top, "top.png");
  g_autoptr (BsPlan) plan = bs_edit_put_board (empty, board);
  self->folder = g_dir_make_tmp ("broadstave-XXXXXX", NULL);
  self->session = bs_session_new (plan);
  bs_session_set_folder (self->session, self->folder);
  self->list = g_object_ref_sink (g_object_new (BS_TYPE_FINDINGS_LIST, NULL));
  bs_findings_list_set_session (BS_FINDINGS_LIST (self->list), self->session);
}

static void
tear_down (Fixture *self, gconstpointer unused)
{
  g_object_unref (self->list);
  g_object_unref (self->session);
  (void)g_rmdir (self->folder);
  g_free (self->folder);
}

static guint
count_results (Fixture *self)
{
  return bs_session_get_results (self->session)->findings->len;
}

static GListModel *
get_model (Fixture *self)
{
  GtkWidget *view = desk_find (self->list, GTK_TYPE_LIST_VIEW);

  return G_LIST_MODEL (gtk_list_view_get_model (GTK_LIST_VIEW (view)));
}

static gboolean
lists_photo (gpointer data)
{
  return g_list_model_get_n_items (get_model (data)) == count_results (data) + 1;
}

static gboolean
lists_results (gpointer data)
{
  return g_list_model_get_n_items (get_model (data)) == count_results (data);
}

static void
assert_photo (Fixture *self)
{
  desk_wait (lists_photo, self);
  g_autoptr (BsFindingItem) item
      = g_list_model_get_item (get_model (self), count_results (self)); /* the last */

  g_assert_cmpint (bs_finding_item_get_severity (item), ==, BS_SEVERITY_NOTE);
  g_assert_nonnull (strstr (bs_finding_item_get_title (item), "R7"));
  g_assert_nonnull (strstr (bs_finding_item_get_reason (item), "top.png"));
  g_assert_nonnull (strstr (bs_finding_item_get_remedy (item), "Boards"));
  g_assert_null (bs_finding_item_get_lamination (item));
}

/* A note after all that the results find, until the board has no photo. */
static void
test_missing (Fixture *self, gconstpointer unused)
{
  assert_photo (self);
  g_autoptr (BsBoard) board
      = bs_board_copy (bs_plan_find_board (bs_session_get_plan (self->session), "board-1"));
  bs_text_set (&board->photo_top, NULL);
  g_autoptr (BsPlan) plan = bs_edit_put_board (bs_session_get_plan (self->session), board);
  bs_session_push (self->session, plan, "Take the photo off", NULL);
  g_assert_true (lists_results (self));
}

/* A file that is there but is no picture is found too. */
static void
test_unreadable (Fixture *self, gconstpointer unused)
{
  g_autofree char *file = g_build_filename (self->folder, "top.png", NULL);

  assert_photo (self);
  g_assert_true (g_file_set_contents (file, "no picture", -1, NULL));
  bs_session_set_folder (self->session, "/");
  bs_session_set_folder (self->session, self->folder);
  assert_photo (self);
  (void)g_remove (file);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add ("/findings-list/missing-photo", Fixture, NULL, set_up, test_missing, tear_down);
  g_test_add ("/findings-list/unreadable-photo", Fixture, NULL, set_up, test_unreadable, tear_down);
  return g_test_run ();
}
