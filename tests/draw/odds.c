/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/odds.h"

#include "image.h"
#include "slabs.h"

#define WIDTH 360
#define TEXT 14.0

typedef struct
{
  const char *path;
  double wanted;
  double deviation; /* of everything, mm */
} Row;

static const Row rows[] = {
  { "reached", 58.0, 0.3 }, { "far-above", 90.0, 0.3 },   { "far-below", 20.0, 0.3 },
  { "sure", 60.0, 0.0 },    { "wide-spread", 55.0, 5.0 },
};

static BsFlattenOdds
find_odds (const Row *row)
{
  g_autoptr (BsPlan) plan = slab_new (8, 2000.0, 40.0, 60.0);
  plan->slab.thickness = row->wanted;
  plan->slab.uncertainty
      = (BsUncertainty){ row->deviation, row->deviation, row->deviation, row->deviation };
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);

  return bs_flatten_odds (stack, &spread);
}

/* All of it lies in its room, wherever the wanted thickness is. */
static void
test_room (gconstpointer data)
{
  const Row *row = data;
  BsFlattenOdds odds = find_odds (row);
  cairo_t *cr = image_new (WIDTH + 100, 300);
  cairo_rectangle_int_t box;

  bs_draw_odds (cr, &odds, row->wanted, BS_UNIT_SYSTEM_METRIC, WIDTH, TEXT, 1.0,
                bs_palette_paper ());
  g_assert_cmpint (image_count_ink (cr, &box), >, 200);
  g_assert_cmpint (box.x, >=, 0);
  g_assert_cmpint (box.x + box.width, <=, WIDTH);
  g_assert_cmpint (box.y, >=, 0);
  g_assert_cmpfloat (box.y + box.height, <=, BS_ODDS_HEIGHT * TEXT);
  g_assert_true (image_is_grey (cr));
  cairo_destroy (cr);
}

static void
test_unknown (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);
  BsFlattenOdds odds = bs_flatten_odds (stack, &spread);
  cairo_t *cr = image_new (WIDTH, 300);
  cairo_rectangle_int_t box;

  bs_draw_odds (cr, &odds, 60.0, BS_UNIT_SYSTEM_METRIC, WIDTH, TEXT, 1.0, bs_palette_paper ());
  g_assert_cmpint (image_count_ink (cr, &box), ==, 0);
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/odds/room/%s", rows[i].path);
      g_test_add_data_func (path, &rows[i], test_room);
    }
  g_test_add_func ("/odds/unknown", test_unknown);
  return g_test_run ();
}
