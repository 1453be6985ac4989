/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/report.h"

#include "plan/document.h"
#include "racks.h"

#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

#include "yards.h"

static BsPlan *
load (const char *name)
{
  g_autofree char *path
      = g_build_filename (g_getenv ("BROADSTAVE_SOURCE"), "data", "examples", name, NULL);
  g_autoptr (GError) error = NULL;
  BsPlan *plan = bs_document_load (path, &error);

  g_assert_no_error (error);
  return plan;
}

static BsResults *
evaluate (const char *name)
{
  g_autoptr (BsPlan) plan = load (name);

  return bs_evaluate (plan);
}

static JsonNode *
report (const BsResults *results)
{
  g_autofree char *text = bs_report_write (results, NULL);
  g_autoptr (GError) error = NULL;
  JsonNode *node = json_from_string (text, &error);

  g_assert_no_error (error);
  return node;
}

static void
test_same_bytes (void)
{
  g_autoptr (BsResults) first = evaluate ("library-counter.broadstave");
  g_autoptr (BsResults) second = evaluate ("library-counter.broadstave");
  g_autofree char *first_text = bs_report_write (first, NULL);
  g_autofree char *second_text = bs_report_write (second, NULL);

  g_assert_cmpstr (first_text, ==, second_text);
}

/* The three orders of work, three spots of each face, the deepest as deep as is said of the face;
 * the surer, the thinner. */
static void
check_flattening (JsonObject *object, const BsResults *results)
{
  JsonArray *works = json_object_get_array_member (object, "by_work");
  JsonArray *spots = json_object_get_array_member (object, "deepest_spots");
  JsonObject *sure = json_object_get_object_member (object, "how_sure");
  JsonObject *shimmed = json_array_get_object_element (works, 0);

  g_assert_cmpstr (json_object_get_string_member (object, "flatten_work"), ==, "shimmed");
  g_assert_cmpuint (json_array_get_length (works), ==, 3);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (shimmed, "thickness_mm"),
                                  results->flatten.thickness, 1e-12);
  g_assert_cmpuint (json_array_get_length (spots), ==, 6);
  g_assert_cmpfloat_with_epsilon (
      json_object_get_double_member (json_array_get_object_element (spots, 0), "depth_mm"),
      results->flatten.top_most, 1e-9);
  g_assert_cmpfloat (json_object_get_double_member (sure, "at_95_pct_mm"), <,
                     json_object_get_double_member (sure, "at_50_pct_mm"));
}

static void
test_numbers (void)
{
  g_autoptr (BsResults) results = evaluate ("bakery-counter.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonObject *object = json_node_get_object (node);
  JsonObject *clamps = json_object_get_object_member (object, "clamps");
  JsonArray *order = json_object_get_array_member (object, "order");

  g_assert_cmpstr (json_object_get_string_member (object, "format"), ==, "broadstave-report");
  g_assert_cmpstr (json_object_get_string_member (object, "worst_severity"), ==, "note");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, "final_thickness_mm"),
                                  results->flatten.thickness, 1e-12);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (clamps, "force_N"),
                                  results->clamps.force_n, 1e-9);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (clamps, "positions_mm")),
                    ==, results->clamps.positions->len);
  g_assert_cmpuint (json_array_get_length (order), ==, 16);
  check_flattening (json_object_get_object_member (object, "flattening"), results);
  g_assert_cmpstr (
      json_object_get_string_member (json_array_get_object_element (order, 0), "lamination"), ==,
      "a1");
}

/* The terms add up to the total, which is what the window shows. */
static void
test_order_cost (void)
{
  g_autoptr (BsResults) results = evaluate ("wedging-table.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonObject *cost = json_object_get_object_member (json_node_get_object (node), "order_cost");
  g_autoptr (GList) keys = json_object_get_members (cost);
  double sum = 0.0;

  g_assert_cmpuint (g_list_length (keys), ==, 1 + BS_N_ORDER_TERMS);
  for (GList *l = keys; l != NULL; l = l->next)
    if (!g_str_equal (l->data, "total"))
      sum += json_object_get_double_member (cost, l->data);
  g_assert_cmpfloat (sum, >, 0.0);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (cost, "total"), sum, 1e-9);
  g_assert_cmpfloat_with_epsilon (results->why_order.value, sum, 1e-9);
}

/* Every finding has its own id, its severity and its sentences. */
static void
test_findings (void)
{
  g_autoptr (BsResults) results = evaluate ("wedging-table.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonObject *object = json_node_get_object (node);
  JsonArray *findings = json_object_get_array_member (object, "findings");
  g_autoptr (GHashTable) kinds = g_hash_table_new (g_direct_hash, g_direct_equal);
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  g_assert_cmpuint (json_array_get_length (findings), ==, results->findings->len);
  for (guint i = 0; i < results->findings->len; i++)
    {
      const BsFinding *finding = &g_array_index (results->findings, BsFinding, i);
      JsonObject *reported = json_array_get_object_element (findings, i);

      g_hash_table_add (kinds, GINT_TO_POINTER (finding->kind));
      g_hash_table_add (ids, (char *)json_object_get_string_member (reported, "id"));
      g_assert_cmpint (json_object_has_member (reported, "lamination"), ==, finding->place >= 0);
      g_assert_cmpint (json_object_has_member (reported, "neighbour"), ==, finding->neighbour >= 0);
      g_assert_cmpstr (json_object_get_string_member (reported, "title"), !=, "");
      g_assert_cmpstr (json_object_get_string_member (reported, "reason"), !=, "");
      g_assert_cmpstr (json_object_get_string_member (reported, "remedy"), !=, "");
    }
  g_assert_cmpuint (g_hash_table_size (ids), ==, g_hash_table_size (kinds));
}

/* Of one: the values of the finding under their names. */
static void
test_finding_values (void)
{
  g_autoptr (BsResults) results = evaluate ("wedging-table.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonArray *findings = json_object_get_array_member (json_node_get_object (node), "findings");

  for (guint i = 0; i < json_array_get_length (findings); i++)
    {
      JsonObject *finding = json_array_get_object_element (findings, i);
      if (strcmp (json_object_get_string_member (finding, "id"), "cold") != 0)
        continue;
      g_assert_cmpstr (json_object_get_string_member (finding, "severity"), ==, "stop");
      g_assert_cmpfloat_with_epsilon (json_object_get_double_member (finding, "temperature_C"), 8.0,
                                      1e-12);
      g_assert_cmpfloat_with_epsilon (json_object_get_double_member (finding, "least_C"), 10.0,
                                      1e-12);
      return;
    }
  g_assert_not_reached ();
}

/* Of the demo plan: what its sentences and its window say. */
static void
test_pressing (void)
{
  g_autoptr (BsResults) results = evaluate ("bakery-counter.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonObject *pressing = json_object_get_object_member (json_node_get_object (node), "pressing");
  JsonArray *clamps = json_object_get_array_member (pressing, "clamps");
  JsonArray *lines = json_object_get_array_member (pressing, "lines");
  double least = INFINITY, force = 0.0;

  g_assert_cmpstr (json_object_get_string_member (pressing, "model"), ==, "squeeze");
  g_assert_cmpstr (json_object_get_string_member (pressing, "status"), ==, "short");
  g_assert_false (json_object_get_boolean_member (pressing, "are_placed"));
  g_assert_cmpuint (json_array_get_length (lines), ==, 15);
  for (guint i = 0; i < json_array_get_length (lines); i++)
    least = fmin (least, json_object_get_double_member (json_array_get_object_element (lines, i),
                                                        "least_MPa"));
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (pressing, "least_MPa"), least,
                                  1e-9);
  /* The hand rule's force, shared out: in mean pressure just the pressure it asks for. */
  for (guint i = 0; i < json_array_get_length (clamps); i++)
    force += json_object_get_double_member (json_array_get_object_element (clamps, i), "force_N");
  g_assert_cmpfloat_with_epsilon (force, results->clamps.force_n, 1e-6);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (pressing, "mean_MPa"),
                                  results->clamps.pressure_mpa, 1e-6);
}

/* 60 laminations: by the faster form. A wood of unknown stiffness: no pressures. */
static void
test_pressing_forms (void)
{
  g_autoptr (BsResults) sixty = evaluate ("library-counter.broadstave");
  g_autoptr (BsPlan) table = load ("wedging-table.broadstave");
  ((BsWood *)table->woods->pdata[0])->moe_mpa = NAN;
  g_autoptr (BsResults) unknown = bs_evaluate (table);
  g_autoptr (JsonNode) sixty_node = report (sixty);
  g_autoptr (JsonNode) unknown_node = report (unknown);
  JsonObject *fast = json_object_get_object_member (json_node_get_object (sixty_node), "pressing");
  JsonObject *none
      = json_object_get_object_member (json_node_get_object (unknown_node), "pressing");

  g_assert_cmpstr (json_object_get_string_member (fast, "model"), ==, "timoshenko");
  g_assert_cmpstr (json_object_get_string_member (none, "status"), ==, "none");
  g_assert_false (json_object_has_member (none, "least_MPa"));
  g_assert_true (json_object_get_boolean_member (none, "are_placed"));
}

static void
test_workings (void)
{
  g_autoptr (BsResults) results = evaluate ("bakery-counter.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonObject *workings = json_object_get_object_member (json_node_get_object (node), "workings");
  JsonObject *force = json_object_get_object_member (workings, "force");
  JsonArray *terms = json_object_get_array_member (force, "terms");

  g_assert_cmpuint (json_object_get_size (workings), ==, 14);
  g_assert_cmpstr (json_object_get_string_member (force, "unit"), ==, "N");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (force, "value"),
                                  results->why_force.value, 1e-9);
  g_assert_cmpuint (json_array_get_length (terms), ==, results->why_force.n_terms);
  g_assert_cmpuint (json_array_get_length (terms), >, 0);
}

/* The first board is 46 mm thick and nothing of its warp was measured: what is taken off for tool
 * marks is all that it loses. */
static void
test_boards (void)
{
  g_autoptr (BsResults) results = evaluate ("bakery-counter.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonArray *boards = json_object_get_array_member (json_node_get_object (node), "boards");
  JsonObject *first = json_array_get_object_element (boards, 0);
  const BsPlan *plan = results->stack->plan;

  g_assert_cmpuint (json_array_get_length (boards), ==, plan->boards->len);
  g_assert_cmpstr (json_object_get_string_member (first, "id"), ==, "board-a");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (first, "finishes_at_mm"),
                                  46.0 - 2.0 * plan->slab.allowance, 1e-9);
  g_assert_false (json_object_get_boolean_member (first, "is_measured"));
}

/* What the wood does, costs and weighs, as in the results. */
static void
test_timber (void)
{
  g_autoptr (BsResults) results = evaluate ("bakery-counter.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonObject *object = json_node_get_object (node);
  JsonObject *movement = json_object_get_object_member (object, "movement");
  JsonObject *cost = json_object_get_object_member (object, "cost");
  JsonArray *loads = json_object_get_array_member (object, "loads");
  JsonObject *slab = json_array_get_object_element (loads, json_array_get_length (loads) - 1);

  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (movement, "width_year_mm"),
                                  results->movement.width.year, 1e-12);
  g_assert_false (json_object_has_member (movement, "cup_mm")); /* on edge */
  g_assert_cmpstr (json_object_get_string_member (cost, "currency"), ==,
                   results->stack->plan->currency);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (cost, "waste_pct"),
                                  results->cost.waste_pct, 1e-12);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (movement, "slots")), ==,
                    results->slots->len);
  g_assert_cmpstr (json_object_get_string_member (slab, "what"), ==, "slab");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (slab, "mass_kg"), results->mass_kg,
                                  1e-12);
}

/* Beech of 5800 N is harder than the 4200 N that a plan asks at most by itself. */
static void
test_woods (void)
{
  g_autoptr (BsResults) results = evaluate ("bakery-counter.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonArray *woods = json_object_get_array_member (json_node_get_object (node), "woods");
  JsonObject *beech = json_array_get_object_element (woods, 0);
  JsonArray *unfit = json_object_get_array_member (beech, "unfit");

  g_assert_cmpuint (json_array_get_length (woods), ==, results->stack->plan->woods->len);
  g_assert_cmpstr (json_object_get_string_member (beech, "id"), ==, "american-beech");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (beech, "side_hardness_N"), 5800.0,
                                  1e-12);
  g_assert_cmpstr (json_array_get_string_element (unfit, 0), ==, "hard");
}

/* One board of 2500 x 230 x 52 for one lamination; without offers there is nothing to tell. */
static void
test_buying (void)
{
  g_autoptr (BsPlan) plan = yard_plan (1, 2000.0, 30.0, 60.0);
  g_autoptr (BsResults) before = bs_evaluate (plan);
  g_autoptr (JsonNode) nothing = report (before);
  JsonObject *empty = json_object_get_object_member (json_node_get_object (nothing), "buying");
  g_assert_cmpuint (json_object_get_size (empty), ==, 0);

  yard_offer (plan, 2500.0, 230.0, 52.0, 7700);
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autoptr (JsonNode) node = report (results);
  JsonObject *buying = json_object_get_object_member (json_node_get_object (node), "buying");
  JsonArray *to_buy = json_object_get_array_member (buying, "to_buy");
  JsonArray *wanted = json_object_get_array_member (buying, "wanted");
  JsonObject *line = json_array_get_object_element (to_buy, 0);

  g_assert_cmpint (json_object_get_int_member (buying, "price_minor"), ==, 7700);
  g_assert_cmpint (json_object_get_int_member (buying, "price_bound_minor"), ==, 7700);
  g_assert_cmpuint (json_array_get_length (to_buy), ==, 1);
  g_assert_cmpstr (json_object_get_string_member (line, "offer"), ==, "offer-1");
  g_assert_cmpint (json_object_get_int_member (line, "boards"), ==, 1);
  g_assert_cmpint (
      json_object_get_int_member (json_array_get_object_element (wanted, 0), "missing"), ==, 0);
}

/* What cannot be told is left out; an empty plan is reported all the same. */
static void
test_empty_plan (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autoptr (JsonNode) node = report (results);

  g_assert_true (isnan (results->flatten.thickness));
  g_assert_false (json_object_has_member (json_node_get_object (node), "final_thickness_mm"));
}

/* The person's packs and what would be shorter, a press each with its round. */
static void
test_schedule (void)
{
  g_autoptr (BsResults) results = evaluate ("library-counter.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonObject *schedule = json_object_get_object_member (json_node_get_object (node), "schedule");
  JsonObject *own = json_object_get_object_member (schedule, "own");
  JsonArray *presses = json_object_get_array_member (own, "presses");
  JsonObject *last = json_array_get_object_element (presses, json_array_get_length (presses) - 1);

  g_assert_cmpstr (json_object_get_string_member (schedule, "clamps_by"), ==, "hand_rule");
  g_assert_true (json_object_get_boolean_member (schedule, "is_possible"));
  g_assert_cmpuint (json_array_get_length (presses), ==, results->stack->plan->packs->len + 1);
  g_assert_false (json_object_get_boolean_member (last, "is_pack"));
  g_assert_cmpint (json_object_get_int_member (last, "round"), ==,
                   json_object_get_int_member (own, "rounds"));
  g_assert_cmpint (json_object_get_int_member (last, "clamps"), ==, results->set_clamps->len);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (last, "clamps_off_at_s"),
                                  json_object_get_double_member (own, "elapsed_s"), 1e-6);
  g_assert_true (json_object_has_member (schedule, "shortest"));
}

/* What stands in the way, and what would help. */
static void
test_schedule_impossible (void)
{
  g_autoptr (BsResults) results = evaluate ("wedging-table.broadstave");
  g_autoptr (JsonNode) node = report (results);
  JsonObject *schedule = json_object_get_object_member (json_node_get_object (node), "schedule");

  g_assert_false (json_object_get_boolean_member (schedule, "is_possible"));
  g_assert_cmpstr (json_object_get_string_member (schedule, "in_the_way"), ==, "clamps");
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (schedule, "remedies")), >,
                    0);
}

/* A part of 600 x 100 from a board of 1000 x 200: two crosscuts and a rip cut; another that is too
 * long for it. */
static void
test_cutting (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsResults) results = NULL;
  g_autoptr (JsonNode) node = NULL;
  JsonObject *cutting, *board, *missing;

  rack_add_board (plan, 1000.0, 200.0, 52.0, 3000);
  rack_add_part (plan, 1, 600.0, 100.0, 45.0);
  rack_add_part (plan, 1, 5000.0, 100.0, 45.0);
  rack_add_cut (plan, "board-1", "part-1", 25.0, 0.0, 600.0, 100.0);
  results = bs_evaluate (plan);
  node = report (results);
  cutting = json_object_get_object_member (json_node_get_object (node), "cutting");
  board = json_array_get_object_element (json_object_get_array_member (cutting, "boards"), 0);
  missing = json_array_get_object_element (json_object_get_array_member (cutting, "missing"), 0);
  g_assert_cmpint (json_object_get_int_member (cutting, "boards_taken"), ==, 1);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (cutting, "kerfs_mm2"), 3000.0,
                                  1e-6);
  g_assert_cmpstr (json_object_get_string_member (board, "first"), ==, "crosscut");
  g_assert_true (json_object_get_boolean_member (board, "can_be_sawn"));
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (board, "passes")), ==, 3);
  g_assert_cmpstr (json_object_get_string_member (missing, "piece"), ==, "part-2");
  g_assert_cmpstr (json_object_get_string_member (missing, "lacks"), ==, "length");
}

/* What was found out about files comes after the findings of the plan. */
static void
test_photo_missing (void)
{
  g_autoptr (BsResults) results = evaluate ("bakery-counter.broadstave");
  g_autoptr (GArray) problems = g_array_new (FALSE, FALSE, sizeof (BsPhotoProblem));
  const BsPhotoProblem problem
      = { .board = results->stack->plan->boards->pdata[0], .reason = (char *)"It is gone." };

  g_array_append_val (problems, problem);
  g_autofree char *text = bs_report_write (results, problems);
  g_autoptr (JsonNode) node = json_from_string (text, NULL);
  JsonArray *findings = json_object_get_array_member (json_node_get_object (node), "findings");
  JsonObject *last = json_array_get_object_element (findings, json_array_get_length (findings) - 1);

  g_assert_cmpuint (json_array_get_length (findings), ==, results->findings->len + 1);
  g_assert_cmpstr (json_object_get_string_member (last, "id"), ==, "photo-missing");
  g_assert_cmpstr (json_object_get_string_member (last, "board"), ==, problem.board->id);
  g_assert_cmpstr (json_object_get_string_member (last, "reason"), ==, "It is gone.");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/report/same-bytes", test_same_bytes);
  g_test_add_func ("/report/numbers", test_numbers);
  g_test_add_func ("/report/order-cost", test_order_cost);
  g_test_add_func ("/report/findings", test_findings);
  g_test_add_func ("/report/finding-values", test_finding_values);
  g_test_add_func ("/report/pressing", test_pressing);
  g_test_add_func ("/report/pressing/forms", test_pressing_forms);
  g_test_add_func ("/report/workings", test_workings);
  g_test_add_func ("/report/boards", test_boards);
  g_test_add_func ("/report/timber", test_timber);
  g_test_add_func ("/report/woods", test_woods);
  g_test_add_func ("/report/buying", test_buying);
  g_test_add_func ("/report/empty-plan", test_empty_plan);
  g_test_add_func ("/report/cutting", test_cutting);
  g_test_add_func ("/report/schedule", test_schedule);
  g_test_add_func ("/report/schedule-impossible", test_schedule_impossible);
  g_test_add_func ("/report/photo-missing", test_photo_missing);
  return g_test_run ();
}
