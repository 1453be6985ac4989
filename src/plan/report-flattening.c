/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "core/flatten-map.h"
#include "core/flatten.h"
#include "core/forecast.h"
#include "plan/format.h"
#include "plan/json-text.h"

static JsonArray *
report_touches (const BsResults *results)
{
  const BsFlattenResult *flatten = &results->flatten;
  JsonArray *touches = json_array_new ();

  for (guint i = 0; i < flatten->n_touches; i++)
    {
      const BsTouch *touch = &flatten->touches[i];
      JsonObject *spot = json_object_new ();

      bs_json_set_text (spot, "lamination", bs_report_id_at (results, touch->place));
      bs_json_set_number (spot, "x_mm", touch->x);
      bs_json_set_number (spot, "y_mm", touch->y);
      bs_json_set_text (spot, "face",
                        bs_face_names[touch->is_top ? BS_FACE_TOP : BS_FACE_UNDERSIDE]);
      json_array_add_object_element (touches, spot);
    }
  return touches;
}

static JsonArray *
report_works (const BsResults *results)
{
  JsonArray *works = json_array_new ();

  for (int i = 0; i < BS_N_FLATTEN_WORKS; i++)
    {
      JsonObject *work = json_object_new ();
      BsFlattenResult result;

      bs_flatten_by (results->stack, (BsFlattenWork)i, &result);
      bs_json_set_text (work, "flatten_work", bs_flatten_work_keys[i]);
      bs_json_set_number (work, "thickness_mm", result.thickness);
      bs_json_set_number (work, "off_top_most_mm", result.top_most);
      bs_json_set_number (work, "off_underside_most_mm", result.underside_most);
      json_array_add_object_element (works, work);
    }
  return works;
}

static void
add_deep_spots (JsonArray *array, const BsResults *results, const BsDeepSpots *deep, BsFace face)
{
  for (guint i = 0; i < deep->n; i++)
    {
      const BsDeepSpot *at = &deep->spots[i];
      JsonObject *spot = json_object_new ();

      bs_json_set_text (spot, "lamination", bs_report_id_at (results, at->place));
      bs_json_set_text (spot, "face", bs_face_names[face]);
      bs_json_set_number (spot, "x_mm", at->x);
      bs_json_set_number (spot, "y_mm", at->y);
      bs_json_set_number (spot, "depth_mm", at->depth);
      json_array_add_object_element (array, spot);
    }
}

static JsonArray *
report_deep_spots (const BsResults *results)
{
  /* The spots are exact and no cells of the map: one of those is enough. */
  g_autoptr (BsFlattenMap) map
      = bs_flatten_map_new (results->stack, results->stack->plan->slab.flatten_work, 1, 1);
  JsonArray *array = json_array_new ();

  add_deep_spots (array, results, &map->deep_top, BS_FACE_TOP);
  add_deep_spots (array, results, &map->deep_underside, BS_FACE_UNDERSIDE);
  return array;
}

static JsonArray *
report_shims (const BsResults *results)
{
  JsonArray *array = json_array_new ();
  double shims[BS_N_CORNERS];

  bs_flatten_shims (results->stack, &results->flatten, shims);
  for (int i = 0; i < BS_N_CORNERS; i++)
    bs_json_add_number (array, shims[i]);
  return array;
}

static JsonObject *
report_odds (const BsResults *results)
{
  g_autoptr (BsForecast) forecast = bs_forecast_new (results->stack->plan, NULL);
  const BsFlattenOdds *odds = &forecast->odds;
  JsonObject *object = json_object_new ();

  bs_json_set_number (object, "at_50_pct_mm", odds->at_50_pct);
  bs_json_set_number (object, "at_90_pct_mm", odds->at_90_pct);
  bs_json_set_number (object, "at_95_pct_mm", odds->at_95_pct);
  bs_json_set_number (object, "wanted_pct", odds->wanted_pct);
  bs_json_set_number (object, "height_needed_mm", forecast->height_needed);
  return object;
}

JsonObject *
bs_report_flattening (const BsResults *results)
{
  const BsFlattenResult *flatten = &results->flatten;
  const BsPlan *plan = results->stack->plan;
  JsonObject *object = json_object_new ();

  bs_json_set_text (object, "flatten_work", bs_flatten_work_keys[plan->slab.flatten_work]);
  bs_json_set_number (object, "off_top_least_mm", flatten->top_least);
  bs_json_set_number (object, "off_top_most_mm", flatten->top_most);
  bs_json_set_number (object, "off_underside_least_mm", flatten->underside_least);
  bs_json_set_number (object, "off_underside_most_mm", flatten->underside_most);
  bs_json_set_number (object, "slope_x_mm_per_mm", flatten->slope_x);
  bs_json_set_number (object, "slope_y_mm_per_mm", flatten->slope_y);
  bs_json_set_number (object, "offset_mm", flatten->offset);
  json_object_set_array_member (object, "touches", report_touches (results));
  json_object_set_array_member (object, "shims_mm", report_shims (results));
  json_object_set_array_member (object, "deepest_spots", report_deep_spots (results));
  json_object_set_array_member (object, "by_work", report_works (results));
  json_object_set_object_member (object, "how_sure", report_odds (results));
  json_object_set_int_member (
      object, "packs_for_planer",
      bs_flatten_packs_for_planer (results->stack, plan->shop.planer_width));
  return object;
}
