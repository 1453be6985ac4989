/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/shape.h"

#include "config.h"
#include "core/text.h"
#include "plan/document.h"
#include "plan/json-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static void
append_path (GString *text, const BsPath *path)
{
  if (path->parent != NULL)
    append_path (text, path->parent);
  if (path->key == NULL && path->parent != NULL)
    g_string_append_printf (text, "[%u]", path->index);
  else if (path->key != NULL)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "." : "", path->key);
}

char *
bs_path_to_string (const BsPath *self)
{
  GString *text = g_string_new (NULL);
  append_path (text, self);
  return g_string_free (text, FALSE);
}

static char *
format_number (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strdup (g_ascii_formatd (digits, sizeof digits, "%.10g", value));
}

static char *
describe_found (JsonNode *node)
{
  if (JSON_NODE_HOLDS_NULL (node))
    return g_strdup ("null");
  if (JSON_NODE_HOLDS_OBJECT (node))
    return g_strdup (_ ("an object"));
  if (JSON_NODE_HOLDS_ARRAY (node))
    return g_strdup_printf (_ ("a list of %u"), json_array_get_length (json_node_get_array (node)));
  if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    return g_strdup (json_node_get_boolean (node) ? "true" : "false");
  if (json_node_get_value_type (node) == G_TYPE_STRING)
    {
      const char *value = json_node_get_string (node);
      g_autofree char *start = g_utf8_substring (value, 0, MIN (40, g_utf8_strlen (value, -1)));
      return g_strdup_printf (_ ("the text “%s”"), start);
    }
  return format_number (json_node_get_double (node));
}

static char *
describe_expected (const BsMember *member)
{
  switch (member->kind)
    {
    case BS_MEMBER_NUMBER:
    case BS_MEMBER_COUNT:
    case BS_MEMBER_AMOUNT:
      {
        g_autofree char *least = format_number (member->limit->least);
        g_autofree char *most = format_number (member->limit->most);
        return g_strdup_printf (member->kind == BS_MEMBER_NUMBER
                                    ? _ ("a number from %s to %s")
                                    : _ ("a whole number from %s to %s"),
                                least, most);
      }
    case BS_MEMBER_FLAG:
      return g_strdup (_ ("true or false"));
    case BS_MEMBER_TEXT:
      return g_strdup (member->is_required ? _ ("a text that is not empty") : _ ("a text"));
    case BS_MEMBER_CHOICE:
      {
        g_autofree char *names = g_strjoinv ("”, “", (char **)member->choices);
        return g_strdup_printf (_ ("one of “%s”"), names);
      }
    case BS_MEMBER_OBJECT:
      return g_strdup (_ ("an object in braces"));
    default:
      return g_strdup_printf (_ ("a list of at most %u"), member->max_length);
    }
}

static gboolean
fail_value (const BsMember *member, JsonNode *node, const BsPath *path, GError **error)
{
  const BsPath here = { .parent = path, .key = member->key };
  g_autofree char *where = bs_path_to_string (&here);
  g_autofree char *expected = describe_expected (member);

  if (node == NULL)
    {
      g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE,
                   /* Translators: the place in a file and what should stand there. */
                   _ ("%s is missing where %s is expected; add it"), where, expected);
      return FALSE;
    }
  g_autofree char *found = describe_found (node);
  g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE,
               /* Translators: the place in a file, what stands there, what should. */
               _ ("%s is %s where %s is expected; correct it"), where, found, expected);
  return FALSE;
}

/* A double or integer within the member's limit. */
static gboolean
get_number (const BsMember *member, JsonNode *node, double *value)
{
  const GType type = json_node_get_value_type (node);

  if (!JSON_NODE_HOLDS_VALUE (node) || (type != G_TYPE_INT64 && type != G_TYPE_DOUBLE))
    return FALSE;
  *value = json_node_get_double (node);
  return bs_limit_contains (member->limit, *value);
}

static gboolean
get_whole_number (const BsMember *member, JsonNode *node, gint64 *value)
{
  double number = 0.0;

  if (!get_number (member, node, &number) || floor (number) < number)
    return FALSE;
  *value = (gint64)number;
  return TRUE;
}

static const char *
get_text (JsonNode *node)
{
  const gboolean is_text
      = JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;
  return is_text ? json_node_get_string (node) : NULL;
}

static gboolean
get_choice (const BsMember *member, JsonNode *node, int *value)
{
  const char *name = get_text (node);

  for (int i = 0; name != NULL && member->choices[i] != NULL; i++)
    if (g_str_equal (name, member->choices[i]))
      {
        *value = i;
        return TRUE;
      }
  return FALSE;
}

static gboolean
get_flag (JsonNode *node, gboolean *value)
{
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return FALSE;
  *value = json_node_get_boolean (node);
  return TRUE;
}

static gboolean
set_text (const BsMember *member, JsonNode *node, GRefString **text)
{
  const char *value = get_text (node);

  if (value == NULL || (member->is_required && *value == '\0'))
    return FALSE;
  bs_text_set (text, value);
  return TRUE;
}

/* FALSE when the node is not what the member takes. */
static gboolean
read_value (const BsMember *member, JsonNode *node, gpointer place)
{
  gint64 whole = 0;

  switch (member->kind)
    {
    case BS_MEMBER_NUMBER:
      return get_number (member, node, place);
    case BS_MEMBER_COUNT:
      if (!get_whole_number (member, node, &whole))
        return FALSE;
      *(int *)place = (int)whole;
      return TRUE;
    case BS_MEMBER_AMOUNT:
      return get_whole_number (member, node, place);
    case BS_MEMBER_FLAG:
      return get_flag (node, place);
    case BS_MEMBER_TEXT:
      return set_text (member, node, place);
    case BS_MEMBER_CHOICE:
      return get_choice (member, node, place);
    default:
      g_return_val_if_reached (FALSE);
    }
}

/* A new struct at the end of the list; borrowed. */
static gpointer
append_element (const BsMember *member, gpointer list, JsonObject *object)
{
  if (member->kind == BS_MEMBER_VALUES)
    {
      GArray *values = list;
      g_array_set_size (values, values->len + 1);
      gpointer value = values->data + (gsize)(values->len - 1) * member->shape->size;
      if (member->shape->blank != NULL)
        memcpy (value, member->shape->blank, member->shape->size);
      return value;
    }
  JsonNode *id = json_object_get_member (object, "id");
  const char *name = id != NULL ? get_text (id) : NULL;
  gpointer part = member->shape->new_part (name != NULL ? name : "");
  g_ptr_array_add (list, part);
  return part;
}

static gboolean
read_list (const BsMember *member, JsonNode *node, gpointer list, const BsPath *path,
           GError **error)
{
  const BsPath here = { .parent = path, .key = member->key };
  JsonArray *array = json_node_get_array (node);
  const guint length = json_array_get_length (array);

  for (guint i = 0; i < length; i++)
    {
      const BsPath there = { .parent = &here, .index = i };
      JsonNode *element = json_array_get_element (array, i);

      if (!JSON_NODE_HOLDS_OBJECT (element))
        {
          g_autofree char *where = bs_path_to_string (&there);
          g_autofree char *found = describe_found (element);
          g_set_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_VALUE,
                       _ ("%s is %s where an object in braces is expected; correct it"), where,
                       found);
          return FALSE;
        }
      JsonObject *object = json_node_get_object (element);
      if (!bs_shape_read (member->shape, object, append_element (member, list, object), &there,
                          error))
        return FALSE;
    }
  return TRUE;
}

/* Members of an object without unknown keys of its own stay in it, and it in the one around. */
static gboolean
read_object (const BsMember *member, JsonObject *object, JsonNode *node, gpointer place,
             const BsPath *path, GError **error)
{
  const BsPath here = { .parent = path, .key = member->key };
  JsonObject *child = json_node_get_object (node);

  if (!bs_shape_read (member->shape, child, place, &here, error))
    return FALSE;
  if (member->shape->unknown >= 0 || json_object_get_size (child) == 0)
    json_object_remove_member (object, member->key);
  return TRUE;
}

static gboolean
read_field (const BsMember *member, JsonObject *object, gpointer target, const BsPath *path,
            GError **error)
{
  gpointer place = (char *)target + member->offset;
  JsonNode *node = json_object_get_member (object, member->key);

  if (node == NULL)
    return !member->is_required || fail_value (member, NULL, path, error);

  if (member->kind == BS_MEMBER_OBJECT)
    {
      if (!JSON_NODE_HOLDS_OBJECT (node))
        return fail_value (member, node, path, error);
      return read_object (member, object, node, place, path, error);
    }
  if (member->kind == BS_MEMBER_PARTS || member->kind == BS_MEMBER_VALUES)
    {
      if (!JSON_NODE_HOLDS_ARRAY (node)
          || json_array_get_length (json_node_get_array (node)) > member->max_length)
        return fail_value (member, node, path, error);
      if (!read_list (member, node, *(gpointer *)place, path, error))
        return FALSE;
    }
  else if (!read_value (member, node, place))
    return fail_value (member, node, path, error);

  json_object_remove_member (object, member->key);
  return TRUE;
}

gboolean
bs_shape_read (const BsShape *self, JsonObject *object, gpointer target, const BsPath *path,
               GError **error)
{
  for (const BsMember *member = self->members; member->key != NULL; member++)
    if (!read_field (member, object, target, path, error))
      return FALSE;

  if (self->unknown >= 0 && json_object_get_size (object) > 0)
    {
      g_autofree char *text = bs_json_write (object);
      bs_text_set ((GRefString **)((char *)target + self->unknown), text);
    }
  return TRUE;
}
