/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/json-text.h"

#include <math.h>
#include <string.h>

/* Of a line that is not broken, indent included. */
#define LINE_WIDTH 100

static void write_node (GString *text, JsonNode *node, guint indent, gboolean on_one_line);

static void
write_string (GString *text, const char *value)
{
  static const char meant[] = "\"\\\b\f\n\r\t";
  static const char names[] = "\"\\bfnrt";

  g_string_append_c (text, '"');
  for (const char *p = value; *p != '\0'; p++)
    {
      const char *special = strchr (meant, *p);
      if (special != NULL)
        g_string_append_printf (text, "\\%c", names[special - meant]);
      else if ((guchar)*p < 0x20)
        g_string_append_printf (text, "\\u%04x", (guint)*p);
      else
        g_string_append_c (text, *p);
    }
  g_string_append_c (text, '"');
}

static gboolean
has_same_bits (double a, double b)
{
  guint64 first = 0;
  guint64 second = 0;

  memcpy (&first, &a, sizeof a);
  memcpy (&second, &b, sizeof b);
  return first == second;
}

/* Keeps its point, so that it is read as a double again. */
static void
write_double (GString *text, double value)
{
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      const double back
          = g_ascii_strtod (g_ascii_formatd (digits, sizeof digits, formats[i], value), NULL);
      if (has_same_bits (back, value))
        break;
    }
  g_string_append (text, digits);
  if (strpbrk (digits, ".e") == NULL)
    g_string_append (text, ".0");
}

static void
write_value (GString *text, JsonNode *node)
{
  if (JSON_NODE_HOLDS_NULL (node))
    g_string_append (text, "null");
  else if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    g_string_append (text, json_node_get_boolean (node) ? "true" : "false");
  else if (json_node_get_value_type (node) == G_TYPE_STRING)
    write_string (text, json_node_get_string (node));
  else if (json_node_get_value_type (node) == G_TYPE_INT64)
    g_string_append_printf (text, "%" G_GINT64_FORMAT, json_node_get_int (node));
  else
    write_double (text, json_node_get_double (node));
}

static gboolean
is_container (JsonNode *node)
{
  return JSON_NODE_HOLDS_OBJECT (node) || JSON_NODE_HOLDS_ARRAY (node);
}

static gboolean
has_containers (JsonNode *node)
{
  g_autoptr (GList) values = JSON_NODE_HOLDS_OBJECT (node)
                                 ? json_object_get_values (json_node_get_object (node))
                                 : json_array_get_elements (json_node_get_array (node));
  for (GList *l = values; l != NULL; l = l->next)
    if (is_container (l->data))
      return TRUE;
  return FALSE;
}

static void
break_line (GString *text, guint indent, gboolean on_one_line)
{
  if (on_one_line)
    g_string_append_c (text, ' ');
  else
    g_string_append_printf (text, "\n%*s", (int)indent, "");
}

static void
write_object (GString *text, JsonObject *object, guint indent, gboolean on_one_line)
{
  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *value = NULL;
  gboolean is_first = TRUE;

  g_string_append_c (text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &value))
    {
      if (!is_first)
        g_string_append_c (text, ',');
      is_first = FALSE;
      break_line (text, indent + 2, on_one_line);
      write_string (text, key);
      g_string_append (text, ": ");
      write_node (text, value, indent + 2, on_one_line);
    }
  if (!is_first)
    break_line (text, indent, on_one_line);
  g_string_append_c (text, '}');
}

static void
write_array (GString *text, JsonArray *array, guint indent, gboolean on_one_line)
{
  const guint length = json_array_get_length (array);

  g_string_append_c (text, '[');
  for (guint i = 0; i < length; i++)
    {
      if (i > 0)
        g_string_append_c (text, ',');
      if (i > 0 || !on_one_line)
        break_line (text, indent + 2, on_one_line);
      write_node (text, json_array_get_element (array, i), indent + 2, on_one_line);
    }
  if (length > 0 && !on_one_line)
    break_line (text, indent, on_one_line);
  g_string_append_c (text, ']');
}

static void
write_container (GString *text, JsonNode *node, guint indent, gboolean on_one_line)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    write_object (text, json_node_get_object (node), indent, on_one_line);
  else
    write_array (text, json_node_get_array (node), indent, on_one_line);
}

/* How many characters the last line of a text has, as a person counts them. */
static glong
count_last_line (const GString *text)
{
  const char *line = strrchr (text->str, '\n');
  return g_utf8_strlen (line != NULL ? line + 1 : text->str, -1);
}

static void
write_node (GString *text, JsonNode *node, guint indent, gboolean on_one_line)
{
  if (!is_container (node))
    {
      write_value (text, node);
      return;
    }
  if (on_one_line || has_containers (node))
    {
      write_container (text, node, indent, on_one_line);
      return;
    }

  const gsize start = text->len;
  write_container (text, node, indent, TRUE);
  if (count_last_line (text) >= LINE_WIDTH)
    {
      g_string_truncate (text, start);
      write_container (text, node, indent, FALSE);
    }
}

/* The whole document is broken into lines even where it is short. */
char *
bs_json_write (JsonObject *object)
{
  GString *text = g_string_new (NULL);

  write_object (text, object, 0, FALSE);
  g_string_append_c (text, '\n');
  return g_string_free (text, FALSE);
}

static JsonNode *
new_number (double value)
{
  const double largest_exact = 9007199254740992.0; /* 2^53 */
  JsonNode *node = json_node_alloc ();

  if (!signbit (value) == !(value < 0.0) && fabs (value) <= largest_exact && floor (value) >= value)
    return json_node_init_int (node, (gint64)value);
  return json_node_init_double (node, value);
}

void
bs_json_set_number (JsonObject *object, const char *key, double value)
{
  if (isfinite (value))
    json_object_set_member (object, key, new_number (value));
}

void
bs_json_add_number (JsonArray *array, double value)
{
  if (isfinite (value))
    json_array_add_element (array, new_number (value));
}

void
bs_json_set_text (JsonObject *object, const char *key, const char *value)
{
  if (value != NULL)
    json_object_set_string_member (object, key, value);
}
