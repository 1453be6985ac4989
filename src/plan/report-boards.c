/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "core/board-forecast.h"
#include "plan/json-text.h"

static JsonArray *
report_cautions (BsMillingCautions cautions)
{
  static const char *const names[BS_N_MILLING_CAUTIONS]
      = { "wide-for-jointer", "wide-for-planer", "short", "thin", "crooked", "rocks" };
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < BS_N_MILLING_CAUTIONS; i++)
    if ((cautions & (1 << i)) != 0)
      json_array_add_string_element (array, names[i]);
  return array;
}

static JsonObject *
report_board (const BsBoard *board, const BsPlan *plan)
{
  const BsBoardForecast forecast = bs_board_forecast (board, plan);
  JsonObject *object = json_object_new ();

  bs_json_set_text (object, "id", board->id);
  bs_json_set_text (object, "label", board->label);
  bs_json_set_number (object, "finishes_at_mm", forecast.thickness);
  json_object_set_int_member (object, "lengths", forecast.n_lengths);
  json_object_set_int_member (object, "strips", forecast.n_strips);
  bs_json_set_number (object, "strip_width_mm", forecast.width);
  json_object_set_boolean_member (object, "is_measured", forecast.is_measured);
  json_object_set_array_member (object, "milling", report_cautions (forecast.cautions));
  return object;
}

JsonArray *
bs_report_boards (const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < plan->boards->len; i++)
    json_array_add_object_element (array, report_board (plan->boards->pdata[i], plan));
  return array;
}
