/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/packs.h"
#include "core/stages-job.h"

#include "shops.h"

#include <math.h>

/* What the perfect slab of eight laminations makes of itself. */
static void
test_perfect (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;

  g_assert_true (bs_stages_job_init (&job, stack));
  g_assert_cmpint (job.input.n, ==, 8);
  g_assert_cmpfloat_with_epsilon (job.input.widths[3], 40.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (job.input.length, 1200.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (job.input.height, 45.0, 1e-9);
  g_assert_cmpint (job.input.clamps, ==, 12);
  g_assert_cmpint (job.input.pack_clamps, ==, 12);
  g_assert_cmpfloat_with_epsilon (job.input.max_opening, 600.0, 1e-9);
  /* 1200/(50 + 2 x 40) and 1200/(50 + 2 x 80), rounded up */
  g_assert_cmpint (bs_stages_clamps_for (&job.input, 0, 1), ==, 10);
  g_assert_cmpint (bs_stages_clamps_for (&job.input, 0, 2), ==, 6);

  g_autoptr (BsStages) stages = bs_stages_solve (&job.input, NULL);
  g_assert_nonnull (stages->shortest);
  g_assert_cmpint (stages->shortest->n_rounds, ==, 1);
  bs_stages_job_clear (&job);
}

/* Clamps too short for the slab but long enough for any pack count for packs. */
static void
test_short_clamps (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();

  plan->shop.planer_width = 200.0;
  shop_add_clamps (plan, 5, 4000.0, 210.0, 50.0);
  shop_add_clamps (plan, 7, 4000.0, 150.0, 50.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;
  g_assert_true (bs_stages_job_init (&job, stack));
  g_assert_cmpint (job.input.clamps, ==, 12);
  g_assert_cmpint (job.input.pack_clamps, ==, 17);
  bs_stages_job_clear (&job);
}

static void
test_own_packs (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  const BsPack packs[] = { { 0, 4 }, { 4, 4 } };

  g_array_append_vals (plan->packs, packs, 2);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;
  g_assert_true (bs_stages_job_init (&job, stack));
  g_autoptr (BsStagesPlan) own = bs_stages_job_own_packs (&job, plan);
  g_assert_cmpuint (own->stages->len, ==, 3);
  g_assert_true (bs_stages_plan_is_possible (own));
  g_assert_cmpfloat_with_epsilon (own->imbalance, 0.0, 1e-9);
  /* specific gravity 0.5 at 12 %: 4 x 1200 x 40 x 45 mm at 9 % weigh between 8.64 l x 0.5 kg/l and
   * a tenth more */
  double mass = g_array_index (own->stages, BsStage, 0).mass_kg;
  g_assert_cmpfloat (mass, >=, 4.32);
  g_assert_cmpfloat (mass, <=, 4.80);
  bs_stages_job_clear (&job);
}

static void
test_weight_only_when_said (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;

  g_assert_true (bs_stages_job_init (&job, stack));
  g_assert_true (isinf (job.input.max_pack_kg));
  bs_stages_job_clear (&job);

  plan->shop.max_lift_kg = 20.0;
  g_autoptr (BsStack) other = bs_stack_new (plan);
  g_assert_true (bs_stages_job_init (&job, other));
  g_assert_cmpfloat_with_epsilon (job.input.max_pack_kg, 20.0, 1e-9);
  bs_stages_job_clear (&job);
}

static void
test_nothing_to_glue (gconstpointer data)
{
  g_autoptr (BsPlan) plan = slab_new ((guint)GPOINTER_TO_INT (data), 1000.0, 0.0, 50.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;

  g_assert_false (bs_stages_job_init (&job, stack));
}

/* A shop without clamps: no plan, and the clamps are named. */
static void
test_no_clamps (void)
{
  g_autoptr (BsPlan) plan = slab_new (6, 1000.0, 40.0, 50.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;

  g_assert_true (bs_stages_job_init (&job, stack));
  g_autoptr (BsStages) stages = bs_stages_solve (&job.input, NULL);
  g_assert_null (stages->shortest);
  g_assert_cmpint (stages->limit, ==, BS_STAGE_LIMIT_CLAMPS);
  bs_stages_job_clear (&job);
}

/* What a plan keeps of its presses is what they were made of, in its order whatever the rounds. */
static void
test_list_packs (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  const BsPack packs[] = { { 0, 4 }, { 0, 2 }, { 5, 2 } };

  g_array_append_vals (plan->packs, packs, G_N_ELEMENTS (packs));
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;
  g_assert_true (bs_stages_job_init (&job, stack));
  g_autoptr (BsStagesPlan) own = bs_stages_job_own_packs (&job, plan);
  g_autoptr (GArray) listed = bs_stages_plan_list_packs (own);
  g_assert_true (bs_packs_are (plan, (const BsPack *)(const void *)listed->data, listed->len));
  bs_stages_job_clear (&job);
}

/* Weak clamps are all used when even all of them do not come to the force: 1200 x 45 mm at the
 * adhesive's pressure need tens of kilonewtons, and there are twelve of one. */
static void
test_force (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);

  kind->max_force_n = 1000.0;
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;
  g_assert_true (bs_stages_job_init (&job, stack));
  g_autoptr (BsStagesPlan) whole = bs_stages_plan_from_packs (&job.input, NULL, NULL, 0);
  g_assert_cmpint (g_array_index (whole->stages, BsStage, 0).n_clamps, ==, 12); /* all */
  bs_stages_job_clear (&job);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/stages-job/perfect", test_perfect);
  g_test_add_func ("/stages-job/short-clamps", test_short_clamps);
  g_test_add_func ("/stages-job/own-packs", test_own_packs);
  g_test_add_func ("/stages-job/weight-only-when-said", test_weight_only_when_said);
  g_test_add_data_func ("/stages-job/nothing-to-glue/empty", GINT_TO_POINTER (0),
                        test_nothing_to_glue);
  g_test_add_data_func ("/stages-job/nothing-to-glue/one", GINT_TO_POINTER (1),
                        test_nothing_to_glue);
  g_test_add_data_func ("/stages-job/nothing-to-glue/without-size", GINT_TO_POINTER (3),
                        test_nothing_to_glue);
  g_test_add_func ("/stages-job/no-clamps", test_no_clamps);
  g_test_add_func ("/stages-job/list-packs", test_list_packs);
  g_test_add_func ("/stages-job/force", test_force);
  return g_test_run ();
}
