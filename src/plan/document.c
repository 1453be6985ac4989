/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/document.h"

#include "config.h"
#include "plan/check.h"
#include "plan/format.h"
#include "plan/json-check.h"
#include "plan/json-text.h"
#include "plan/replace-file.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>

G_DEFINE_QUARK (bs - document - error - quark, bs_document_error)

static JsonObject *
parse_object (const char *text, gsize length, GError **error)
{
  if (!bs_json_check (text, length, error))
    return NULL;

  g_autoptr (JsonNode) root = json_from_string (text, error);
  if (root != NULL && JSON_NODE_HOLDS_OBJECT (root))
    return json_node_dup_object (root);
  if (root != NULL)
    g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_FORMAT,
                 _ ("it holds no object in braces, as a plan does; is it the right file?"));
  return NULL;
}

/* The two members that every version has. */
static gboolean
check_format (JsonObject *object, GError **error)
{
  JsonNode *format = json_object_get_member (object, "format");
  JsonNode *version = json_object_get_member (object, "version");

  if (format == NULL || !JSON_NODE_HOLDS_VALUE (format)
      || g_strcmp0 (json_node_get_string (format), BS_FORMAT_NAME) != 0)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_FORMAT,
                   _ ("its key “format” is not “%s”, as that of a plan is; is it the right file?"),
                   BS_FORMAT_NAME);
      return FALSE;
    }
  if (version == NULL || !JSON_NODE_HOLDS_VALUE (version)
      || json_node_get_value_type (version) != G_TYPE_INT64 || json_node_get_int (version) < 1)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_FORMAT,
                   _ ("its key “version” is not a whole number from 1; correct it"));
      return FALSE;
    }
  if (json_node_get_int (version) > BS_FORMAT_VERSION)
    {
      g_autofree char *found = g_strdup_printf ("%" G_GINT64_FORMAT, json_node_get_int (version));
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_FORMAT,
                   _ ("it is a plan of version %s where at most %d is known here; open it with a "
                      "newer Broadstave"),
                   found, BS_FORMAT_VERSION);
      return FALSE;
    }
  json_object_remove_member (object, "format");
  json_object_remove_member (object, "version");
  return TRUE;
}

BsPlan *
bs_document_parse (const char *text, gsize length, GError **error)
{
  static const char byte_order_mark[] = "\xEF\xBB\xBF";
  static const BsPath root = { 0 };

  /* A copy of its own ends with the NUL that the checker and json-glib rely on. */
  g_autoptr (GString) copy = g_string_new_len (text, (gssize)length);
  const gsize skipped = length >= 3 && g_str_has_prefix (copy->str, byte_order_mark) ? 3 : 0;

  g_autoptr (JsonObject) object = parse_object (copy->str + skipped, length - skipped, error);
  if (object == NULL || !check_format (object, error))
    return NULL;

  /* A part of the default adhesive's figures would be wrong for another one. */
  g_autoptr (BsPlan) plan = bs_plan_new ();
  if (json_object_has_member (object, "adhesive"))
    bs_adhesive_set (&plan->adhesive, &(BsAdhesive){ .price_minor_per_kg = NAN });
  if (!bs_shape_read (&bs_plan_shape, object, plan, &root, error) || !bs_check_plan (plan, error))
    return NULL;
  bs_plan_sort_clamps (plan);
  return g_steal_pointer (&plan);
}

static gboolean
read_file (const char *filename, char **text, gsize *length, GError **error)
{
  g_autoptr (GError) reason = NULL;
  GStatBuf status;

  if (g_stat (filename, &status) != 0)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                   _ ("the system says “%s”; check its name and that you may read it"),
                   g_strerror (errno));
      return FALSE;
    }
  if (!S_ISREG (status.st_mode))
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                   _ ("it is not a file; choose a plan file"));
      return FALSE;
    }
  if ((gsize)status.st_size > BS_JSON_MAX_BYTES)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                   _ ("it holds more than %d MB; is it the right file?"),
                   (int)(BS_JSON_MAX_BYTES >> 20));
      return FALSE;
    }
  if (!g_file_get_contents (filename, text, length, &reason))
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                   _ ("the system says “%s”; check its name and that you may read it"),
                   reason->message);
      return FALSE;
    }
  return TRUE;
}

BsPlan *
bs_document_load (const char *filename, GError **error)
{
  g_autofree char *text = NULL;
  gsize length = 0;
  BsPlan *plan = NULL;

  if (read_file (filename, &text, &length, error))
    plan = bs_document_parse (text, length, error);
  if (plan == NULL)
    {
      g_autofree char *name = g_filename_display_basename (filename);
      /* Translators: before the reason. */
      g_prefix_error (error, _ ("Could not open %s: "), name);
    }
  return plan;
}

char *
bs_document_write (const BsPlan *plan)
{
  g_autoptr (JsonObject) content = bs_shape_write (&bs_plan_shape, plan);
  g_autoptr (JsonObject) object = json_object_new ();
  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *value = NULL;

  json_object_set_string_member (object, "format", BS_FORMAT_NAME);
  json_object_set_int_member (object, "version", BS_FORMAT_VERSION);
  json_object_iter_init_ordered (&iter, content);
  while (json_object_iter_next_ordered (&iter, &key, &value))
    json_object_set_member (object, key, json_node_ref (value));
  return bs_json_write (object);
}

gboolean
bs_document_save (const BsPlan *plan, const char *filename, GError **error)
{
  g_autofree char *text = bs_document_write (plan);
  g_autoptr (GError) reason = NULL;
  const gboolean is_saved = bs_replace_file (filename, text, &reason);

  if (!is_saved)
    {
      g_autofree char *name = g_filename_display_basename (filename);
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ,
                   _ ("Could not save %s: the system says “%s”; the file is as it was, so save it "
                      "in another place"),
                   name, reason->message);
    }
  return is_saved;
}
