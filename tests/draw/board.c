/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/board.h"

#include "core/text.h"
#include "image.h"

#include <math.h>

#define WIDTH 1000
#define HEIGHT 400

/* 2000 x 200 x 50 mm with a knot near the left end of each face, 40 mm from where its breadth is
 * measured. */
static BsBoard *
new_board (void)
{
  BsBoard *board = bs_board_new ("plank");

  board->length = 2000.0;
  board->width = 200.0;
  board->thickness = 50.0;
  board->pith_y = 20.0;
  board->pith_z = -60.0;
  for (int face = 0; face < BS_N_FACES; face++)
    {
      BsDefect knot = { .kind = BS_DEFECT_KNOT,
                        .face = (BsFace)face,
                        .x_from = 100.0,
                        .x_to = 140.0,
                        .across_from = 10.0,
                        .across_to = 40.0,
                        .severity = 2.0 };
      g_array_append_val (board->defects, knot);
    }
  return board;
}

static BsBoardScale
fit (const BsBoard *board)
{
  BsBoardScale scale;
  double height = bs_board_scale_fit (&scale, board, WIDTH, HEIGHT, 13.0, 1.0);

  g_assert_cmpfloat (height, <=, HEIGHT);
  return scale;
}

/* Where the front edge or the underside lies low, what is 40 mm across lies above what is 10 mm:
 * wanted are device units from the face's upper edge, by hand from the face's breadth. */
typedef struct
{
  const char *path;
  BsFace face;
  double wanted_from, wanted_to; /* mm below the upper edge, for 10 to 40 mm across */
} Row;

static const Row rows[] = {
  { "top", BS_FACE_TOP, 160.0, 190.0 },
  { "front-edge", BS_FACE_LEFT, 10.0, 40.0 }, /* 50 - 40, 50 - 10 */
  { "underside", BS_FACE_UNDERSIDE, 10.0, 40.0 },
  { "back-edge", BS_FACE_RIGHT, 10.0, 40.0 },
};

static void
test_place (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsBoard) board = new_board ();
  BsBoardScale scale = fit (board);
  cairo_rectangle_t place;
  BsFace face;
  double x, across;

  bs_board_scale_place (&scale, board, row->face, 100.0, 140.0, 10.0, 40.0, &place);
  g_assert_cmpfloat_with_epsilon (place.x, scale.left + 100.0 * scale.per_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (place.width, 40.0 * scale.per_mm, 1e-9);
  g_assert_cmpfloat_with_epsilon (place.y - scale.tops[row->face], row->wanted_from * scale.per_mm,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (place.y + place.height - scale.tops[row->face],
                                  row->wanted_to * scale.per_mm, 1e-9);

  /* And back: its middle is found on that face. */
  double middle_x = place.x + 0.5 * place.width, middle_y = place.y + 0.5 * place.height;
  g_assert_true (bs_board_scale_find_face (&scale, board, middle_x, middle_y, &face));
  g_assert_cmpint (face, ==, row->face);
  bs_board_scale_to_mm (&scale, board, face, middle_x, middle_y, &x, &across);
  g_assert_cmpfloat_with_epsilon (x, 120.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (across, 25.0, 1e-9);
}

/* The picture is darkest where the scale says that the knot is: pointer and picture agree. */
static void
test_knot (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsBoard) board = new_board ();
  BsBoardScale scale = fit (board);
  const BsBoardLook look = { .board = board };
  cairo_t *with = image_new (WIDTH, HEIGHT);
  cairo_t *without = image_new (WIDTH, HEIGHT);
  cairo_rectangle_t place;

  bs_board_scale_place (&scale, board, row->face, 100.0, 140.0, 10.0, 40.0, &place);
  bs_draw_board_face (with, &look, row->face, &scale, bs_palette_paper ());
  g_array_set_size (board->defects, 0);
  bs_draw_board_face (without, &look, row->face, &scale, bs_palette_paper ());
  g_assert_cmpint (image_difference (with, without, FALSE), >, 40);

  /* White over the knot in both: nothing differs any more. */
  cairo_t *both[] = { with, without };
  for (gsize i = 0; i < G_N_ELEMENTS (both); i++)
    {
      cairo_rectangle (both[i], place.x - 3.0, place.y - 3.0, place.width + 6.0,
                       place.height + 6.0);
      cairo_set_source_rgb (both[i], 1.0, 1.0, 1.0);
      cairo_fill (both[i]);
    }
  g_assert_cmpint (image_difference (with, without, FALSE), ==, 0);
  cairo_destroy (with);
  cairo_destroy (without);
}

/* All of it lies in the height that it said, and paper has no hue. */
static void
test_room (void)
{
  static const double sizes[][3] = { { 2000, 200, 50 }, { 15000, 10, 2 }, { 50, 2000, 500 },
                                     { 300, 300, 300 }, { 50, 10, 2 },    { 2440, 150, 25.4 } };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (BsBoard) board = new_board ();
      const BsBoardLook look = { .board = board };
      BsBoardScale scale;
      cairo_t *cr = image_new (WIDTH, HEIGHT + 50);
      cairo_rectangle_int_t box;

      g_array_set_size (board->defects, 0);
      board->length = sizes[i][0];
      board->width = sizes[i][1];
      board->thickness = sizes[i][2];
      double height = bs_board_scale_fit (&scale, board, WIDTH, HEIGHT, 13.0, 1.0);
      bs_draw_board (cr, &look, &scale, bs_palette_paper ());
      g_assert_cmpint (image_count_ink (cr, &box), >, 0);
      g_assert_cmpint (box.x, >=, 0);
      g_assert_cmpint (box.x + box.width, <=, WIDTH);
      g_assert_cmpint (box.y + box.height, <=, (int)ceil (height));
      g_assert_true (image_is_grey (cr));
      cairo_destroy (cr);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *place = g_strconcat ("/board/place/", rows[i].path, NULL);
      g_autofree char *knot = g_strconcat ("/board/knot/", rows[i].path, NULL);
      g_test_add_data_func (place, &rows[i], test_place);
      g_test_add_data_func (knot, &rows[i], test_knot);
    }
  g_test_add_func ("/board/room", test_room);
  return g_test_run ();
}
