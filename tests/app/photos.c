/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/photos.h"

#include "app/photo-files.h"
#include "core/text.h"
#include "desk.h"

#include <glib/gstdio.h>
#include <string.h>

/* A folder with a photo of 40 x 10 pixels, and a session whose plan lies there. */
typedef struct
{
  char *folder;
  char *file;
  BsSession *session;
  BsPhotos *photos;
} Fixture;

static void
set_up (Fixture *self, gconstpointer unused)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (GdkPixbuf) picture = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, 40, 10);

  self->folder = g_dir_make_tmp ("broadstave-XXXXXX", NULL);
  self->file = g_build_filename (self->folder, "top.png", NULL);
  gdk_pixbuf_fill (picture, 0x804020ff);
  g_assert_true (gdk_pixbuf_save (picture, self->file, "png", NULL, NULL));
  self->session = bs_session_new (plan);
  bs_session_set_folder (self->session, self->folder);
  self->photos = bs_photos_new (self->session);
}

static gboolean
is_gone (gpointer photos)
{
  return *(gpointer *)photos == NULL;
}

/* A thread that loads may hold them a little longer. */
static void
tear_down (Fixture *self, gconstpointer unused)
{
  g_object_add_weak_pointer (G_OBJECT (self->photos), (gpointer *)&self->photos);
  g_object_unref (self->photos);
  desk_wait (is_gone, &self->photos);
  g_object_unref (self->session);
  (void)g_remove (self->file);
  (void)g_rmdir (self->folder);
  g_free (self->file);
  g_free (self->folder);
}

static gboolean
has_top (gpointer photos)
{
  return bs_photos_get (photos, "top.png") != NULL;
}

/* From the plan's folder; its shape is kept. */
static void
test_relative (Fixture *self, gconstpointer unused)
{
  desk_wait (has_top, self->photos);
  cairo_surface_t *photo = bs_photos_get (self->photos, "top.png");
  g_assert_cmpint (cairo_image_surface_get_width (photo), ==,
                   (gint64)cairo_image_surface_get_height (photo) * 4);
  g_assert_null (bs_photos_get_problem (self->photos, "top.png"));
  g_assert_null (bs_photos_get (self->photos, NULL));
}

static gboolean
misses_it (gpointer photos)
{
  return bs_photos_get_problem (photos, "gone.png") != NULL;
}

static void
test_missing (Fixture *self, gconstpointer unused)
{
  desk_wait (misses_it, self->photos);
  g_assert_null (bs_photos_get (self->photos, "gone.png"));
  g_assert_nonnull (strstr (bs_photos_get_problem (self->photos, "gone.png"), "gone.png"));
}

/* At once, as paper and report have them: the one that is there, and a sentence about the other. */
static void
test_files (Fixture *self, gconstpointer unused)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  BsBoard *board = bs_board_new ("plank");

  bs_text_set (&board->photo_top, "top.png");
  bs_text_set (&board->photo_underside, "gone.png");
  g_ptr_array_add (plan->boards, board);
  g_autoptr (GHashTable) photos = bs_photo_files_load (plan, self->folder);
  g_autoptr (GArray) problems = bs_photo_files_check (plan, self->folder);

  g_assert_cmpuint (g_hash_table_size (photos), ==, 1);
  g_assert_cmpint (cairo_image_surface_get_width (g_hash_table_lookup (photos, "top.png")), ==, 40);
  g_assert_cmpuint (problems->len, ==, 1);
  g_assert_true (g_array_index (problems, BsPhotoProblem, 0).board == board);
  g_assert_nonnull (strstr (g_array_index (problems, BsPhotoProblem, 0).reason, "gone.png"));
}

/* In another folder the same path is another file. */
static void
test_moved (Fixture *self, gconstpointer unused)
{
  desk_wait (has_top, self->photos);
  bs_session_set_folder (self->session, "/nowhere");
  g_assert_null (bs_photos_get (self->photos, "top.png"));
}

static void
test_refer (Fixture *self, gconstpointer unused)
{
  g_autoptr (GFile) below = g_file_new_for_path (self->file);
  g_autoptr (GFile) beside = g_file_new_for_path ("/elsewhere/top.png");
  g_autofree char *relative = bs_photos_refer (self->session, below);
  g_autofree char *absolute = bs_photos_refer (self->session, beside);

  g_assert_cmpstr (relative, ==, "top.png");
  g_assert_cmpstr (absolute, ==, "/elsewhere/top.png");
  bs_session_set_folder (self->session, NULL);
  g_autofree char *unsaved = bs_photos_refer (self->session, below);
  g_assert_cmpstr (unsaved, ==, self->file);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add ("/photos/relative", Fixture, NULL, set_up, test_relative, tear_down);
  g_test_add ("/photos/missing", Fixture, NULL, set_up, test_missing, tear_down);
  g_test_add ("/photos/files", Fixture, NULL, set_up, test_files, tear_down);
  g_test_add ("/photos/moved", Fixture, NULL, set_up, test_moved, tear_down);
  g_test_add ("/photos/refer", Fixture, NULL, set_up, test_refer, tear_down);
  return g_test_run ();
}
