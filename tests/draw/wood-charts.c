/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

/* The charts of the wood: each within the width and the height that it says, in greys on paper. */
#include "draw/cup-chart.h"
#include "draw/hardness-chart.h"
#include "draw/moisture-chart.h"
#include "draw/season-chart.h"

#include <math.h>

#include "image.h"
#include "shops.h"

#define WIDTH 700
#define MARGIN 40

/* Eight laminations of a wood that moves, their hearts up and down, one of them wet and one not
 * measured. */
static BsPlan *
new_plan (BsLayup layup)
{
  BsPlan *plan = shop_new_perfect ();
  BsWood *wood = plan->woods->pdata[0];

  wood->coef_radial = 0.0015;
  wood->coef_tangential = 0.0035;
  plan->slab.layup = layup;
  for (guint i = 0; i < 8; i++)
    {
      slab_at (plan, i)->pith_y = 0.0;
      slab_at (plan, i)->pith_z = i % 3 == 0 ? 60.0 : -60.0;
      bs_text_set (&slab_at (plan, i)->label, "A1");
    }
  slab_at (plan, 2)->moisture_pct = 16.0;
  slab_at (plan, 5)->moisture_pct = NAN;
  return plan;
}

typedef double (*GetHeight) (const BsResults *results, const BsChart *chart);
typedef void (*Draw) (cairo_t *cr, const BsResults *results, const BsChart *chart);

static double
get_moisture_height (const BsResults *results, const BsChart *chart)
{
  return bs_moisture_chart_get_height (chart);
}

typedef struct
{
  const char *path;
  GetHeight get_height;
  Draw draw;
  BsLayup layup;
  double text_size;
  BsFixedLine line;
} RoomRow;

static const RoomRow room_rows[] = {
  { "moisture", get_moisture_height, bs_draw_moisture_chart, BS_LAYUP_ON_EDGE, 13.0, 0 },
  { "moisture-large", get_moisture_height, bs_draw_moisture_chart, BS_LAYUP_ON_EDGE, 20.0, 0 },
  { "season-middle", bs_season_chart_get_height, bs_draw_season_chart, BS_LAYUP_ON_EDGE, 13.0,
    BS_FIXED_MIDDLE },
  { "season-front", bs_season_chart_get_height, bs_draw_season_chart, BS_LAYUP_ON_EDGE, 13.0,
    BS_FIXED_FRONT },
  { "season-back", bs_season_chart_get_height, bs_draw_season_chart, BS_LAYUP_ON_EDGE, 13.0,
    BS_FIXED_BACK },
  { "season-large", bs_season_chart_get_height, bs_draw_season_chart, BS_LAYUP_ON_EDGE, 20.0,
    BS_FIXED_MIDDLE },
  { "cup", bs_cup_chart_get_height, bs_draw_cup_chart, BS_LAYUP_ON_FLAT, 13.0, 0 },
};

static void
assert_within (cairo_t *cr, int width, int height)
{
  cairo_rectangle_int_t box;

  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  g_assert_cmpint (box.x, >=, MARGIN - 1);
  g_assert_cmpint (box.y, >=, MARGIN - 1);
  g_assert_cmpint (box.x + box.width, <=, MARGIN + width + 1);
  g_assert_cmpint (box.y + box.height, <=, MARGIN + height + 1);
  g_assert_true (image_is_grey (cr));
}

static void
test_room (gconstpointer data)
{
  const RoomRow *row = data;
  g_autoptr (BsPlan) plan = new_plan (row->layup);
  const BsChart chart = {
    .width = WIDTH, .text_size = row->text_size, .hairline = 1.0, .palette = bs_palette_paper ()
  };

  plan->slab.fixing.line = row->line;
  g_autoptr (BsResults) results = bs_evaluate (plan);
  const int height = (int)ceil (row->get_height (results, &chart));
  cairo_t *cr = image_new (WIDTH + 2 * MARGIN, height + 2 * MARGIN);

  g_assert_cmpint (height, >, 0);
  cairo_translate (cr, MARGIN, MARGIN);
  row->draw (cr, results, &chart);
  assert_within (cr, WIDTH, height);
  cairo_destroy (cr);
}

/* Nothing known, nothing drawn: an empty plan has no section and no cup. */
static void
test_nothing (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsResults) results = bs_evaluate (plan);
  const BsChart chart
      = { .width = WIDTH, .text_size = 13.0, .hairline = 1.0, .palette = bs_palette_paper () };
  cairo_t *cr = image_new (WIDTH, 200);
  cairo_rectangle_int_t box;

  g_assert_cmpfloat_with_epsilon (bs_season_chart_get_height (results, &chart), 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (bs_cup_chart_get_height (results, &chart), 0.0, 1e-12);
  bs_draw_season_chart (cr, results, &chart);
  bs_draw_cup_chart (cr, results, &chart);
  g_assert_cmpint (image_count_ink (cr, &box), ==, 0);
  bs_draw_moisture_chart (cr, results, &chart); /* its band and line alone */
  g_assert_cmpint (image_count_ink (cr, &box), >, 0);
  cairo_destroy (cr);
}

/* With the wood held at its front, what grows grows towards the back: the picture is another one
 * than with the wood held at its back, which is its mirror image but for the words. */
static void
test_held_line (void)
{
  g_autoptr (BsPlan) front = new_plan (BS_LAYUP_ON_EDGE);
  g_autoptr (BsPlan) back = new_plan (BS_LAYUP_ON_EDGE);

  front->slab.fixing.line = BS_FIXED_FRONT;
  back->slab.fixing.line = BS_FIXED_BACK;
  g_autoptr (BsResults) first = bs_evaluate (front);
  g_autoptr (BsResults) second = bs_evaluate (back);
  const BsChart chart
      = { .width = WIDTH, .text_size = 13.0, .hairline = 1.0, .palette = bs_palette_paper () };
  const int height = (int)ceil (bs_season_chart_get_height (first, &chart));
  cairo_t *a = image_new (WIDTH, height), *b = image_new (WIDTH, height);

  bs_draw_season_chart (a, first, &chart);
  bs_draw_season_chart (b, second, &chart);
  g_assert_cmpint (image_difference (a, b, FALSE), >, 100);
  cairo_destroy (a);
  cairo_destroy (b);
}

#define N_MARKS 90

/* As many woods as there are, many alike: names never outside, and every one that is chosen. */
static void
test_hardness_room (gconstpointer data)
{
  const int width = GPOINTER_TO_INT (data);
  BsHardnessMark marks[N_MARKS];
  const BsHardnessScale scale = { .marks = marks, .n = N_MARKS, .low_n = 3000.0, .high_n = 4200.0 };
  const BsChart chart
      = { .width = width, .text_size = 13.0, .hairline = 1.0, .palette = bs_palette_paper () };
  const int height = (int)ceil (bs_hardness_chart_get_height (&chart));
  cairo_t *cr = image_new (width + 2 * MARGIN, height + 2 * MARGIN);

  for (guint i = 0; i < N_MARKS; i++)
    marks[i] = (BsHardnessMark){ .name = "A wood of a long name, and then some more",
                                 .hardness_n = 1500.0 + 500.0 * floor (i / 8.0),
                                 .is_estimated = i % 2 == 0,
                                 .is_fit = i > 20 && i < 40,
                                 .is_chosen = i == 30 };
  cairo_translate (cr, MARGIN, MARGIN);
  bs_draw_hardness_chart (cr, &scale, &chart);
  assert_within (cr, width, height);
  cairo_destroy (cr);
}

/* No woods, or a range beyond all of them or open at an end: the scale is drawn all the same. */
static void
test_hardness_alone (gconstpointer data)
{
  const BsHardnessScale scale = *(const BsHardnessScale *)data;
  const BsChart chart
      = { .width = WIDTH, .text_size = 13.0, .hairline = 1.0, .palette = bs_palette_paper () };
  const int height = (int)ceil (bs_hardness_chart_get_height (&chart));
  cairo_t *cr = image_new (WIDTH + 2 * MARGIN, height + 2 * MARGIN);

  cairo_translate (cr, MARGIN, MARGIN);
  bs_draw_hardness_chart (cr, &scale, &chart);
  assert_within (cr, WIDTH, height);
  cairo_destroy (cr);
}

static const BsHardnessScale beyond = { .low_n = 20000.0, .high_n = 30000.0 };
static const BsHardnessScale open_below = { .low_n = NAN, .high_n = 30000.0 };
static const BsHardnessScale open_above = { .low_n = 20000.0, .high_n = NAN };

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (room_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/wood-charts/room/", room_rows[i].path, NULL);
      g_test_add_data_func (path, &room_rows[i], test_room);
    }
  g_test_add_func ("/wood-charts/nothing", test_nothing);
  g_test_add_func ("/wood-charts/held-line", test_held_line);
  g_test_add_data_func ("/wood-charts/hardness/wide", GINT_TO_POINTER (1300), test_hardness_room);
  g_test_add_data_func ("/wood-charts/hardness/usual", GINT_TO_POINTER (800), test_hardness_room);
  g_test_add_data_func ("/wood-charts/hardness/narrow", GINT_TO_POINTER (320), test_hardness_room);
  g_test_add_data_func ("/wood-charts/hardness/alone", &beyond, test_hardness_alone);
  g_test_add_data_func ("/wood-charts/hardness/open-below", &open_below, test_hardness_alone);
  g_test_add_data_func ("/wood-charts/hardness/open-above", &open_above, test_hardness_alone);
  return g_test_run ();
}
