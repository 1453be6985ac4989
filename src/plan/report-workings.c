/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "config.h"
#include "plan/json-text.h"

#include <glib/gi18n-lib.h>

static const char *const unit_names[] = {
  [BS_QUANTITY_LENGTH] = "mm",        [BS_QUANTITY_FINE_LENGTH] = "mm",
  [BS_QUANTITY_AREA] = "mm2",         [BS_QUANTITY_VOLUME] = "mm3",
  [BS_QUANTITY_FORCE] = "N",          [BS_QUANTITY_LINE_FORCE] = "N/mm",
  [BS_QUANTITY_PRESSURE] = "MPa",     [BS_QUANTITY_TORQUE] = "N mm",
  [BS_QUANTITY_TIME] = "s",           [BS_QUANTITY_MASS] = "kg",
  [BS_QUANTITY_DENSITY] = "kg/m3",    [BS_QUANTITY_SPREAD] = "g/m2",
  [BS_QUANTITY_SPREAD_TIME] = "s/m2", [BS_QUANTITY_TEMPERATURE] = "C",
  [BS_QUANTITY_PERCENT] = "%",        [BS_QUANTITY_COUNT] = "1",
  [BS_QUANTITY_RATIO] = "1",          [BS_QUANTITY_MONEY] = "minor",
};

/* The texts of the core are message ids; an empty one would be answered with the catalogue's
 * header. */
static void
set_message (JsonObject *object, const char *key, const char *id)
{
  if (id != NULL && *id != '\0')
    bs_json_set_text (object, key, _ (id));
}

static JsonObject *
report_term (const BsTerm *term)
{
  JsonObject *object = json_object_new ();

  bs_json_set_text (object, "symbol", term->symbol);
  set_message (object, "name", term->name);
  bs_json_set_number (object, "value", term->value);
  bs_json_set_text (object, "unit", unit_names[term->quantity]);
  set_message (object, "source", term->source);
  return object;
}

JsonObject *
bs_report_working (const BsWorking *working)
{
  JsonObject *object = json_object_new ();
  JsonArray *terms = json_array_new ();

  for (guint i = 0; i < working->n_terms; i++)
    json_array_add_object_element (terms, report_term (&working->terms[i]));

  set_message (object, "title", working->title);
  set_message (object, "explanation", working->explanation);
  bs_json_set_text (object, "formula", working->formula);
  bs_json_set_number (object, "value", working->value);
  bs_json_set_text (object, "unit", unit_names[working->quantity]);
  bs_json_set_number (object, "low", working->low);
  bs_json_set_number (object, "high", working->high);
  set_message (object, "certainty", working->certainty);
  json_object_set_array_member (object, "terms", terms);
  return object;
}

JsonObject *
bs_report_workings (const BsResults *results)
{
  JsonObject *object = json_object_new ();

  json_object_set_object_member (object, "thickness", bs_report_working (&results->why_thickness));
  json_object_set_object_member (object, "force", bs_report_working (&results->why_force));
  json_object_set_object_member (object, "clamps", bs_report_working (&results->why_clamps));
  json_object_set_object_member (object, "time", bs_report_working (&results->why_time));
  json_object_set_object_member (object, "mass", bs_report_working (&results->why_mass));
  json_object_set_object_member (object, "moisture", bs_report_working (&results->why_moisture));
  json_object_set_object_member (object, "width_movement",
                                 bs_report_working (&results->why_width_movement));
  json_object_set_object_member (object, "thickness_movement",
                                 bs_report_working (&results->why_thickness_movement));
  json_object_set_object_member (object, "cup", bs_report_working (&results->why_cup));
  json_object_set_object_member (object, "cost", bs_report_working (&results->why_cost));
  json_object_set_object_member (object, "glue", bs_report_working (&results->why_glue));
  json_object_set_object_member (object, "waste", bs_report_working (&results->why_waste));
  json_object_set_object_member (object, "lifting", bs_report_working (&results->why_lifting));
  json_object_set_object_member (object, "order", bs_report_working (&results->why_order));
  return object;
}
