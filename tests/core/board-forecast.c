/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/board-forecast.h"

#include <math.h>

/* A slab 1500 long and 60 thick, allowance 0.5 off each face; saw: kerf 3, 25 off each end, 1 off
 * each edge, no spring; jointer 150, planer 300. */
static BsPlan *
new_plan (BsLayup layup)
{
  BsPlan *plan = bs_plan_new ();

  plan->slab.length = 1500.0;
  plan->slab.thickness = 60.0;
  plan->slab.layup = layup;
  plan->slab.allowance = 0.5;
  plan->shop.jointer_width = 150.0;
  plan->shop.planer_width = 300.0;
  plan->shop.saw = (BsSaw){ .kerf = 3.0, .end_trim = 25.0, .edge_allowance = 1.0 };
  return plan;
}

/* Wanted by hand; on edge a strip is 60 + 2 x 0.5 = 61 wide when finished, 63 from the saw:
 *
 * - 3200 long: (3200 - 50 + 3) / 1503 = 2.09 lengths; 200 wide: (200 - 1 + 3) / (63 + 3) = 3.06
 *   strips. Bow 8 over 3200 is 8 x (1500 / 3200)^2 = 1.758 over 1500, cup 2 over 200 is
 *   2 x (63 / 200)^2 = 0.198 over a strip: t = 50 - 1.758 - 0.198 - 1 = 47.044 (no twist, both the
 *   same way).
 * - 1200 long: shorter than the slab, counted in its whole length. Flat: t = 50 - 1 = 49.
 * - 50 wide: too narrow for a strip; cup 2 in its whole width.
 * - On flat the width is left as it is: cup 2 in full, t = 50 - 1.758 - 2 - 1 = 45.242. */
typedef struct
{
  const char *path;
  BsLayup layup;
  double length, width, bow, cup;
  int n_lengths, n_strips;
  double thickness;
} Row;

static const Row rows[] = {
  { "two-by-three", BS_LAYUP_ON_EDGE, 3200, 200, 8, 2, 2, 3, 47.044 },
  { "short", BS_LAYUP_ON_EDGE, 1200, 200, 0, 0, 0, 3, 49.0 },
  { "narrow", BS_LAYUP_ON_EDGE, 1600, 50, 0, 2, 1, 0, 47.0 },
  { "on-flat", BS_LAYUP_ON_FLAT, 3200, 200, 8, 2, 2, 0, 45.242 },
  { "too-warped", BS_LAYUP_ON_FLAT, 1600, 200, 60, 0, 1, 0, 0.0 },
};

static void
test_forecast (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = new_plan (row->layup);
  g_autoptr (BsBoard) board = bs_board_new ("board");
  BsWorking why;

  board->length = row->length;
  board->width = row->width;
  board->thickness = 50.0;
  board->bow = row->bow;
  board->cup = row->cup;
  board->twist = 0.0;
  BsBoardForecast found = bs_board_forecast (board, plan);
  g_assert_cmpint (found.n_lengths, ==, row->n_lengths);
  g_assert_cmpint (found.n_strips, ==, row->n_strips);
  g_assert_cmpfloat_with_epsilon (found.thickness, row->thickness, 1e-3);
  g_assert_true (found.is_measured);
  bs_board_forecast_explain (&found, plan, &why);
  g_assert_cmpfloat_with_epsilon (why.value, found.thickness, 1e-12);
}

/* What was not measured counts as none, and is told. */
static void
test_unmeasured (void)
{
  g_autoptr (BsPlan) plan = new_plan (BS_LAYUP_ON_EDGE);
  g_autoptr (BsBoard) board = bs_board_new ("board");

  board->length = 1600.0;
  board->width = 200.0;
  board->thickness = 50.0;
  BsBoardForecast found = bs_board_forecast (board, plan);
  g_assert_cmpfloat_with_epsilon (found.thickness, 49.0, 1e-9);
  g_assert_false (found.is_measured);
  g_assert_cmpint (found.cautions, ==, BS_MILLING_WIDE_FOR_JOINTER);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/board-forecast/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_forecast);
    }
  g_test_add_func ("/board-forecast/unmeasured", test_unmeasured);
  return g_test_run ();
}
