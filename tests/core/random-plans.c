/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks/random-plan.h"

#include "core/flatten.h"
#include "core/flatten-map.h"
#include "core/flatten-spread.h"
#include "core/order-plan.h"
#include "core/order.h"
#include "core/pressure.h"
#include "core/schedule.h"

#include <math.h>

/* Whatever plan there is, what follows from it keeps the laws that need no known answer. Plans are
 * seeded: number i is the same on every machine. All of them are evaluated; the slow engines look
 * at every so many. */

#define N_PLANS 10000
#define N_PATHS 10 /* registered, for a share of the plans each */

#define FLATTEN_EVERY 5
#define SCHEDULE_EVERY 2
#define LAYOUT_EVERY 10
#define PRESS_EVERY 5
#define ORDER_EVERY 5

static BsPlan *
plan_new (guint number)
{
  BsRandom random = bs_random_init (20000 + number);

  return random_plan_new (&random);
}

static gboolean
is_number_or_unknown (double value, double least)
{
  return isnan (value) || (isfinite (value) && value >= least);
}

static void
check_clamps (const BsResults *results)
{
  const BsClampRule *rule = &results->clamps;

  g_assert_cmpint (rule->n, >=, 2);
  g_assert_cmpint (rule->n, >=, rule->n_by_force);
  g_assert_cmpint (rule->n, >=, rule->n_by_spacing);
  for (guint i = 0; i < rule->positions->len; i++)
    {
      double x = g_array_index (rule->positions, double, i);
      g_assert_cmpfloat (x, >=, 0.0);
      g_assert_cmpfloat (x, <=, results->stack->length);
    }
}

static void
check_findings (const BsResults *results)
{
  BsSeverity before = BS_SEVERITY_STOP;

  for (guint i = 0; i < results->findings->len; i++)
    {
      const BsFinding *finding = &g_array_index (results->findings, BsFinding, i);
      g_assert_cmpint (finding->severity, <=, before); /* worst first */
      g_assert_cmpint (finding->place, <, (int)results->stack->n);
      g_assert_cmpint (finding->neighbour, <, (int)results->stack->n);
      before = finding->severity;
    }
}

static void
check_results (const BsResults *results)
{
  const BsFlattenResult *flatten = &results->flatten;

  if (!isnan (flatten->thickness))
    {
      g_assert_cmpfloat (flatten->thickness, >=, 0.0);
      g_assert_cmpfloat (flatten->thickness, <=, results->stack->height);
    }
  g_assert_cmpuint (flatten->n_touches, <=, BS_MAX_TOUCHES);
  g_assert_true (is_number_or_unknown (results->mass_kg, 0.0));
  g_assert_true (is_number_or_unknown (results->glue_kg, 0.0));
  g_assert_true (is_number_or_unknown (results->assembly.total_s, 0.0));
  g_assert_true (is_number_or_unknown (results->assembly.limit_s, 0.0));
  g_assert_cmpfloat (results->emc_low_pct, >=, 0.0);
  g_assert_cmpfloat (results->emc_low_pct, <=, results->emc_high_pct);
  g_assert_cmpfloat (results->emc_high_pct, <=, 35.0); /* about fibre saturation */
  check_clamps (results);
  check_findings (results);
}

/* Taller laminations never give a thinner slab. */
static void
check_thicker (const BsPlan *plan, const BsResults *results)
{
  g_autoptr (BsPlan) thicker = bs_plan_copy (plan);

  for (guint i = 0; i < thicker->laminations->len; i++)
    {
      BsLamination *former = g_ptr_array_index (thicker->laminations, i);
      BsLamination *copy = bs_lamination_copy (former);

      copy->height += copy->height > 0.0 ? 1.0 : 0.0;
      g_ptr_array_index (thicker->laminations, i) = copy;
      bs_lamination_unref (former);
    }
  g_autoptr (BsResults) other = bs_evaluate (thicker);
  g_assert_true (isnan (other->flatten.thickness) == isnan (results->flatten.thickness));
  g_assert_false (other->flatten.thickness < results->flatten.thickness);
}

static void
check_map (const BsStack *stack, double thickness, double allowance)
{
  g_autoptr (BsFlattenMap) map = bs_flatten_map_new (stack, stack->plan->slab.flatten_work, 7, 5);

  if (isnan (thickness))
    {
      g_assert_true (isnan (map->thickness));
      return;
    }
  g_assert_cmpfloat_with_epsilon (map->thickness, thickness, 1e-6 * (1.0 + thickness));
  for (guint i = 0; thickness > 0.0 && i < map->n_x * map->n_y; i++)
    if (!isnan (map->top[i]))
      {
        g_assert_cmpfloat (map->top[i], >=, allowance - 1e-6);
        g_assert_cmpfloat (map->underside[i], >=, allowance - 1e-6);
      }
  for (BsFlattenWork other = 0; other < BS_N_FLATTEN_WORKS; other++)
    {
      BsFlattenResult result, shimmed;
      bs_flatten_by (stack, other, &result);
      bs_flatten_by (stack, BS_FLATTEN_SHIMMED, &shimmed);
      g_assert_cmpfloat (result.thickness, <=, shimmed.thickness + 1e-6);
    }
}

static void
check_odds (const BsStack *stack)
{
  BsFlattenSpread spread = bs_flatten_spread_of (stack->plan);

  spread.n_draws = 40;
  BsFlattenOdds odds = bs_flatten_odds (stack, &spread);
  if (isnan (odds.at_50_pct))
    return;
  g_assert_cmpfloat (odds.at_95_pct, <=, odds.at_90_pct);
  g_assert_cmpfloat (odds.at_90_pct, <=, odds.at_50_pct);
}

/* The end of the stage that made a piece; 0 for a lamination. */
static double
find_ready_s (const BsStagesPlan *presses, int first, int end)
{
  for (guint i = 0; end - first > 1 && i < presses->stages->len; i++)
    {
      const BsStage *stage = &g_array_index (presses->stages, BsStage, i);
      if (stage->bounds[0] == first && stage->bounds[stage->n_pieces] == end)
        return stage->end_s;
    }
  g_assert_cmpint (end - first, ==, 1);
  return 0.0;
}

/* Each piece is there before it is glued on; hands close one stage after another; nothing is taken
 * out before its time. */
static void
check_precedence (const BsSchedule *schedule, const BsStagesPlan *presses)
{
  const BsStagesInput *input = &schedule->job.input;
  double hands_free = 0.0;

  for (guint i = 0; i < presses->stages->len; i++)
    {
      const BsStage *stage = &g_array_index (presses->stages, BsStage, i);

      for (int j = 0; j < stage->n_pieces; j++)
        {
          g_assert_cmpint (stage->bounds[j], <, stage->bounds[j + 1]);
          g_assert_cmpfloat (find_ready_s (presses, stage->bounds[j], stage->bounds[j + 1]), <=,
                             stage->begin_s + 1e-6);
        }
      g_assert_cmpfloat (stage->begin_s, >=, hands_free - 1e-6);
      g_assert_cmpfloat_with_epsilon (stage->closed_s - stage->begin_s, stage->times.assembly_s,
                                      1e-6);
      g_assert_cmpfloat (stage->released_s - stage->closed_s, >=, input->press_s - 1e-6);
      g_assert_cmpfloat (stage->end_s, >=, stage->planing_s);
      g_assert_cmpfloat (presses->elapsed_s, >=, stage->end_s - 1e-6);
      hands_free = stage->closed_s;
    }
}

/* A found schedule breaks no limit, and clamps of a round are no more than there are. */
static void
check_found (const BsSchedule *schedule, const BsStagesPlan *presses)
{
  g_assert_true (bs_stages_plan_is_possible (presses));
  for (int round = 0; round < presses->n_rounds; round++)
    {
      int clamps = 0;
      gboolean has_packs = FALSE;

      for (guint i = 0; i < presses->stages->len; i++)
        {
          const BsStage *stage = &g_array_index (presses->stages, BsStage, i);
          clamps += stage->round == round ? stage->n_clamps : 0;
          has_packs |= stage->round == round && stage->is_pack;
        }
      g_assert_cmpint (clamps, <=,
                       has_packs ? schedule->job.input.pack_clamps : schedule->job.input.clamps);
    }
}

/* With more clamps at hand and presses that need as many as before, nothing takes longer. */
static void
check_more_clamps (const BsSchedule *schedule)
{
  const BsStagesPlan *shortest = schedule->stages->shortest;
  BsStagesInput richer = schedule->job.input;

  if (shortest == NULL || !schedule->stages->is_proved)
    return;
  richer.clamps += 5;
  richer.pack_clamps += 5;
  g_autoptr (BsStages) other = bs_stages_solve (&richer, NULL);
  g_assert_nonnull (other->shortest);
  g_assert_cmpint (other->shortest->n_rounds, <=, shortest->n_rounds);
  if (other->shortest->n_rounds == shortest->n_rounds)
    g_assert_cmpfloat (other->shortest->elapsed_s, <=, shortest->elapsed_s + 0.01);
}

static void
check_schedule (const BsPlan *plan, BsScheduleClamps clamps)
{
  g_autoptr (BsSchedule) schedule = bs_schedule_new (plan, clamps, NULL);
  const BsStagesPlan *shortest;

  if (!schedule->has_job)
    return;
  shortest = schedule->stages->shortest;
  if (schedule->own != NULL)
    check_precedence (schedule, schedule->own);
  if (shortest != NULL)
    {
      check_precedence (schedule, shortest);
      check_found (schedule, shortest);
      g_assert_cmpint (schedule->stages->limit, ==, BS_STAGE_LIMIT_NONE);
    }
  if (shortest != NULL && schedule->stages->balanced != NULL)
    {
      check_precedence (schedule, schedule->stages->balanced);
      check_found (schedule, schedule->stages->balanced);
      g_assert_cmpfloat (schedule->stages->balanced->imbalance, <, shortest->imbalance);
    }
  if (bs_schedule_is_possible (schedule))
    g_assert_cmpuint (schedule->remedies->len, ==, 0);
  check_more_clamps (schedule);
}

/* Every glue line carries the force of all clamps, and none pulls. */
static void
check_pressing (const BsPlan *plan)
{
  g_autoptr (BsPressure) pressure = bs_pressure_new (plan, BS_PRESS_MODEL_TIMOSHENKO);

  if (pressure->state != BS_PRESSURE_OF_SET_CLAMPS)
    return;
  g_assert_cmpfloat (pressure->layout.pressures.imbalance, <, 1e-6);
  for (guint i = 0; i < bs_pressure_get_n_lines (pressure); i++)
    {
      const BsPressLine *line = bs_pressure_get_line (pressure, i);

      for (guint j = 0; j < line->n_points; j++)
        {
          g_assert_true (isfinite (line->points[j].pressure_mpa));
          g_assert_cmpfloat (line->points[j].pressure_mpa, >=, 0.0);
          g_assert_cmpfloat (line->points[j].opening, >=, 0.0);
        }
    }
}

/* As many places as the slab has, no lamination twice, and no better bound than the cost. */
static void
check_order (const BsPlan *plan)
{
  g_autoptr (BsOrderProblem) problem = bs_order_problem_new_for_plan (plan, NULL);

  if (problem == NULL)
    return;
  BsOrderEffort effort = bs_order_effort_default (problem);
  effort.n_moves = 2000;
  effort.n_steps = 20;
  effort.most_rows = 2000;
  g_autoptr (BsOrderResult) result = bs_order_solve (problem, &effort, NULL, NULL, NULL, NULL);
  g_autofree gboolean *is_used = g_new0 (gboolean, plan->laminations->len + 1);

  g_assert_nonnull (result);
  g_assert_cmpuint (result->n_places, ==, plan->order->len);
  for (guint i = 0; i < result->n_places; i++)
    {
      guint candidate = result->places[i].candidate;
      g_assert_cmpuint (candidate, <, plan->laminations->len);
      g_assert_false (is_used[candidate]);
      is_used[candidate] = TRUE;
    }
  g_assert_cmpint (result->bound, <=, result->cost.total);
  g_assert_cmpint (result->cost.total, <=, bs_order_present_cost (plan).total);
}

static void
check_plan (guint number)
{
  g_autoptr (BsPlan) plan = plan_new (number);
  g_autoptr (BsResults) results = bs_evaluate (plan);

  check_results (results);
  if (number % FLATTEN_EVERY == 0)
    {
      check_thicker (plan, results);
      check_map (results->stack, results->flatten.thickness, plan->slab.allowance);
      check_odds (results->stack);
    }
  if (number % SCHEDULE_EVERY == 1)
    check_schedule (plan, BS_SCHEDULE_BY_RULE);
  if (number % LAYOUT_EVERY == 2)
    check_schedule (plan, BS_SCHEDULE_BY_LAYOUT);
  if (number % PRESS_EVERY == 3)
    check_pressing (plan);
  if (number % ORDER_EVERY == 4 && plan->order->len > 0)
    check_order (plan);
}

static void
test_share (gconstpointer data)
{
  guint first = GPOINTER_TO_UINT (data) * (N_PLANS / N_PATHS);

  for (guint i = 0; i < N_PLANS / N_PATHS; i++)
    {
      g_test_message ("plan %u", first + i);
      check_plan (first + i);
    }
}

/* Numbers 0 and 1 of the same seed are the same each time, and not alike. */
static void
test_seeded (void)
{
  g_autoptr (BsPlan) one = plan_new (7), again = plan_new (7), other = plan_new (8);

  g_assert_cmpfloat_with_epsilon (one->slab.length, again->slab.length, 1e-12);
  g_assert_cmpuint (one->order->len, ==, again->order->len);
  g_assert_cmpfloat (fabs (one->slab.length - other->slab.length), >, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/random-plans/seeded", test_seeded);
  for (guint i = 0; i < N_PATHS; i++)
    {
      g_autofree char *path = g_strdup_printf ("/random-plans/laws/%u", i * (N_PLANS / N_PATHS));
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_share);
    }
  return g_test_run ();
}
