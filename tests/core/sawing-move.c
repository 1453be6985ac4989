/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-move.h"

#include "checks/saw-again.h"
#include "racks.h"

/* Two boards of 1000 x 200; a part of 300 x 60 at the left of the first, one of 200 x 60 at 400. */
static BsPlan *
plan_new (void)
{
  BsPlan *plan = rack_plan_new ();

  rack_add_board (plan, 1000.0, 200.0, 52.0, 3000);
  rack_add_board (plan, 1000.0, 200.0, 52.0, 3000);
  rack_add_part (plan, 1, 300.0, 60.0, 45.0);
  rack_add_part (plan, 1, 200.0, 60.0, 45.0);
  rack_add_cut (plan, "board-1", "part-1", 25.0, 0.0, 300.0, 60.0);
  rack_add_cut (plan, "board-1", "part-2", 400.0, 0.0, 200.0, 60.0);
  return plan;
}

/* Along: the trim; right of the other in line, left in line, beside it on either side; the other
 * trim. Across: the edge, where the other is in line both ways; behind it; the other edge. */
static void
test_stops (void)
{
  const double along[] = { 25.0, 97.0, 300.0, 400.0, 603.0, 675.0 };
  const double across[] = { 0.0, 63.0, 140.0 };
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (GArray) x = bs_saw_stops_new (plan, 0, "board-1", FALSE);
  g_autoptr (GArray) y = bs_saw_stops_new (plan, 0, "board-1", TRUE);

  g_assert_cmpuint (x->len, ==, G_N_ELEMENTS (along));
  for (guint i = 0; i < x->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (x, double, i), along[i], 1e-9);
  g_assert_cmpuint (y->len, ==, G_N_ELEMENTS (across));
  for (guint i = 0; i < y->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (y, double, i), across[i], 1e-9);
}

/* 6 from the stop at 97; between stops a step of 0.5; not over the end. */
static void
test_snap (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  double x = 103.0, y = 58.0;

  bs_saw_snap (plan, 0, "board-1", 8.0, &x, &y);
  g_assert_cmpfloat_with_epsilon (x, 97.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (y, 63.0, 1e-9);
  x = 200.2;
  y = 500.0;
  bs_saw_snap (plan, 0, "board-1", 8.0, &x, &y);
  g_assert_cmpfloat_with_epsilon (x, 200.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (y, 140.0, 1e-9);
}

static void
test_to_free_place (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) moved = bs_saw_move (plan, 0, "board-1", 603.0, 0.0, &error);
  const BsCut *cut;

  g_assert_no_error (error);
  saw_rack_again (moved);
  cut = &g_array_index (moved->cuts, BsCut, 0);
  g_assert_cmpfloat_with_epsilon (cut->x, 603.0, 1e-9);
  g_assert_true (cut->is_pinned);
  g_assert_false (g_array_index (moved->cuts, BsCut, 1).is_pinned);
  g_assert_false (g_array_index (plan->cuts, BsCut, 0).is_pinned);
}

/* Where the other one lies: it has to make room, and does. */
static void
test_others_make_room (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) moved = NULL;

  g_assert_null (bs_saw_move (plan, 0, "board-1", 380.0, 0.0, &error));
  g_assert_error (error, BS_SAW_MOVE_ERROR, BS_SAW_MOVE_ERROR_PLACE);
  g_clear_error (&error);
  moved = bs_saw_move_and_plan (plan, 0, "board-1", 380.0, 0.0, &error);
  g_assert_no_error (error);
  saw_rack_again (moved);
  g_assert_cmpuint (moved->cuts->len, ==, 2);
  g_assert_cmpstr (g_array_index (moved->cuts, BsCut, 0).piece, ==, "part-1");
  g_assert_cmpfloat_with_epsilon (g_array_index (moved->cuts, BsCut, 0).x, 380.0, 1e-9);
}

/* But not when that one is pinned too. */
static void
test_pinned_does_not (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (GError) error = NULL;

  g_array_index (plan->cuts, BsCut, 1).is_pinned = TRUE;
  g_assert_null (bs_saw_move_and_plan (plan, 0, "board-1", 380.0, 0.0, &error));
  g_assert_nonnull (error);
}

static void
test_cut_stays (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (GError) error = NULL;

  g_array_index (plan->cuts, BsCut, 0).is_cut = TRUE;
  g_assert_null (bs_saw_move (plan, 0, "board-2", 25.0, 0.0, &error));
  g_assert_error (error, BS_SAW_MOVE_ERROR, BS_SAW_MOVE_ERROR_DONE);
}

/* 45 is wished, 27 - 2 x 0.5 is what the thinner board gives. */
static void
test_board_too_thin (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (GError) error = NULL;
  BsBoard *board = rack_add_board (plan, 1000.0, 200.0, 27.0, 3000);

  g_assert_null (bs_saw_move (plan, 0, board->id, 25.0, 0.0, &error));
  g_assert_error (error, BS_SAW_MOVE_ERROR, BS_SAW_MOVE_ERROR_BOARD);
  g_assert_nonnull (strstr (error->message, "45"));
  g_assert_nonnull (strstr (error->message, "26"));
}

static void
test_find_place (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  double x, y;

  g_assert_true (bs_saw_find_place (plan, 0, "board-2", &x, &y));
  g_assert_cmpfloat_with_epsilon (x, 25.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (y, 0.0, 1e-9);
  rack_add_part (plan, 1, 950.0, 200.0, 45.0);
  rack_add_cut (plan, "board-2", "part-3", 25.0, 0.0, 950.0, 200.0);
  g_assert_false (bs_saw_find_place (plan, 0, "board-2", &x, &y));
}

/* A knot of the upper face at the front edge; a part that must be clear there, and a hole. */
static void
test_blemish (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  BsBoard *board = plan->boards->pdata[0];
  BsPart *part = plan->parts->pdata[0];
  BsSawBlemish blemish;

  rack_add_defect (board, BS_DEFECT_KNOT, BS_FACE_TOP, 100.0, 140.0, 0.0, 30.0);
  part->clear_faces = 1;
  part->clear_edges = 1;
  blemish = bs_saw_find_blemish (plan, &g_array_index (plan->cuts, BsCut, 0));
  g_assert_cmpint (blemish.faces, ==, 0);
  g_assert_cmpint (blemish.edges, ==, 0);
  part->clear_faces = part->clear_edges = 2;
  blemish = bs_saw_find_blemish (plan, &g_array_index (plan->cuts, BsCut, 0));
  g_assert_cmpint (blemish.faces, ==, 1);
  g_assert_cmpint (blemish.edges, ==, 1);
  g_assert_false (blemish.is_unsound);
  rack_add_defect (board, BS_DEFECT_HOLE, BS_FACE_TOP, 200.0, 210.0, 20.0, 30.0);
  blemish = bs_saw_find_blemish (plan, &g_array_index (plan->cuts, BsCut, 0));
  g_assert_true (blemish.is_unsound);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sawing-move/stops", test_stops);
  g_test_add_func ("/sawing-move/snap", test_snap);
  g_test_add_func ("/sawing-move/to-free-place", test_to_free_place);
  g_test_add_func ("/sawing-move/others-make-room", test_others_make_room);
  g_test_add_func ("/sawing-move/pinned-does-not", test_pinned_does_not);
  g_test_add_func ("/sawing-move/cut-stays", test_cut_stays);
  g_test_add_func ("/sawing-move/board-too-thin", test_board_too_thin);
  g_test_add_func ("/sawing-move/find-place", test_find_place);
  g_test_add_func ("/sawing-move/blemish", test_blemish);
  return g_test_run ();
}
