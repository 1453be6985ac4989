/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "core/wood-compare.h"
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

static JsonArray *
report_slots (const GArray *slots)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < slots->len; i++)
    {
      const BsSlot *slot = &g_array_index (slots, BsSlot, i);
      JsonObject *object = json_object_new ();

      bs_json_set_number (object, "distance_mm", slot->distance);
      bs_json_set_number (object, "length_mm", slot->length);
      bs_json_set_number (object, "towards_mm", slot->towards);
      bs_json_set_number (object, "away_mm", slot->away);
      bs_json_set_number (object, "middle_mm", slot->middle);
      json_array_add_object_element (array, object);
    }
  return array;
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
  json_object_set_boolean_member (object, "is_linear", bs_movement_is_linear (movement));
  report_cupping (object, &results->cupping);
  json_object_set_array_member (object, "slots", report_slots (results->slots));
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
  bs_json_set_number (object, "glue_area_mm2", cost->glue_area);
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

static JsonArray *
report_unfit (BsUnfit unfit)
{
  static const char *const names[BS_N_UNFITS]
      = { "soft", "hard", "hardness-unknown", "heavy", "moves", "dear", "bond", "thin" };
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < BS_N_UNFITS; i++)
    if ((unfit & (1U << i)) != 0)
      json_array_add_string_element (array, names[i]);
  return array;
}

JsonArray *
bs_report_woods (const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  const BsWoodWish wish = bs_wood_wish_of (results->stack);
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < plan->woods->len; i++)
    {
      const BsWood *wood = plan->woods->pdata[i];
      const BsWoodCard card
          = bs_wood_compare (wood, &wish, bs_wood_thickest_lumber (plan, wood->id));
      JsonObject *object = json_object_new ();

      bs_json_set_text (object, "id", wood->id);
      bs_json_set_number (object, "side_hardness_N", card.hardness_n);
      json_object_set_boolean_member (object, "is_hardness_estimated", card.is_hardness_estimated);
      bs_json_set_number (object, "density_kg_per_m3", card.density);
      bs_json_set_number (object, "slab_kg", card.slab_kg);
      bs_json_set_number (object, "sag_mm_per_kN", card.sag_per_kn);
      bs_json_set_number (object, "movement_mm", card.movement);
      bs_json_set_number (object, "movement_least_mm", card.movement_low);
      bs_json_set_number (object, "movement_most_mm", card.movement_high);
      bs_json_set_number (object, "cost_minor", round (card.cost_minor));
      bs_json_set_number (object, "thickest_mm", card.thickest);
      json_object_set_array_member (object, "unfit", report_unfit (card.unfit));
      json_array_add_object_element (array, object);
    }
  return array;
}
