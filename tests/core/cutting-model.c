/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-model.h"

#define IN 25.4

typedef struct
{
  BsCutStock stock[3];
  BsCutPart parts[3];
  BsCutDefect defects[2];
  BsCutPin pins[2];
  BsCutting cutting;
} Order;

static void
order_init (Order *self)
{
  *self = (Order){ 0 };
  for (guint i = 0; i < 3; i++)
    {
      self->stock[i] = (BsCutStock){ 2000.0, 200.0, 50.0, 1000, BS_CUT_UNLIMITED, 0, 0, 0, NULL };
      self->parts[i] = (BsCutPart){ 900.0, 60.0, 50.0, 2, 0, 2, 2, FALSE };
    }
  self->cutting = bs_cutting_default ();
  self->cutting.stock = self->stock;
  self->cutting.n_stock = 1;
  self->cutting.parts = self->parts;
  self->cutting.n_parts = 1;
  self->cutting.pins = self->pins;
}

/* By hand: the greatest common divisor of all sizes with their kerf. */
static void
test_unit (void)
{
  const struct
  {
    double first, second, kerf, unit, size;
  } rows[] = {
    { 900.0, 600.0, 0.0, 300.0, 3 },                      /* 900 = 3 x 300 */
    { 900.0, 603.0, 0.0, 9.0, 100 },                      /* 603 = 67 x 9 */
    { 897.0, 597.0, 3.0, 300.0, 3 },                      /* a kerf belongs to each size */
    { 36.0 * IN, 24.0 * IN, 0.0, 12.0 * IN, 3 },          /* feet */
    { 35.875 * IN, 23.875 * IN, IN / 8.0, 12.0 * IN, 3 }, /* with a saw of 1/8 in */
    { 900.0, 1.0 / 64.0 * IN + 600.0, 0.0, 0.003125, 288000 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Order order;
      g_autoptr (BsCutModel) model = NULL;

      order_init (&order);
      order.cutting.n_parts = 2;
      order.cutting.kerf = rows[i].kerf;
      order.parts[0].length = rows[i].first;
      order.parts[1].length = rows[i].second;
      model = bs_cut_model_new (&order.cutting, NULL);
      if (rows[i].unit < 0.01)
        {
          /* 640,000 steps of the board would be too many: counted in 1/20 mm, rounded up. */
          g_assert_cmpfloat_with_epsilon (model->unit[0], 0.05, 1e-12);
          g_assert_cmpint (model->types[0].size[0], ==, 18000);
          g_assert_cmpint (model->types[1].size[0], ==, 12008);
          continue;
        }
      g_assert_cmpfloat_with_epsilon (model->unit[0], rows[i].unit, 1e-9);
      g_assert_cmpint (model->types[0].size[0], ==, rows[i].size);
    }
}

/* The same size and needs: one type; another need, size, wood or thickness: one of its own. */
static void
test_types (void)
{
  for (guint i = 0; i < 6; i++)
    {
      Order order;
      g_autoptr (BsCutModel) model = NULL;

      order_init (&order);
      order.cutting.n_parts = 2;
      order.parts[1].is_on_show = i == 0;
      order.parts[1].clear_faces = i == 1 ? 1 : 2;
      order.parts[1].clear_edges = i == 2 ? 0 : 2;
      order.parts[1].length = i == 3 ? 901.0 : 900.0;
      order.parts[1].wood = i == 4 ? 1 : 0;
      order.parts[1].thickness = i == 5 ? 40.0 : 50.0;
      model = bs_cut_model_new (&order.cutting, NULL);
      g_assert_cmpuint (model->n_types, ==, i == 0 ? 1 : 2);
      g_assert_cmpint (model->types[0].demand, ==, i == 0 ? 4 : 2);
    }
}

/* Two strips of 60 and a kerf of 3 need 123. */
static void
test_row_when_none_lie_side_by_side (void)
{
  const struct
  {
    double width;
    guint n_sheets;
    gboolean is_row;
  } rows[] = { { 122.0, 1, TRUE }, { 123.0, 2, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Order order;
      g_autoptr (BsCutModel) model = NULL;

      order_init (&order);
      order.stock[0].width = rows[i].width;
      model = bs_cut_model_new (&order.cutting, NULL);
      g_assert_cmpuint (model->n_sheets, ==, rows[i].n_sheets);
      g_assert_cmpint (model->sheets[0].is_row, ==, rows[i].is_row);
    }
}

/* Boards of one width share their tables, crosscut first; of one length, ripped first. */
static void
test_groups (void)
{
  Order order;
  g_autoptr (BsCutModel) model = NULL;

  order_init (&order);
  order.cutting.n_stock = 3;
  order.stock[1].length = 3000.0;
  order.stock[2].width = 300.0;
  model = bs_cut_model_new (&order.cutting, NULL);
  g_assert_cmpuint (model->n_sheets, ==, 6);
  g_assert_cmpuint (model->n_classes, ==, 2);
  g_assert_cmpuint (model->n_groups, ==, 4);
}

/* A defect from 50 to 80 across: where strips of 60 may lie that the slice takes past it. */
static void
test_allows (void)
{
  const struct
  {
    double y;
    BsCutFaces faces;
    int clear_faces, clear_edges;
    gboolean is_allowed;
  } rows[] = {
    { 0.0, BS_CUT_BOTH_FACES, 2, 2, FALSE },  { 80.0, BS_CUT_BOTH_FACES, 2, 2, TRUE },
    { 35.0, BS_CUT_BOTH_FACES, 0, 2, TRUE }, /* inside, off both edges */
    { 0.0, BS_CUT_BOTH_FACES, 0, 2, FALSE }, /* it reaches over the upper edge */
    { 0.0, BS_CUT_BOTH_FACES, 0, 1, TRUE },   { 35.0, BS_CUT_UPPER_FACE, 1, 2, TRUE },
    { 35.0, BS_CUT_UPPER_FACE, 2, 2, FALSE }, { 70.0, BS_CUT_LOWER_FACE, 1, 1, TRUE },
    { 70.0, BS_CUT_LOWER_FACE, 1, 2, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Order order;
      g_autoptr (BsCutModel) model = NULL;
      guint64 spots;
      gint32 place;

      order_init (&order);
      order.cutting.order = BS_CUT_CROSSCUT_FIRST;
      order.stock[0].supply = 1;
      order.stock[0].defects = order.defects;
      order.stock[0].n_defects = 1;
      order.defects[0] = (BsCutDefect){ 100.0, 200.0, 50.0, 80.0, rows[i].faces };
      order.parts[0].clear_faces = rows[i].clear_faces;
      order.parts[0].clear_edges = rows[i].clear_edges;
      model = bs_cut_model_new (&order.cutting, NULL);
      place = (gint32)(rows[i].y / model->unit[1] + 0.5);
      g_assert_true (
          bs_cut_model_find_spots (model, &model->sheets[0], 0, model->types[0].size[0], &spots));
      g_assert_cmpuint (spots, ==, 1);
      g_assert_cmpint (bs_cut_model_allows (model, &model->sheets[0], 0, spots, place), ==,
                       rows[i].is_allowed);
    }
}

/* One part is pinned from 500 to 1400: a slice holds all of it, with its kerf, or nothing. */
static void
test_slice_does_not_cut_pins (void)
{
  const struct
  {
    double from, to;
    gboolean is_possible, holds_it;
  } rows[] = {
    { 0.0, 500.0, TRUE, FALSE },     { 0.0, 501.0, FALSE, FALSE },
    { 500.0, 1403.0, TRUE, TRUE },   { 0.0, 2000.0, TRUE, TRUE },
    { 501.0, 1403.0, FALSE, FALSE }, { 500.0, 1402.0, FALSE, FALSE },
    { 1403.0, 2000.0, TRUE, FALSE },
  };
  Order order;
  g_autoptr (BsCutModel) model = NULL;

  order_init (&order);
  order.cutting.order = BS_CUT_CROSSCUT_FIRST;
  order.cutting.n_pins = 1;
  order.pins[0] = (BsCutPin){ 0, 0, 0, 500.0, 0.0 };
  model = bs_cut_model_new (&order.cutting, NULL);
  g_assert_cmpint (model->types[0].demand, ==, 1);
  g_assert_cmpint (model->stock[0].price, ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      guint64 spots = 0;
      gint32 from = (gint32)(rows[i].from / model->unit[0] + 0.5);
      gint32 to = (gint32)(rows[i].to / model->unit[0] + 0.5);

      g_assert_cmpint (bs_cut_model_find_spots (model, &model->sheets[0], from, to, &spots), ==,
                       rows[i].is_possible);
      if (rows[i].is_possible)
        g_assert_cmpint (spots != 0, ==, rows[i].holds_it);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cutting-model/unit", test_unit);
  g_test_add_func ("/cutting-model/types", test_types);
  g_test_add_func ("/cutting-model/row-when-none-lie-side-by-side",
                   test_row_when_none_lie_side_by_side);
  g_test_add_func ("/cutting-model/groups", test_groups);
  g_test_add_func ("/cutting-model/allows", test_allows);
  g_test_add_func ("/cutting-model/slice-does-not-cut-pins", test_slice_does_not_cut_pins);
  return g_test_run ();
}
