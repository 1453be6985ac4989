/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#define _DEFAULT_SOURCE /* symlink (), truncate () */
#include "plan/document.h"

#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* A plan with one of everything; "later" stands for a key of a later version, at every level. */
static const char whole_plan[]
    = "{\"format\": \"broadstave-plan\", \"version\": 1, \"name\": \"Shelf\", \"note\": \"\","
      " \"units\": \"inch\", \"currency\": \"SEK\","
      " \"slab\": {\"length_mm\": 900, \"width_mm\": 80, \"thickness_mm\": 30, \"layup\": "
      "\"on-flat\","
      "  \"dry_season\": {\"temperature_C\": 19.5, \"humidity_pct\": 30, \"later\": 1},"
      "  \"damp_season\": {\"later\": [2]}, \"later\": {\"a\": {}}},"
      " \"shop\": {\"climate\": {\"humidity_pct\": 45, \"later\": 3}, \"people\": 2,"
      "  \"times\": {\"joint_s\": 4, \"later\": 4}, \"later\": 5,"
      "  \"clamps\": [{\"id\": \"bar\", \"name\": \"Bar\", \"count\": 4, \"max_force_N\": 5000,"
      "   \"reach_mm\": 600, \"head_width_mm\": 30, \"head_height_mm\": 25, \"later\": 6}],"
      "  \"cauls\": [{\"id\": \"oak\", \"count\": 2, \"length_mm\": 900, \"thickness_mm\": 40,"
      "   \"height_mm\": 30, \"moe_MPa\": 12000, \"later\": 7}]},"
      " \"adhesive\": {\"id\": \"pva-d3\", \"name\": \"PVA\", \"open_s\": 300, \"total_s\": 600,"
      "  \"clamp_s\": 3600, \"min_temperature_C\": 10, \"spread_g_per_m2\": 180,"
      "  \"min_pressure_MPa\": 0.7, \"max_pressure_MPa\": 1.2, \"later\": 8},"
      " \"woods\": [{\"id\": \"ash\", \"name\": \"Ash\", \"kind\": \"hardwood\", \"sg_12\": 0.6,"
      "  \"later\": 9}],"
      " \"boards\": [{\"id\": \"b1\", \"wood\": \"ash\", \"length_mm\": 2000, \"width_mm\": 200,"
      "  \"thickness_mm\": 50, \"price_minor\": 45000, \"run_out_top\": 1,"
      "  \"run_out_back\": -1, \"later\": 10}],"
      " \"laminations\": [{\"id\": \"l1\", \"label\": \"A\", \"wood\": \"ash\", \"board\": \"b1\","
      "   \"length_mm\": 920, \"thickness_mm\": 40, \"height_mm\": 33.3, \"crook_mm\": -0.7,"
      "   \"run_out_top\": -1, \"lightness\": 71.25, \"later\": 11,"
      "   \"defects\": [{\"kind\": \"bark-pocket\", \"face\": \"right\", \"x_from_mm\": 10,"
      "    \"x_to_mm\": 20, \"across_from_mm\": 1, \"across_to_mm\": 5, \"severity\": 1,"
      "    \"later\": 12}]},"
      "  {\"id\": \"l2\", \"length_mm\": 920, \"thickness_mm\": 40, \"height_mm\": 33},"
      "  {\"id\": \"l3\", \"length_mm\": 920, \"thickness_mm\": 40, \"height_mm\": 33}],"
      " \"order\": [{\"lamination\": \"l2\", \"orientation\": \"over-and-end\", \"later\": 13},"
      "  {\"lamination\": \"l1\", \"start_mm\": 2.5}],"
      " \"packs\": [{\"first\": 0, \"count\": 2, \"later\": 14}],"
      " \"wishes\": {\"looks\": \"much\", \"later\": 16},"
      " \"pins\": [{\"kind\": \"place\", \"lamination\": \"l3\", \"place\": 0, \"later\": 17},"
      "  {\"kind\": \"neighbours\", \"lamination\": \"l1\", \"other\": \"l3\"},"
      "  {\"kind\": \"underside-up\", \"lamination\": \"l1\"}],"
      " \"placed_clamps\": [{\"kind\": \"bar\", \"x_mm\": 700, \"force_N\": 3000,"
      "   \"is_above\": true, \"later\": 18},"
      "  {\"kind\": \"bar\", \"x_mm\": 150.5, \"force_N\": 2500}],"
      " \"errands\": [{\"id\": \"o1\"}], \"later\": 15}";

static BsPlan *
parse (const char *text, GError **error)
{
  return bs_document_parse (text, strlen (text), error);
}

static BsPlan *
parse_good (const char *text)
{
  g_autoptr (GError) error = NULL;
  BsPlan *plan = parse (text, &error);

  g_assert_no_error (error);
  g_assert_nonnull (plan);
  return plan;
}

static void
test_values (void)
{
  g_autoptr (BsPlan) plan = parse_good (whole_plan);

  g_assert_cmpstr (plan->name, ==, "Shelf");
  g_assert_cmpint (plan->units, ==, BS_UNIT_SYSTEM_INCH);
  g_assert_cmpstr (plan->currency, ==, "SEK");
  g_assert_cmpint (plan->slab.layup, ==, BS_LAYUP_ON_FLAT);
  g_assert_cmpfloat_with_epsilon (plan->slab.length, 900.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (plan->slab.dry_season.temperature_c, 19.5, 1e-12);
  g_assert_cmpint (plan->shop.people, ==, 2);
  g_assert_true (isnan (plan->shop.max_lift_kg));

  const BsClampKind *clamp = plan->shop.clamps->pdata[0];
  g_assert_cmpint (clamp->count, ==, 4);
  g_assert_cmpfloat_with_epsilon (clamp->max_force_n, 5000.0, 1e-12);
  g_assert_true (isnan (clamp->screw_lead));

  const BsWood *wood = bs_plan_find_wood (plan, "ash");
  g_assert_true (wood->is_hardwood);
  g_assert_true (isnan (wood->moe_mpa));

  const BsBoard *board = plan->boards->pdata[0];
  g_assert_cmpint (board->price_minor, ==, 45000);
  g_assert_cmpint (board->run_out[BS_FACE_TOP], ==, 1);
  g_assert_cmpint (board->run_out[BS_FACE_RIGHT], ==, -1);
  g_assert_cmpint (board->run_out[BS_FACE_LEFT], ==, 0);

  const BsLamination *first = bs_plan_find_lamination (plan, "l1");
  g_assert_cmpstr (first->label, ==, "A");
  g_assert_cmpfloat_with_epsilon (first->crook, -0.7, 1e-12);
  g_assert_true (isnan (first->bow));
  g_assert_cmpint (first->run_out_top, ==, -1);
  const BsDefect *defect = &g_array_index (first->defects, BsDefect, 0);
  g_assert_cmpint (defect->kind, ==, BS_DEFECT_BARK_POCKET);
  g_assert_cmpint (defect->face, ==, BS_FACE_RIGHT);

  /* Without a label of its own the id is on the wood. */
  g_assert_cmpstr (bs_plan_find_lamination (plan, "l3")->label, ==, "l3");
  g_assert_cmpint (bs_plan_find_place (plan, "l2"), ==, 0);
  g_assert_cmpint (bs_plan_find_place (plan, "l3"), ==, -1);
  const BsPlacement *placement = &g_array_index (plan->order, BsPlacement, 0);
  g_assert_cmpint (placement->orientation, ==, BS_ORIENTATION_OVER_AND_END);
  g_assert_cmpint (g_array_index (plan->packs, BsPack, 0).count, ==, 2);

  /* From left to right, whatever the order in the file. */
  const BsPlacedClamp *clamps = (const BsPlacedClamp *)(void *)plan->placed_clamps->data;
  g_assert_cmpuint (plan->placed_clamps->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (clamps[0].x, 150.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (clamps[1].force_n, 3000.0, 1e-12);
  g_assert_true (clamps[1].is_above && !clamps[0].is_above);
}

static void
test_wishes (void)
{
  g_autoptr (BsPlan) plan = parse_good (whole_plan);
  const BsPin *pins = &g_array_index (plan->pins, BsPin, 0);

  g_assert_cmpint (plan->wishes.looks, ==, BS_ORDER_WISH_MUCH);
  g_assert_cmpint (plan->wishes.stays_flat, ==, BS_ORDER_WISH_NORMAL);
  g_assert_false (plan->wishes.uses_rack);
  g_assert_cmpuint (plan->pins->len, ==, 3);
  g_assert_cmpint (pins[0].kind, ==, BS_PIN_PLACE);
  g_assert_cmpstr (pins[0].lamination, ==, "l3");
  g_assert_cmpint (pins[0].place, ==, 0);
  g_assert_null (pins[0].other);
  g_assert_cmpint (pins[1].kind, ==, BS_PIN_NEIGHBOURS);
  g_assert_cmpint (pins[1].place, ==, -1);
  g_assert_cmpstr (pins[1].other, ==, "l3");
  g_assert_cmpint (pins[2].kind, ==, BS_PIN_UNDERSIDE_UP);
}

/* The members called "later" in a tree. */
static guint
count_later (JsonNode *node)
{
  guint count = 0;

  if (JSON_NODE_HOLDS_OBJECT (node))
    {
      JsonObject *object = json_node_get_object (node);
      g_autoptr (GList) values = json_object_get_values (object);
      count += json_object_has_member (object, "later");
      for (GList *l = values; l != NULL; l = l->next)
        count += count_later (l->data);
    }
  else if (JSON_NODE_HOLDS_ARRAY (node))
    {
      JsonArray *array = json_node_get_array (node);
      for (guint i = 0; i < json_array_get_length (array); i++)
        count += count_later (json_array_get_element (array, i));
    }
  return count;
}

/* Through load, copy, and save twice. */
static void
test_unknown_keys (void)
{
  g_autoptr (BsPlan) plan = parse_good (whole_plan);
  g_autoptr (BsPlan) copy = bs_plan_copy (plan);
  g_autofree char *text = bs_document_write (copy);
  g_autoptr (JsonNode) before = json_from_string (whole_plan, NULL);
  g_autoptr (JsonNode) after = json_from_string (text, NULL);

  g_assert_cmpuint (count_later (before), ==, 19);
  g_assert_cmpuint (count_later (after), ==, 19);

  JsonObject *object = json_node_get_object (after);
  JsonArray *errands = json_object_get_array_member (object, "errands");
  JsonObject *errand = json_array_get_object_element (errands, 0);
  g_assert_cmpstr (json_object_get_string_member (errand, "id"), ==, "o1");
  JsonObject *slab = json_object_get_object_member (object, "slab");
  g_assert_true (json_object_has_member (json_object_get_object_member (slab, "later"), "a"));
  g_assert_cmpint (json_object_get_int_member (object, "later"), ==, 15);
}

static void
test_same_bytes (void)
{
  g_autoptr (BsPlan) plan = parse_good (whole_plan);
  g_autofree char *first = bs_document_write (plan);
  g_autoptr (BsPlan) again = parse_good (first);
  g_autofree char *second = bs_document_write (again);

  g_assert_cmpstr (first, ==, second);
  g_assert_true (g_str_has_suffix (first, "}\n"));
}

/* A new plan is within every limit: what is written can be read. */
static void
test_new_plan (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autofree char *first = bs_document_write (plan);
  g_autoptr (BsPlan) again = parse_good (first);
  g_autofree char *second = bs_document_write (again);

  g_assert_cmpstr (first, ==, second);
}

static void
test_shortest (void)
{
  g_autoptr (BsPlan) plan
      = parse_good ("\xEF\xBB\xBF{\"format\": \"broadstave-plan\", \"version\": 1,"
                    "\"slab\": {\"length_mm\": 900, \"width_mm\": 80, \"thickness_mm\": 30}}");

  g_assert_cmpstr (plan->currency, ==, "EUR");
  g_assert_cmpstr (plan->adhesive.id, ==, "pva-d3");
  g_assert_cmpuint (plan->laminations->len, ==, 0);
}

/* A file that was cut off anywhere is refused whole. */
static void
test_truncated (void)
{
  for (gsize length = 0; length < strlen (whole_plan); length++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_null (bs_document_parse (whole_plan, length, &error));
      g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_SYNTAX);
    }
}

/* One change to the whole plan, and the sentence that answers it. */
typedef struct
{
  const char *name;
  const char *find;
  const char *replace;
  const char *error;
} BadRow;

static const BadRow bad_rows[] = {
  { "version/missing", "\"version\": 1,", "",
    "its key “version” is not a whole number from 1; correct it" },
  { "version/text", "\"version\": 1", "\"version\": \"1\"",
    "its key “version” is not a whole number from 1; correct it" },
  { "version/zero", "\"version\": 1", "\"version\": 0",
    "its key “version” is not a whole number from 1; correct it" },
  { "version/later", "\"version\": 1", "\"version\": 2",
    "it is a plan of version 2 where at most 1 is known here; open it with a newer Broadstave" },
  { "format/other", "broadstave-plan", "broadstave-report",
    "its key “format” is not “broadstave-plan”, as that of a plan is; is it the right file?" },
  { "format/number", "\"broadstave-plan\"", "3",
    "its key “format” is not “broadstave-plan”, as that of a plan is; is it the right file?" },

  { "number/text", "\"height_mm\": 33.3", "\"height_mm\": \"tall\"",
    "laminations[0].height_mm is the text “tall” where a number from 2 to 1000 is expected; "
    "correct it" },
  { "number/null", "\"crook_mm\": -0.7", "\"crook_mm\": null",
    "laminations[0].crook_mm is null where a number from -200 to 200 is expected; correct it" },
  { "number/true", "\"crook_mm\": -0.7", "\"crook_mm\": true",
    "laminations[0].crook_mm is true where a number from -200 to 200 is expected; correct it" },
  { "number/list", "\"crook_mm\": -0.7", "\"crook_mm\": [1, 2]",
    "laminations[0].crook_mm is a list of 2 where a number from -200 to 200 is expected; "
    "correct it" },
  { "number/object", "\"crook_mm\": -0.7", "\"crook_mm\": {}",
    "laminations[0].crook_mm is an object where a number from -200 to 200 is expected; correct "
    "it" },
  { "number/too-small", "\"length_mm\": 900, \"width_mm\"", "\"length_mm\": -900, \"width_mm\"",
    "slab.length_mm is -900 where a number from 50 to 15000 is expected; correct it" },
  { "number/too-large", "\"length_mm\": 900, \"width_mm\"", "\"length_mm\": 90000, \"width_mm\"",
    "slab.length_mm is 90000 where a number from 50 to 15000 is expected; correct it" },
  { "number/missing", "\"length_mm\": 900, \"width_mm\"", "\"width_mm\"",
    "slab.length_mm is missing where a number from 50 to 15000 is expected; add it" },
  { "number/nested", "\"humidity_pct\": 30", "\"humidity_pct\": 101",
    "slab.dry_season.humidity_pct is 101 where a number from 0 to 100 is expected; correct it" },
  { "number/in-list", "\"severity\": 1", "\"severity\": 2.01",
    "laminations[0].defects[0].severity is 2.01 where a number from 0 to 2 is expected; correct "
    "it" },
  { "count/part", "\"people\": 2", "\"people\": 2.5",
    "shop.people is 2.5 where a whole number from 1 to 20 is expected; correct it" },
  { "count/too-large", "\"count\": 4", "\"count\": 501",
    "shop.clamps[0].count is 501 where a whole number from 0 to 500 is expected; correct it" },
  { "amount/negative", "\"price_minor\": 45000", "\"price_minor\": -1",
    "boards[0].price_minor is -1 where a whole number from 0 to 1000000000 is expected; correct "
    "it" },
  { "text/number", "\"name\": \"Shelf\"", "\"name\": 7",
    "name is 7 where a text is expected; correct it" },
  { "text/empty-id", "\"id\": \"ash\"", "\"id\": \"\"",
    "woods[0].id is the text “” where a text that is not empty is expected; correct it" },
  { "text/missing-id", "\"id\": \"l3\", ", "",
    "laminations[2].id is missing where a text that is not empty is expected; add it" },
  { "choice/other", "\"units\": \"inch\"", "\"units\": \"feet\"",
    "units is the text “feet” where one of “metric”, “inch” is expected; correct it" },
  { "choice/number", "\"units\": \"inch\"", "\"units\": 1",
    "units is 1 where one of “metric”, “inch” is expected; correct it" },
  { "flag/number", "\"layup\": \"on-flat\"", "\"shows_ends\": 1",
    "slab.shows_ends is 1 where true or false is expected; correct it" },
  { "object/missing", "\"slab\"", "\"slob\"",
    "slab is missing where an object in braces is expected; add it" },
  { "object/list", "\"times\": {\"joint_s\": 4, \"later\": 4}", "\"times\": []",
    "shop.times is a list of 0 where an object in braces is expected; correct it" },
  { "list/object", "\"packs\": [{\"first\": 0, \"count\": 2, \"later\": 14}]", "\"packs\": {}",
    "packs is an object where a list of at most 500 is expected; correct it" },
  { "list/element", "\"packs\": [{\"first\": 0, \"count\": 2, \"later\": 14}]", "\"packs\": [7]",
    "packs[0] is 7 where an object in braces is expected; correct it" },
  { "adhesive/half", "\"clamp_s\": 3600, ", "",
    "adhesive.clamp_s is missing where a number from 60 to 1209600 is expected; add it" },

  { "currency", "\"SEK\"", "\"kr\"",
    "currency is the text “kr” where a currency of three capital letters like “EUR” is expected; "
    "correct it" },
  { "currency/four", "\"SEK\"", "\"SEKK\"",
    "currency is the text “SEKK” where a currency of three capital letters like “EUR” is "
    "expected; correct it" },
  { "hardness", "\"layup\"", "\"hardness_low_N\": 4200, \"hardness_high_N\": 3000, \"layup\"",
    "slab.hardness_high_N is 3000 where a hardness not below hardness_low_N is expected; correct "
    "it" },
  { "adhesive/times", "\"total_s\": 600", "\"total_s\": 200",
    "adhesive.total_s is 200 where a time not shorter than open_s is expected; correct it" },
  { "adhesive/pressures", "\"max_pressure_MPa\": 1.2", "\"max_pressure_MPa\": 0.5",
    "adhesive.max_pressure_MPa is 0.5 where a pressure not below min_pressure_MPa is expected; "
    "correct it" },
  { "id-twice", "\"id\": \"l3\"", "\"id\": \"l1\"",
    "laminations[2].id is the text “l1” where an id that no other one has is expected; correct "
    "it" },
  { "wood/of-board", "\"id\": \"b1\", \"wood\": \"ash\"", "\"id\": \"b1\", \"wood\": \"oak\"",
    "boards[0].wood is the text “oak” where the id of one of the woods is expected; correct it" },
  { "wood/of-lamination", "\"label\": \"A\", \"wood\": \"ash\"",
    "\"label\": \"A\", \"wood\": \"oak\"",
    "laminations[0].wood is the text “oak” where the id of one of the woods is expected; correct "
    "it" },
  { "board", "\"board\": \"b1\"", "\"board\": \"b2\"",
    "laminations[0].board is the text “b2” where the id of one of the boards is expected; correct "
    "it" },
  { "taper", "\"crook_mm\": -0.7", "\"taper_mm\": -33",
    "laminations[0].taper_mm is -33 where a taper that leaves some height at the right end is "
    "expected; correct it" },
  { "defect/beyond-end", "\"x_to_mm\": 20", "\"x_to_mm\": 921",
    "laminations[0].defects[0].x_to_mm is 921 where a place within the length is "
    "expected; correct it" },
  { "defect/backwards", "\"x_from_mm\": 10", "\"x_from_mm\": 21",
    "laminations[0].defects[0].x_from_mm is 21 where a place not beyond x_to_mm is expected; "
    "correct it" },
  { "defect/beyond-face", "\"across_to_mm\": 5", "\"across_to_mm\": 34",
    "laminations[0].defects[0].across_to_mm is 34 where a place within the face is expected; "
    "correct it" },
  { "defect/across-backwards", "\"across_from_mm\": 1", "\"across_from_mm\": 6",
    "laminations[0].defects[0].across_from_mm is 6 where a place not beyond across_to_mm is "
    "expected; correct it" },
  { "order/no-such", "\"lamination\": \"l2\"", "\"lamination\": \"l9\"",
    "order[0].lamination is the text “l9” where the id of one of the laminations is expected; "
    "correct it" },
  { "order/twice", "\"lamination\": \"l2\"", "\"lamination\": \"l1\"",
    "order[1].lamination is the text “l1” where a lamination that is not in the order yet is "
    "expected; correct it" },
  { "packs/beyond-order", "\"first\": 0, \"count\": 2", "\"first\": 0, \"count\": 3",
    "packs[0].count is 3 where a number of laminations that the order has is expected; correct "
    "it" },
  { "packs/overlap", "{\"first\": 0, \"count\": 2, \"later\": 14}",
    "{\"first\": 0, \"count\": 2}, {\"first\": 1, \"count\": 2}",
    "packs[1].first is 1 where a place apart from every other pack, or a pack within another is "
    "expected; correct it" },
  { "packs/order", "{\"first\": 0, \"count\": 2, \"later\": 14}",
    "{\"first\": 0, \"count\": 2}, {\"first\": 0, \"count\": 2}",
    "packs[1].first is 0 where a later place than in the pack before it, or a smaller pack is "
    "expected; correct it" },
  { "placed-clamps/no-such-kind", "\"kind\": \"bar\", \"x_mm\": 700",
    "\"kind\": \"pipe\", \"x_mm\": 700",
    "placed_clamps[0].kind is the text “pipe” where the id of one of the shop’s clamps is "
    "expected; "
    "correct it" },
  { "placed-clamps/place", "\"x_mm\": 700", "\"x_mm\": -1",
    "placed_clamps[0].x_mm is -1 where a number from 0 to 15000 is expected; correct it" },
  { "placed-clamps/force", "\"force_N\": 3000,", "",
    "placed_clamps[0].force_N is missing where a number from 0 to 200000 is expected; add it" },
  { "packs/of-one", "\"first\": 0, \"count\": 2", "\"first\": 0, \"count\": 1",
    "packs[0].count is 1 where a whole number from 2 to 500 is expected; correct it" },
  { "pins/no-such", "\"lamination\": \"l3\"", "\"lamination\": \"l9\"",
    "pins[0].lamination is the text “l9” where the id of one of the laminations is expected; "
    "correct it" },
  { "pins/without-a-place", "\"place\": 0, ", "",
    "pins[0].place is missing where a place in the order is expected; add it" },
  { "pins/behind-all", "\"place\": 0, ", "\"place\": 500, ",
    "pins[0].place is 500 where a whole number from 0 to 499 is expected; correct it" },
  { "pins/without-a-neighbour", ", \"other\": \"l3\"", "",
    "pins[1].other is missing where the id of another lamination is expected; add it" },
  { "pins/beside-itself", "\"other\": \"l3\"", "\"other\": \"l1\"",
    "pins[1].other is the text “l1” where the id of another lamination is expected; correct it" },
  { "pins/beside-nobody", "\"other\": \"l3\"", "\"other\": \"l9\"",
    "pins[1].other is the text “l9” where the id of another lamination is expected; correct it" },
  { "pins/place-of-neighbours", "\"other\": \"l3\"", "\"other\": \"l3\", \"place\": 4",
    "pins[1].place is 4 where nothing in a pin of this kind is expected; correct it" },
  { "pins/neighbour-of-a-face", "\"underside-up\"", "\"underside-up\", \"other\": \"l2\"",
    "pins[2].other is the text “l2” where nothing in a pin of this kind is expected; correct it" },
};

static void
test_bad (gconstpointer data)
{
  const BadRow *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new (whole_plan);

  g_assert_cmpuint (g_string_replace (text, row->find, row->replace, 0), ==, 1);
  g_assert_null (parse (text->str, &error));
  g_assert_nonnull (error);
  g_assert_cmpstr (error->message, ==, row->error);
  g_assert_true (error->domain == BS_DOCUMENT_ERROR);
}

static void
test_too_many (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new (whole_plan);
  g_autoptr (GString) packs = g_string_new ("\"packs\": [");

  for (guint i = 0; i <= 500; i++)
    g_string_append (packs, i > 0 ? ",{}" : "{}");
  g_string_append_c (packs, ']');
  g_string_replace (text, "\"packs\": [{\"first\": 0, \"count\": 2, \"later\": 14}]", packs->str,
                    0);
  g_assert_null (parse (text->str, &error));
  g_assert_cmpstr (error->message, ==,
                   "packs is a list of 501 where a list of at most 500 is expected; correct it");
}

static char *
get_folder (const char *name)
{
  return g_build_filename (g_getenv ("BROADSTAVE_SOURCE"), "tests", "plan", name, NULL);
}

/* tests/plan/bad: each NAME.broadstave is answered with the sentence in NAME.error. */
static void
test_bad_file (gconstpointer data)
{
  const char *name = data;
  g_autofree char *folder = get_folder ("bad");
  g_autofree char *file = g_strconcat (name, ".broadstave", NULL);
  g_autofree char *path = g_build_filename (folder, file, NULL);
  g_autofree char *error_file = g_strconcat (name, ".error", NULL);
  g_autofree char *error_path = g_build_filename (folder, error_file, NULL);
  g_autofree char *wanted = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_get_contents (error_path, &wanted, NULL, NULL));
  g_assert_null (bs_document_load (path, &error));
  g_assert_nonnull (error);
  g_assert_cmpstr (error->message, ==, g_strchomp (wanted));
}

static void
add_bad_files (void)
{
  g_autofree char *folder = get_folder ("bad");
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *file = NULL;

  g_assert_nonnull (dir);
  while ((file = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (file, ".broadstave"))
      {
        char *name = g_strndup (file, strlen (file) - strlen (".broadstave"));
        g_autofree char *path = g_strconcat ("/document/bad-file/", name, NULL);
        g_test_add_data_func_full (path, name, test_bad_file, g_free);
      }
}

typedef struct
{
  char *folder;
  char *path;
} Files;

static void
set_up (Files *files, gconstpointer data)
{
  files->folder = g_dir_make_tmp ("broadstave-XXXXXX", NULL);
  files->path = g_build_filename (files->folder, "Küche 1.broadstave", NULL);
}

static void
tear_down (Files *files, gconstpointer data)
{
  g_autoptr (GDir) dir = g_dir_open (files->folder, 0, NULL);
  const char *name = NULL;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (files->folder, name, NULL);
      g_assert_cmpint (g_remove (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (files->folder), ==, 0);
  g_free (files->folder);
  g_free (files->path);
}

static void
test_save (Files *files, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) plan = parse_good (whole_plan);
  g_autofree char *wanted = bs_document_write (plan);
  g_autofree char *text = NULL;

  g_assert_true (bs_document_save (plan, files->path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (files->path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, wanted);

  g_autoptr (BsPlan) again = bs_document_load (files->path, &error);
  g_assert_no_error (error);
  g_assert_nonnull (again);
}

/* Saving through a link changes the file and keeps the link; who may read it stays as it was. */
static void
test_save_link (Files *files, gconstpointer data)
{
  g_autofree char *link = g_build_filename (files->folder, "link", NULL);
  g_autoptr (BsPlan) plan = parse_good (whole_plan);
  GStatBuf status;

  g_assert_true (bs_document_save (plan, files->path, NULL));
  g_assert_cmpint (g_chmod (files->path, 0640), ==, 0);
  g_assert_cmpint (symlink (files->path, link), ==, 0);
  g_assert_true (bs_document_save (plan, link, NULL));
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  g_assert_cmpint (g_stat (files->path, &status), ==, 0);
  g_assert_cmpint (status.st_mode & 0777, ==, 0640);
}

static void
test_save_nowhere (Files *files, gconstpointer data)
{
  g_autofree char *path = g_build_filename (files->folder, "no", "such.broadstave", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) plan = parse_good (whole_plan);

  g_assert_false (bs_document_save (plan, path, &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ);
  g_assert_true (g_str_has_prefix (error->message, "Could not save such.broadstave: the system "));
}

static void
test_load_missing (Files *files, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (bs_document_load (files->path, &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ);
  g_assert_cmpstr (error->message, ==,
                   "Could not open Küche 1.broadstave: the system says “No such file or "
                   "directory”; check its name and that you may read it");
}

static void
test_load_folder (Files *files, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (bs_document_load (files->folder, &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ);
  g_assert_true (g_str_has_suffix (error->message, ": it is not a file; choose a plan file"));
}

static void
test_load_huge (Files *files, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (files->path, "", 0, NULL));
  g_assert_cmpint (truncate (files->path, 17 << 20), ==, 0);
  g_assert_null (bs_document_load (files->path, &error));
  g_assert_error (error, BS_DOCUMENT_ERROR, BS_DOCUMENT_ERROR_READ);
  g_assert_true (
      g_str_has_suffix (error->message, ": it holds more than 16 MB; is it the right file?"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/document/values", test_values);
  g_test_add_func ("/document/wishes", test_wishes);
  g_test_add_func ("/document/unknown-keys", test_unknown_keys);
  g_test_add_func ("/document/same-bytes", test_same_bytes);
  g_test_add_func ("/document/new-plan", test_new_plan);
  g_test_add_func ("/document/shortest", test_shortest);
  g_test_add_func ("/document/truncated", test_truncated);
  for (guint i = 0; i < G_N_ELEMENTS (bad_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/document/bad/", bad_rows[i].name, NULL);
      g_test_add_data_func (path, &bad_rows[i], test_bad);
    }
  g_test_add_func ("/document/bad/too-many", test_too_many);
  add_bad_files ();
  g_test_add ("/document/save", Files, NULL, set_up, test_save, tear_down);
  g_test_add ("/document/save/link", Files, NULL, set_up, test_save_link, tear_down);
  g_test_add ("/document/save/nowhere", Files, NULL, set_up, test_save_nowhere, tear_down);
  g_test_add ("/document/load/missing", Files, NULL, set_up, test_load_missing, tear_down);
  g_test_add ("/document/load/folder", Files, NULL, set_up, test_load_folder, tear_down);
  g_test_add ("/document/load/huge", Files, NULL, set_up, test_load_huge, tear_down);
  return g_test_run ();
}
