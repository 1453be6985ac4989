/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-rack.h"

#include "checks/saw-again.h"
#include "racks.h"

/* Two boards of 1000 x 200, one of them taken for a part of 600 x 100 of two that are wanted.
 * Kerfs: 2 x 3 x 200 at its ends and 3 x 600 behind it. */
static BsPlan *
plan_new (void)
{
  BsPlan *plan = rack_plan_new ();

  rack_add_board (plan, 1000.0, 200.0, 52.0, 3000);
  rack_add_board (plan, 1000.0, 200.0, 52.0, 0);
  rack_add_part (plan, 2, 600.0, 100.0, 45.0);
  rack_add_cut (plan, "board-1", "part-1", 25.0, 0.0, 600.0, 100.0);
  return plan;
}

static void
test_sums (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);

  saw_rack_again (plan);
  g_assert_cmpuint (rack->boards->len, ==, 2);
  g_assert_cmpuint (rack->n_taken, ==, 1);
  g_assert_cmpuint (rack->n_pieces, ==, 1);
  g_assert_cmpuint (rack->n_missing, ==, 1);
  g_assert_cmpint (rack->price_minor, ==, 3000);
  g_assert_cmpfloat_with_epsilon (rack->area, 200000.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (rack->kerf_area, 3000.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (rack->offcut_area, 347.0 * 200.0, 1e-6);
  g_assert_nonnull (bs_saw_rack_find (rack, "board-2"));
  g_assert_null (bs_saw_rack_find (rack, "board-3"));
}

/* 3000 / 200000 = 1.5 %; what is neither piece nor offcut: 200000 - 60000 - 69400 = 70600. */
static void
test_workings (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  const BsSawPlan found = { .price_minor = 3000, .bound_minor = 2500, .is_bound = TRUE };
  BsWorking why;

  bs_saw_explain_kerf (rack, plan, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 1.5, 1e-9);
  bs_saw_explain_waste (rack, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 35.3, 1e-9);
  bs_saw_explain_price (rack, plan, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 3000.0, 1e-9);
  g_assert_cmpstr (why.currency, ==, plan->currency);
  bs_saw_explain_bound (&found, plan, &why);
  g_assert_cmpfloat_with_epsilon (why.value, 2500.0, 1e-9);
  bs_saw_explain_bound (NULL, plan, &why);
  g_assert_true (isnan (why.value));
}

static void
test_faults_are_told (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (BsSawRack) rack = NULL;
  g_autofree char *fault = NULL, *none = NULL;

  bs_text_set (&((BsPart *)plan->parts->pdata[0])->name, "Shelf");
  bs_text_set (&((BsBoard *)plan->boards->pdata[0])->label, "7");
  rack_add_cut (plan, "board-1", "part-1", 500.0, 0.0, 600.0, 100.0);
  rack = bs_saw_rack_new (plan);
  g_assert_cmpuint (rack->n_faults, ==, 1);
  fault = bs_sawn_board_tell_fault (rack->boards->pdata[0], plan);
  none = bs_sawn_board_tell_fault (rack->boards->pdata[1], plan);
  g_assert_cmpstr (fault, ==, "Shelf lies over an end or an edge of board 7. Move it.");
  g_assert_null (none);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sawing-rack/sums", test_sums);
  g_test_add_func ("/sawing-rack/workings", test_workings);
  g_test_add_func ("/sawing-rack/faults-are-told", test_faults_are_told);
  return g_test_run ();
}
