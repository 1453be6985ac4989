/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/tables.h"

#include "config.h"
#include "core/text.h"
#include "plan/format.h"
#include "plan/plan-tables.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Mass of wood and water by volume at 12 %, for a specific gravity of 1. */
#define DENSITY_12_KG_PER_M3 1120.0

/* The tables are part of the program: one that cannot be read is a fault of the build, not of the
 * person, so these functions end the program with the reason. */
static JsonArray *
load_rows (const char *file, const char *list)
{
  g_autofree char *path = g_strconcat ("/io/github/broadstave/Broadstave/tables/", file, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = g_resource_lookup_data (bs_tables_get_resource (), path,
                                                     G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  if (bytes == NULL)
    g_error ("%s: %s", file, error->message);

  g_autoptr (JsonParser) parser = json_parser_new ();
  gsize size = 0;
  const char *text = g_bytes_get_data (bytes, &size);
  if (!json_parser_load_from_data (parser, text, (gssize)size, &error))
    g_error ("%s: %s", file, error->message);
  JsonObject *object = json_node_get_object (json_parser_get_root (parser));
  return json_array_ref (json_object_get_array_member (object, list));
}

/* Whether every figure of a row is among those that were read in the source. */
static gboolean
is_all_verified (JsonObject *row, JsonArray *verified)
{
  g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < json_array_get_length (verified); i++)
    g_hash_table_add (names, (char *)json_array_get_string_element (verified, i));

  JsonObjectIter iter;
  const char *key = NULL;
  JsonNode *value = NULL;
  json_object_iter_init (&iter, row);
  while (json_object_iter_next (&iter, &key, &value))
    if (JSON_NODE_HOLDS_VALUE (value) && json_node_get_value_type (value) != G_TYPE_STRING
        && !g_hash_table_contains (names, key))
      return FALSE;
  return TRUE;
}

double
bs_tables_get_sg_of_density (JsonObject *row)
{
  JsonNode *density = json_object_get_member (row, "density_12_kg_per_m3");

  return density != NULL && JSON_NODE_HOLDS_VALUE (density)
             ? json_node_get_double (density) / DENSITY_12_KG_PER_M3
             : NAN;
}

static BsWood *
read_wood (JsonObject *row)
{
  static const BsPath root = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (BsWood) wood = bs_wood_new (json_object_get_string_member (row, "id"));
  const double sg = bs_tables_get_sg_of_density (row);

  wood->is_from_memory = !is_all_verified (row, json_object_get_array_member (row, "verified"));
  if (!bs_shape_read (&bs_wood_shape, row, wood, &root, &error))
    g_error ("woods.json: %s: %s", wood->id, error->message);
  if (isnan (wood->sg_12))
    wood->sg_12 = sg;
  return g_steal_pointer (&wood);
}

const GPtrArray *
bs_tables_get_woods (void)
{
  static GPtrArray *woods;

  if (g_once_init_enter (&woods))
    {
      g_autoptr (JsonArray) rows = load_rows ("woods.json", "woods");
      GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify)bs_wood_unref);
      for (guint i = 0; i < json_array_get_length (rows); i++)
        g_ptr_array_add (list, read_wood (json_array_get_object_element (rows, i)));
      g_once_init_leave (&woods, list);
    }
  return woods;
}

static double
get_least (JsonObject *row, const char *key)
{
  return json_array_get_double_element (json_object_get_array_member (row, key), 0);
}

static double
get_most (JsonObject *row, const char *key)
{
  return json_array_get_double_element (json_object_get_array_member (row, key), 1);
}

/* Of each range the end that is safe to plan with: short times for assembly, a long one in the
 * clamps, a warm room, enough glue. */
static BsAdhesive *
read_adhesive (JsonObject *row)
{
  BsAdhesive *adhesive = g_new0 (BsAdhesive, 1);
  const gboolean is_read
      = json_array_get_length (json_object_get_array_member (row, "verified")) > 0;
  /* Translators: after the citation of a table of figures. */
  g_autofree char *source
      = g_strdup_printf (is_read ? _ ("%s; usual range of the class, partly from memory")
                                 : _ ("%s; usual range of the class, from memory"),
                         json_object_get_string_member (row, "source"));

  bs_text_set (&adhesive->id, json_object_get_string_member (row, "id"));
  bs_text_set (&adhesive->name, json_object_get_string_member (row, "name"));
  bs_text_set (&adhesive->source, source);
  adhesive->open_s = get_least (row, "open_min") * 60.0;
  adhesive->total_s = get_least (row, "total_min") * 60.0;
  adhesive->clamp_s = get_most (row, "clamp_h") * 3600.0;
  adhesive->min_temperature_c = get_most (row, "min_temperature_C");
  adhesive->spread_g_per_m2 = get_most (row, "spread_g_per_m2");
  adhesive->min_pressure_mpa = get_least (row, "pressure_MPa");
  adhesive->max_pressure_mpa = get_most (row, "pressure_MPa");
  adhesive->is_waterborne = json_object_get_boolean_member (row, "is_waterborne");
  adhesive->price_minor_per_kg = NAN;
  adhesive->is_moisture_curing = json_object_get_boolean_member (row, "is_moisture_curing");
  return adhesive;
}

static void
free_adhesive (gpointer data)
{
  bs_adhesive_clear (data);
  g_free (data);
}

const GPtrArray *
bs_tables_get_adhesives (void)
{
  static GPtrArray *adhesives;

  if (g_once_init_enter (&adhesives))
    {
      g_autoptr (JsonArray) rows = load_rows ("adhesives.json", "adhesives");
      GPtrArray *list = g_ptr_array_new_with_free_func (free_adhesive);
      for (guint i = 0; i < json_array_get_length (rows); i++)
        g_ptr_array_add (list, read_adhesive (json_array_get_object_element (rows, i)));
      g_once_init_leave (&adhesives, list);
    }
  return adhesives;
}

const BsWood *
bs_tables_find_wood (const char *id)
{
  const GPtrArray *woods = bs_tables_get_woods ();

  for (guint i = 0; i < woods->len; i++)
    {
      const BsWood *wood = woods->pdata[i];
      if (g_strcmp0 (wood->id, id) == 0)
        return wood;
    }
  return NULL;
}

const BsAdhesive *
bs_tables_find_adhesive (const char *id)
{
  const GPtrArray *adhesives = bs_tables_get_adhesives ();

  for (guint i = 0; i < adhesives->len; i++)
    {
      const BsAdhesive *adhesive = adhesives->pdata[i];
      if (g_strcmp0 (adhesive->id, id) == 0)
        return adhesive;
    }
  return NULL;
}
