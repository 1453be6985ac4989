/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/order-wishes.h"

/* Normal wishes are the default weights, as docs/order-model.md has them. */
static void
test_normal (void)
{
  BsOrderWishes wishes = bs_order_wishes_default ();
  BsOrderWeights weights = bs_order_wishes_weigh (&wishes), wanted = bs_order_weights_default ();

  for (guint i = 0; i < BS_N_ORDER_TERMS; i++)
    g_assert_cmpfloat_with_epsilon (weights.points[i], wanted.points[i], 1e-12);
}

/* One wish moves its own terms and leaves the others; the factors are those of the document. */
typedef struct
{
  const char *path;
  BsOrderWishes wishes;
  double show_face, colour, planing, crook, hearts, bow, moisture, meeting;
} Row;

#define OFF BS_ORDER_WISH_OFF
#define LITTLE BS_ORDER_WISH_LITTLE
#define NORMAL BS_ORDER_WISH_NORMAL
#define MUCH BS_ORDER_WISH_MUCH

static const Row rows[] = {
  { "looks-off", { OFF, NORMAL, NORMAL }, 0, 0, 4, 1, 3, 2, 2, 0.05 },
  { "looks-much", { MUCH, NORMAL, NORMAL }, 2, 1, 4, 1, 3, 2, 2, 0.05 },
  { "planing-little", { NORMAL, LITTLE, NORMAL }, 1, 0.5, 2, 0.5, 3, 2, 2, 0.05 },
  { "flat-much", { NORMAL, NORMAL, MUCH }, 1, 0.5, 4, 1, 6, 4, 4, 0.05 },
  { "all-off", { OFF, OFF, OFF }, 0, 0, 0, 0, 0, 0, 0, 0.05 },
};

static void
test_weigh (gconstpointer data)
{
  const Row *row = data;
  BsOrderWeights weights = bs_order_wishes_weigh (&row->wishes);
  const double *points = weights.points;

  g_assert_cmpfloat_with_epsilon (points[BS_ORDER_TERM_SHOW_FACE], row->show_face, 1e-12);
  g_assert_cmpfloat_with_epsilon (points[BS_ORDER_TERM_COLOUR], row->colour, 1e-12);
  g_assert_cmpfloat_with_epsilon (points[BS_ORDER_TERM_PLANING], row->planing, 1e-12);
  g_assert_cmpfloat_with_epsilon (points[BS_ORDER_TERM_CROOK], row->crook, 1e-12);
  g_assert_cmpfloat_with_epsilon (points[BS_ORDER_TERM_HEARTS], row->hearts, 1e-12);
  g_assert_cmpfloat_with_epsilon (points[BS_ORDER_TERM_BOW], row->bow, 1e-12);
  g_assert_cmpfloat_with_epsilon (points[BS_ORDER_TERM_MOISTURE], row->moisture, 1e-12);
  g_assert_cmpfloat_with_epsilon (points[BS_ORDER_TERM_MEETING], row->meeting, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order-wishes/normal", test_normal);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/order-wishes/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_weigh);
    }
  return g_test_run ();
}
