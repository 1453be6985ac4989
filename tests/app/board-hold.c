/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/board-hold.h"

/* A board of 1000 x 100 x 50 mm at one device unit a mm, its upper left corner at (0, 0) for the
 * top and (0, 200) for the underside, with a knot on the top from 400 to 500 along and 20 to 40
 * across: on the screen 60 to 80 down, because the front edge lies below. */
static const BsBoardScale scale = {
  .tops = { [BS_FACE_TOP] = 0.0,
            [BS_FACE_LEFT] = 120.0,
            [BS_FACE_UNDERSIDE] = 200.0,
            [BS_FACE_RIGHT] = 320.0 },
  .per_mm = 1.0,
  .hairline = 1.0,
  .text_size = 12.0,
};

static BsBoard *
new_board (void)
{
  BsBoard *board = bs_board_new ("plank");
  BsDefect knot = { .kind = BS_DEFECT_KNOT,
                    .face = BS_FACE_TOP,
                    .x_from = 400.0,
                    .x_to = 500.0,
                    .across_from = 20.0,
                    .across_to = 40.0,
                    .severity = 1.0 };

  board->length = 1000.0;
  board->width = 100.0;
  board->thickness = 50.0;
  g_array_append_val (board->defects, knot);
  return board;
}

typedef struct
{
  const char *path;
  int selected;
  double from_x, from_y, to_x, to_y; /* device */
  BsHoldKind kind;
  BsFace face;
  double x_from, x_to, across_from, across_to; /* wanted, by hand */
} Row;

static const Row rows[] = {
  { "new", -1, 100, 90, 150, 70, BS_HOLD_NEW, BS_FACE_TOP, 100, 150, 10, 30 },
  { "new-backwards", -1, 150, 70, 100, 90, BS_HOLD_NEW, BS_FACE_TOP, 100, 150, 10, 30 },
  { "new-on-the-underside", -1, 100, 210, 150, 230, BS_HOLD_NEW, BS_FACE_UNDERSIDE, 100, 150, 10,
    30 },
  { "new-on-the-front-edge", -1, 100, 130, 150, 160, BS_HOLD_NEW, BS_FACE_LEFT, 100, 150, 10, 40 },
  { "new-over-the-end", -1, 950, 90, 1200, -50, BS_HOLD_NEW, BS_FACE_TOP, 950, 1000, 10, 100 },
  { "move", -1, 450, 70, 460, 65, BS_HOLD_BODY, BS_FACE_TOP, 410, 510, 25, 45 },
  { "move-to-the-end", -1, 450, 70, 2000, 70, BS_HOLD_BODY, BS_FACE_TOP, 900, 1000, 20, 40 },
  { "move-over-the-edge", -1, 450, 70, 450, 300, BS_HOLD_BODY, BS_FACE_TOP, 400, 500, 0, 20 },
  { "corner", 0, 500, 60, 550, 50, BS_HOLD_CORNER, BS_FACE_TOP, 400, 550, 20, 50 },
  { "other-corner", 0, 400, 80, 390, 90, BS_HOLD_CORNER, BS_FACE_TOP, 390, 500, 10, 40 },
  { "corner-past-the-other", 0, 500, 60, 300, 60, BS_HOLD_CORNER, BS_FACE_TOP, 300, 400, 20, 40 },
  { "corner-not-selected", -1, 500, 60, 510, 60, BS_HOLD_BODY, BS_FACE_TOP, 410, 510, 20, 40 },
};

static void
check_defect (const BsDefect *found, double x_from, double x_to, double across_from,
              double across_to)
{
  g_assert_cmpfloat_with_epsilon (found->x_from, x_from, 1e-9);
  g_assert_cmpfloat_with_epsilon (found->x_to, x_to, 1e-9);
  g_assert_cmpfloat_with_epsilon (found->across_from, across_from, 1e-9);
  g_assert_cmpfloat_with_epsilon (found->across_to, across_to, 1e-9);
}

static void
test_drag (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsBoard) board = new_board ();
  BsHold hold;

  g_assert_true (bs_hold_begin (&hold, &scale, board, row->selected, row->from_x, row->from_y));
  g_assert_cmpint (hold.kind, ==, row->kind);
  BsDefect found = bs_hold_drag (&hold, &scale, board, row->to_x, row->to_y);
  g_assert_cmpint (found.face, ==, row->face);
  check_defect (&found, row->x_from, row->x_to, row->across_from, row->across_to);
}

static void
test_beside (void)
{
  g_autoptr (BsBoard) board = new_board ();
  BsHold hold;

  g_assert_false (bs_hold_begin (&hold, &scale, board, -1, 500.0, 110.0));
  g_assert_false (bs_hold_begin (&hold, &scale, board, -1, 1100.0, 50.0));
}

static void
test_keys (void)
{
  g_autoptr (BsBoard) board = new_board ();
  const BsDefect *knot = &g_array_index (board->defects, BsDefect, 0);

  BsDefect found = bs_hold_move (knot, board, -1000.0, 30.0);
  check_defect (&found, 0.0, 100.0, 50.0, 70.0);
  found = bs_hold_resize (knot, board, 50.0, 1000.0);
  check_defect (&found, 400.0, 550.0, 20.0, 100.0);
  found = bs_hold_resize (knot, board, -1000.0, -1000.0);
  check_defect (&found, 400.0, 401.0, 20.0, 21.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/board-hold/drag/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_drag);
    }
  g_test_add_func ("/board-hold/beside", test_beside);
  g_test_add_func ("/board-hold/keys", test_keys);
  return g_test_run ();
}
