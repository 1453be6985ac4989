/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/boards.h"

#include <math.h>
#include <string.h>

typedef struct
{
  const char *path;
  BsBoardForecast forecast;
  const char *wanted; /* thin spaces before units */
} Row;

static const Row rows[] = {
  { "strips",
    { .crosscut = { .length = 1500.0, .width = 200.0 },
      .width = 61.0,
      .n_lengths = 2,
      .n_strips = 3 },
    "2 lengths of 1500\u202fmm; 3 strips of 61\u202fmm" },
  { "one",
    { .crosscut = { .length = 1500.0, .width = 80.0 },
      .width = 61.0,
      .n_lengths = 1,
      .n_strips = 1 },
    "1 length of 1500\u202fmm; 1 strip of 61\u202fmm" },
  { "short-and-narrow",
    { .crosscut = { .length = 900.0, .width = 50.0 }, .width = 61.0 },
    "shorter than the slab, 900\u202fmm; too narrow for a strip of 61\u202fmm" },
  { "whole-width",
    { .crosscut = { .length = 1500.0, .width = 200.0 }, .width = NAN, .n_lengths = 1 },
    "1 length of 1500\u202fmm; in its whole width, 200\u202fmm" },
};

static void
test_pieces (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *found = bs_words_board_pieces (&row->forecast, BS_UNIT_SYSTEM_METRIC);

  g_assert_cmpstr (found, ==, row->wanted);
}

/* A sentence for each thing to heed, whole ones. */
static void
test_cautions (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsBoard) board = bs_board_new ("board");

  board->length = 200.0;
  board->width = 180.0;
  board->thickness = 10.0;
  plan->shop.jointer_width = 150.0;
  plan->shop.planer_width = 300.0;
  BsBoardForecast forecast = bs_board_forecast (board, plan);
  g_auto (GStrv) found = bs_words_board_cautions (&forecast, plan);

  g_assert_cmpuint (g_strv_length (found), ==, 4); /* wide, short, thin, not measured */
  for (char **sentence = found; *sentence != NULL; sentence++)
    g_assert_true (g_str_has_suffix (*sentence, "."));
  g_assert_nonnull (found[0]);
  g_assert_nonnull (strstr (found[0], "jointer"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = g_strconcat ("/boards/pieces/", rows[i].path, NULL);
      g_test_add_data_func (path, &rows[i], test_pieces);
    }
  g_test_add_func ("/boards/cautions", test_cautions);
  return g_test_run ();
}
