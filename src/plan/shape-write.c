/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/shape.h"

#include "plan/json-text.h"

static JsonArray *
write_list (const BsMember *member, gconstpointer list)
{
  JsonArray *array = json_array_new ();

  if (member->kind == BS_MEMBER_PARTS)
    {
      const GPtrArray *parts = list;
      for (guint i = 0; i < parts->len; i++)
        json_array_add_object_element (array, bs_shape_write (member->shape, parts->pdata[i]));
    }
  else
    {
      const GArray *values = list;
      for (guint i = 0; i < values->len; i++)
        json_array_add_object_element (
            array, bs_shape_write (member->shape, values->data + i * member->shape->size));
    }
  return array;
}

static void
write_choice (const BsMember *member, JsonObject *object, int value)
{
  if (value >= 0)
    bs_json_set_text (object, member->key, member->choices[value]);
}

static void
write_count (const BsMember *member, JsonObject *object, int value)
{
  if (value >= member->limit->least)
    json_object_set_int_member (object, member->key, value);
}

static void
write_field (const BsMember *member, JsonObject *object, gconstpointer source)
{
  gconstpointer place = (const char *)source + member->offset;

  switch (member->kind)
    {
    case BS_MEMBER_NUMBER:
      bs_json_set_number (object, member->key, *(const double *)place);
      break;
    case BS_MEMBER_COUNT:
      write_count (member, object, *(const int *)place);
      break;
    case BS_MEMBER_AMOUNT:
      json_object_set_int_member (object, member->key, *(const gint64 *)place);
      break;
    case BS_MEMBER_FLAG:
      json_object_set_boolean_member (object, member->key, *(const gboolean *)place);
      break;
    case BS_MEMBER_TEXT:
      bs_json_set_text (object, member->key, *(GRefString *const *)place);
      break;
    case BS_MEMBER_CHOICE:
      write_choice (member, object, *(const int *)place);
      break;
    case BS_MEMBER_OBJECT:
      json_object_set_object_member (object, member->key, bs_shape_write (member->shape, place));
      break;
    case BS_MEMBER_PARTS:
    case BS_MEMBER_VALUES:
      {
        JsonArray *array = write_list (member, *(const gconstpointer *)place);
        if (json_array_get_length (array) > 0)
          json_object_set_array_member (object, member->key, array);
        else
          json_array_unref (array);
        break;
      }
    default:
      g_return_if_reached ();
    }
}

/* Adds the members of another object; where both have an object, its members. */
static void
merge_object (JsonObject *object, JsonObject *other)
{
  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *value = NULL;

  json_object_iter_init_ordered (&iter, other);
  while (json_object_iter_next_ordered (&iter, &key, &value))
    {
      JsonNode *present = json_object_get_member (object, key);
      if (present != NULL && JSON_NODE_HOLDS_OBJECT (present) && JSON_NODE_HOLDS_OBJECT (value))
        merge_object (json_node_get_object (present), json_node_get_object (value));
      else if (present == NULL)
        json_object_set_member (object, key, json_node_copy (value));
    }
}

static void
add_unknown (JsonObject *object, const char *unknown)
{
  g_autoptr (JsonNode) node = json_from_string (unknown, NULL);

  if (node != NULL && JSON_NODE_HOLDS_OBJECT (node))
    merge_object (object, json_node_get_object (node));
}

JsonObject *
bs_shape_write (const BsShape *self, gconstpointer source)
{
  JsonObject *object = json_object_new ();

  for (const BsMember *member = self->members; member->key != NULL; member++)
    write_field (member, object, source);

  if (self->unknown >= 0)
    {
      GRefString *unknown = *(GRefString *const *)((const char *)source + self->unknown);
      if (unknown != NULL)
        add_unknown (object, unknown);
    }
  return object;
}

gboolean
bs_shape_equal (const BsShape *self, gconstpointer a, gconstpointer b)
{
  g_autoptr (JsonObject) first = bs_shape_write (self, a);
  g_autoptr (JsonObject) second = bs_shape_write (self, b);
  g_autofree char *first_text = bs_json_write (first);
  g_autofree char *second_text = bs_json_write (second);

  return g_str_equal (first_text, second_text);
}
