/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* What data/examples promise: each opens, is written back as the same bytes, and has the findings
 * that it is there for. */

#include "core/results.h"
#include "core/schedule.h"
#include "plan/document.h"
#include "plan/format.h"
#include "plan/tables.h"

#include <string.h>

static char *
get_path (const char *name)
{
  return g_build_filename (g_getenv ("BROADSTAVE_SOURCE"), "data", "examples", name, NULL);
}

static BsPlan *
load (const char *name)
{
  g_autofree char *path = get_path (name);
  g_autoptr (GError) error = NULL;
  BsPlan *plan = bs_document_load (path, &error);

  g_assert_no_error (error);
  return plan;
}

static void
test_same_bytes (gconstpointer data)
{
  g_autofree char *path = get_path (data);
  g_autofree char *text = NULL;
  g_autoptr (BsPlan) plan = load (data);
  g_autofree char *written = bs_document_write (plan);

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (written, ==, text);
}

/* Makers, shops and boards are invented, and the file says so; its woods are the table's. */
static void
test_honest (gconstpointer data)
{
  g_autoptr (BsPlan) plan = load (data);

  g_assert_true (g_str_has_prefix (plan->note, "Invented for this example"));
  for (guint i = 0; i < plan->woods->len; i++)
    {
      const BsWood *wood = plan->woods->pdata[i];
      const BsWood *row = bs_tables_find_wood (wood->id);
      g_assert_nonnull (row);
      g_assert_true (bs_shape_equal (&bs_wood_shape, wood, row));
    }
}

static void
count_findings (const char *name, guint counts[BS_N_FINDING_KINDS])
{
  g_autoptr (BsPlan) plan = load (name);
  g_autoptr (BsResults) results = bs_evaluate (plan);

  for (guint i = 0; i < results->findings->len; i++)
    counts[g_array_index (results->findings, BsFinding, i).kind]++;
}

static void
test_perfect (gconstpointer data)
{
  g_autoptr (BsPlan) plan = load (data);
  g_autoptr (BsResults) results = bs_evaluate (plan);

  g_assert_cmpint (bs_results_worst (results), ==, BS_SEVERITY_NOTE);
  g_assert_cmpfloat (results->flatten.thickness, >=, plan->slab.thickness);
  g_assert_cmpfloat (results->mass_kg, >, 0.0);
}

/* The demo plan, by hand: 16 laminations of 38.2 to 38.8 mm are 616 mm; the largest glue line is
 * 1530 mm by the lower of two neighbours' heights; beech of 0.64 asks for the middle of 0.6 to 0.8
 * MPa. */
static void
test_bakery_by_hand (void)
{
  g_autoptr (BsPlan) plan = load ("bakery-counter.broadstave");
  g_autoptr (BsResults) results = bs_evaluate (plan);

  g_assert_cmpuint (results->stack->n, ==, 16);
  g_assert_cmpuint (plan->laminations->len, ==, 18);
  g_assert_cmpfloat_with_epsilon (results->stack->width, 616.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (results->clamps.pressure_mpa, 0.7, 1e-9);
  g_assert_cmpfloat_with_epsilon (results->clamps.force_n, 0.7 * results->clamps.area, 1e-6);
}

/* A single lamination leaves no glue line that could be wrong, so that finding has its own file. */
static void
test_every_finding (void)
{
  guint counts[BS_N_FINDING_KINDS] = { 0 };

  count_findings ("wedging-table.broadstave", counts);
  for (guint kind = 0; kind < BS_N_FINDING_KINDS; kind++)
    {
      if (counts[kind] == 0)
        g_test_message ("finding %u is missing", kind);
      g_assert_true ((counts[kind] > 0) == (kind != BS_FINDING_TOO_FEW_LAMINATIONS));
    }
  count_findings ("wedging-table-begun.broadstave", counts);
  g_assert_cmpuint (counts[BS_FINDING_TOO_FEW_LAMINATIONS], ==, 1);
}

static void
test_sixty (void)
{
  g_autoptr (BsPlan) plan = load ("library-counter.broadstave");

  g_assert_cmpuint (plan->order->len, ==, 60);
  g_assert_cmpuint (plan->packs->len, ==, 10);
}

static void
test_on_flat (void)
{
  g_autoptr (BsPlan) plan = load ("bread-shelf.broadstave");
  g_assert_cmpint (plan->slab.layup, ==, BS_LAYUP_ON_FLAT);
}

/* The number of clamps is one, wherever it is shown: the slab in one press has those that are set
 * for it, and takes as long; any press shown has those of its layout, or of the hand rule if that
 * says more. */
static void
test_clamps_agree (gconstpointer data)
{
  g_autoptr (BsPlan) plan = load (data);
  g_autoptr (BsResults) results = bs_evaluate (plan);
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_RULE, NULL);
  const BsStage *stage;

  if (!schedule->has_job)
    return;
  g_autoptr (BsStagesPlan) whole = bs_stages_plan_from_packs (&schedule->job.input, NULL, NULL, 0);
  stage = &g_array_index (whole->stages, BsStage, 0);
  g_assert_cmpuint (whole->stages->len, ==, 1);
  g_assert_cmpint (stage->n_clamps, ==, (int)results->set_clamps->len);
  if (plan->packs->len > 0)
    return;
  /* Here each joint is counted as the largest, there each as it is. */
  double more_mm2 = results->assembly.n_joints * results->clamps.area - results->assembly.area;
  g_assert_cmpfloat_with_epsilon (stage->times.total_s,
                                  results->assembly.total_s
                                      + plan->shop.times.spread_s_per_m2 * more_mm2 * 1e-6
                                            / plan->shop.people,
                                  1e-6);
}

static void
test_layouts_agree (gconstpointer data)
{
  g_autoptr (BsPlan) plan = load (data);
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, BS_SCHEDULE_BY_LAYOUT, NULL);
  const BsStagesPlan *presses = bs_schedule_get_presses (schedule);

  for (guint i = 0; presses != NULL && i < presses->stages->len; i++)
    {
      const BsStage *stage = &g_array_index (presses->stages, BsStage, i);
      const BsStagePressing *pressing = bs_schedule_get_pressing (schedule, stage);
      int by_rule = bs_stages_job_count_by_rule (&schedule->job, stage);

      if (pressing != NULL && pressing->status == BS_LAYOUT_REACHED)
        g_assert_cmpint (stage->n_clamps, ==, MAX (by_rule, pressing->n_clamps));
      else if (stage->is_pack || plan->placed_clamps->len == 0)
        g_assert_cmpint (stage->n_clamps, ==, by_rule);
    }
}

static void
add_every (const char *what, GTestDataFunc test)
{
  g_autofree char *folder = get_path ("");
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name = NULL;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".broadstave"))
      {
        g_autofree char *path = g_strdup_printf ("/examples/%s/%s", what, name);
        g_test_add_data_func_full (path, g_strdup (name), test, g_free);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_every ("same-bytes", test_same_bytes);
  add_every ("honest", test_honest);
  add_every ("clamps-agree", test_clamps_agree);
  add_every ("layouts-agree", test_layouts_agree);
  g_test_add_data_func ("/examples/perfect/bakery-counter", "bakery-counter.broadstave",
                        test_perfect);
  g_test_add_data_func ("/examples/perfect/bread-shelf", "bread-shelf.broadstave", test_perfect);
  g_test_add_func ("/examples/bakery-by-hand", test_bakery_by_hand);
  g_test_add_func ("/examples/every-finding", test_every_finding);
  g_test_add_func ("/examples/sixty", test_sixty);
  g_test_add_func ("/examples/on-flat", test_on_flat);
  return g_test_run ();
}
