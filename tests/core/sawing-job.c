/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-job.h"

#include "checks/saw-again.h"
#include "racks.h"

/* The plan with the cuts that the search finds, each sawn again. */
static BsPlan *
solve (const BsPlan *plan, BsSawPlan **found)
{
  const BsSawEffort effort = { .is_quick = TRUE };
  g_autoptr (GError) error = NULL;
  g_autoptr (BsSawPlan) saw_plan = bs_saw_solve (plan, &effort, &error);
  BsPlan *cut = bs_plan_copy (plan);

  g_assert_no_error (error);
  g_array_set_size (cut->cuts, 0);
  for (guint i = 0; i < saw_plan->cuts->len; i++)
    bs_plan_add_cut (cut, &g_array_index (saw_plan->cuts, BsCut, i));
  saw_rack_again (cut);
  if (found != NULL)
    *found = g_steal_pointer (&saw_plan);
  return cut;
}

static int
count_missing (const BsPlan *plan)
{
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);

  return (int)rack->n_missing;
}

/* 2 x 900 + 3 <= 1950 along, 3 x 60 + 2 x 3 <= 200 across: six would fit. 52 - 2 x 0.5 = 51 >= 45.
 */
static void
test_four_of_one_board (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;
  g_autoptr (BsSawPlan) found = NULL;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  for (int i = 0; i < 4; i++)
    rack_add_lamination (plan, 900.0, 45.0, 60.0);
  cut = solve (plan, &found);
  g_assert_cmpuint (cut->cuts->len, ==, 4);
  g_assert_cmpint (found->price_minor, ==, 3000);
  g_assert_cmpint (found->bound_minor, ==, 3000);
  g_assert_true (found->is_bound && found->is_price_least);
}

/* What was milled before gets no place, and its board gives nothing else: the dearer one is sawn.
 */
static void
test_milled_is_not_planned (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  rack_add_board (plan, 2000.0, 200.0, 52.0, 4000);
  for (int i = 0; i < 2; i++)
    rack_add_lamination (plan, 900.0, 45.0, 60.0);
  bs_text_set (&((BsLamination *)plan->laminations->pdata[0])->board, "board-1");
  g_assert_cmpint (count_missing (plan), ==, 1);
  cut = solve (plan, NULL);
  g_assert_cmpuint (cut->cuts->len, ==, 1);
  g_assert_cmpstr (g_array_index (cut->cuts, BsCut, 0).piece, ==, "lamination-2");
  g_assert_cmpstr (g_array_index (cut->cuts, BsCut, 0).board, ==, "board-2");
  g_assert_cmpint (count_missing (cut), ==, 0);
}

/* Of 50 and 30, the cheaper board that will do. */
static void
test_least_price (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 5000);
  rack_add_board (plan, 1000.0, 70.0, 52.0, 3000);
  rack_add_lamination (plan, 900.0, 45.0, 60.0);
  cut = solve (plan, NULL);
  g_assert_cmpstr (g_array_index (cut->cuts, BsCut, 0).board, ==, "board-2");
}

/* A crook of 10 over 1000 is 10 x 0.95^2 = 9.03 over 950; the front edge straightened by it (9.5 in
 * steps of 0.5) leaves 120.5, where two strips of 60 and a kerf need 123. */
static void
test_crook_takes_width (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;
  BsBoard *board = rack_add_board (plan, 1000.0, 130.0, 52.0, 3000);

  board->crook = 10.0;
  rack_add_part (plan, 2, 950.0, 60.0, 45.0);
  cut = solve (plan, NULL);
  g_assert_cmpint (count_missing (cut), ==, 1);
  g_assert_cmpfloat_with_epsilon (g_array_index (cut->cuts, BsCut, 0).y, 9.5, 1e-9);
}

/* Straightened for the long part the board is 130 - 9.5 wide, too little for the short one of 125;
 * for that alone it loses 10 x 0.2^2 = 0.4. The long part has another board. */
static void
test_wide_part_of_crooked_board (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;
  BsBoard *board = rack_add_board (plan, 1000.0, 130.0, 52.0, 3000);

  board->crook = 10.0;
  rack_add_board (plan, 1000.0, 70.0, 52.0, 3000);
  rack_add_part (plan, 1, 950.0, 60.0, 45.0);
  rack_add_part (plan, 1, 200.0, 125.0, 45.0);
  cut = solve (plan, NULL);
  g_assert_cmpint (count_missing (cut), ==, 0);
}

/* A hole right across the middle leaves 950 - 25 = 925 on each side. */
static void
test_hole_is_cut_out (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;
  BsBoard *board = rack_add_board (plan, 2000.0, 70.0, 52.0, 3000);

  rack_add_defect (board, BS_DEFECT_HOLE, BS_FACE_TOP, 950.0, 1050.0, 0.0, 70.0);
  rack_add_part (plan, 1, 1000.0, 60.0, 45.0);
  rack_add_part (plan, 2, 900.0, 60.0, 45.0);
  cut = solve (plan, NULL);
  g_assert_cmpint (count_missing (cut), ==, 1);
  for (guint i = 0; i < cut->cuts->len; i++)
    g_assert_cmpstr (g_array_index (cut->cuts, BsCut, i).piece, ==, "part-2");
}

/* A knot hides in a glue line on edge; a slab on flat would show it. */
static void
test_knot_hides_on_edge (void)
{
  for (int layup = BS_LAYUP_ON_EDGE; layup <= BS_LAYUP_ON_FLAT; layup++)
    {
      g_autoptr (BsPlan) plan = rack_plan_new ();
      g_autoptr (BsPlan) cut = NULL;
      BsBoard *board = rack_add_board (plan, 1000.0, 70.0, 52.0, 3000);

      plan->slab.layup = (BsLayup)layup;
      plan->slab.shows_underside = TRUE;
      rack_add_defect (board, BS_DEFECT_KNOT, BS_FACE_TOP, 400.0, 440.0, 25.0, 45.0);
      for (int i = 0; i < 3; i++) /* the middle one of three */
        rack_add_lamination (plan, i == 1 ? 900.0 : 5000.0, 45.0, 45.0);
      cut = solve (plan, NULL);
      g_assert_cmpuint (cut->cuts->len, ==, layup == BS_LAYUP_ON_EDGE ? 1 : 0);
    }
}

static void
test_parts_of_another_wood (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;
  BsPart *part;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  part = rack_add_part (plan, 2, 900.0, 60.0, 45.0);
  bs_text_set (&part->wood, "ash");
  cut = solve (plan, NULL);
  g_assert_cmpint (count_missing (cut), ==, 2);

  bs_text_clear (&part->wood); /* any */
  g_clear_pointer (&cut, bs_plan_unref);
  cut = solve (plan, NULL);
  g_assert_cmpint (count_missing (cut), ==, 0);
}

/* What is pinned or cut stays where and as it is; the rest goes around it. */
static void
test_kept (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;
  const BsCut *first, *second;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  rack_add_part (plan, 4, 900.0, 60.0, 45.0);
  rack_add_cut (plan, "board-1", "part-1", 1000.0, 70.0, 910.0, 61.0);
  rack_add_cut (plan, "board-1", "part-1", 30.0, 5.0, 900.0, 60.0);
  rack_add_cut (plan, "board-1", "part-1", 30.0, 100.0, 900.0, 60.0);
  g_array_index (plan->cuts, BsCut, 0).is_pinned = TRUE;
  g_array_index (plan->cuts, BsCut, 1).is_cut = TRUE;
  cut = solve (plan, NULL);
  g_assert_cmpuint (cut->cuts->len, ==, 4);
  first = &g_array_index (cut->cuts, BsCut, 0);
  second = &g_array_index (cut->cuts, BsCut, 1);
  g_assert_true (first->is_pinned && !first->is_cut && second->is_cut);
  g_assert_cmpfloat_with_epsilon (first->x, 1000.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (first->length, 910.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (second->y, 5.0, 1e-9);
}

static void
test_kept_impossible (void)
{
  const BsSawEffort effort = { .is_quick = TRUE };
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (GError) error = NULL;
  BsPart *part;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  part = rack_add_part (plan, 2, 900.0, 60.0, 45.0);
  bs_text_set (&part->name, "Rail");
  rack_add_cut (plan, "board-1", "part-1", 30.0, 5.0, 900.0, 60.0);
  rack_add_cut (plan, "board-1", "part-1", 30.0, 66.0, 900.0, 60.0);
  for (guint i = 0; i < 2; i++)
    g_array_index (plan->cuts, BsCut, i).is_pinned = TRUE;
  g_assert_null (bs_saw_solve (plan, &effort, &error));
  g_assert_error (error, BS_CUTTING_ERROR, BS_CUTTING_ERROR_PIN);
  g_assert_cmpstr (error->message, ==,
                   "Rail and Rail on board board-1 overlap, or leave the saw no room between them. "
                   "Move one.");
}

/* A lamination for show and a part of the same size that is not: the knotty board is for the part.
 */
static void
test_best_looking_for_show (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = NULL;
  BsBoard *board = rack_add_board (plan, 1000.0, 70.0, 52.0, 3000);

  rack_add_board (plan, 1000.0, 70.0, 52.0, 3000);
  rack_add_defect (board, BS_DEFECT_KNOT, BS_FACE_TOP, 400.0, 440.0, 25.0, 45.0);
  rack_add_part (plan, 1, 900.0, 60.0, 45.0);
  rack_add_part (plan, 1, 900.0, 60.0, 45.0)->is_on_show = TRUE;
  cut = solve (plan, NULL);
  g_assert_cmpuint (cut->cuts->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      const BsCut *one = &g_array_index (cut->cuts, BsCut, i);
      g_assert_cmpstr (one->board, ==, g_str_equal (one->piece, "part-2") ? "board-2" : "board-1");
    }
}

static void
test_nothing (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsPlan) cut = solve (plan, NULL);

  g_assert_cmpuint (cut->cuts->len, ==, 0);
  rack_add_part (plan, 1, 900.0, 60.0, 45.0); /* and an empty rack */
  g_clear_pointer (&cut, bs_plan_unref);
  cut = solve (plan, NULL);
  g_assert_cmpint (count_missing (cut), ==, 1);
}

static gboolean
stop (double done, gpointer data)
{
  return FALSE;
}

static void
count_better (const BsSawPlan *plan, gpointer n)
{
  g_assert_cmpuint (plan->cuts->len, >, 0);
  ++*(int *)n;
}

static void
test_stopped_has_a_plan (void)
{
  int n = 0;
  const BsSawEffort effort = { .progress.report = stop, .better = count_better, .data = &n };
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsSawPlan) found = NULL;

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  rack_add_part (plan, 4, 900.0, 60.0, 45.0);
  found = bs_saw_solve (plan, &effort, NULL);
  g_assert_cmpuint (found->cuts->len, ==, 4);
  g_assert_cmpint (n, >, 0);
}

/* Whatever the rack: what is found can be sawn (saw_rack_again ()), stays when all is pinned, and
 * the search says the same again. */
static void
test_random (gconstpointer seeds)
{
  for (guint seed = GPOINTER_TO_UINT (seeds); seed < GPOINTER_TO_UINT (seeds) + 100; seed++)
    {
      g_autoptr (BsPlan) plan = rack_draw (seed);
      g_autoptr (BsPlan) cut = solve (plan, NULL);
      g_autoptr (BsPlan) pinned = NULL;

      for (guint i = 0; i < cut->cuts->len; i++)
        g_array_index (cut->cuts, BsCut, i).is_pinned = TRUE;
      pinned = solve (cut, NULL);
      g_assert_cmpuint (pinned->cuts->len, >=, cut->cuts->len);
      for (guint i = 0; i < cut->cuts->len; i++)
        {
          const BsCut *a = &g_array_index (cut->cuts, BsCut, i);
          const BsCut *b = &g_array_index (pinned->cuts, BsCut, i);

          g_assert_cmpstr (a->piece, ==, b->piece);
          g_assert_cmpstr (a->board, ==, b->board);
          g_assert_cmpfloat_with_epsilon (a->x, b->x, 1e-9);
          g_assert_cmpfloat_with_epsilon (a->y, b->y, 1e-9);
        }
    }
}

static void
test_same_again (void)
{
  for (guint seed = 1; seed <= 10; seed++)
    {
      g_autoptr (BsPlan) plan = rack_draw (seed);
      g_autoptr (BsPlan) cut = solve (plan, NULL), again = solve (plan, NULL);

      g_assert_cmpuint (again->cuts->len, ==, cut->cuts->len);
      for (guint i = 0; i < cut->cuts->len; i++)
        {
          const BsCut *a = &g_array_index (cut->cuts, BsCut, i);
          const BsCut *b = &g_array_index (again->cuts, BsCut, i);

          g_assert_cmpstr (a->board, ==, b->board);
          g_assert_cmpfloat_with_epsilon (a->x, b->x, 1e-9);
        }
    }
}

static BsCut
cut_of (BsPlan *plan, const char *piece, double x, double length, double width)
{
  return (BsCut){
    .board = ((BsBoard *)plan->boards->pdata[0])->id,
    .piece = (char *)piece,
    .x = x,
    .length = length,
    .width = width,
    .is_cut = TRUE,
  };
}

/* What was cut up to its board's end, or as wide as a board whose edges are trimmed, is kept, and
 * the rest of the board is used: 25 + 900 + 3 <= 1100 of 2000. */
static void
test_kept_in_the_trims (void)
{
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (BsPlan) plan = rack_plan_new ();
      const BsLamination *first = rack_add_lamination (plan, 900.0, 45.0, 60.0);

      rack_add_lamination (plan, 900.0, 45.0, 60.0);
      rack_add_board (plan, 2000.0, 90.0, 52.0, 3000);
      plan->shop.saw.edge_trim = 5.0;
      const BsCut cut = cut_of (plan, first->id, 1100.0, 900.0, i == 0 ? 60.0 : 90.0);
      bs_plan_add_cut (plan, &cut);
      g_autoptr (BsPlan) found = solve (plan, NULL);
      g_assert_cmpuint (found->cuts->len, ==, 2);
      g_assert_cmpfloat (g_array_index (found->cuts, BsCut, 1).x, >=, 25.0 - 1e-6);
      g_assert_cmpfloat (g_array_index (found->cuts, BsCut, 1).x, <=, 1100.0 - 903.0 + 1e-6);
    }
}

/* 120 boards, each with a hole behind the only part that it can give and each cheaper than the one
 * before: the five last it is, and nothing costs less: 1000 + 1001 + ... + 1004 = 5010. */
static void
test_many_boards (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  g_autoptr (BsSawPlan) found = NULL;

  for (guint i = 0; i < 120; i++)
    rack_add_defect (rack_add_board (plan, 1000.0, 60.0 + 0.5 * i, 52.0, 1119 - (gint64)i),
                     BS_DEFECT_HOLE, BS_FACE_TOP, 930.0, 960.0, 10.0, 50.0);
  rack_add_part (plan, 5, 900.0, 60.0, 30.0);
  g_autoptr (BsPlan) cut = solve (plan, &found);
  g_assert_cmpuint (cut->cuts->len, ==, 5);
  g_assert_cmpint (found->price_minor, ==, 5010);
  g_assert_true (found->is_price_least);
}

/* Edits to a plan whose cuts were found, and whether the proof holds after them. */
typedef struct
{
  const char *path;
  void (*edit) (BsPlan *plan);
  gboolean holds;
} ProofRow;

static BsCut *
first_cut (BsPlan *plan)
{
  return &g_array_index (plan->cuts, BsCut, 0);
}

static BsBoard *
own_board (BsPlan *plan)
{
  BsBoard *board = bs_board_copy (plan->boards->pdata[0]);

  bs_board_unref (plan->boards->pdata[0]);
  plan->boards->pdata[0] = board;
  return board;
}

static void
edit_nothing (BsPlan *plan)
{
}

static void
edit_label (BsPlan *plan)
{
  bs_text_set (&own_board (plan)->label, "B7");
}

static void
edit_glue (BsPlan *plan)
{
  plan->adhesive.spread_g_per_m2 += 10.0;
}

static void
edit_pin (BsPlan *plan)
{
  first_cut (plan)->is_pinned = TRUE;
}

static void
edit_is_cut (BsPlan *plan)
{
  first_cut (plan)->is_cut = TRUE;
}

static void
edit_price (BsPlan *plan)
{
  own_board (plan)->price_minor += 1;
}

static void
edit_kerf (BsPlan *plan)
{
  plan->shop.saw.kerf = 2.0;
}

static void
edit_defect (BsPlan *plan)
{
  const BsDefect hole = {
    .kind = BS_DEFECT_HOLE,
    .x_from = 1900.0,
    .x_to = 1910.0,
    .across_from = 10.0,
    .across_to = 20.0,
    .severity = 1.0,
  };
  BsBoard *board = own_board (plan);

  g_array_append_val (board->defects, hole);
}

static void
edit_place (BsPlan *plan)
{
  first_cut (plan)->x += 1.0;
}

static void
edit_drop_cut (BsPlan *plan)
{
  g_array_remove_index (plan->cuts, 0);
}

static void
edit_more_wanted (BsPlan *plan)
{
  rack_add_part (plan, 1, 300.0, 40.0, 30.0);
}

static void
edit_impossible_wanted (BsPlan *plan)
{
  rack_add_part (plan, 1, 5000.0, 40.0, 30.0);
}

static void
edit_more_boards (BsPlan *plan)
{
  rack_add_board (plan, 1000.0, 100.0, 52.0, 100);
}

static const ProofRow proof_rows[] = {
  { "same", edit_nothing, TRUE },
  { "label", edit_label, TRUE },
  { "glue", edit_glue, TRUE },
  { "pinned", edit_pin, TRUE },
  { "cut", edit_is_cut, TRUE },
  { "price", edit_price, FALSE },
  { "kerf", edit_kerf, FALSE },
  { "defect", edit_defect, FALSE },
  { "moved", edit_place, FALSE },
  { "dropped", edit_drop_cut, FALSE },
  { "more-wanted", edit_more_wanted, FALSE },
  { "impossible-wanted", edit_impossible_wanted, FALSE },
  { "more-boards", edit_more_boards, FALSE },
};

static void
check_proof (gconstpointer data)
{
  const ProofRow *row = data;
  g_autoptr (BsPlan) plan = rack_plan_new ();

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  rack_add_board (plan, 2000.0, 200.0, 52.0, 4000);
  rack_add_lamination (plan, 900.0, 45.0, 60.0);
  rack_add_lamination (plan, 900.0, 45.0, 60.0);
  g_autoptr (BsPlan) found = solve (plan, NULL);
  g_autoptr (BsPlan) edited = bs_plan_copy (found);
  row->edit (edited);
  g_assert_cmpint (bs_saw_proof_holds (found, edited), ==, row->holds);
}

/* What was proven around a pinned piece says nothing once it is released. */
static void
test_proof_released (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();

  rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  rack_add_lamination (plan, 900.0, 45.0, 60.0);
  g_autoptr (BsPlan) released = solve (plan, NULL);
  g_autoptr (BsPlan) pinned = bs_plan_copy (released);
  first_cut (pinned)->is_pinned = TRUE;
  g_assert_false (bs_saw_proof_holds (pinned, released));
  g_assert_true (bs_saw_proof_holds (released, pinned));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sawing-job/four-of-one-board", test_four_of_one_board);
  g_test_add_func ("/sawing-job/milled-is-not-planned", test_milled_is_not_planned);
  g_test_add_func ("/sawing-job/least-price", test_least_price);
  g_test_add_func ("/sawing-job/crook-takes-width", test_crook_takes_width);
  g_test_add_func ("/sawing-job/wide-part-of-crooked-board", test_wide_part_of_crooked_board);
  g_test_add_func ("/sawing-job/hole-is-cut-out", test_hole_is_cut_out);
  g_test_add_func ("/sawing-job/knot-hides-on-edge", test_knot_hides_on_edge);
  g_test_add_func ("/sawing-job/parts-of-another-wood", test_parts_of_another_wood);
  g_test_add_func ("/sawing-job/kept", test_kept);
  g_test_add_func ("/sawing-job/kept-impossible", test_kept_impossible);
  g_test_add_func ("/sawing-job/many-boards", test_many_boards);
  g_test_add_func ("/sawing-job/kept-in-the-trims", test_kept_in_the_trims);
  for (guint i = 0; i < G_N_ELEMENTS (proof_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/sawing-job/proof/", proof_rows[i].path, NULL);
      g_test_add_data_func (path, &proof_rows[i], check_proof);
    }
  g_test_add_func ("/sawing-job/proof/released", test_proof_released);
  g_test_add_func ("/sawing-job/best-looking-for-show", test_best_looking_for_show);
  g_test_add_func ("/sawing-job/nothing", test_nothing);
  g_test_add_func ("/sawing-job/stopped-has-a-plan", test_stopped_has_a_plan);
  g_test_add_func ("/sawing-job/same-again", test_same_again);
  for (guint i = 0; i < 5; i++)
    {
      g_autofree char *path = g_strdup_printf ("/sawing-job/random/%u", 100 * i);
      g_test_add_data_func (path, GUINT_TO_POINTER (1 + 100 * i), test_random);
    }
  return g_test_run ();
}
