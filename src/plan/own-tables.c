/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/own-tables.h"

#include "config.h"
#include "core/text.h"
#include "plan/document.h"
#include "plan/format.h"
#include "plan/json-check.h"
#include "plan/json-text.h"
#include "plan/replace-file.h"
#include "plan/tables.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define OWN_FORMAT "broadstave-woods"
#define OWN_VERSION 1

char *
bs_own_tables_get_path (void)
{
  return g_build_filename (g_get_user_data_dir (), "broadstave", "woods.json", NULL);
}

/* The list of rows, of which the caller gets a reference; NULL with an error. */
static JsonArray *
parse_rows (const char *text, gsize length, GError **error)
{
  if (!bs_json_check (text, length, error))
    return NULL;

  g_autoptr (JsonNode) root = json_from_string (text, error);
  if (root == NULL)
    return NULL;
  JsonObject *object = JSON_NODE_HOLDS_OBJECT (root) ? json_node_get_object (root) : NULL;
  JsonNode *format = object != NULL ? json_object_get_member (object, "format") : NULL;
  JsonNode *version = object != NULL ? json_object_get_member (object, "version") : NULL;
  JsonNode *rows = object != NULL ? json_object_get_member (object, "woods") : NULL;

  if (format == NULL || !JSON_NODE_HOLDS_VALUE (format)
      || g_strcmp0 (json_node_get_string (format), OWN_FORMAT) != 0 || version == NULL
      || !JSON_NODE_HOLDS_VALUE (version) || json_node_get_int (version) != OWN_VERSION)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_FORMAT,
                   _ ("it does not say “format”: “%s” and “version”: %d, as a table of woods does; "
                      "add both"),
                   OWN_FORMAT, OWN_VERSION);
      return NULL;
    }
  if (rows == NULL || !JSON_NODE_HOLDS_ARRAY (rows)
      || json_array_get_length (json_node_get_array (rows)) > BS_MAX_WOODS)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE,
                   _ ("it has no list “woods” of at most %d woods; add or shorten it"),
                   BS_MAX_WOODS);
      return NULL;
    }
  return json_array_ref (json_node_get_array (rows));
}

static const char *
get_id (JsonObject *row)
{
  JsonNode *id = json_object_get_member (row, "id");

  return id != NULL && JSON_NODE_HOLDS_VALUE (id) ? json_node_get_string (id) : NULL;
}

static int
find_wood (const GPtrArray *woods, const char *id)
{
  for (guint i = 0; id != NULL && i < woods->len; i++)
    if (g_str_equal (((const BsWood *)woods->pdata[i])->id, id))
      return (int)i;
  return -1;
}

/* Where the figures of a row come from that does not say so: the person, and for the rest the
 * program's table. */
static char *
describe_source (JsonObject *row, const BsWood *base)
{
  g_autoptr (GString) keys = g_string_new (NULL);
  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *value = NULL;

  json_object_iter_init_ordered (&iter, row);
  while (json_object_iter_next_ordered (&iter, &key, &value))
    if (!g_str_equal (key, "id") && !g_str_equal (key, "name"))
      g_string_append_printf (keys, "%s%s", keys->len > 0 ? ", " : "", key);
  if (base == NULL || base->source == NULL)
    return g_strdup (_ ("set by you"));
  if (keys->len == 0)
    return g_strdup (base->source);
  /* Translators: sources of a table; names of keys. */
  return g_strdup_printf (_ ("%s; set by you: %s"), base->source, keys->str);
}

/* A new wood: the row over a copy of the program's, if that has one. */
static BsWood *
read_row (JsonObject *row, const BsWood *base, const BsPath *path, GError **error)
{
  const char *id = get_id (row);
  g_autoptr (BsWood) wood = base != NULL ? bs_wood_copy (base) : bs_wood_new (id != NULL ? id : "");
  g_autofree char *source = describe_source (row, base);
  const gboolean has_source = json_object_has_member (row, "source");
  const double sg = bs_tables_get_sg_of_density (row);

  if (base != NULL && !json_object_has_member (row, "name"))
    json_object_set_string_member (row, "name", base->name);
  if (!json_object_has_member (row, "sg_12") && bs_limit_contains (&bs_limits.sg, sg))
    wood->sg_12 = sg;
  if (!bs_shape_read (&bs_wood_shape, row, wood, path, error))
    return NULL;
  if (!has_source)
    bs_text_set (&wood->source, source);
  return g_steal_pointer (&wood);
}

/* Lays one row over the list, in which the program's woods come first. */
static gboolean
lay_over (GPtrArray *woods, JsonNode *node, GHashTable *ids, const BsPath *path, GError **error)
{
  JsonObject *row = JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
  const char *id = row != NULL ? get_id (row) : NULL;

  if (row == NULL || (id != NULL && !g_hash_table_add (ids, g_strdup (id))))
    {
      g_autofree char *where = bs_path_to_string (path);
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE,
                   row == NULL
                       /* Translators: a place in a file. */
                       ? _ ("%s is not an object in braces; correct it")
                       : _ ("%s has an id that an earlier wood has; make one of the two"),
                   where);
      return FALSE;
    }

  const int at = find_wood (woods, id);
  BsWood *wood = read_row (row, at >= 0 ? woods->pdata[at] : NULL, path, error);
  if (wood == NULL)
    return FALSE;
  if (at >= 0)
    g_ptr_array_remove_index (woods, (guint)at);
  g_ptr_array_add (woods, wood);
  return TRUE;
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  const BsWood *first = *(const BsWood *const *)a;
  const BsWood *second = *(const BsWood *const *)b;

  return strcmp (first->name, second->name);
}

static gpointer
share_wood (gconstpointer wood, gpointer data)
{
  return bs_wood_ref ((BsWood *)wood);
}

/* FALSE with an error when there is a file that cannot be read; no text when there is none. */
static gboolean
read_file (const char *filename, char **text, gsize *length, GError **error)
{
  g_autoptr (GError) reason = NULL;

  if (!g_file_test (filename, G_FILE_TEST_EXISTS))
    return TRUE;
  if (g_file_test (filename, G_FILE_TEST_IS_REGULAR)
      && g_file_get_contents (filename, text, length, &reason))
    return TRUE;
  g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
               _ ("it cannot be read as a file: %s"),
               reason != NULL ? reason->message : _ ("it is something else"));
  return FALSE;
}

GPtrArray *
bs_own_tables_load_woods (const char *filename, GError **error)
{
  static const BsPath list = { .key = "woods" };
  g_autoptr (GPtrArray) woods
      = g_ptr_array_copy ((GPtrArray *)bs_tables_get_woods (), share_wood, NULL);
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *text = NULL;
  gsize length = 0;

  g_ptr_array_set_free_func (woods, (GDestroyNotify)bs_wood_unref);
  if (!read_file (filename, &text, &length, error))
    return NULL;
  if (text == NULL)
    return g_steal_pointer (&woods);

  g_autoptr (JsonArray) rows = parse_rows (text, length, error);
  if (rows == NULL)
    return NULL;
  for (guint i = 0; i < json_array_get_length (rows); i++)
    {
      const BsPath path = { .parent = &list, .index = i };
      if (!lay_over (woods, json_array_get_element (rows, i), ids, &path, error))
        return NULL;
    }
  g_ptr_array_sort (woods, compare_names);
  return g_steal_pointer (&woods);
}

/* The rows as they stand in the file, which was found to be whole; none when there is no file. */
static JsonArray *
load_rows (const char *filename, GError **error)
{
  g_autoptr (GPtrArray) woods = bs_own_tables_load_woods (filename, error);
  g_autofree char *text = NULL;
  gsize length = 0;

  if (woods == NULL || !read_file (filename, &text, &length, error))
    return NULL;
  return text != NULL ? parse_rows (text, length, error) : json_array_new ();
}

static int
find_row (JsonArray *rows, const char *id)
{
  for (guint i = 0; i < json_array_get_length (rows); i++)
    if (g_strcmp0 (get_id (json_array_get_object_element (rows, i)), id) == 0)
      return (int)i;
  return -1;
}

static gboolean
save_rows (const char *filename, JsonArray *rows, GError **error)
{
  g_autoptr (JsonObject) object = json_object_new ();
  g_autofree char *folder = g_path_get_dirname (filename);
  g_autoptr (GError) reason = NULL;

  json_object_set_string_member (object, "format", OWN_FORMAT);
  json_object_set_int_member (object, "version", OWN_VERSION);
  json_object_set_array_member (object, "woods", json_array_ref (rows));
  g_autofree char *text = bs_json_write (object);
  (void)g_mkdir_with_parents (folder, 0700); /* where that fails, so does the next */
  if (bs_replace_file (filename, text, &reason))
    return TRUE;
  g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
               _ ("it cannot be written: the system says “%s”"), reason->message);
  return FALSE;
}

/* What a row must say about a wood. Its source is worked out when it is read, unless the file gave
 * one before. */
static JsonObject *
make_row (const BsWood *wood, JsonObject *before)
{
  const BsWood *program = bs_tables_find_wood (wood->id);
  JsonObject *row = bs_shape_write (&bs_wood_shape, wood);

  if (program == NULL)
    return row;

  g_autoptr (JsonObject) same = bs_shape_write (&bs_wood_shape, program);
  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *value = NULL;

  json_object_iter_init (&iter, same);
  while (json_object_iter_next (&iter, &key, &value))
    if (!g_str_equal (key, "id") && json_object_has_member (row, key)
        && json_node_equal (json_object_get_member (row, key), value))
      json_object_remove_member (row, key);
  if (before != NULL && json_object_has_member (before, "source"))
    json_object_set_member (row, "source",
                            json_node_copy (json_object_get_member (before, "source")));
  else
    json_object_remove_member (row, "source");
  return row;
}

gboolean
bs_own_tables_keep_wood (const char *filename, const BsWood *wood, GError **error)
{
  g_autoptr (JsonArray) rows = load_rows (filename, error);
  if (rows == NULL)
    return FALSE;

  const int at = find_row (rows, wood->id);
  JsonObject *before = at >= 0 ? json_array_get_object_element (rows, (guint)at) : NULL;
  g_autoptr (JsonArray) kept = json_array_new ();
  JsonObject *row = make_row (wood, before);

  for (guint i = 0; i < json_array_get_length (rows); i++)
    if ((int)i == at)
      json_array_add_object_element (kept, g_steal_pointer (&row));
    else
      json_array_add_element (kept, json_array_dup_element (rows, i));
  if (row != NULL)
    json_array_add_object_element (kept, row);
  return save_rows (filename, kept, error);
}

gboolean
bs_own_tables_forget_wood (const char *filename, const char *id, GError **error)
{
  g_autoptr (JsonArray) rows = load_rows (filename, error);
  if (rows == NULL)
    return FALSE;

  const int at = find_row (rows, id);
  if (at < 0)
    return TRUE;
  json_array_remove_element (rows, (guint)at);
  return save_rows (filename, rows, error);
}
