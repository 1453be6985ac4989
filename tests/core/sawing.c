/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/sawing.h"

/* A board of 1000 x 200 with a kerf of 3, 25 off each end, offcuts from 300. */
static const BsSawBoard board
    = { .length = 1000.0, .width = 200.0, .end_trim = 25.0, .kerf = 3.0, .min_offcut = 300.0 };

static const BsSawPass *
get_pass (const BsSawing *sawing, guint i)
{
  return &g_array_index (sawing->passes, BsSawPass, i);
}

static void
assert_pass (const BsSawing *sawing, guint i, gboolean is_rip, double at, double width, double from,
             double to)
{
  const BsSawPass *pass = get_pass (sawing, i);

  g_assert_cmpint (pass->is_rip, ==, is_rip);
  g_assert_cmpfloat_with_epsilon (pass->at, at, 1e-9);
  g_assert_cmpfloat_with_epsilon (pass->width, width, 1e-9);
  g_assert_cmpfloat_with_epsilon (pass->from, from, 1e-9);
  g_assert_cmpfloat_with_epsilon (pass->to, to, 1e-9);
}

/* Two strips of one section. Kerfs: 2 x 3 x 200 + 3 x 600 = 3000; offcut: (975 - 628) x 200 =
 * 69 400; pieces: 600 x (100 + 97) = 118 200; waste: (22 + 25) x 200 = 9400. */
static void
test_crosscut_first (void)
{
  const BsSawPiece pieces[] = { { 25.0, 103.0, 600.0, 97.0 }, { 25.0, 0.0, 600.0, 100.0 } };
  g_autoptr (BsSawing) sawing = bs_sawing_new (&board, pieces, 2);

  g_assert_cmpint (sawing->fault, ==, BS_SAW_FAULT_NONE);
  g_assert_cmpint (sawing->order, ==, BS_CUT_CROSSCUT_FIRST);
  g_assert_cmpuint (sawing->passes->len, ==, 3);
  g_assert_cmpuint (sawing->n_first, ==, 2);
  assert_pass (sawing, 0, FALSE, 22.0, 3.0, 0.0, 200.0);
  assert_pass (sawing, 1, FALSE, 625.0, 3.0, 0.0, 200.0);
  assert_pass (sawing, 2, TRUE, 100.0, 3.0, 25.0, 625.0);
  g_assert_cmpfloat_with_epsilon (sawing->offcut_from, 628.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (sawing->offcut_to, 975.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (sawing->piece_area, 118200.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (sawing->kerf_area, 3000.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (sawing->offcut_area, 69400.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (sawing->waste_area, 9400.0, 1e-6);
}

/* A long piece over two short ones: no crosscut goes through. The gap of 5 between the short ones
 * is a kerf and one more pass of 2. */
static void
test_rip_first (void)
{
  const BsSawPiece pieces[]
      = { { 25.0, 0.0, 400.0, 100.0 }, { 430.0, 0.0, 500.0, 100.0 }, { 25.0, 103.0, 905.0, 97.0 } };
  g_autoptr (BsSawing) sawing = bs_sawing_new (&board, pieces, 3);

  g_assert_cmpint (sawing->order, ==, BS_CUT_RIP_FIRST);
  g_assert_cmpuint (sawing->passes->len, ==, 7);
  g_assert_cmpuint (sawing->n_first, ==, 1);
  assert_pass (sawing, 0, TRUE, 100.0, 3.0, 0.0, 1000.0);
  assert_pass (sawing, 1, FALSE, 22.0, 3.0, 0.0, 100.0);
  assert_pass (sawing, 2, FALSE, 425.0, 3.0, 0.0, 100.0);
  assert_pass (sawing, 3, FALSE, 428.0, 2.0, 0.0, 100.0);
  assert_pass (sawing, 4, FALSE, 930.0, 3.0, 0.0, 100.0);
  assert_pass (sawing, 5, FALSE, 22.0, 3.0, 103.0, 200.0);
  assert_pass (sawing, 6, FALSE, 930.0, 3.0, 103.0, 200.0);
  g_assert_cmpfloat_with_epsilon (sawing->offcut_area, 0.0, 1e-9);
}

/* Of a section as long as its longest piece, the shorter one is trimmed last. */
static void
test_trimmed_last (void)
{
  const BsSawPiece pieces[] = { { 25.0, 0.0, 600.0, 100.0 }, { 25.0, 103.0, 500.0, 97.0 } };
  g_autoptr (BsSawing) sawing = bs_sawing_new (&board, pieces, 2);

  g_assert_cmpuint (sawing->passes->len, ==, 4);
  assert_pass (sawing, 3, FALSE, 525.0, 3.0, 103.0, 200.0);
}

static void
test_whole_board (void)
{
  g_autoptr (BsSawing) sawing = bs_sawing_new (&board, NULL, 0);

  g_assert_cmpuint (sawing->passes->len, ==, 0);
  g_assert_cmpfloat_with_epsilon (sawing->offcut_area, 950.0 * 200.0, 1e-6);
}

static void
test_offcut_is_clear (void)
{
  const BsCutDefect knot = { 700.0, 730.0, 40.0, 60.0, BS_CUT_UPPER_FACE };
  const BsSawPiece piece = { 25.0, 0.0, 600.0, 100.0 };
  BsSawBoard knotty = board;
  g_autoptr (BsSawing) sawing = NULL;

  knotty.n_defects = 1;
  knotty.defects = &knot;
  sawing = bs_sawing_new (&knotty, &piece, 1);
  g_assert_cmpfloat_with_epsilon (sawing->offcut_area, 0.0, 1e-9);
}

typedef struct
{
  const char *name;
  BsSawPiece pieces[4];
  guint n;
  BsSawFault fault;
  guint piece, other;
} Fault;

static const Fault faults[] = {
  { "over-end", { { 500.0, 0.0, 600.0, 50.0 } }, 1, BS_SAW_FAULT_OFF_BOARD, 0, 0 },
  { "over-edge", { { 0.0, 160.0, 600.0, 50.0 } }, 1, BS_SAW_FAULT_OFF_BOARD, 0, 0 },
  { "two-apart",
    { { 25.0, 0.0, 300.0, 100.0 }, { 327.0, 0.0, 300.0, 100.0 } },
    2,
    BS_SAW_FAULT_NO_KERF,
    1,
    0 },
  /* each beside the end of the next one, round a hole */
  { "pinwheel",
    { { 0.0, 0.0, 400.0, 60.0 },
      { 403.0, 0.0, 100.0, 120.0 },
      { 103.0, 123.0, 400.0, 60.0 },
      { 0.0, 63.0, 100.0, 120.0 } },
    4,
    BS_SAW_FAULT_NOT_THROUGH,
    3,
    0 },
};

static void
test_fault (gconstpointer data)
{
  const Fault *row = data;
  g_autoptr (BsSawing) sawing = bs_sawing_new (&board, row->pieces, row->n);

  g_assert_cmpint (sawing->fault, ==, row->fault);
  g_assert_cmpuint (sawing->passes->len, ==, 0);
  if (row->fault == BS_SAW_FAULT_NOT_THROUGH)
    return;
  g_assert_cmpuint (sawing->piece, ==, row->piece);
  g_assert_cmpuint (sawing->other, ==, row->other);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sawing/crosscut-first", test_crosscut_first);
  g_test_add_func ("/sawing/rip-first", test_rip_first);
  g_test_add_func ("/sawing/trimmed-last", test_trimmed_last);
  g_test_add_func ("/sawing/whole-board", test_whole_board);
  g_test_add_func ("/sawing/offcut-is-clear", test_offcut_is_clear);
  for (guint i = 0; i < G_N_ELEMENTS (faults); i++)
    {
      g_autofree char *path = g_strdup_printf ("/sawing/fault/%s", faults[i].name);
      g_test_add_data_func (path, &faults[i], test_fault);
    }
  return g_test_run ();
}
