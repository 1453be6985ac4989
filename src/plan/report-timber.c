/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "plan/json-text.h"

#include <math.h>

static void
report_seasons (JsonObject *object, const char *size, const BsSeasons *seasons)
{
  const struct
  {
    const char *what;
    double value;
  } rows[] = {
    { "at_gluing", seasons->at_gluing }, { "dry", seasons->dry },
    { "damp", seasons->damp },           { "year", seasons->year },
    { "year_least", seasons->least },    { "year_most", seasons->most },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *key = g_strconcat (size, "_", rows[i].what, "_mm", NULL);
      bs_json_set_number (object, key, rows[i].value);
    }
}

static void
report_cupping (JsonObject *object, const BsCupping *cupping)
{
  if (!cupping->is_on_flat)
    return;
  bs_json_set_number (object, "cup_mm", cupping->as_laid.cup);
  bs_json_set_number (object, "waves_mm", cupping->as_laid.waves);
  bs_json_set_number (object, "waves_same_side_mm", cupping->same_side.waves);
  bs_json_set_number (object, "waves_alternating_mm", cupping->alternating.waves);
}

JsonObject *
bs_report_movement (const BsResults *results)
{
  const BsMovement *movement = &results->movement;
  JsonObject *object = json_object_new ();

  bs_json_set_number (object, "glued_pct", movement->glued_pct);
  report_seasons (object, "width", &movement->width);
  report_seasons (object, "thickness", &movement->thickness);
  bs_json_set_number (object, "step_mm", movement->step);
  bs_json_set_text (object, "step_after", bs_report_id_at (results, movement->step_place));
  json_object_set_int_member (object, "without_rings", movement->n_no_rings);
  report_cupping (object, &results->cupping);
  return object;
}

JsonObject *
bs_report_cost (const BsResults *results)
{
  const BsCost *cost = &results->cost;
  JsonObject *object = json_object_new ();

  bs_json_set_text (object, "currency", results->stack->plan->currency);
  bs_json_set_number (object, "wood_minor", round (cost->wood_minor));
  bs_json_set_number (object, "glue_minor", round (cost->glue_minor));
  bs_json_set_number (object, "total_minor", round (cost->total_minor));
  json_object_set_int_member (object, "without_price", cost->n_unpriced);
  bs_json_set_number (object, "lumber_mm3", cost->gross);
  bs_json_set_number (object, "slab_mm3", cost->net);
  bs_json_set_number (object, "waste_pct", cost->waste_pct);
  return object;
}

JsonArray *
bs_report_loads (const BsResults *results)
{
  static const char *const names[] = { "board", "lamination", "pack", "slab" };
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < BS_N_LOAD_KINDS; i++)
    {
      const BsLoad *load = &results->loads[i];

      if (isnan (load->kg))
        continue;
      JsonObject *object = json_object_new ();
      bs_json_set_text (object, "what", names[i]);
      bs_json_set_text (object, "label", load->label);
      bs_json_set_number (object, "mass_kg", load->kg);
      json_object_set_int_member (object, "people", load->people);
      bs_json_set_number (object, "lifting_index", load->index);
      json_array_add_object_element (array, object);
    }
  return array;
}
