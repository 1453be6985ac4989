/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report-private.h"

#include "core/purchase.h"
#include "plan/json-text.h"

static JsonArray *
report_lines (const BsPurchase *purchase)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < purchase->lines->len; i++)
    {
      const BsPurchaseLine *line = &g_array_index (purchase->lines, BsPurchaseLine, i);
      const BsOffer *offer = g_ptr_array_index (purchase->plan->offers, line->offer);
      JsonObject *object = json_object_new ();

      bs_json_set_text (object, "offer", offer->id);
      json_object_set_int_member (object, "boards", line->count);
      bs_json_set_number (object, "length_mm", line->length);
      bs_json_set_number (object, "width_mm", line->width);
      bs_json_set_number (object, "paid_width_mm", line->paid_width);
      bs_json_set_number (object, "board_feet", line->board_feet);
      bs_json_set_number (object, "volume_mm3", line->volume);
      json_object_set_int_member (object, "price_minor", line->price_minor);
      json_array_add_object_element (array, object);
    }
  return array;
}

static JsonArray *
report_wanted (const BsPurchase *purchase)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < purchase->wanted->len; i++)
    {
      const BsWant *want = &g_array_index (purchase->wanted, BsWant, i);
      const BsShortfall *shortfall = &g_array_index (purchase->shortfalls, BsShortfall, i);
      JsonObject *object = json_object_new ();

      bs_json_set_text (object, "what", want->is_lamination ? "lamination" : "part");
      bs_json_set_text (object, "name", want->name);
      json_object_set_int_member (object, "needed", want->needed);
      json_object_set_int_member (object, "sawn", want->count);
      json_object_set_int_member (object, "missing", shortfall->n_missing);
      bs_json_set_number (object, "rough_thickness_mm", want->need.thickness);
      bs_json_set_number (object, "rough_width_mm", want->need.width);
      bs_json_set_number (object, "rough_length_mm", want->need.length);
      json_array_add_object_element (array, object);
    }
  return array;
}

static JsonArray *
report_offcuts (const BsPurchase *purchase)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; i < purchase->offcuts->len; i++)
    {
      const BsPurchaseOffcut *offcut = &g_array_index (purchase->offcuts, BsPurchaseOffcut, i);
      JsonObject *object = json_object_new ();

      bs_json_set_number (object, "length_mm", offcut->length);
      bs_json_set_number (object, "width_mm", offcut->width);
      json_array_add_object_element (array, object);
    }
  return array;
}

JsonObject *
bs_report_buying (const BsResults *results)
{
  const BsPlan *plan = results->stack->plan;
  JsonObject *object = json_object_new ();

  if (plan->offers->len == 0)
    return object;
  g_autoptr (BsPurchase) purchase = bs_purchase_new (plan, BS_PURCHASE_QUICK_ROUNDS, NULL);
  bs_json_set_number (object, "price_minor", bs_purchase_get_price (purchase));
  if (purchase->cuts != NULL)
    bs_json_set_number (object, "price_bound_minor", (double)purchase->cuts->bound_minor);
  json_object_set_int_member (object, "boards", purchase->n_boards);
  json_object_set_int_member (object, "boards_of_rack", purchase->n_rack);
  bs_json_set_number (object, "board_feet", purchase->board_feet);
  bs_json_set_number (object, "volume_mm3", purchase->bought_volume);
  bs_json_set_number (object, "waste_pct", bs_purchase_get_waste_pct (purchase));
  bs_json_set_number (object, "extra_pct", bs_purchase_get_extra_pct (purchase));
  json_object_set_array_member (object, "to_buy", report_lines (purchase));
  json_object_set_array_member (object, "wanted", report_wanted (purchase));
  json_object_set_array_member (object, "offcuts", report_offcuts (purchase));
  bs_json_set_text (object, "problem", purchase->problem);
  return object;
}
