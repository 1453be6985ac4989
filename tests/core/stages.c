/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-job.h"

#include "core/stages-row.h"

#include <math.h>

#define MAX_LAMINATIONS 80

static BsStagesInput
job_of (int n, double *widths, guint32 seed)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);
  BsStagesInput input = bs_stages_input_default ();

  for (int i = 0; i < n; i++)
    widths[i] = g_rand_int_range (random, 20, 46);
  input.n = n;
  input.widths = widths;
  input.length = 1500.0;
  input.height = 60.0;
  input.clamps = input.pack_clamps = g_rand_int_range (random, 9, 30);
  input.total_s = input.closed_s = g_rand_int_range (random, 150, 700);
  input.planer_width = g_rand_int_range (random, 80, 400);
  input.planes_packs = g_rand_boolean (random);
  input.rest_s = g_rand_boolean (random) ? 3600.0 : 0.0;
  input.max_opening = 3000.0;
  input.people = g_rand_int_range (random, 1, 3);
  return input;
}

static const BsStage *
stage_at (const BsStagesPlan *plan, guint i)
{
  return &g_array_index (plan->stages, BsStage, i);
}

/* Each glue line is glued exactly once, and only pieces that are there are joined. */
static void
check_gluing (const BsStagesPlan *plan, const BsStagesInput *input)
{
  gboolean is_glued[MAX_LAMINATIONS + 1] = { FALSE };

  for (guint i = 0; i < plan->stages->len; i++)
    {
      const BsStage *stage = stage_at (plan, i);
      g_assert_cmpint (stage->n_pieces, >=, 2);
      for (int k = 1; k < stage->n_pieces; k++)
        {
          g_assert_false (is_glued[stage->bounds[k]]);
          is_glued[stage->bounds[k]] = TRUE;
        }
      for (int line = stage->bounds[0] + 1; line < stage->bounds[stage->n_pieces]; line++)
        g_assert_true (is_glued[line]);
    }
  for (int line = 1; line < input->n; line++)
    g_assert_true (is_glued[line]);
}

/* Rounds follow each other, hands and planer do one thing at a time, and clamps stay on long
 * enough. */
static void
check_calendar (const BsStagesPlan *plan, const BsStagesInput *input)
{
  double round_end = 0.0, end = 0.0, hands_free = 0.0, planer_free = 0.0;
  int round = 0, clamps = 0;

  for (guint i = 0; i < plan->stages->len; i++)
    {
      const BsStage *stage = stage_at (plan, i);
      if (stage->round != round)
        {
          g_assert_cmpint (stage->round, ==, round + 1);
          round = stage->round;
          round_end = end;
          clamps = 0;
        }
      clamps += stage->n_clamps;
      g_assert_cmpint (clamps, <=, input->pack_clamps);
      g_assert_cmpfloat (stage->begin_s, >=, round_end - 1e-6);
      g_assert_cmpfloat (stage->begin_s, >=, hands_free - 1e-6);
      g_assert_cmpfloat_with_epsilon (stage->closed_s - stage->begin_s, stage->times.assembly_s,
                                      1e-6);
      g_assert_cmpfloat (stage->released_s, >=, stage->closed_s + input->press_s - 1e-6);
      if (stage->is_pack && input->planes_packs)
        {
          g_assert_cmpfloat (stage->planing_s, >=, stage->released_s + input->rest_s - 1e-6);
          g_assert_cmpfloat (stage->planing_s, >=, planer_free - 1e-6);
          g_assert_cmpfloat_with_epsilon (stage->end_s, stage->planing_s + input->plane_s, 1e-6);
          planer_free = stage->end_s;
        }
      hands_free = stage->closed_s;
      end = fmax (end, stage->end_s);
    }
  g_assert_cmpint (plan->n_rounds, ==, round + 1);
  g_assert_cmpfloat_with_epsilon (plan->elapsed_s, end, 1e-6);
}

/* No plan is quicker than each glue line spread once, two clamps and a first piece a round, and the
 * waits that every round has. */
static double
find_bound (const BsStagesInput *input, int n_rounds)
{
  double area = input->length * input->height * 1e-6;
  double each = input->joint_s + input->spread_s_per_m2 * area / input->people + input->place_s
                + input->align_s;
  double round = input->place_s + 2.0 * input->tighten_s / input->people + input->press_s;
  double rest = input->planes_packs ? input->rest_s + input->plane_s : 0.0;

  return (input->n - 1) * each + n_rounds * round + (n_rounds - 1) * rest;
}

static void
check_plan (const BsStagesPlan *plan, const BsStagesInput *input)
{
  check_gluing (plan, input);
  check_calendar (plan, input);
  for (guint i = 0; i < plan->stages->len; i++)
    g_assert_cmpint (stage_at (plan, i)->limit, ==, BS_STAGE_LIMIT_NONE);
  g_assert_cmpfloat (plan->elapsed_s, >=, find_bound (input, plan->n_rounds) - 1e-6);
}

/* Gluing the packs of a plan that was found, as many at once as the clamps allow, takes no longer.
 */
static void
check_kept (const BsStagesPlan *plan, const BsStagesInput *input)
{
  g_autoptr (GArray) packs = bs_stages_plan_list_packs (plan);
  int starts[MAX_LAMINATIONS], counts[MAX_LAMINATIONS];

  for (guint i = 0; i < packs->len; i++)
    {
      starts[i] = g_array_index (packs, BsPack, i).first;
      counts[i] = g_array_index (packs, BsPack, i).count;
    }
  g_autoptr (BsStagesPlan) kept
      = bs_stages_plan_from_packs (input, starts, counts, (int)packs->len);
  check_plan (kept, input);
  g_assert_cmpint (kept->n_rounds, <=, plan->n_rounds);
  g_assert_cmpfloat (kept->elapsed_s, <=, plan->elapsed_s + 1e-6);
}

/* Random jobs of every size; both plans are whole, and neither is better than it may be. */
static void
test_random (gconstpointer data)
{
  double widths[MAX_LAMINATIONS];
  int n_found = 0;

  for (guint32 seed = 0; seed < 60; seed++)
    {
      int n = 2 + (int)(seed * 7 % (guint32)GPOINTER_TO_INT (data));
      BsStagesInput input = job_of (n, widths, seed);
      g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
      g_assert_cmpint (bs_stages_is_possible (&input), ==, stages->shortest != NULL);
      g_assert_cmpint (stages->limit == BS_STAGE_LIMIT_NONE, ==, stages->shortest != NULL);
      if (stages->shortest == NULL)
        continue;

      n_found++;
      check_plan (stages->shortest, &input);
      check_kept (stages->shortest, &input);
      if (stages->balanced == NULL)
        continue;
      check_plan (stages->balanced, &input);
      check_kept (stages->balanced, &input);
      g_assert_cmpint (stages->balanced->n_rounds, ==, stages->shortest->n_rounds);
      g_assert_cmpfloat (stages->balanced->imbalance, <, stages->shortest->imbalance);
      g_assert_cmpfloat (stages->balanced->elapsed_s, <=,
                         stages->shortest->elapsed_s * (1.0 + BS_STAGES_BALANCE_PCT / 100.0));
    }
  g_assert_cmpint (n_found, >=, 20);
}

/* A better shop never makes for more rounds, or for a longer time in as many. */
typedef void (*Ease) (BsStagesInput *input);

static void
ease_clamps (BsStagesInput *input)
{
  input->clamps += 6;
  input->pack_clamps += 6;
}

static void
ease_time (BsStagesInput *input)
{
  input->total_s *= 1.4;
  input->closed_s *= 1.4;
}

static void
ease_planer (BsStagesInput *input)
{
  input->planer_width *= 1.5;
}

static void
test_easier (gconstpointer data)
{
  Ease ease = *(const Ease *)data;
  double widths[MAX_LAMINATIONS];

  for (guint32 seed = 0; seed < 60; seed++)
    {
      BsStagesInput input = job_of (3 + (int)(seed % 12), widths, seed);
      input.max_rounds = 4;
      g_autoptr (BsStages) before = bs_stages_solve (&input, NULL);
      ease (&input);
      g_autoptr (BsStages) after = bs_stages_solve (&input, NULL);
      if (before->shortest == NULL)
        continue;
      g_assert_nonnull (after->shortest);
      g_assert_cmpint (after->shortest->n_rounds, <=, before->shortest->n_rounds);
      if (after->shortest->n_rounds == before->shortest->n_rounds)
        g_assert_cmpfloat (after->shortest->elapsed_s, <=, before->shortest->elapsed_s + 1e-3);
    }
}

/* The same slab from back to front takes as long. */
static void
test_mirror (void)
{
  double widths[MAX_LAMINATIONS], mirrored[MAX_LAMINATIONS];

  for (guint32 seed = 0; seed < 60; seed++)
    {
      int n = 3 + (int)(seed % 12);
      BsStagesInput input = job_of (n, widths, seed);
      input.max_rounds = 4;
      g_autoptr (BsStages) one = bs_stages_solve (&input, NULL);
      for (int i = 0; i < n; i++)
        mirrored[i] = widths[n - 1 - i];
      input.widths = mirrored;
      g_autoptr (BsStages) two = bs_stages_solve (&input, NULL);
      g_assert_cmpint (one->shortest != NULL, ==, two->shortest != NULL);
      if (one->shortest == NULL)
        continue;
      g_assert_cmpint (one->shortest->n_rounds, ==, two->shortest->n_rounds);
      g_assert_cmpfloat_with_epsilon (one->shortest->elapsed_s, two->shortest->elapsed_s, 1e-3);
      g_assert_cmpfloat_with_epsilon (one->shortest->imbalance, two->shortest->imbalance, 0.011);
    }
}

/* The plan from the front is a plan like others, never better than the best one. */
static void
test_row (void)
{
  double widths[MAX_LAMINATIONS];

  for (guint32 seed = 0; seed < 60; seed++)
    {
      BsStagesInput input = job_of (3 + (int)(seed % 14), widths, seed);
      input.max_rounds = 4;
      g_autoptr (BsStagesPlan) row = bs_stages_row_find (&input, INFINITY);
      if (row == NULL)
        continue;
      check_plan (row, &input);
      g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
      g_assert_nonnull (stages->shortest);
      g_assert_true (stages->is_proved);
      g_assert_cmpint (stages->shortest->n_rounds, <=, row->n_rounds);
      if (stages->shortest->n_rounds == row->n_rounds)
        g_assert_cmpfloat (stages->shortest->elapsed_s, <=, row->elapsed_s + 2e-3);
    }
}

/* One pack at a time, six packs and more: beyond the search, from the front. */
static void
test_many_rounds (void)
{
  double widths[MAX_LAMINATIONS];
  BsStagesInput input = job_of (48, widths, 1);

  for (int i = 0; i < 48; i++)
    widths[i] = 30.0;
  input.clamps = input.pack_clamps = 13; /* 1 + 1400/150 = 11 */
  input.people = 1;
  input.planes_packs = TRUE;
  input.planer_width = 250.0; /* eight laminations */
  input.total_s = input.closed_s = 600.0;
  input.max_rounds = 12;
  g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
  g_assert_nonnull (stages->shortest);
  check_plan (stages->shortest, &input);
  g_assert_cmpint (stages->shortest->n_rounds, >, 4);
  g_assert_cmpint (stages->shortest->n_rounds, <=, 7);
  g_assert_false (stages->is_proved);
}

/* What stands in the way, one thing at a time. */
typedef struct
{
  const char *path;
  BsStageLimit wanted;
  double total_s, open_s, max_opening, planer_width, max_pack_kg;
  int clamps, max_rounds;
} ObstacleRow;

/* Eight laminations of 40 mm, 3 kg each; a joint takes 5 + 18 + 8 + 7 = 38 s, a clamp 12 s. */
static const ObstacleRow obstacle_rows[] = {
  { "none", BS_STAGE_LIMIT_NONE, 600.0, 300.0, 1000.0, 400.0, INFINITY, 20, 4 },
  { "open", BS_STAGE_LIMIT_OPEN, 600.0, 30.0, 1000.0, 400.0, INFINITY, 20, 4 },
  { "total", BS_STAGE_LIMIT_TOTAL, 60.0, 300.0, 1000.0, 400.0, INFINITY, 20, 4 },
  { "opening", BS_STAGE_LIMIT_OPENING, 600.0, 300.0, 380.0, 400.0, INFINITY, 20, 4 },
  { "clamps", BS_STAGE_LIMIT_CLAMPS, 600.0, 300.0, 1000.0, 400.0, INFINITY, 5, 4 },
  { "planer", BS_STAGE_LIMIT_PLANER, 260.0, 300.0, 1000.0, 60.0, INFINITY, 20, 4 },
  { "weight", BS_STAGE_LIMIT_WEIGHT, 260.0, 300.0, 1000.0, 400.0, 5.0, 20, 4 },
  { "rounds", BS_STAGE_LIMIT_ROUNDS, 260.0, 300.0, 1000.0, 400.0, INFINITY, 20, 1 },
};

static void
test_obstacle (gconstpointer data)
{
  const ObstacleRow *row = data;
  static const double widths[] = { 40, 40, 40, 40, 40, 40, 40, 40 };
  static const double masses[] = { 3, 3, 3, 3, 3, 3, 3, 3 };
  BsStagesInput input = bs_stages_input_default ();

  input.n = 8;
  input.widths = widths;
  input.masses = masses;
  input.length = 1500.0;
  input.height = 60.0;
  input.total_s = input.closed_s = row->total_s;
  input.open_s = row->open_s;
  input.max_opening = row->max_opening;
  input.planer_width = row->planer_width;
  input.max_pack_kg = row->max_pack_kg;
  input.clamps = input.pack_clamps = row->clamps;
  input.max_rounds = row->max_rounds;
  g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
  g_assert_cmpint (stages->limit, ==, row->wanted);
}

static void
test_own_packs (void)
{
  static const double widths[] = { 40, 40, 40, 40, 40, 40, 40, 40 };
  static const int starts[] = { 0, 3, 6 }, counts[] = { 3, 3, 2 };
  BsStagesInput input = bs_stages_input_default ();

  input.n = 8;
  input.widths = widths;
  input.length = 1500.0;
  input.height = 60.0;
  input.planer_width = 120.0;
  input.clamps = input.pack_clamps = 20; /* 1 + 1400/170: ten for a lamination, two packs at once */
  g_autoptr (BsStagesPlan) plan = bs_stages_plan_from_packs (&input, starts, counts, 3);
  check_plan (plan, &input);
  g_assert_cmpint (plan->n_rounds, ==, 3);
  g_assert_cmpuint (plan->stages->len, ==, 4);
  g_assert_cmpint (stage_at (plan, 1)->round, ==, 0);
  g_assert_cmpint (stage_at (plan, 2)->round, ==, 1);
  g_assert_false (stage_at (plan, 3)->is_pack);
  g_assert_cmpfloat_with_epsilon (plan->imbalance, 40.0, 1e-9);
}

/* Pairs, a four and a three of them, the slab. Ten clamps a press and twenty in all: two pairs at
 * once, then the pair that is left and the four that is ready, then the three that waits for it. */
static void
test_own_packs_nested (void)
{
  static const double widths[] = { 40, 40, 40, 40, 40, 40, 40, 40 };
  static const int starts[] = { 0, 0, 2, 5, 5 }, counts[] = { 4, 2, 2, 3, 2 };
  static const struct
  {
    int round, first, n_pieces;
  } wanted[] = { { 0, 0, 2 }, { 0, 2, 2 }, { 1, 0, 2 }, { 1, 5, 2 }, { 2, 5, 2 }, { 3, 0, 3 } };
  BsStagesInput input = bs_stages_input_default ();

  input.n = 8;
  input.widths = widths;
  input.length = 1500.0;
  input.height = 60.0;
  input.planer_width = 160.0;
  input.clamps = input.pack_clamps = 20;
  g_autoptr (BsStagesPlan) plan = bs_stages_plan_from_packs (&input, starts, counts, 5);
  check_gluing (plan, &input);
  g_assert_cmpuint (plan->stages->len, ==, G_N_ELEMENTS (wanted));
  for (guint i = 0; i < plan->stages->len; i++)
    {
      g_assert_cmpint (stage_at (plan, i)->round, ==, wanted[i].round);
      g_assert_cmpint (stage_at (plan, i)->bounds[0], ==, wanted[i].first);
      g_assert_cmpint (stage_at (plan, i)->n_pieces, ==, wanted[i].n_pieces);
    }
}

/* A pack that does not fit says why, and the rest of the plan stands. */
static void
test_own_packs_too_wide (void)
{
  static const double widths[] = { 40, 40, 40, 40, 40, 40, 40, 40 };
  static const int starts[] = { 2 }, counts[] = { 5 };
  BsStagesInput input = bs_stages_input_default ();

  input.n = 8;
  input.widths = widths;
  input.length = 1500.0;
  input.height = 60.0;
  input.planer_width = 150.0;
  g_autoptr (BsStagesPlan) plan = bs_stages_plan_from_packs (&input, starts, counts, 1);
  check_gluing (plan, &input);
  g_assert_cmpint (stage_at (plan, 0)->limit, ==, BS_STAGE_LIMIT_PLANER);
  g_assert_cmpint (stage_at (plan, 1)->n_pieces, ==, 4);
  g_assert_cmpint (stage_at (plan, 1)->limit, ==, BS_STAGE_LIMIT_NONE);
}

/* The whole slab as one pack is one press; no pack at all is the same. */
static void
test_own_packs_whole (void)
{
  static const double widths[] = { 40, 40, 40 };
  static const int starts[] = { 0 }, counts[] = { 3 };
  BsStagesInput input = bs_stages_input_default ();

  input.n = 3;
  input.widths = widths;
  input.length = 1000.0;
  input.height = 60.0;
  g_autoptr (BsStagesPlan) one = bs_stages_plan_from_packs (&input, starts, counts, 1);
  g_autoptr (BsStagesPlan) none = bs_stages_plan_from_packs (&input, NULL, NULL, 0);
  g_assert_cmpuint (one->stages->len, ==, 1);
  g_assert_cmpuint (none->stages->len, ==, 1);
  g_assert_false (stage_at (one, 0)->is_pack);
  g_assert_cmpfloat_with_epsilon (one->elapsed_s, none->elapsed_s, 1e-9);
}

/* Clamps from elsewhere: asked for each outer piece, and what they say counts. */
static int
eleven_clamps (int first, int count, gpointer data)
{
  *(int *)data += 1;
  return 11;
}

static void
test_clamps_from_elsewhere (void)
{
  double widths[MAX_LAMINATIONS];
  BsStagesInput input = job_of (6, widths, 4);
  int n_asked = 0;

  input.clamps = input.pack_clamps = 24;
  input.planes_packs = FALSE;
  input.total_s = input.closed_s = 600.0;
  input.clamps_for = eleven_clamps;
  input.clamps_data = &n_asked;
  g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
  g_assert_nonnull (stages->shortest);
  g_assert_cmpint (n_asked, >, 0);
  for (guint i = 0; i < stages->shortest->stages->len; i++)
    g_assert_cmpint (stage_at (stages->shortest, i)->n_clamps, ==, 11);
}

static gboolean
stop_at_once (double done, gpointer data)
{
  return FALSE;
}

static void
test_stopped (void)
{
  double widths[MAX_LAMINATIONS];
  BsStagesInput input = job_of (30, widths, 4);
  BsProgress progress = { stop_at_once, NULL };
  g_autoptr (BsStages) stages = bs_stages_solve (&input, &progress);

  if (stages->shortest != NULL)
    check_plan (stages->shortest, &input);
}

static void
test_too_few (void)
{
  static const double widths[] = { 40.0 };
  BsStagesInput input = bs_stages_input_default ();

  input.n = 1;
  input.widths = widths;
  g_autoptr (BsStages) stages = bs_stages_solve (&input, NULL);
  g_assert_null (stages->shortest);
  g_assert_cmpint (stages->limit, ==, BS_STAGE_LIMIT_NONE);
  g_assert_false (bs_stages_is_possible (&input));
}

int
main (int argc, char **argv)
{
  static const Ease eases[] = { ease_clamps, ease_time, ease_planer };

  g_test_init (&argc, &argv, NULL);

  g_test_add_data_func ("/stages/random/small", GINT_TO_POINTER (13), test_random);
  g_test_add_data_func ("/stages/random/large", GINT_TO_POINTER (70), test_random);
  g_test_add_data_func ("/stages/easier/clamps", &eases[0], test_easier);
  g_test_add_data_func ("/stages/easier/time", &eases[1], test_easier);
  g_test_add_data_func ("/stages/easier/planer", &eases[2], test_easier);
  g_test_add_func ("/stages/mirror", test_mirror);
  g_test_add_func ("/stages/row", test_row);
  g_test_add_func ("/stages/many-rounds", test_many_rounds);
  for (gsize i = 0; i < G_N_ELEMENTS (obstacle_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/stages/obstacle/%s", obstacle_rows[i].path);
      g_test_add_data_func (path, &obstacle_rows[i], test_obstacle);
    }
  g_test_add_func ("/stages/own-packs/three", test_own_packs);
  g_test_add_func ("/stages/own-packs/nested", test_own_packs_nested);
  g_test_add_func ("/stages/own-packs/too-wide", test_own_packs_too_wide);
  g_test_add_func ("/stages/own-packs/whole", test_own_packs_whole);
  g_test_add_func ("/stages/clamps-from-elsewhere", test_clamps_from_elsewhere);
  g_test_add_func ("/stages/stopped", test_stopped);
  g_test_add_func ("/stages/too-few", test_too_few);
  return g_test_run ();
}
