/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/proposal.h"

#include "core/random.h"
#include "desk.h"
#include "plan/edits.h"
#include "slabs.h"

/* Laminations that all differ: bows, crooks, lightness and hearts by chance. */
static BsPlan *
new_plan (guint n)
{
  BsPlan *plan = slab_new (n, 1000.0, 40.0, 60.0);
  BsRandom random = bs_random_init (7);

  for (guint i = 0; i < n; i++)
    {
      BsLamination *lamination = slab_at (plan, i);
      lamination->bow = 0.1 * bs_random_below (&random, 40) - 2.0;
      lamination->crook = 0.1 * bs_random_below (&random, 40) - 2.0;
      lamination->lightness = 50.0 + bs_random_below (&random, 20);
      lamination->pith_y = bs_random_below (&random, 2) == 0 ? 60.0 : -60.0;
      lamination->pith_z = 0.0;
    }
  return plan;
}

static gboolean
has_ended (gpointer proposal)
{
  return !bs_proposal_is_looking (proposal);
}

static gboolean
has_order (gpointer proposal)
{
  return bs_proposal_get_result (proposal) != NULL;
}

static gboolean
is_gone (gpointer weak)
{
  return *(gpointer *)weak == NULL;
}

/* Gives it up, and checks that the thread does too, sooner or later. */
static void
drop (BsProposal *proposal)
{
  gpointer weak = proposal;

  g_object_add_weak_pointer (G_OBJECT (proposal), &weak);
  g_object_unref (proposal);
  desk_wait (is_gone, &weak);
}

static void
count_cb (guint *count)
{
  ++*count;
}

/* The same order as without a thread; progress and changes are told. */
static void
test_same (void)
{
  g_autoptr (BsPlan) plan = new_plan (10);
  g_autoptr (BsOrderProblem) problem = bs_order_problem_new_for_plan (plan, NULL);
  BsOrderEffort effort = bs_order_effort_default (problem);
  g_autoptr (BsOrderResult) wanted = bs_order_solve (problem, &effort, NULL, NULL, NULL, NULL);
  BsProposal *proposal = bs_proposal_new ();
  guint n_changed = 0;

  g_signal_connect_swapped (proposal, "changed", G_CALLBACK (count_cb), &n_changed);
  g_assert_false (bs_proposal_fits (proposal, plan));
  g_assert_true (bs_proposal_look (proposal, plan, NULL));
  g_assert_true (bs_proposal_is_looking (proposal));
  g_assert_cmpuint (n_changed, ==, 1);
  desk_wait (has_ended, proposal);

  const BsOrderResult *result = bs_proposal_get_result (proposal);
  g_assert_true (result->is_proved);
  g_assert_cmpint (result->cost.total, ==, wanted->cost.total);
  g_assert_cmpmem (result->places, 10 * sizeof *result->places, wanted->places,
                   10 * sizeof *wanted->places);
  g_assert_nonnull (result->changes);
  g_assert_cmpuint (n_changed, >=, 2);
  g_assert_cmpfloat_with_epsilon (bs_proposal_get_progress (proposal), 1.0, 1e-12);
  drop (proposal);
}

/* Used, the plan costs what was told; used again, nothing changes. */
static void
test_apply (void)
{
  g_autoptr (BsPlan) plan = new_plan (8);
  BsProposal *proposal = bs_proposal_new ();

  bs_proposal_look (proposal, plan, NULL);
  desk_wait (has_ended, proposal);
  g_autoptr (BsPlan) applied = bs_proposal_apply (proposal, plan);
  g_assert_cmpint (bs_order_present_cost (applied).total, ==,
                   bs_proposal_get_result (proposal)->cost.total);
  g_assert_cmpint (bs_order_present_cost (applied).total, <, bs_order_present_cost (plan).total);
  g_assert_true (bs_proposal_fits (proposal, applied));
  g_autoptr (BsPlan) again = bs_proposal_apply (proposal, applied);
  g_assert_true (again == applied);
  drop (proposal);
}

/* Asked to stop, it keeps what it has, and knows why. */
static void
test_stop (void)
{
  g_autoptr (BsPlan) plan = new_plan (60);
  BsProposal *proposal = bs_proposal_new ();

  bs_proposal_look (proposal, plan, NULL);
  desk_wait (has_order, proposal);
  g_assert_true (bs_proposal_is_looking (proposal));
  bs_proposal_stop (proposal);
  desk_wait (has_ended, proposal);
  g_assert_nonnull (bs_proposal_get_result (proposal)->changes);
  g_assert_false (bs_proposal_get_result (proposal)->is_proved);
  g_assert_true (bs_proposal_fits (proposal, plan));
  drop (proposal);
}

/* Discarded while it looks, nothing comes later. */
static void
test_discard (void)
{
  g_autoptr (BsPlan) plan = new_plan (60);
  BsProposal *proposal = bs_proposal_new ();

  bs_proposal_look (proposal, plan, NULL);
  desk_wait (has_order, proposal);
  bs_proposal_discard (proposal);
  g_assert_null (bs_proposal_get_result (proposal));
  g_assert_null (bs_proposal_get_problem (proposal));
  g_assert_false (bs_proposal_is_looking (proposal));
  g_assert_false (bs_proposal_fits (proposal, plan));
  drop (proposal);
}

/* Asked anew while it looks, the answer is to the second question. */
static void
test_asked_anew (void)
{
  g_autoptr (BsPlan) first = new_plan (60);
  g_autoptr (BsPlan) second = new_plan (6);
  BsProposal *proposal = bs_proposal_new ();

  bs_proposal_look (proposal, first, NULL);
  bs_proposal_look (proposal, second, NULL);
  desk_wait (has_ended, proposal);
  g_assert_cmpuint (bs_proposal_get_result (proposal)->n_places, ==, 6);
  g_assert_true (bs_proposal_fits (proposal, second));
  g_assert_false (bs_proposal_fits (proposal, first));
  drop (proposal);
}

/* A lamination that is moved leaves the proposal as good as it was; one that is set aside does
 * not, until that is undone. */
static void
test_other_plan (void)
{
  g_autoptr (BsPlan) plan = new_plan (6);
  g_autoptr (BsPlan) moved = bs_edit_move (plan, 0, 3);
  g_autoptr (BsPlan) aside = bs_edit_set_aside (plan, 0);
  BsProposal *proposal = bs_proposal_new ();

  bs_proposal_look (proposal, plan, NULL);
  desk_wait (has_ended, proposal);
  g_assert_true (bs_proposal_fits (proposal, moved));
  g_assert_false (bs_proposal_fits (proposal, aside));
  g_assert_true (bs_proposal_fits (proposal, plan));
  g_autoptr (BsPlan) one = bs_proposal_apply (proposal, plan);
  g_autoptr (BsPlan) other = bs_proposal_apply (proposal, moved);
  g_assert_cmpint (bs_order_present_cost (one).total, ==, bs_order_present_cost (other).total);
  drop (proposal);
}

/* Pins that cannot be kept: nothing is looked for, and what it had is gone. */
static void
test_bad_pins (void)
{
  g_autoptr (BsPlan) plan = new_plan (4);
  g_autoptr (GError) error = NULL;
  GRefString *id = slab_at (plan, 0)->id;
  g_autoptr (BsPlan) pinned
      = bs_edit_add_pin (plan, &(BsPin){ .kind = BS_PIN_PLACE, .lamination = id, .place = 9 });
  BsProposal *proposal = bs_proposal_new ();

  bs_proposal_look (proposal, plan, NULL);
  g_assert_false (bs_proposal_look (proposal, pinned, &error));
  g_assert_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_PIN);
  g_assert_false (bs_proposal_is_looking (proposal));
  g_assert_null (bs_proposal_get_result (proposal));
  drop (proposal);
}

static void
test_empty_slab (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (GError) error = NULL;
  BsProposal *proposal = bs_proposal_new ();

  g_assert_false (bs_proposal_look (proposal, plan, &error));
  g_assert_error (error, BS_ORDER_ERROR, BS_ORDER_ERROR_TOO_FEW);
  drop (proposal);
}

int
main (int argc, char **argv)
{
  desk_init (&argc, &argv);
  g_test_add_func ("/proposal/same-as-without-a-thread", test_same);
  g_test_add_func ("/proposal/apply", test_apply);
  g_test_add_func ("/proposal/stop", test_stop);
  g_test_add_func ("/proposal/discard", test_discard);
  g_test_add_func ("/proposal/asked-anew", test_asked_anew);
  g_test_add_func ("/proposal/other-plan", test_other_plan);
  g_test_add_func ("/proposal/bad-pins", test_bad_pins);
  g_test_add_func ("/proposal/empty-slab", test_empty_slab);
  return g_test_run ();
}
