/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing-stock.h"

#include "racks.h"

typedef struct
{
  const char *name;
  BsDefectKind kind;
  BsFace face;
  BsCutFaces faces;
  double y_from, y_to;
} Row;

/* Across from 20 to 50 of a face of a board 200 wide; on an edge that is 30 deep. */
static const Row rows[] = {
  { "knot-above", BS_DEFECT_KNOT, BS_FACE_TOP, BS_CUT_UPPER_FACE, 20.0, 50.0 },
  { "stain-below", BS_DEFECT_STAIN, BS_FACE_UNDERSIDE, BS_CUT_LOWER_FACE, 20.0, 50.0 },
  { "check-above", BS_DEFECT_CHECK, BS_FACE_TOP, BS_CUT_UNSOUND, 20.0, 50.0 },
  { "wane-in-front", BS_DEFECT_WANE, BS_FACE_LEFT, BS_CUT_UNSOUND, 0.0, 30.0 },
  { "knot-behind", BS_DEFECT_KNOT, BS_FACE_RIGHT, BS_CUT_BOTH_FACES, 170.0, 200.0 },
};

static void
test_defect (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = rack_plan_new ();
  BsBoard *board = rack_add_board (plan, 1000.0, 200.0, 52.0, 0);
  g_autoptr (GArray) defects = NULL;
  const BsCutDefect *defect;

  rack_add_defect (board, row->kind, row->face, 100.2, 140.2, 20.0, 50.0);
  defects = bs_saw_defects_new (plan, board);
  g_assert_cmpuint (defects->len, ==, 1);
  defect = &g_array_index (defects, BsCutDefect, 0);
  g_assert_cmpint (defect->faces, ==, row->faces);
  g_assert_cmpfloat_with_epsilon (defect->x_from, 100.0, 1e-9); /* outwards, to whole steps */
  g_assert_cmpfloat_with_epsilon (defect->x_to, 140.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (defect->y_from, row->y_from, 1e-9);
  g_assert_cmpfloat_with_epsilon (defect->y_to, row->y_to, 1e-9);
}

static void
test_slight_ones_do_not_count (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  BsBoard *board = rack_add_board (plan, 1000.0, 200.0, 52.0, 0);
  g_autoptr (GArray) defects = NULL;

  rack_add_defect (board, BS_DEFECT_STAIN, BS_FACE_TOP, 100.0, 140.0, 20.0, 50.0);
  g_array_index (board->defects, BsDefect, 0).severity = 0.4;
  defects = bs_saw_defects_new (plan, board);
  g_assert_cmpuint (defects->len, ==, 0);
}

/* However many there are, every one lies in what is left of them. */
static void
test_many_are_united (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  BsBoard *board = rack_add_board (plan, 5000.0, 200.0, 52.0, 0);
  g_autoptr (GArray) defects = NULL;

  for (guint i = 0; i < 150; i++)
    rack_add_defect (board, BS_DEFECT_KNOT, BS_FACE_TOP, 30.0 * i, 30.0 * i + 10.0, i % 7 * 20.0,
                     i % 7 * 20.0 + 15.0);
  defects = bs_saw_defects_new (plan, board);
  g_assert_cmpuint (defects->len, <=, BS_CUT_MAX_DEFECTS / 2);
  for (guint i = 0; i < 150; i++)
    {
      const BsDefect *knot = &g_array_index (board->defects, BsDefect, i);
      gboolean is_within = FALSE;

      for (guint k = 0; k < defects->len; k++)
        {
          const BsCutDefect *defect = &g_array_index (defects, BsCutDefect, k);
          is_within
              = is_within
                || (defect->x_from <= knot->x_from && defect->x_to >= knot->x_to
                    && defect->y_from <= knot->across_from && defect->y_to >= knot->across_to);
        }
      g_assert_true (is_within);
    }
}

/* 100 x 200 of 2 x 1000 x 200 at a severity of 1: a twentieth. */
static void
test_looks (void)
{
  g_autoptr (BsPlan) plan = rack_plan_new ();
  BsBoard *board = rack_add_board (plan, 1000.0, 200.0, 52.0, 0);

  g_assert_cmpint (bs_saw_looks (board), ==, 1000);
  rack_add_defect (board, BS_DEFECT_STAIN, BS_FACE_TOP, 100.0, 200.0, 0.0, 200.0);
  g_assert_cmpint (bs_saw_looks (board), ==, 950);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/sawing-stock/defect/%s", rows[i].name);
      g_test_add_data_func (path, &rows[i], test_defect);
    }
  g_test_add_func ("/sawing-stock/slight-ones-do-not-count", test_slight_ones_do_not_count);
  g_test_add_func ("/sawing-stock/many-are-united", test_many_are_united);
  g_test_add_func ("/sawing-stock/looks", test_looks);
  return g_test_run ();
}
