/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/cutting.h"

#include "image.h"
#include "racks.h"

#define WIDTH 560
#define HEIGHT 160
#define MARGIN 20.0

/* A board of 1000 x 200 with three pieces, two of them of one part. */
static BsPlan *
plan_new (void)
{
  BsPlan *plan = rack_plan_new ();
  BsBoard *board = rack_add_board (plan, 1000.0, 200.0, 52.0, 3000);

  rack_add_defect (board, BS_DEFECT_KNOT, BS_FACE_UNDERSIDE, 700.0, 740.0, 60.0, 90.0);
  rack_add_part (plan, 2, 300.0, 90.0, 45.0);
  rack_add_part (plan, 1, 300.0, 60.0, 45.0);
  rack_add_cut (plan, "board-1", "part-1", 25.0, 0.0, 300.0, 90.0);
  rack_add_cut (plan, "board-1", "part-2", 25.0, 93.0, 300.0, 60.0);
  rack_add_cut (plan, "board-1", "part-1", 328.0, 0.0, 300.0, 90.0);
  return plan;
}

static cairo_t *
draw (const BsPlan *plan, const BsPalette *palette, const char *selected, guint copy)
{
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  const BsCutStyle style = {
    .per_mm = 0.5,
    .hairline = 1.0,
    .text_size = 12.0,
    .palette = palette,
    .selected = selected,
    .selected_copy = copy,
    .mark = BS_MARK_SELECTED,
  };
  cairo_t *cr = image_new (WIDTH, HEIGHT);
  cairo_matrix_t before, after;

  cairo_translate (cr, MARGIN, MARGIN);
  cairo_get_matrix (cr, &before);
  bs_draw_cut_board (cr, plan, rack->boards->pdata[0], &style);
  cairo_get_matrix (cr, &after);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpmem (&before, sizeof before, &after, sizeof after);
  return cr;
}

/* Black on white carries everything, and stays within the board and its margins. */
static void
test_paper (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  cairo_t *cr = draw (plan, bs_palette_paper (), NULL, 0);
  double margin = bs_cut_picture_margin (12.0);
  cairo_rectangle_int_t box;

  g_assert_true (image_is_grey (cr));
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpfloat (box.x, >=, MARGIN - margin);
  g_assert_cmpfloat (box.x + box.width, <=, MARGIN + 500.0 + 2.0);
  g_assert_cmpfloat (box.y, >=, MARGIN - 12.0);
  g_assert_cmpfloat (box.y + box.height, <=, MARGIN + 100.0 + margin);
  cairo_destroy (cr);
}

/* Numbers of the passes stand outside the board, the kerfs are in it: without numbers nothing is
 * drawn outside, and each kerf is still there, dark from edge to edge. */
static void
test_without_numbers (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (BsSawRack) rack = bs_saw_rack_new (plan);
  BsCutStyle style
      = { .per_mm = 0.5, .hairline = 1.0, .text_size = 12.0, .palette = bs_palette_paper () };
  cairo_rectangle_int_t boxes[2];

  for (guint i = 0; i < 2; i++)
    {
      cairo_t *cr = image_new (WIDTH, HEIGHT);

      style.without_numbers = i == 1;
      cairo_translate (cr, MARGIN, MARGIN);
      bs_draw_cut_board (cr, plan, rack->boards->pdata[0], &style);
      image_count_ink (cr, &boxes[i]);
      /* the crosscut of 3 mm behind the first pieces, at 325 mm, 20 mm from the front edge */
      g_assert_cmpint (image_get_darkness (cr, (int)(MARGIN + 0.5 * 326.5), (int)MARGIN + 90), >,
                       128);
      cairo_destroy (cr);
    }
  g_assert_cmpint (boxes[0].y + boxes[0].height, >, (int)MARGIN + 100 + 4);
  g_assert_cmpint (boxes[1].y + boxes[1].height, <=, (int)MARGIN + 100 + 2);
  g_assert_cmpint (boxes[1].x, >=, (int)MARGIN - 2);
}

/* The chosen one of two alike is marked; what the plan does not have is not. */
static void
test_selected (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  cairo_t *none = draw (plan, bs_palette_light (), NULL, 0);
  cairo_t *first = draw (plan, bs_palette_light (), "part-1", 0);
  cairo_t *second = draw (plan, bs_palette_light (), "part-1", 1);
  cairo_t *third = draw (plan, bs_palette_light (), "part-1", 2);

  g_assert_cmpint (image_difference (none, first, FALSE), >, 0);
  g_assert_cmpint (image_difference (first, second, FALSE), >, 0);
  g_assert_cmpint (image_difference (none, third, FALSE), ==, 0);
  cairo_destroy (none);
  cairo_destroy (first);
  cairo_destroy (second);
  cairo_destroy (third);
}

/* Pinned and cut are told by a sign and a word, not by a colour. */
static void
test_states (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  cairo_t *planned = draw (plan, bs_palette_paper (), NULL, 0), *pinned, *done;

  g_array_index (plan->cuts, BsCut, 0).is_pinned = TRUE;
  pinned = draw (plan, bs_palette_paper (), NULL, 0);
  g_array_index (plan->cuts, BsCut, 0).is_cut = TRUE;
  done = draw (plan, bs_palette_paper (), NULL, 0);
  g_assert_cmpint (image_difference (planned, pinned, FALSE), >, 0);
  g_assert_cmpint (image_difference (pinned, done, FALSE), >, 0);
  cairo_destroy (planned);
  cairo_destroy (pinned);
  cairo_destroy (done);
}

/* Whatever it is told, it draws without an error: a board that cannot be sawn, one that is whole,
 * no scale. */
static void
test_odd (void)
{
  g_autoptr (BsPlan) plan = plan_new ();
  g_autoptr (BsPlan) whole = rack_plan_new ();
  const BsCutStyle style
      = { .per_mm = 0.5, .hairline = 1.0, .text_size = 12.0, .palette = bs_palette_light () };
  cairo_rectangle_int_t box;
  cairo_t *cr;

  g_array_index (plan->cuts, BsCut, 1).y = 50.0;
  cairo_destroy (draw (plan, bs_palette_light (), NULL, 0));
  rack_add_board (whole, 1000.0, 200.0, 52.0, 0);
  cairo_destroy (draw (whole, bs_palette_light (), NULL, 0));
  cr = image_new (WIDTH, HEIGHT);
  bs_draw_cut_piece (cr, plan, &g_array_index (plan->cuts, BsCut, 0), &style, BS_MARK_HELD);
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.width, >=, 148);
  g_assert_cmpint (box.width, <=, 152);
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/cutting/paper", test_paper);
  g_test_add_func ("/draw/cutting/without-numbers", test_without_numbers);
  g_test_add_func ("/draw/cutting/selected", test_selected);
  g_test_add_func ("/draw/cutting/states", test_states);
  g_test_add_func ("/draw/cutting/odd", test_odd);
  return g_test_run ();
}
