/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/cutting-solution.h"

static void
test_compare (void)
{
  const BsCutSolution rows[] = {
    { .n_missing = 0, .price = 5, .net_area = 9, .score = 4 },
    { .n_missing = 0, .price = 5, .net_area = 9, .score = 3 },
    { .n_missing = 0, .price = 5, .net_area = 10, .score = 8 },
    { .n_missing = 0, .price = 6, .net_area = 1, .score = 8 },
    { .n_missing = 1, .price = 1, .net_area = 1, .score = 8 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
      g_assert_cmpint (bs_cut_solution_compare (&rows[i], &rows[k]), ==, i < k ? -1 : i > k);
}

/* Two sections, 900 with three strips and 500 with one, of which one long part and the short one
 * are too many: the short section goes whole, and the offcut grows from 2000 - 903 - 503 to 2000 -
 * 903. */
static void
test_trim (void)
{
  BsCutStock stock = { 2000.0, 200.0, 50.0, 1000, BS_CUT_UNLIMITED, 0, 0, 0, NULL };
  BsCutPart parts[]
      = { { 900.0, 60.0, 50.0, 2, 0, 2, 2, FALSE }, { 500.0, 60.0, 50.0, 1, 0, 2, 2, FALSE } };
  BsCutting cutting = bs_cutting_default ();
  g_autoptr (BsCutModel) model = NULL;
  g_autoptr (BsCutSolution) solution = bs_cut_solution_new ();
  g_autoptr (BsCutPattern) pattern = NULL;
  const BsCutPattern *trimmed;
  int demand[] = { 2, 0 };

  cutting.order = BS_CUT_CROSSCUT_FIRST;
  cutting.stock = &stock;
  cutting.n_stock = 1;
  cutting.parts = parts;
  cutting.n_parts = 2;
  model = bs_cut_model_new (&cutting, NULL);
  pattern = bs_cut_pattern_new (model, 0);
  bs_cut_pattern_add_slice (pattern, 0, model->types[1].size[0]);
  bs_cut_pattern_add_strip (pattern, 1, 0);
  bs_cut_pattern_add_slice (pattern, model->types[1].size[0],
                            model->types[1].size[0] + model->types[0].size[0]);
  for (gint32 i = 0; i < 3; i++)
    bs_cut_pattern_add_strip (pattern, 0, i * model->types[0].size[1]);
  bs_cut_pattern_close (pattern, model);
  g_assert_cmpfloat_with_epsilon (pattern->offcut, 2000.0 - 903.0 - 503.0, 1e-9);

  bs_cut_solution_add (solution, model, pattern);
  bs_cut_solution_trim (solution, model, demand);
  g_assert_cmpuint (solution->patterns->len, ==, 1);
  g_assert_cmpint (solution->n_missing, ==, 0);
  g_assert_cmpint (solution->price, ==, 1000);
  trimmed = solution->patterns->pdata[0];
  g_assert_cmpint (trimmed->count[0], ==, 2);
  g_assert_cmpint (trimmed->count[1], ==, 0);
  g_assert_cmpfloat_with_epsilon (trimmed->offcut, 2000.0 - 903.0, 1e-9);
  /* Net area and score, in 1/100 mm2: 2000 x 200 - 1097 x 200 and 1097^2. */
  g_assert_cmpint (solution->net_area, ==, 18060000);
  g_assert_cmpint (solution->score, ==, 120340900);
}

/* A board that holds nothing that is wanted is not bought; what is lacking is counted. */
static void
test_trim_to_nothing (void)
{
  BsCutStock stock = { 2000.0, 200.0, 50.0, 1000, BS_CUT_UNLIMITED, 0, 0, 0, NULL };
  BsCutPart part = { 900.0, 60.0, 50.0, 2, 0, 2, 2, FALSE };
  BsCutting cutting = bs_cutting_default ();
  g_autoptr (BsCutModel) model = NULL;
  g_autoptr (BsCutSolution) solution = bs_cut_solution_new (), lacking = bs_cut_solution_new ();
  g_autoptr (BsCutPattern) pattern = NULL;
  int none[] = { 0 }, five[] = { 5 };

  cutting.stock = &stock;
  cutting.n_stock = 1;
  cutting.parts = &part;
  cutting.n_parts = 1;
  model = bs_cut_model_new (&cutting, NULL);
  pattern = bs_cut_pattern_new (model, 0);
  bs_cut_pattern_add_slice (pattern, 0, model->types[0].size[0]);
  bs_cut_pattern_add_strip (pattern, 0, 0);
  bs_cut_pattern_close (pattern, model);
  bs_cut_solution_add (solution, model, pattern);
  bs_cut_solution_trim (solution, model, none);
  g_assert_cmpuint (solution->patterns->len, ==, 0);
  g_assert_cmpint (solution->price, ==, 0);
  bs_cut_solution_add (lacking, model, pattern);
  bs_cut_solution_trim (lacking, model, five);
  g_assert_cmpint (lacking->n_missing, ==, 4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cutting-solution/compare", test_compare);
  g_test_add_func ("/cutting-solution/trim", test_trim);
  g_test_add_func ("/cutting-solution/trim-to-nothing", test_trim_to_nothing);
  return g_test_run ();
}
