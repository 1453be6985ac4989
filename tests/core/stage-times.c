/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stage-times.h"

#include "core/stages.h"

/* Two people, glue lines of 1.5 m x 40 mm: spreading 10 s and 300 s/m2 x 0.06 m2 / 2 = 19 s; 8 s to
 * place, 5 s to align, 5 s a clamp. */
static BsStagesInput
small_job (BsSpreading spreading)
{
  BsStagesInput input = bs_stages_input_default ();
  static const double widths[] = { 40.0, 32.0, 25.0, 40.0, 45.0 };

  input.n = 5;
  input.widths = widths;
  input.length = 1500.0;
  input.height = 40.0;
  input.people = 2;
  input.spread_s_per_m2 = 300.0;
  input.joint_s = 10.0;
  input.place_s = 8.0;
  input.align_s = 5.0;
  input.tighten_s = 5.0;
  input.spreading = spreading;
  return input;
}

/* Four joints of 19 + 8 + 5 = 32 s, eight clamps of 2.5 s: 148 s. Each joint is open for 19 + 8 =
 * 27 s. */
static void
test_alternate (void)
{
  BsStagesInput input = small_job (BS_SPREADING_ALTERNATE);
  BsStageTimes times = bs_stage_times (&input, 5, 8);

  g_assert_cmpfloat_with_epsilon (times.total_s, 148.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (times.open_s, 27.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (times.closed_s, 121.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (times.assembly_s, 156.0, 1e-9);
}

/* All four spread in 76 s. The first joint closes after 76 + 8 = 84 s, the last is open for
 * 19 + 4 x 8 = 51 s. */
static void
test_all_first (void)
{
  BsStagesInput input = small_job (BS_SPREADING_ALL_FIRST);
  BsStageTimes times = bs_stage_times (&input, 5, 8);

  g_assert_cmpfloat_with_epsilon (times.total_s, 148.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (times.open_s, 84.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (times.closed_s, 64.0, 1e-9);
}

/* No joint is open or closed for longer than its stage says, and one of them is as long. */
static void
test_joints (gconstpointer data)
{
  BsStagesInput input = small_job ((BsSpreading)GPOINTER_TO_INT (data));

  for (int n = 2; n <= 12; n++)
    {
      BsStageTimes times = bs_stage_times (&input, n, 6);
      double open_s, closed_s, most_open = 0.0, most_closed = 0.0;
      for (int joint = 0; joint < n - 1; joint++)
        {
          bs_stage_joint_times (&input, n, 6, joint, &open_s, &closed_s);
          g_assert_cmpfloat (open_s + closed_s, <=, times.total_s + 1e-9);
          most_open = MAX (most_open, open_s);
          most_closed = MAX (most_closed, closed_s);
        }
      g_assert_cmpfloat_with_epsilon (most_open, times.open_s, 1e-9);
      g_assert_cmpfloat_with_epsilon (most_closed, times.closed_s, 1e-9);
    }
}

typedef struct
{
  const char *path;
  double outer_width, caul, max_spacing;
  int wanted; /* 1 + (1500 - 2 x 50) / spacing, rounded up */
} ClampRow;

static const ClampRow clamp_rows[] = {
  { "by-piece-and-caul", 40.0, 60.0, 300.0, 8 }, /* 1400 / 200 = 7 */
  { "by-spacing", 200.0, 60.0, 300.0, 6 },       /* 1400 / 300 = 4.67 */
  { "bare", 35.0, 0.0, 300.0, 21 },              /* 1400 / 70 = 20, no rounding up by accident */
  { "never-one", 900.0, 0.0, 5000.0, 2 },
};

static void
test_clamps (gconstpointer data)
{
  const ClampRow *row = data;
  BsStagesInput input = small_job (BS_SPREADING_ALTERNATE);

  input.caul = row->caul;
  input.max_spacing = row->max_spacing;
  input.end = 50.0;
  g_assert_cmpint (bs_stages_clamps_by_spacing (&input, row->outer_width), ==, row->wanted);
}

static void
test_clamps_of_piece (void)
{
  BsStagesInput input = small_job (BS_SPREADING_ALTERNATE);

  input.caul = 60.0;
  /* 32 + 25 + 60 = 117, spacing 234: 1 + 5.98 rounded up. */
  g_assert_cmpint (bs_stages_clamps_for (&input, 1, 2), ==, 7);
}

static void
test_most_pieces (void)
{
  BsStagesInput input = small_job (BS_SPREADING_ALTERNATE);

  input.open_s = input.closed_s = 600.0;
  input.total_s = 3.0 * 32.0 + 20.0; /* three joints and eight clamps */
  g_assert_cmpint (bs_stage_most_pieces (&input, 8), ==, 4);
  input.total_s -= 0.01;
  g_assert_cmpint (bs_stage_most_pieces (&input, 8), ==, 3);
  input.total_s = 10.0;
  g_assert_cmpint (bs_stage_most_pieces (&input, 8), ==, 1);
  input.total_s = 1e6;
  input.open_s = 26.0;
  g_assert_cmpint (bs_stage_most_pieces (&input, 8), ==, 1);
}

static void
test_time_limit (void)
{
  BsStagesInput input = small_job (BS_SPREADING_ALTERNATE);
  BsStageTimes times = bs_stage_times (&input, 5, 8); /* open 27, closed 121, total 148 */

  input.open_s = 27.0;
  input.closed_s = 121.0;
  input.total_s = 148.0;
  g_assert_cmpint (bs_stage_time_limit (&input, &times), ==, BS_STAGE_LIMIT_NONE);
  input.total_s = 147.0;
  g_assert_cmpint (bs_stage_time_limit (&input, &times), ==, BS_STAGE_LIMIT_TOTAL);
  input.closed_s = 120.0;
  g_assert_cmpint (bs_stage_time_limit (&input, &times), ==, BS_STAGE_LIMIT_CLOSED);
  input.open_s = 26.0;
  g_assert_cmpint (bs_stage_time_limit (&input, &times), ==, BS_STAGE_LIMIT_OPEN);
}

static void
test_pack_limit (void)
{
  BsStagesInput input = small_job (BS_SPREADING_ALTERNATE);

  input.max_opening = 400.0;
  input.caul = 50.0;
  input.planes_packs = TRUE;
  input.planer_width = 250.0;
  input.max_pack_kg = 30.0;
  g_assert_cmpint (bs_stage_pack_limit (&input, 250.0, 30.0), ==, BS_STAGE_LIMIT_NONE);
  g_assert_cmpint (bs_stage_pack_limit (&input, 251.0, 30.0), ==, BS_STAGE_LIMIT_PLANER);
  g_assert_cmpint (bs_stage_pack_limit (&input, 301.0, 30.0), ==, BS_STAGE_LIMIT_OPENING);
  g_assert_cmpint (bs_stage_pack_limit (&input, 250.0, 30.5), ==, BS_STAGE_LIMIT_WEIGHT);
  input.planes_packs = FALSE;
  g_assert_cmpint (bs_stage_pack_limit (&input, 300.0, 30.0), ==, BS_STAGE_LIMIT_NONE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/stage-times/alternate", test_alternate);
  g_test_add_func ("/stage-times/all-first", test_all_first);
  g_test_add_data_func ("/stage-times/joints/alternate", GINT_TO_POINTER (BS_SPREADING_ALTERNATE),
                        test_joints);
  g_test_add_data_func ("/stage-times/joints/all-first", GINT_TO_POINTER (BS_SPREADING_ALL_FIRST),
                        test_joints);
  for (gsize i = 0; i < G_N_ELEMENTS (clamp_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/stage-times/clamps/%s", clamp_rows[i].path);
      g_test_add_data_func (path, &clamp_rows[i], test_clamps);
    }
  g_test_add_func ("/stage-times/clamps-of-piece", test_clamps_of_piece);
  g_test_add_func ("/stage-times/most-pieces", test_most_pieces);
  g_test_add_func ("/stage-times/time-limit", test_time_limit);
  g_test_add_func ("/stage-times/pack-limit", test_pack_limit);
  return g_test_run ();
}
