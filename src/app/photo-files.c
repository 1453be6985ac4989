/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/photo-files.h"

#include <gdk/gdk.h>
#include <glib/gi18n.h>

#define MOST_PIXELS 2048 /* along either side */

char *
bs_photo_file_find (const char *folder, const char *path)
{
  return g_path_is_absolute (path) || folder == NULL ? g_strdup (path)
                                                     : g_build_filename (folder, path, NULL);
}

/* No larger than it is. */
static GdkPixbuf *
read_picture (const char *file, GError **error)
{
  int width, height;

  if (gdk_pixbuf_get_file_info (file, &width, &height) == NULL
      || MAX (width, height) <= MOST_PIXELS)
    return gdk_pixbuf_new_from_file (file, error);
  return gdk_pixbuf_new_from_file_at_size (file, MOST_PIXELS, MOST_PIXELS, error);
}

cairo_surface_t *
bs_photo_file_load (const char *file, GError **error)
{
  g_autoptr (GdkPixbuf) stored = read_picture (file, error);

  if (stored == NULL)
    return NULL;
  g_autoptr (GdkPixbuf) upright = gdk_pixbuf_apply_embedded_orientation (stored);
  cairo_surface_t *surface = cairo_image_surface_create (
      CAIRO_FORMAT_ARGB32, gdk_pixbuf_get_width (upright), gdk_pixbuf_get_height (upright));
  cairo_t *cr = cairo_create (surface);
  gdk_cairo_set_source_pixbuf (cr, upright, 0.0, 0.0);
  cairo_paint (cr);
  cairo_destroy (cr);
  return surface;
}

gboolean
bs_photo_file_check (const char *path, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, error);

  if (stream == NULL)
    return FALSE;
  if (gdk_pixbuf_get_file_info (path, NULL, NULL) != NULL)
    return TRUE;
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_DATA,
                       _ ("it is not a picture that can be read"));
  return FALSE;
}

typedef void (*Visit) (const BsBoard *board, const char *path, const char *file, gpointer data);

static void
visit_photos (const BsPlan *plan, const char *folder, Visit visit, gpointer data)
{
  for (guint i = 0; i < plan->boards->len; i++)
    {
      const BsBoard *board = g_ptr_array_index (plan->boards, i);
      const char *paths[] = { board->photo_top, board->photo_underside };

      for (guint side = 0; side < G_N_ELEMENTS (paths); side++)
        if (paths[side] != NULL)
          {
            g_autofree char *file = bs_photo_file_find (folder, paths[side]);
            visit (board, paths[side], file, data);
          }
    }
}

static void
add_surface (const BsBoard *board, const char *path, const char *file, gpointer surfaces)
{
  cairo_surface_t *surface;

  if (g_hash_table_contains (surfaces, path))
    return;
  surface = bs_photo_file_load (file, NULL); /* why not is told by bs_photo_files_check () */
  if (surface != NULL)
    g_hash_table_insert (surfaces, g_strdup (path), surface);
}

GHashTable *
bs_photo_files_load (const BsPlan *plan, const char *folder)
{
  GHashTable *surfaces = g_hash_table_new_full (g_str_hash, g_str_equal, g_free,
                                                (GDestroyNotify)cairo_surface_destroy);

  visit_photos (plan, folder, add_surface, surfaces);
  return surfaces;
}

static void
add_problem (const BsBoard *board, const char *path, const char *file, gpointer problems)
{
  g_autoptr (GError) error = NULL;
  BsPhotoProblem problem = { .board = board };

  if (bs_photo_file_check (file, &error))
    return;
  problem.reason = bs_words_photo_reason (path, error->message);
  g_array_append_val ((GArray *)problems, problem);
}

static void
clear_problem (gpointer data)
{
  g_free (((BsPhotoProblem *)data)->reason);
}

GArray *
bs_photo_files_check (const BsPlan *plan, const char *folder)
{
  GArray *problems = g_array_new (FALSE, FALSE, sizeof (BsPhotoProblem));

  g_array_set_clear_func (problems, clear_problem);
  visit_photos (plan, folder, add_problem, problems);
  return problems;
}
