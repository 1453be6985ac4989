/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-lamination.h"

#include "racks.h"

/* A board of 2000 x 200 x 52, its pith 20 behind the middle and 80 under it, and a piece of 900 x
 * 70 that is 103 from the front edge. The lamination is wished 900 long, 45 between the board's
 * wide faces and 66 across: the milled piece has its front edge at 103 + (70 - 66) / 2 = 105, its
 * back edge at 171, its underside at (52 - 45) / 2 = 3.5. */
static BsPlan *
plan_new (BsLayup layup, BsBoard **board)
{
  BsPlan *plan = rack_plan_new ();
  gboolean stands = layup == BS_LAYUP_ON_EDGE;

  plan->slab.layup = layup;
  *board = rack_add_board (plan, 2000.0, 200.0, 52.0, 3000);
  (*board)->pith_y = 20.0;
  (*board)->pith_z = -80.0;
  (*board)->moisture_pct = 8.5;
  rack_add_lamination (plan, 900.0, stands ? 45.0 : 66.0, stands ? 66.0 : 45.0);
  rack_add_cut (plan, "board-1", "lamination-1", 25.0, 103.0, 900.0, 70.0);
  return plan;
}

static BsLamination *
lay_out (BsPlan *plan)
{
  guint n;
  g_autoptr (BsPlan) laid = bs_saw_lay_out (plan, &n);

  g_assert_cmpuint (n, ==, 1);
  return bs_lamination_ref (laid->laminations->pdata[0]);
}

/* Across: 20 + 100 - 105 - 33 = -18 from the middle of the piece. On edge the upper face looks to
 * the front, so that under the board is behind the lamination. */
static void
test_size_and_rings (void)
{
  for (int layup = BS_LAYUP_ON_EDGE; layup <= BS_LAYUP_ON_FLAT; layup++)
    {
      BsBoard *board;
      g_autoptr (BsPlan) plan = plan_new ((BsLayup)layup, &board);
      g_autoptr (BsLamination) lamination = lay_out (plan);
      gboolean stands = layup == BS_LAYUP_ON_EDGE;

      g_assert_cmpstr (lamination->board, ==, "board-1");
      g_assert_cmpfloat_with_epsilon (lamination->length, 900.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (lamination->thickness, stands ? 45.0 : 66.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (lamination->height, stands ? 66.0 : 45.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (lamination->pith_y, stands ? 80.0 : -18.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (lamination->pith_z, stands ? -18.0 : -80.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (lamination->moisture_pct, 8.5, 1e-9);
      g_assert_cmpfloat_with_epsilon (lamination->bow, 0.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (lamination->crook, 0.0, 1e-9);
    }
}

/* Laid out, and then its cut is gone: it is wanted again, while one milled before stays milled. */
static void
test_board_is_forgotten (void)
{
  BsBoard *board;
  g_autoptr (BsPlan) plan = plan_new (BS_LAYUP_ON_EDGE, &board);
  g_autoptr (BsPlan) after = NULL;
  const BsLamination *milled = rack_add_lamination (plan, 900.0, 45.0, 66.0);

  for (guint i = 0; i < 2; i++)
    bs_text_set (&((BsLamination *)plan->laminations->pdata[i])->board, "board-1");
  after = bs_plan_copy (plan);
  bs_saw_forget_boards (plan, after);
  g_assert_true (after->laminations->pdata[0] == plan->laminations->pdata[0]);
  g_array_set_size (after->cuts, 0);
  bs_saw_forget_boards (plan, after);
  g_assert_null (((const BsLamination *)after->laminations->pdata[0])->board);
  g_assert_true (after->laminations->pdata[1] == milled);
  g_assert_nonnull (((const BsLamination *)plan->laminations->pdata[0])->board);
}

/* A bow of 40 over 2000 is 8.1 over 900: 52 - 8.1 - 2 x 0.5 = 42.9 of the 45 wished. */
static void
test_less_than_wished (void)
{
  BsBoard *board;
  g_autoptr (BsPlan) plan = plan_new (BS_LAYUP_ON_EDGE, &board);
  g_autoptr (BsLamination) lamination = NULL;

  board->bow = 40.0;
  lamination = lay_out (plan);
  g_assert_cmpfloat_with_epsilon (lamination->thickness, 42.9, 1e-9);
}

typedef struct
{
  const char *name;
  BsLayup layup;
  BsDefect from; /* on the board */
  guint n;
  struct
  {
    BsFace face;
    double x_from, x_to, across_from, across_to;
  } to[2];
} Row;

static const Row rows[] = {
  { "on-edge/upper-face",
    BS_LAYUP_ON_EDGE,
    { .face = BS_FACE_TOP,
      .x_from = 125.0,
      .x_to = 165.0,
      .across_from = 110.0,
      .across_to = 130.0 },
    1,
    { { BS_FACE_LEFT, 100.0, 140.0, 5.0, 25.0 } } },
  /* Sawn through at 105: shows on the front edge, which is the underside, 20 deep from the board's
   * underside, which is the right face: 45 - 20 = 25 from the left face. */
  { "on-edge/lower-face-and-edge",
    BS_LAYUP_ON_EDGE,
    { .face = BS_FACE_UNDERSIDE,
      .x_from = 0.0,
      .x_to = 65.0,
      .across_from = 95.0,
      .across_to = 115.0 },
    2,
    { { BS_FACE_RIGHT, 0.0, 40.0, 0.0, 10.0 }, { BS_FACE_UNDERSIDE, 0.0, 40.0, 25.0, 45.0 } } },
  /* The piece ends 29 before the back edge: 40 deep reaches it. Up to 36.5 of the milled piece;
   * from the left face, which was the upper one: 45 - 36.5 = 8.5. */
  { "on-edge/back-edge",
    BS_LAYUP_ON_EDGE,
    { .face = BS_FACE_RIGHT,
      .x_from = 900.0,
      .x_to = 1500.0,
      .across_from = 0.0,
      .across_to = 40.0 },
    1,
    { { BS_FACE_TOP, 875.0, 900.0, 8.5, 45.0 } } },
  { "on-edge/back-edge-shallow",
    BS_LAYUP_ON_EDGE,
    { .face = BS_FACE_RIGHT,
      .x_from = 100.0,
      .x_to = 200.0,
      .across_from = 10.0,
      .across_to = 30.0 },
    0,
    { { 0 } } },
  { "on-edge/beside",
    BS_LAYUP_ON_EDGE,
    { .face = BS_FACE_TOP, .x_from = 100.0, .x_to = 200.0, .across_from = 10.0, .across_to = 30.0 },
    0,
    { { 0 } } },
  { "on-flat/upper-face",
    BS_LAYUP_ON_FLAT,
    { .face = BS_FACE_TOP,
      .x_from = 125.0,
      .x_to = 165.0,
      .across_from = 110.0,
      .across_to = 130.0 },
    1,
    { { BS_FACE_TOP, 100.0, 140.0, 5.0, 25.0 } } },
  { "on-flat/back-edge",
    BS_LAYUP_ON_FLAT,
    { .face = BS_FACE_RIGHT,
      .x_from = 125.0,
      .x_to = 165.0,
      .across_from = 0.0,
      .across_to = 40.0 },
    1,
    { { BS_FACE_RIGHT, 100.0, 140.0, 0.0, 36.5 } } },
};

static void
test_defect (gconstpointer data)
{
  const Row *row = data;
  BsBoard *board;
  g_autoptr (BsPlan) plan = plan_new (row->layup, &board);
  g_autoptr (BsLamination) lamination = NULL;
  BsDefect defect = row->from;

  defect.kind = BS_DEFECT_KNOT;
  defect.severity = 1.0;
  g_array_append_val (board->defects, defect);
  lamination = lay_out (plan);
  g_assert_cmpuint (lamination->defects->len, ==, row->n);
  for (guint i = 0; i < row->n; i++)
    {
      const BsDefect *found = &g_array_index (lamination->defects, BsDefect, i);

      g_assert_cmpint (found->kind, ==, BS_DEFECT_KNOT);
      g_assert_cmpint (found->face, ==, row->to[i].face);
      g_assert_cmpfloat_with_epsilon (found->x_from, row->to[i].x_from, 1e-9);
      g_assert_cmpfloat_with_epsilon (found->x_to, row->to[i].x_to, 1e-9);
      g_assert_cmpfloat_with_epsilon (found->across_from, row->to[i].across_from, 1e-9);
      g_assert_cmpfloat_with_epsilon (found->across_to, row->to[i].across_to, 1e-9);
    }
}

/* Which face of the board comes to lie where is derived by hand. On edge the board stands up on its
 * front edge: seen from its left end, which stays at the left, the front edge goes down, the back
 * edge up, the upper face to the front. The board is turned about its length, so what planes
 * cleanly towards the right end goes on doing so. Wished: top +1, underside -1. */
typedef struct
{
  const char *name;
  BsLayup layup;
  int board[BS_N_FACES]; /* front edge, back edge, top, underside */
  int top, underside;
} RunOut;

static const RunOut run_outs[] = {
  { "on-edge/back-edge-is-the-top", BS_LAYUP_ON_EDGE, { 0, -1, 0, 0 }, -1, -1 },
  { "on-edge/front-edge-is-the-underside", BS_LAYUP_ON_EDGE, { 1, 0, 0, 0 }, 1, 1 },
  { "on-edge/both", BS_LAYUP_ON_EDGE, { 1, -1, 0, 0 }, -1, 1 },
  { "on-edge/wide-faces-are-glued", BS_LAYUP_ON_EDGE, { 0, 0, -1, 1 }, 1, -1 },
  { "on-flat/top", BS_LAYUP_ON_FLAT, { 0, 0, -1, 0 }, -1, -1 },
  { "on-flat/underside", BS_LAYUP_ON_FLAT, { 0, 0, 0, 1 }, 1, 1 },
  { "on-flat/edges-are-glued", BS_LAYUP_ON_FLAT, { 1, -1, 0, 0 }, 1, -1 },
  { "not-known", BS_LAYUP_ON_EDGE, { 0, 0, 0, 0 }, 1, -1 },
};

static void
test_run_out (gconstpointer data)
{
  const RunOut *row = data;
  BsBoard *board;
  g_autoptr (BsPlan) plan = plan_new (row->layup, &board);
  g_autoptr (BsLamination) lamination = NULL;
  BsLamination *wished = plan->laminations->pdata[0];

  wished->run_out_top = 1;
  wished->run_out_underside = -1;
  for (guint i = 0; i < BS_N_FACES; i++)
    board->run_out[i] = row->board[i];
  lamination = lay_out (plan);
  g_assert_cmpint (lamination->run_out_top, ==, row->top);
  g_assert_cmpint (lamination->run_out_underside, ==, row->underside);
}

/* A knot on the back edge would come up: the lamination is turned over, and not back again. */
static void
test_turned_to_show (void)
{
  BsBoard *board;
  g_autoptr (BsPlan) plan = plan_new (BS_LAYUP_ON_EDGE, &board);
  g_autoptr (BsPlan) laid = NULL, again = NULL;
  guint n;

  rack_add_defect (board, BS_DEFECT_KNOT, BS_FACE_RIGHT, 100.0, 200.0, 0.0, 40.0);
  laid = bs_saw_lay_out (plan, &n);
  g_assert_cmpint (g_array_index (laid->order, BsPlacement, 0).orientation, ==,
                   BS_ORIENTATION_OVER);
  again = bs_saw_lay_out (laid, &n);
  g_assert_cmpint (g_array_index (again->order, BsPlacement, 0).orientation, ==,
                   BS_ORIENTATION_OVER);
  g_assert_cmpint (g_array_index (plan->order, BsPlacement, 0).orientation, ==,
                   BS_ORIENTATION_AS_MARKED);
}

/* What was cut was measured since. */
static void
test_cut_is_left_alone (void)
{
  BsBoard *board;
  g_autoptr (BsPlan) plan = plan_new (BS_LAYUP_ON_EDGE, &board);
  g_autoptr (BsPlan) laid = NULL;
  guint n;

  g_array_index (plan->cuts, BsCut, 0).is_cut = TRUE;
  laid = bs_saw_lay_out (plan, &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_true (laid == plan);
}

static void
test_one (void)
{
  BsBoard *board;
  g_autoptr (BsPlan) plan = plan_new (BS_LAYUP_ON_EDGE, &board);
  g_autoptr (BsLamination) lamination = bs_saw_mill (plan, plan->laminations->pdata[0], board,
                                                     &g_array_index (plan->cuts, BsCut, 0));

  g_assert_cmpfloat_with_epsilon (lamination->height, 66.0, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sawing-lamination/size-and-rings", test_size_and_rings);
  g_test_add_func ("/sawing-lamination/board-is-forgotten", test_board_is_forgotten);
  g_test_add_func ("/sawing-lamination/less-than-wished", test_less_than_wished);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/sawing-lamination/defect/%s", rows[i].name);
      g_test_add_data_func (path, &rows[i], test_defect);
    }
  for (guint i = 0; i < G_N_ELEMENTS (run_outs); i++)
    {
      g_autofree char *path = g_strdup_printf ("/sawing-lamination/run-out/%s", run_outs[i].name);
      g_test_add_data_func (path, &run_outs[i], test_run_out);
    }
  g_test_add_func ("/sawing-lamination/turned-to-show", test_turned_to_show);
  g_test_add_func ("/sawing-lamination/cut-is-left-alone", test_cut_is_left_alone);
  g_test_add_func ("/sawing-lamination/one", test_one);
  return g_test_run ();
}
