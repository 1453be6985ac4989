/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-remedy.h"

#include "core/stages-job.h"
#include "shops.h"

/* 0 when there is no remedy of a kind. */
static double
value_of (const GArray *remedies, BsStagesRemedyKind kind)
{
  for (guint i = 0; i < remedies->len; i++)
    {
      const BsStagesRemedy *remedy = &g_array_index (remedies, BsStagesRemedy, i);
      if (remedy->kind == kind)
        return remedy->value;
    }
  return 0.0;
}

/* Of the job that a plan makes. */
static GArray *
find_remedies (const BsPlan *plan, gboolean keeps_packs)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsStagesJob job;

  if (!bs_stages_job_init (&job, stack))
    return g_array_new (FALSE, FALSE, sizeof (BsStagesRemedy));
  GArray *remedies = bs_stages_remedies (&job, keeps_packs, NULL);
  bs_stages_job_clear (&job);
  return remedies;
}

static void
test_nothing_to_mend (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  g_autoptr (GArray) own = find_remedies (plan, TRUE);
  g_autoptr (GArray) any = find_remedies (plan, FALSE);

  g_assert_cmpuint (own->len, ==, 0);
  g_assert_cmpuint (any->len, ==, 0);
}

static void
test_own_press_too_slow (void)
{
  g_autoptr (BsPlan) plan = shop_new_hasty ();
  g_autoptr (GArray) remedies = find_remedies (plan, TRUE);

  /* 335.6 / 300 = 1.12: the first quarter more. */
  g_assert_cmpfloat_with_epsilon (value_of (remedies, BS_STAGES_REMEDY_SLOWER_ADHESIVE), 1.25,
                                  1e-9);
  /* Two people spread and tighten in half the time: 7 x 25.4 + 60 = 237.8 s. */
  g_assert_cmpfloat_with_epsilon (value_of (remedies, BS_STAGES_REMEDY_MORE_PEOPLE), 2.0, 1e-9);
  /* 2^(2/10) = 1.149, 2^(1/10) = 1.072: two degrees. */
  g_assert_cmpfloat_with_epsilon (value_of (remedies, BS_STAGES_REMEDY_COOLER_SHOP), 18.0, 1e-9);
  /* More of the same clamps do not save time. */
  g_assert_cmpfloat (value_of (remedies, BS_STAGES_REMEDY_MORE_CLAMPS), <, 1.0);
  g_assert_cmpfloat (value_of (remedies, BS_STAGES_REMEDY_SMALLER_PACKS), >=, 2.0);
  g_assert_cmpfloat (value_of (remedies, BS_STAGES_REMEDY_SMALLER_PACKS), <, 8.0);
}

static void
test_too_few_clamps (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);

  kind->count = 7;
  g_autoptr (GArray) remedies = find_remedies (plan, FALSE);
  /* 1200/(50 + 2 x 40) rounded up: ten for an outer lamination, whatever the packs. */
  g_assert_cmpfloat_with_epsilon (value_of (remedies, BS_STAGES_REMEDY_MORE_CLAMPS), 10.0, 1e-9);
  g_assert_cmpfloat (value_of (remedies, BS_STAGES_REMEDY_MORE_PEOPLE), <, 1.0);
  g_assert_cmpfloat (value_of (remedies, BS_STAGES_REMEDY_SMALLER_PACKS), <, 1.0);
}

static void
test_too_short_clamps (void)
{
  g_autoptr (BsPlan) plan = shop_new_perfect ();
  BsClampKind *kind = g_ptr_array_index (plan->shop.clamps, 0);

  kind->reach = 290.0; /* the slab is 320 wide */
  g_autoptr (GArray) remedies = find_remedies (plan, FALSE);
  g_assert_cmpfloat_with_epsilon (value_of (remedies, BS_STAGES_REMEDY_LONGER_CLAMPS), 350.0, 1e-9);
  g_assert_cmpuint (remedies->len, ==, 1);
}

/* What is proposed does help: with it, and with none of it a step smaller. */
static void
test_proposals_help (void)
{
  g_autoptr (BsPlan) plan = shop_new_hasty ();
  g_autoptr (GArray) remedies = find_remedies (plan, TRUE);

  plan->shop.climate.temperature_c = value_of (remedies, BS_STAGES_REMEDY_COOLER_SHOP);
  g_autoptr (GArray) mended = find_remedies (plan, TRUE);
  g_assert_cmpuint (mended->len, ==, 0);
  plan->shop.climate.temperature_c += 1.0;
  g_autoptr (GArray) warmer = find_remedies (plan, TRUE);
  g_assert_cmpuint (warmer->len, >, 0);
}

/* Never colder than the adhesive stands. */
static void
test_not_too_cold (void)
{
  g_autoptr (BsPlan) plan = shop_new_hasty ();

  plan->adhesive.min_temperature_c = 19.0;
  g_autoptr (GArray) remedies = find_remedies (plan, TRUE);
  g_assert_cmpfloat (value_of (remedies, BS_STAGES_REMEDY_COOLER_SHOP), <, 1.0);
}

static void
test_empty (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (GArray) remedies = find_remedies (plan, FALSE);

  g_assert_cmpuint (remedies->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/stages-remedy/nothing-to-mend", test_nothing_to_mend);
  g_test_add_func ("/stages-remedy/own-press-too-slow", test_own_press_too_slow);
  g_test_add_func ("/stages-remedy/too-few-clamps", test_too_few_clamps);
  g_test_add_func ("/stages-remedy/too-short-clamps", test_too_short_clamps);
  g_test_add_func ("/stages-remedy/proposals-help", test_proposals_help);
  g_test_add_func ("/stages-remedy/not-too-cold", test_not_too_cold);
  g_test_add_func ("/stages-remedy/empty", test_empty);
  return g_test_run ();
}
