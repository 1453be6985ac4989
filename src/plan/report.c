/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "plan/format.h"
#include "plan/json-text.h"
#include "plan/report.h"
#include "words/words.h"

#define REPORT_FORMAT "broadstave-report"
#define REPORT_VERSION 1

const char *
bs_report_id_at (const BsResults *results, int place)
{
  const BsStack *stack = results->stack;

  return place >= 0 && place < (int)stack->n ? stack->placed[place].lamination->id : NULL;
}

static JsonObject *
report_stack (const BsStack *stack)
{
  JsonObject *object = json_object_new ();

  json_object_set_int_member (object, "laminations", stack->n);
  bs_json_set_number (object, "rough_length_mm", stack->length);
  bs_json_set_number (object, "rough_width_mm", stack->width);
  bs_json_set_number (object, "rough_height_mm", stack->height);
  return object;
}

static JsonArray *
report_order (const BsStack *stack)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < stack->n; i++)
    {
      const BsPlaced *placed = &stack->placed[i];
      JsonObject *object = json_object_new ();

      bs_json_set_text (object, "lamination", placed->lamination->id);
      bs_json_set_text (object, "label", placed->lamination->label);
      bs_json_set_text (object, "orientation", bs_orientation_names[placed->orientation]);
      bs_json_set_number (object, "x_mm", placed->x);
      bs_json_set_number (object, "y_mm", placed->y);
      json_array_add_object_element (array, object);
    }
  return array;
}

/* Keys of the terms, in points. */
static JsonObject *
report_order_cost (const BsOrderCost *cost)
{
  static const char *const names[BS_N_ORDER_TERMS] = {
    [BS_ORDER_TERM_SHOW_FACE] = "defects_on_show_face",
    [BS_ORDER_TERM_OTHER_FACES] = "defects_on_other_faces",
    [BS_ORDER_TERM_PLANING] = "planing_against",
    [BS_ORDER_TERM_HEARTS] = "hearts_alike",
    [BS_ORDER_TERM_COLOUR] = "steps_of_colour",
    [BS_ORDER_TERM_BOW] = "bows_unbalanced",
    [BS_ORDER_TERM_OPEN_ENDS] = "ends_open",
    [BS_ORDER_TERM_CROOK] = "steps_from_crook",
    [BS_ORDER_TERM_MOISTURE] = "moisture_apart",
    [BS_ORDER_TERM_MEETING] = "defects_meeting",
  };
  JsonObject *object = json_object_new ();

  bs_json_set_number (object, "total", cost->total / (double)BS_ORDER_POINT);
  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    bs_json_set_number (object, names[i], cost->terms[i] / (double)BS_ORDER_POINT);
  return object;
}

static JsonObject *
report_clamps (const BsClampRule *clamps)
{
  JsonObject *object = json_object_new ();
  JsonArray *positions = json_array_new ();

  for (guint i = 0; i < clamps->positions->len; i++)
    bs_json_add_number (positions, g_array_index (clamps->positions, double, i));

  bs_json_set_number (object, "glue_line_area_mm2", clamps->area);
  bs_json_set_number (object, "pressure_MPa", clamps->pressure_mpa);
  bs_json_set_number (object, "reached_MPa", clamps->reached_mpa);
  bs_json_set_number (object, "force_N", clamps->force_n);
  bs_json_set_number (object, "force_fitting_N", clamps->force_fitting_n);
  bs_json_set_number (object, "count", clamps->n);
  bs_json_set_number (object, "count_by_force", clamps->n_by_force);
  bs_json_set_number (object, "count_by_spacing", clamps->n_by_spacing);
  bs_json_set_number (object, "count_fitting", clamps->n_fitting);
  bs_json_set_number (object, "spacing_mm", clamps->spacing);
  bs_json_set_number (object, "reach_needed_mm", clamps->reach_needed);
  bs_json_set_number (object, "caul_thickness_mm", clamps->caul_thickness);
  bs_json_set_number (object, "head_width_mm", clamps->head_width);
  bs_json_set_number (object, "head_stress_MPa", clamps->head_stress_mpa);
  bs_json_set_number (object, "head_strength_MPa", clamps->head_strength_mpa);
  json_object_set_array_member (object, "positions_mm", positions);
  return object;
}

static JsonObject *
report_assembly (const BsAssembly *assembly)
{
  JsonObject *object = json_object_new ();

  bs_json_set_number (object, "total_s", assembly->total_s);
  bs_json_set_number (object, "limit_s", assembly->limit_s);
  bs_json_set_number (object, "left_s", assembly->left_s);
  bs_json_set_number (object, "open_s", assembly->open_s);
  bs_json_set_number (object, "open_limit_s", assembly->open_limit_s);
  bs_json_set_number (object, "closed_s", assembly->closed_s);
  bs_json_set_number (object, "in_clamps_s", assembly->clamp_s);
  return object;
}

static JsonArray *
report_cautions (const BsResults *results)
{
  g_auto (GStrv) cautions = bs_words_cautions (results->stack->plan, results);
  JsonArray *array = json_array_new ();

  for (guint i = 0; cautions[i] != NULL; i++)
    json_array_add_string_element (array, cautions[i]);
  return array;
}

char *
bs_report_write (const BsResults *results, const GArray *photo_problems)
{
  const BsPlan *plan = results->stack->plan;
  g_autoptr (JsonObject) object = json_object_new ();

  bs_json_set_text (object, "format", REPORT_FORMAT);
  json_object_set_int_member (object, "version", REPORT_VERSION);
  bs_json_set_text (object, "plan", plan->name);
  bs_json_set_text (object, "worst_severity", bs_severity_names[bs_results_worst (results)]);
  bs_json_set_number (object, "final_thickness_mm", results->flatten.thickness);
  bs_json_set_number (object, "wanted_thickness_mm", plan->slab.thickness);
  bs_json_set_number (object, "mass_kg", results->mass_kg);
  bs_json_set_number (object, "glue_kg", results->glue_kg);
  bs_json_set_number (object, "emc_low_pct", results->emc_low_pct);
  bs_json_set_number (object, "emc_high_pct", results->emc_high_pct);
  json_object_set_object_member (object, "stack", report_stack (results->stack));
  json_object_set_object_member (object, "flattening", bs_report_flattening (results));
  json_object_set_object_member (object, "clamps", report_clamps (&results->clamps));
  json_object_set_object_member (object, "pressing", bs_report_pressing (results));
  json_object_set_object_member (object, "assembly", report_assembly (&results->assembly));
  json_object_set_object_member (object, "cutting", bs_report_cutting (results->stack->plan));
  json_object_set_object_member (object, "schedule", bs_report_schedule (results));
  json_object_set_object_member (object, "movement", bs_report_movement (results));
  json_object_set_object_member (object, "cost", bs_report_cost (results));
  json_object_set_array_member (object, "woods", bs_report_woods (results));
  json_object_set_array_member (object, "boards", bs_report_boards (results));
  json_object_set_array_member (object, "loads", bs_report_loads (results));
  json_object_set_object_member (object, "buying", bs_report_buying (results));
  json_object_set_array_member (object, "order", report_order (results->stack));
  json_object_set_object_member (object, "order_cost", report_order_cost (&results->order));
  json_object_set_array_member (object, "findings", bs_report_findings (results, photo_problems));
  json_object_set_object_member (object, "workings", bs_report_workings (results));
  json_object_set_array_member (object, "cautions", report_cautions (results));
  return bs_json_write (object);
}
