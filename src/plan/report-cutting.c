/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "core/sawing-rack.h"
#include "plan/json-text.h"

static const char *const lack_names[] = {
  [BS_SAW_LACK_NONE] = "room",   [BS_SAW_LACK_USED] = "used",
  [BS_SAW_LACK_WOOD] = "wood",   [BS_SAW_LACK_LENGTH] = "length",
  [BS_SAW_LACK_WIDTH] = "width", [BS_SAW_LACK_THICKNESS] = "thickness",
};

static JsonArray *
report_passes (const BsSawing *sawing)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < sawing->passes->len; i++)
    {
      const BsSawPass *pass = &g_array_index (sawing->passes, BsSawPass, i);
      JsonObject *object = json_object_new ();

      bs_json_set_text (object, "pass", pass->is_rip ? "rip" : "crosscut");
      bs_json_set_number (object, "at_mm", pass->at);
      bs_json_set_number (object, "from_mm", pass->from);
      bs_json_set_number (object, "to_mm", pass->to);
      json_array_add_object_element (array, object);
    }
  return array;
}

static JsonArray *
report_pieces (const BsSawnBoard *sawn, const BsPlan *plan)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < sawn->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (plan->cuts, BsCut, g_array_index (sawn->cuts, guint, i));
      JsonObject *object = json_object_new ();

      bs_json_set_text (object, "piece", cut->piece);
      bs_json_set_number (object, "x_mm", cut->x);
      bs_json_set_number (object, "y_mm", cut->y);
      bs_json_set_number (object, "length_mm", cut->length);
      bs_json_set_number (object, "width_mm", cut->width);
      bs_json_set_number (object, "planes_to_mm",
                          bs_saw_reach (plan, sawn->board, cut->length, cut->width));
      json_array_add_object_element (array, object);
    }
  return array;
}

static JsonArray *
report_boards (const BsSawRack *rack, const BsPlan *plan)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < rack->boards->len; i++)
    {
      const BsSawnBoard *sawn = rack->boards->pdata[i];
      const BsSawing *sawing = sawn->sawing;
      JsonObject *object;

      if (sawn->cuts->len == 0)
        continue;
      object = json_object_new ();
      bs_json_set_text (object, "board", sawn->board->id);
      json_object_set_boolean_member (object, "can_be_sawn", sawing->fault == BS_SAW_FAULT_NONE);
      bs_json_set_text (object, "first", sawing->order == BS_CUT_RIP_FIRST ? "rip" : "crosscut");
      json_object_set_array_member (object, "pieces", report_pieces (sawn, plan));
      json_object_set_array_member (object, "passes", report_passes (sawing));
      bs_json_set_number (object, "offcut_mm", sawing->offcut_to - sawing->offcut_from);
      json_array_add_object_element (array, object);
    }
  return array;
}

static JsonArray *
report_missing (const BsPlan *plan)
{
  JsonArray *array = json_array_new ();
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);

  for (guint i = 0; i < wishes->len; i++)
    {
      const BsSawWish *wish = &g_array_index (wishes, BsSawWish, i);
      int missing = bs_saw_count_missing (plan, wish);
      JsonObject *object;

      if (missing == 0)
        continue;
      object = json_object_new ();
      bs_json_set_text (object, "piece", wish->id);
      json_object_set_int_member (object, "count", missing);
      bs_json_set_text (object, "lacks", lack_names[bs_saw_lack (plan, wish).kind]);
      json_array_add_object_element (array, object);
    }
  return array;
}

JsonObject *
bs_report_cutting (const BsPlan *plan)
{
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  JsonObject *object = json_object_new ();

  json_object_set_int_member (object, "boards_taken", rack->n_taken);
  json_object_set_int_member (object, "price_minor", rack->price_minor);
  bs_json_set_number (object, "area_mm2", rack->area);
  bs_json_set_number (object, "pieces_mm2", rack->piece_area);
  bs_json_set_number (object, "kerfs_mm2", rack->kerf_area);
  bs_json_set_number (object, "offcuts_mm2", rack->offcut_area);
  bs_json_set_number (object, "waste_mm2", rack->waste_area);
  json_object_set_array_member (object, "boards", report_boards (rack, plan));
  json_object_set_array_member (object, "missing", report_missing (plan));
  return object;
}
