/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/photo.h"

#include "core/text.h"
#include "draw/picture.h"
#include "image.h"

#define RED 0xff0000
#define GREEN 0x00ff00
#define BLUE 0x0000ff
#define YELLOW 0xffff00

/* Four fields: red, green above; blue, yellow below. */
static cairo_surface_t *
new_photo (void)
{
  static const guint32 fields[2][2] = { { RED, GREEN }, { BLUE, YELLOW } };
  cairo_surface_t *photo = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 400, 100);
  cairo_t *cr = cairo_create (photo);

  for (int row = 0; row < 2; row++)
    for (int column = 0; column < 2; column++)
      {
        guint32 color = fields[row][column];

        cairo_set_source_rgb (cr, (color >> 16) / 255.0, (color >> 8 & 0xff) / 255.0,
                              (color & 0xff) / 255.0);
        cairo_rectangle (cr, 200.0 * column, 50.0 * row, 200.0, 50.0);
        cairo_fill (cr);
      }
  cairo_destroy (cr);
  return photo;
}

/* A board of 1000 x 200 x 40 mm with photos of both faces, and a lamination that is all of it. */
static BsPlan *
new_plan (BsLayup layup)
{
  BsPlan *plan = bs_plan_new ();
  BsBoard *board = bs_board_new ("plank");
  BsLamination *lamination = bs_lamination_new ("a");
  BsCut cut = { .length = 1000.0, .width = 200.0 };

  board->length = 1000.0;
  board->width = 200.0;
  board->thickness = 40.0;
  bs_text_set (&board->photo_top, "top.png");
  bs_text_set (&board->photo_underside, "under.png");
  g_ptr_array_add (plan->boards, board);
  lamination->length = 1000.0;
  lamination->thickness = layup == BS_LAYUP_ON_FLAT ? 200.0 : 40.0;
  lamination->height = layup == BS_LAYUP_ON_FLAT ? 40.0 : 200.0;
  g_ptr_array_add (plan->laminations, lamination);
  plan->slab.layup = layup;
  bs_text_set (&cut.board, "plank");
  bs_text_set (&cut.piece, "a");
  bs_plan_add_cut (plan, &cut);
  bs_text_clear (&cut.board);
  bs_text_clear (&cut.piece);
  return plan;
}

static guint32
color_at (cairo_t *cr, int x, int y)
{
  cairo_surface_t *image = cairo_get_target (cr);
  const guint8 *row = cairo_image_surface_get_data (image)
                      + (gsize)y * (gsize)cairo_image_surface_get_stride (image);

  cairo_surface_flush (image);
  return ((const guint32 *)(const void *)row)[x] & 0xffffff;
}

/* The top's photo has the back edge above, the underside's the front edge. Of the slab the front is
 * at the left and its left end above; turning a lamination over brings its back to the front,
 * turning it end for end does too and exchanges its ends, both leave the front in front. */
typedef struct
{
  const char *path;
  BsOrientation orientation;
  const char *photo;
  guint32 left_front, left_back, right_front, right_back; /* of the slab */
} ShownRow;

static const ShownRow shown_rows[] = {
  { "as-marked", BS_ORIENTATION_AS_MARKED, "top.png", BLUE, RED, YELLOW, GREEN },
  { "end-for-end", BS_ORIENTATION_END_FOR_END, "top.png", GREEN, YELLOW, RED, BLUE },
  { "over", BS_ORIENTATION_OVER, "under.png", BLUE, RED, YELLOW, GREEN },
  { "over-and-end", BS_ORIENTATION_OVER_AND_END, "under.png", GREEN, YELLOW, RED, BLUE },
};

static void
test_shown (gconstpointer data)
{
  const ShownRow *row = data;
  const BsScale scale
      = { .per_mm_across = 0.5, .per_mm_along = 0.2, .hairline = 1.0, .text_size = 4.0 };
  g_autoptr (BsPlan) plan = new_plan (BS_LAYUP_ON_FLAT);
  cairo_t *cr = image_new (100, 200);

  bs_plan_insert_placement (plan, 0, "a", row->orientation, 0.0);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFacePhoto photo = bs_photo_find_shown (plan, &stack->placed[0]);
  g_assert_cmpstr (photo.path, ==, row->photo);

  photo.surface = new_photo ();
  bs_draw_face (cr, &stack->placed[0], &photo, &scale, bs_palette_paper (), BS_MARK_NONE);
  g_assert_cmphex (color_at (cr, 20, 40), ==, row->left_front);
  g_assert_cmphex (color_at (cr, 80, 40), ==, row->left_back);
  g_assert_cmphex (color_at (cr, 20, 160), ==, row->right_front);
  g_assert_cmphex (color_at (cr, 80, 160), ==, row->right_back);
  cairo_surface_destroy (photo.surface);
  cairo_destroy (cr);
}

/* A piece of 500 x 80 mm out of a cut of 520 x 100 that begins at 100, 20 mm, on the face given: in
 * the middle of the cut, so from 110 to 610 and from 30 to 110 mm of 1000 x 200. */
typedef struct
{
  const char *path;
  BsLayup layup;
  BsFace face;
  const char *photo;
  double y; /* 1 - 110 / 200, or 30 / 200 */
} PartRow;

static const PartRow part_rows[] = {
  { "flat/top", BS_LAYUP_ON_FLAT, BS_FACE_TOP, "top.png", 0.45 },
  { "flat/underside", BS_LAYUP_ON_FLAT, BS_FACE_UNDERSIDE, "under.png", 0.15 },
  { "flat/edge", BS_LAYUP_ON_FLAT, BS_FACE_LEFT, NULL, 0.0 },
  { "edge/left", BS_LAYUP_ON_EDGE, BS_FACE_LEFT, "top.png", 0.45 },
  { "edge/right", BS_LAYUP_ON_EDGE, BS_FACE_RIGHT, "under.png", 0.15 },
  { "edge/top", BS_LAYUP_ON_EDGE, BS_FACE_TOP, NULL, 0.0 },
};

static void
test_part (gconstpointer data)
{
  const PartRow *row = data;
  g_autoptr (BsPlan) plan = new_plan (row->layup);
  BsLamination *lamination = plan->laminations->pdata[0];
  BsCut *cut = &g_array_index (plan->cuts, BsCut, 0);

  lamination->length = 500.0;
  *(row->layup == BS_LAYUP_ON_FLAT ? &lamination->thickness : &lamination->height) = 80.0;
  cut->x = 100.0;
  cut->y = 20.0;
  cut->length = 520.0;
  cut->width = 100.0;
  BsFacePhoto found = bs_photo_find (plan, lamination, row->face);
  g_assert_cmpstr (found.path, ==, row->photo);
  if (row->photo == NULL)
    return;
  g_assert_cmpfloat_with_epsilon (found.part.x, 0.11, 1e-12);
  g_assert_cmpfloat_with_epsilon (found.part.width, 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (found.part.y, row->y, 1e-12);
  g_assert_cmpfloat_with_epsilon (found.part.height, 0.4, 1e-12);
}

/* Milled before: no cut says where it lay in its board. */
static void
test_no_cut (void)
{
  g_autoptr (BsPlan) plan = new_plan (BS_LAYUP_ON_FLAT);

  g_array_set_size (plan->cuts, 0);
  g_assert_null (bs_photo_find (plan, plan->laminations->pdata[0], BS_FACE_TOP).path);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (shown_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/photo/shown/", shown_rows[i].path, NULL);
      g_test_add_data_func (path, &shown_rows[i], test_shown);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (part_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/photo/part/", part_rows[i].path, NULL);
      g_test_add_data_func (path, &part_rows[i], test_part);
    }
  g_test_add_func ("/photo/no-cut", test_no_cut);
  return g_test_run ();
}
