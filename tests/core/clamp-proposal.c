/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/clamp-proposal.h"

#include "plan-clamps.h"
#include "shops.h"

#include <math.h>

static GArray *
copy_clamps (const BsLayout *layout)
{
  GArray *clamps = g_array_new (FALSE, FALSE, sizeof (BsLayoutClamp));

  g_array_append_vals (clamps, layout->clamps, layout->n_clamps);
  return clamps;
}

/* What was found presses enough when it is placed and pressed afresh, and the clamps that were
 * placed before do not matter to it. */
static void
test_found (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsClampProposal) bare = bs_clamp_proposal_new (plan, NULL), proposal = NULL;
  g_autoptr (GArray) clamps = NULL;
  g_autoptr (BsPlan) taken = NULL;
  g_autoptr (BsPressure) pressure = NULL;

  bs_plan_place_clamp (plan, "clamp", 300.0, 2000.0, TRUE);
  bs_plan_place_clamp (plan, "clamp", 1100.0, 2000.0, TRUE);
  proposal = bs_clamp_proposal_new (plan, NULL);
  g_assert_cmpint (proposal->found.status, ==, BS_LAYOUT_REACHED);
  g_assert_cmpuint (proposal->found.n_clamps, ==, bare->found.n_clamps);
  g_assert_cmpuint (proposal->present->layout.n_clamps, ==, 2);
  g_assert_cmpuint (proposal->rule->layout.n_clamps, ==, bare->present->layout.n_clamps);
  g_assert_cmpfloat_with_epsilon (proposal->why.value, proposal->found.least_mpa, 1e-12);

  clamps = copy_clamps (&proposal->found);
  taken = plan_with_clamps (plan, clamps);
  pressure = bs_pressure_new (taken, BS_PRESS_MODEL_SQUEEZE);
  g_assert_cmpint (pressure->layout.status, ==, BS_LAYOUT_REACHED);
  g_assert_cmpfloat_with_epsilon (pressure->layout.least_mpa, proposal->found.least_mpa, 1e-6);
}

/* One fewer, spread evenly and at their most, is not enough: the number is the least for that. */
static void
test_fewest (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsClampProposal) proposal = bs_clamp_proposal_new (plan, NULL);
  guint n = proposal->found.n_clamps - 1;

  for (guint pct = 30; pct <= 50; pct += 2)
    {
      double share = pct / 100.0;
      g_autoptr (BsPlan) fewer = bs_plan_copy (plan);
      g_autoptr (BsPressure) pressure = NULL;
      double spacing = 1500.0 / (n - 1 + 2.0 * share);

      for (guint i = 0; i < n; i++)
        bs_plan_place_clamp (fewer, "clamp", spacing * (share + i), 6000.0, TRUE);
      pressure = bs_pressure_new (fewer, BS_PRESS_MODEL_SQUEEZE);
      g_assert_cmpint (pressure->layout.status, ==, BS_LAYOUT_SHORT);
    }
}

/* Clamps that cannot: the proposal says so and has the best that they can do. */
static void
test_out_of_reach (void)
{
  g_autoptr (BsPlan) plan = shop_new_pressed (0);
  g_autoptr (BsClampProposal) proposal = NULL;

  plan->adhesive.min_pressure_mpa = 1.2; /* 20 clamps of 6 kN come to 1 MPa on the mean */
  plan->adhesive.max_pressure_mpa = 1.7;
  proposal = bs_clamp_proposal_new (plan, NULL);
  g_assert_cmpint (proposal->found.status, ==, BS_LAYOUT_SHORT);
  g_assert_cmpuint (proposal->found.n_clamps, >=, 2);
  g_assert_cmpfloat_with_epsilon (proposal->found.mean_possible_mpa, 1.0, 1e-6);
}

static void
test_nothing (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsClampProposal) proposal = bs_clamp_proposal_new (plan, NULL);

  g_assert_cmpint (proposal->present->state, ==, BS_PRESSURE_NO_STACK);
  g_assert_cmpuint (proposal->found.n_clamps, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clamp-proposal/found", test_found);
  g_test_add_func ("/clamp-proposal/fewest", test_fewest);
  g_test_add_func ("/clamp-proposal/out-of-reach", test_out_of_reach);
  g_test_add_func ("/clamp-proposal/nothing", test_nothing);
  return g_test_run ();
}
