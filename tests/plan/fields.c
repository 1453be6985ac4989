/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* Prints the fields of the plan file as the reader knows them, in JSON, so that schema.py can
 * compare them with the schema and the documentation. */

#include "plan/format.h"
#include "plan/json-text.h"

static JsonObject *describe_shape (const BsShape *shape);

static JsonObject *
describe_member (const BsMember *member)
{
  static const char *const kinds[] = { "number", "integer", "integer", "boolean", "string",
                                       "choice", "object",  "array",   "array" };
  JsonObject *object = json_object_new ();

  json_object_set_string_member (object, "kind", kinds[member->kind]);
  json_object_set_boolean_member (object, "required", member->is_required);
  if (member->limit != NULL)
    {
      bs_json_set_number (object, "least", member->limit->least);
      bs_json_set_number (object, "most", member->limit->most);
    }
  if (member->choices != NULL)
    {
      JsonArray *choices = json_array_new ();
      for (guint i = 0; member->choices[i] != NULL; i++)
        json_array_add_string_element (choices, member->choices[i]);
      json_object_set_array_member (object, "choices", choices);
    }
  if (member->max_length > 0)
    json_object_set_int_member (object, "max_length", member->max_length);
  if (member->shape != NULL)
    json_object_set_object_member (object, "fields", describe_shape (member->shape));
  return object;
}

static JsonObject *
describe_shape (const BsShape *shape)
{
  JsonObject *object = json_object_new ();

  for (const BsMember *member = shape->members; member->key != NULL; member++)
    json_object_set_object_member (object, member->key, describe_member (member));
  return object;
}

int
main (void)
{
  g_autoptr (JsonObject) object = describe_shape (&bs_plan_shape);
  g_autofree char *text = bs_json_write (object);

  g_print ("%s", text);
  return 0;
}
