/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/slab-wish.h"

typedef struct
{
  const char *path;
  double width, asked; /* mm */
  int count;
  double thickness;
} Row;

/* The slab's width by the thickness asked for, rounded up; by hand. */
static const Row rows[] = {
  { "exact", 600.0, 40.0, 15, 40.0 },
  { "rest", 620.0, 40.0, 16, 38.75 },
  { "inches", 24.0 * 25.4, 1.5 * 25.4, 16, 38.1 }, /* whose quotient is not exact in binary */
  { "one", 30.0, 40.0, 1, 30.0 },
};

static void
check_count (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (BsPlan) plan = bs_plan_new ();
  BsWorking why;

  plan->slab.width = row->width;
  BsSlabWish wish = bs_slab_wish (plan, row->asked);
  g_assert_cmpint (wish.count, ==, row->count);
  g_assert_cmpfloat_with_epsilon (wish.thickness, row->thickness, 1e-9);
  bs_slab_wish_explain (&wish, plan, row->asked, &why);
  g_assert_cmpfloat_with_epsilon (why.value, row->count, 1e-9);
}

/* 30 mm for both ends; tool marks on both faces and 2.5 mm for unevenness. */
static void
test_sizes (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();

  plan->slab.length = 1500.0;
  plan->slab.thickness = 60.0;
  plan->slab.allowance = 0.5;
  BsSlabWish wish = bs_slab_wish (plan, 40.0);
  g_assert_cmpfloat_with_epsilon (wish.length, 1530.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (wish.height, 63.5, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/slab-wish/count/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], check_count);
    }
  g_test_add_func ("/slab-wish/sizes", test_sizes);
  return g_test_run ();
}
