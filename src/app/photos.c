/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/photos.h"

#include <string.h>

#include "app/photo-files.h"
#include "words/boards.h"

typedef struct
{
  gboolean is_loaded, is_checked; /* or about to be */
  cairo_surface_t *surface;
  char *problem; /* a sentence, or NULL */
} Photo;

struct _BsPhotos
{
  GObject parent_instance;

  char *folder;       /* of the plan's file, or NULL */
  GHashTable *photos; /* path as the plan has it -> Photo */
};

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsPhotos, bs_photos, G_TYPE_OBJECT)

static void
free_photo (gpointer data)
{
  Photo *photo = data;

  g_clear_pointer (&photo->surface, cairo_surface_destroy);
  g_free (photo->problem);
  g_free (photo);
}

static void
load (GTask *task, gpointer self, gpointer data, GCancellable *cancellable)
{
  GError *error = NULL;
  cairo_surface_t *surface = bs_photo_file_load (data, &error);

  if (surface != NULL)
    g_task_return_pointer (task, surface, (GDestroyNotify)cairo_surface_destroy);
  else
    g_task_return_error (task, error);
}

static void
check (GTask *task, gpointer self, gpointer data, GCancellable *cancellable)
{
  GError *error = NULL;

  if (bs_photo_file_check (data, &error))
    g_task_return_pointer (task, NULL, NULL);
  else
    g_task_return_error (task, error);
}

static void
done_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  BsPhotos *self = BS_PHOTOS (source);
  g_autofree char *path = user_data;
  g_autoptr (GError) error = NULL;
  g_autofree char *file = bs_photo_file_find (self->folder, path);
  cairo_surface_t *surface = g_task_propagate_pointer (G_TASK (result), &error);
  Photo *photo = g_hash_table_lookup (self->photos, path);

  if (photo == NULL || strcmp (file, g_task_get_task_data (G_TASK (result))) != 0)
    { /* another plan's folder meanwhile */
      g_clear_pointer (&surface, cairo_surface_destroy);
      return;
    }
  if (surface != NULL)
    photo->surface = surface;
  if (error != NULL && photo->problem == NULL)
    photo->problem = bs_words_photo_reason (path, error->message);
  if (surface != NULL || error != NULL)
    g_signal_emit (self, signals[CHANGED], 0);
}

static Photo *
find_photo (BsPhotos *self, const char *path)
{
  Photo *photo = g_hash_table_lookup (self->photos, path);

  if (photo == NULL)
    {
      photo = g_new0 (Photo, 1);
      g_hash_table_insert (self->photos, g_strdup (path), photo);
    }
  return photo;
}

static void
start (BsPhotos *self, const char *path, GTaskThreadFunc work)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, done_cb, g_strdup (path));

  g_task_set_task_data (task, bs_photo_file_find (self->folder, path), g_free);
  g_task_run_in_thread (task, work);
}

/* The same paths are other files. */
static void
folder_changed_cb (BsPhotos *self, GParamSpec *pspec, BsSession *session)
{
  g_free (self->folder);
  self->folder = g_strdup (bs_session_get_folder (session));
  g_hash_table_remove_all (self->photos);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
bs_photos_finalize (GObject *object)
{
  BsPhotos *self = BS_PHOTOS (object);

  g_free (self->folder);
  g_hash_table_unref (self->photos);
  G_OBJECT_CLASS (bs_photos_parent_class)->finalize (object);
}

static void
bs_photos_class_init (BsPhotosClass *class)
{
  G_OBJECT_CLASS (class)->finalize = bs_photos_finalize;

  signals[CHANGED] = g_signal_new ("changed", BS_TYPE_PHOTOS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
bs_photos_init (BsPhotos *self)
{
  self->photos = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, free_photo);
}

BsPhotos *
bs_photos_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsPhotos *self = g_object_new (BS_TYPE_PHOTOS, NULL);
  self->folder = g_strdup (bs_session_get_folder (session));
  g_signal_connect_object (session, "notify::folder", G_CALLBACK (folder_changed_cb), self,
                           G_CONNECT_SWAPPED);
  return self;
}

BsPhotos *
bs_photos_get_shared (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsPhotos *photos = g_object_get_data (G_OBJECT (session), "photos");
  if (photos == NULL)
    {
      photos = bs_photos_new (session);
      g_object_set_data_full (G_OBJECT (session), "photos", photos, g_object_unref);
    }
  return photos;
}

cairo_surface_t *
bs_photos_get (BsPhotos *self, const char *path)
{
  g_return_val_if_fail (BS_IS_PHOTOS (self), NULL);

  if (path == NULL)
    return NULL;
  Photo *photo = find_photo (self, path);
  if (!photo->is_loaded)
    {
      photo->is_loaded = TRUE;
      start (self, path, load);
    }
  return photo->surface;
}

const char *
bs_photos_get_problem (BsPhotos *self, const char *path)
{
  g_return_val_if_fail (BS_IS_PHOTOS (self), NULL);

  if (path == NULL)
    return NULL;
  Photo *photo = find_photo (self, path);
  if (!photo->is_checked)
    {
      photo->is_checked = TRUE;
      start (self, path, check);
    }
  return photo->problem;
}

char *
bs_photos_refer (BsSession *session, GFile *file)
{
  g_return_val_if_fail (BS_IS_SESSION (session) && G_IS_FILE (file), NULL);

  const char *path = bs_session_get_folder (session);
  g_autoptr (GFile) folder = path != NULL ? g_file_new_for_path (path) : NULL;
  char *relative = folder != NULL ? g_file_get_relative_path (folder, file) : NULL;

  return relative != NULL ? relative : g_file_get_path (file);
}
