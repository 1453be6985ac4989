/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "core/schedule.h"
#include "core/stages-remedy.h"
#include "plan/json-text.h"

static const char *const limit_names[BS_N_STAGE_LIMITS] = {
  [BS_STAGE_LIMIT_NONE] = NULL,
  [BS_STAGE_LIMIT_OPEN] = "open_time",
  [BS_STAGE_LIMIT_CLOSED] = "closed_time",
  [BS_STAGE_LIMIT_TOTAL] = "total_time",
  [BS_STAGE_LIMIT_CLAMPS] = "clamps",
  [BS_STAGE_LIMIT_OPENING] = "opening",
  [BS_STAGE_LIMIT_PLANER] = "planer",
  [BS_STAGE_LIMIT_WEIGHT] = "weight",
  [BS_STAGE_LIMIT_ROUNDS] = "rounds",
};

static const char *const remedy_names[BS_N_STAGES_REMEDY_KINDS] = {
  [BS_STAGES_REMEDY_SMALLER_PACKS] = "most_pieces_in_a_press",
  [BS_STAGES_REMEDY_SLOWER_ADHESIVE] = "adhesive_time_ratio",
  [BS_STAGES_REMEDY_MORE_PEOPLE] = "people",
  [BS_STAGES_REMEDY_COOLER_SHOP] = "shop_temperature_C",
  [BS_STAGES_REMEDY_MORE_CLAMPS] = "clamps",
  [BS_STAGES_REMEDY_LONGER_CLAMPS] = "clamp_reach_mm",
  [BS_STAGES_REMEDY_WIDER_PLANER] = "planer_width_mm",
};

/* Laminations where the pieces begin, by their ids. */
static JsonArray *
report_pieces (const BsResults *results, const BsStage *stage)
{
  JsonArray *pieces = json_array_new ();

  for (int i = 0; i < stage->n_pieces; i++)
    {
      JsonObject *piece = json_object_new ();

      bs_json_set_text (piece, "first", bs_report_id_at (results, stage->bounds[i]));
      bs_json_set_text (piece, "last", bs_report_id_at (results, stage->bounds[i + 1] - 1));
      json_array_add_object_element (pieces, piece);
    }
  return pieces;
}

static JsonObject *
report_press (const BsResults *results, const BsStage *stage)
{
  JsonObject *object = json_object_new ();

  json_object_set_int_member (object, "round", stage->round + 1);
  json_object_set_boolean_member (object, "is_pack", stage->is_pack);
  json_object_set_array_member (object, "pieces", report_pieces (results, stage));
  bs_json_set_number (object, "width_mm", stage->width);
  bs_json_set_number (object, "mass_kg", stage->mass_kg);
  json_object_set_int_member (object, "clamps", stage->n_clamps);
  bs_json_set_number (object, "open_s", stage->times.open_s);
  bs_json_set_number (object, "closed_s", stage->times.closed_s);
  bs_json_set_number (object, "total_s", stage->times.total_s);
  bs_json_set_text (object, "breaks", limit_names[stage->limit]);
  bs_json_set_number (object, "begins_at_s", stage->begin_s);
  bs_json_set_number (object, "tight_at_s", stage->closed_s);
  bs_json_set_number (object, "clamps_off_at_s", stage->released_s);
  bs_json_set_number (object, "planing_at_s", stage->planing_s);
  bs_json_set_number (object, "ready_at_s", stage->end_s);
  return object;
}

static void
set_presses (JsonObject *object, const char *key, const BsResults *results,
             const BsStagesPlan *presses)
{
  JsonObject *way;
  JsonArray *array;

  if (presses == NULL)
    return;
  way = json_object_new ();
  array = json_array_new ();
  for (guint i = 0; i < presses->stages->len; i++)
    json_array_add_object_element (
        array, report_press (results, &g_array_index (presses->stages, BsStage, i)));
  json_object_set_int_member (way, "rounds", presses->n_rounds);
  bs_json_set_number (way, "elapsed_s", presses->elapsed_s);
  bs_json_set_number (way, "imbalance_mm", presses->imbalance);
  json_object_set_array_member (way, "presses", array);
  json_object_set_object_member (object, key, way);
}

static JsonArray *
report_remedies (const BsSchedule *schedule)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < schedule->remedies->len; i++)
    {
      const BsStagesRemedy *remedy = &g_array_index (schedule->remedies, BsStagesRemedy, i);
      JsonObject *object = json_object_new ();

      bs_json_set_number (object, remedy_names[remedy->kind], remedy->value);
      json_array_add_object_element (array, object);
    }
  return array;
}

JsonObject *
bs_report_schedule (const BsResults *results)
{
  g_autoptr (BsSchedule) schedule
      = bs_schedule_new (results->stack->plan, BS_SCHEDULE_BY_RULE, NULL);
  JsonObject *object = json_object_new ();

  if (!schedule->has_job)
    return object;
  bs_json_set_text (object, "clamps_by", "hand_rule");
  json_object_set_boolean_member (object, "is_possible", bs_schedule_is_possible (schedule));
  json_object_set_boolean_member (object, "is_proved", schedule->stages->is_proved);
  bs_json_set_text (object, "in_the_way", limit_names[schedule->stages->limit]);
  bs_json_set_number (object, "open_limit_s", schedule->job.input.open_s);
  bs_json_set_number (object, "total_limit_s", schedule->job.input.total_s);
  set_presses (object, "own", results, schedule->own);
  set_presses (object, "shortest", results, schedule->stages->shortest);
  set_presses (object, "balanced", results, schedule->stages->balanced);
  json_object_set_array_member (object, "remedies", report_remedies (schedule));
  return object;
}
