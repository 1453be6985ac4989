/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/sawing.h"

#include "racks.h"

/* A board with a knot above, a lamination from it and a part without a place. */
static BsPlan *
plan_new (void)
{
  BsPlan *plan = rack_plan_new ();
  BsBoard *board = rack_add_board (plan, 1000.0, 200.0, 52.0, 3000);

  bs_text_set (&board->label, "3");
  rack_add_defect (board, BS_DEFECT_KNOT, BS_FACE_TOP, 100.0, 140.0, 30.0, 50.0);
  for (int i = 0; i < 3; i++)
    rack_add_lamination (plan, 600.0, 45.0, 100.0);
  bs_text_set (&((BsLamination *)plan->laminations->pdata[1])->label, "B");
  rack_add_part (plan, 1, 5000.0, 100.0, 45.0);
  rack_add_cut (plan, "board-1", "lamination-2", 25.0, 0.0, 600.0, 100.0);
  return plan;
}

static void
test_board (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  const BsSawnBoard *board = rack->boards->pdata[0];
  g_autofree char *text = bs_words_sawn_board (board, plan);
  g_autofree char *across = bs_words_saw_passes (board->sawing, FALSE, plan->units);
  g_autofree char *along = bs_words_saw_passes (board->sawing, TRUE, plan->units);
  g_autofree char *sum = bs_words_saw_sum (rack, plan->units);

  g_test_message ("%s / %s", text, sum);
  g_assert_true (g_str_has_prefix (text, "Board 3: 1000 × 200 × 52"));
  g_assert_nonnull (strstr (text, ", crosscut first, offcut 347")); /* 975 - 628 */
  g_assert_true (g_str_has_prefix (across, "Crosscuts, from the left end: 1 at 22"));
  g_assert_nonnull (strstr (across, "2 at 625"));
  g_assert_true (g_str_has_prefix (along, "Rip cuts, from the front edge: 3 at 100"));
  g_assert_true (g_str_has_prefix (sum, "1 board of "));
}

/* The one with a cut is traced to its place, one that was milled before to its board. */
static void
test_origin (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  BsLamination *milled = plan->laminations->pdata[0];
  g_autofree char *unknown = bs_words_origin (plan, milled);
  g_autofree char *cut = bs_words_origin (plan, plan->laminations->pdata[1]);

  g_assert_null (unknown);
  g_assert_cmpstr (cut, ==,
                   "From board 3, 25\u202fmm from its left end and 0\u202fmm from its front edge.");
  bs_text_set (&milled->board, "board-1");
  g_autofree char *board = bs_words_origin (plan, milled);
  g_assert_cmpstr (board, ==, "From board 3.");
}

/* The upper face looks to the front, where the neighbour is glued on. */
static void
test_piece (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  BsCut *cut = &g_array_index (plan->cuts, BsCut, 0);
  g_autofree char *defects = bs_words_cut_defects (plan, cut);
  g_autofree char *text = bs_words_cut (plan, cut);
  g_autofree char *none = bs_words_cut_blemish (plan, cut);
  g_autofree char *unsound = NULL;

  g_assert_cmpstr (defects, ==, "knot: in a glue line");
  g_assert_true (g_str_has_prefix (text, "B, 600 × 100"));
  g_assert_true (g_str_has_suffix (text, "from the front edge, planned"));
  g_assert_null (none);
  g_assert_cmpstr (bs_words_cut_state (cut), ==, "planned");
  cut->is_pinned = TRUE;
  g_assert_cmpstr (bs_words_cut_state (cut), ==, "pinned");
  cut->is_cut = TRUE;
  g_assert_cmpstr (bs_words_cut_state (cut), ==, "cut");
  rack_add_defect (plan->boards->pdata[0], BS_DEFECT_HOLE, BS_FACE_TOP, 200.0, 210.0, 30.0, 50.0);
  unsound = bs_words_cut_blemish (plan, cut);
  g_assert_cmpstr (unsound, ==, "B would have wood that is missing or split.");
}

static void
test_lack (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);
  g_autofree char *text = bs_words_saw_lack (plan, bs_saw_wishes_find (wishes, "part-1"));

  g_assert_true (g_str_has_prefix (text, "it needs 5"));
  g_assert_nonnull (strstr (text, "the longest board gives 950"));
}

/* That boards are full is said of a plan of cuts only. */
static void
test_not_planned (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (GArray) wishes = bs_saw_wishes_new (plan);
  const BsSawWish *wish = bs_saw_wishes_find (wishes, "lamination-1");
  g_autofree char *planned = bs_words_saw_lack (plan, wish), *before = NULL;

  g_array_set_size (plan->cuts, 0);
  before = bs_words_saw_lack (plan, wish);
  g_assert_cmpstr (planned, ==, "no room beside the cuts as they lie; plan them anew");
  g_assert_cmpstr (before, ==, "not planned yet");
}

/* Another board for the lamination costs its price. */
static void
test_move (void)
{
  g_autoptr (BsPlan) before = plan_new ();
  g_autoptr (BsPlan) after = bs_plan_copy (before);
  g_autofree char *text = NULL, *same = bs_words_cut_move (before, before, 0);

  rack_add_board (after, 1000.0, 200.0, 52.0, 4500);
  bs_text_set (&g_array_index (after->cuts, BsCut, 0).board, "board-2");
  text = bs_words_cut_move (before, after, 0);
  g_test_message ("%s", text);
  g_assert_true (g_str_has_prefix (text, "Boards: 30.00"));
  g_assert_nonnull (strstr (text, "now 45.00"));
  g_assert_nonnull (strstr (same, "as before"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/sawing/board", test_board);
  g_test_add_func ("/words/sawing/origin", test_origin);
  g_test_add_func ("/words/sawing/piece", test_piece);
  g_test_add_func ("/words/sawing/lack", test_lack);
  g_test_add_func ("/words/sawing/not-planned", test_not_planned);
  g_test_add_func ("/words/sawing/move", test_move);
  return g_test_run ();
}
