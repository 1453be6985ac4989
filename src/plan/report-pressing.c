/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "core/clamps.h"
#include "plan/json-text.h"

#include <math.h>

static const char *const model_names[] = {
  [BS_PRESS_MODEL_SQUEEZE] = "squeeze",
  [BS_PRESS_MODEL_TIMOSHENKO] = "timoshenko",
};

static const char *const status_names[] = {
  [BS_LAYOUT_REACHED] = "reached", [BS_LAYOUT_SHORT] = "short",  [BS_LAYOUT_CRUSHES] = "crushes",
  [BS_LAYOUT_NO_CLAMPS] = "none",  [BS_LAYOUT_STOPPED] = "none",
};

static JsonArray *
report_set_clamps (const BsResults *results)
{
  const GPtrArray *kinds = results->stack->plan->shop.clamps;
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < results->set_clamps->len; i++)
    {
      const BsLayoutClamp *clamp = &g_array_index (results->set_clamps, BsLayoutClamp, i);
      const BsClampKind *kind = g_ptr_array_index (kinds, clamp->kind);
      JsonObject *object = json_object_new ();

      bs_json_set_text (object, "kind", kind->id);
      bs_json_set_number (object, "x_mm", clamp->x);
      bs_json_set_number (object, "force_N", clamp->force);
      bs_json_set_number (object, "torque_Nmm", bs_clamps_torque (kind, clamp->force));
      json_object_set_boolean_member (object, "is_above", clamp->is_above);
      json_object_set_int_member (object, "turn", clamp->turn + 1);
      json_array_add_object_element (array, object);
    }
  return array;
}

static JsonArray *
report_lines (const BsPressure *pressure, const BsResults *results)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < bs_pressure_get_n_lines (pressure); i++)
    {
      const BsPressLine *line = bs_pressure_get_line (pressure, i);
      JsonObject *object = json_object_new ();

      bs_json_set_text (object, "lamination", bs_report_id_at (results, (int)i));
      bs_json_set_text (object, "neighbour", bs_report_id_at (results, (int)i + 1));
      bs_json_set_number (object, "least_MPa", line->least_mpa);
      bs_json_set_number (object, "least_x_mm", line->least_x);
      bs_json_set_number (object, "greatest_MPa", line->greatest_mpa);
      bs_json_set_number (object, "greatest_x_mm", line->greatest_x);
      bs_json_set_number (object, "mean_MPa", line->mean_mpa);
      bs_json_set_number (object, "open_mm", line->open_length);
      json_array_add_object_element (array, object);
    }
  return array;
}

static void
set_pressures (JsonObject *object, const BsPressure *pressure, const BsResults *results)
{
  const BsLayout *layout = &pressure->layout;
  double strength = pressure->press.problem.most_mpa;

  bs_json_set_number (object, "least_MPa", layout->least_mpa);
  bs_json_set_number (object, "greatest_MPa", layout->greatest_mpa);
  bs_json_set_number (object, "mean_MPa", layout->mean_mpa);
  bs_json_set_number (object, "mean_possible_MPa", layout->mean_possible_mpa);
  bs_json_set_number (object, "strength_MPa", isinf (strength) ? NAN : strength);
  bs_json_set_number (object, "head_stress_MPa", pressure->head_stress_mpa);
  bs_json_set_number (object, "below_mm", pressure->below_length);
  bs_json_set_number (object, "open_mm", pressure->open_length);
  bs_json_set_number (object, "crushed_mm", pressure->crushed_length);
  json_object_set_array_member (object, "lines", report_lines (pressure, results));
}

JsonObject *
bs_report_pressing (const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  g_autoptr (BsPressure) pressure = bs_pressure_new_quick (plan);
  JsonObject *object = json_object_new ();

  bs_pressure_explain (pressure);
  bs_json_set_text (object, "model", model_names[pressure->press.problem.stack.model]);
  bs_json_set_text (object, "status", status_names[pressure->layout.status]);
  bs_json_set_number (object, "wanted_MPa", plan->adhesive.min_pressure_mpa);
  if (pressure->state == BS_PRESSURE_OF_SET_CLAMPS)
    set_pressures (object, pressure, results);
  json_object_set_boolean_member (object, "are_placed", plan->placed_clamps->len > 0);
  json_object_set_array_member (object, "clamps", report_set_clamps (results));
  json_object_set_object_member (object, "working", bs_report_working (&pressure->why));
  return object;
}
