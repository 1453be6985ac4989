/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/flatten-spread.h"

#include "core/flatten.h"
#include "slabs.h"

#include <math.h>

static BsFlattenOdds
odds_of (const BsPlan *plan, const BsFlattenSpread *spread)
{
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  return bs_flatten_odds (stack, spread);
}

static BsFlattenSpread
no_spread (void)
{
  return (BsFlattenSpread){ .n_draws = 4000, .seed = 3 };
}

static BsPlan *
crooked_slab (guint n, BsLayup layup)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (5 + n);
  BsPlan *plan = slab_new (n, 2000.0, 40.0, 85.0);

  plan->slab.layup = layup;
  plan->slab.allowance = 0.5;
  for (guint i = 0; i < n; i++)
    {
      BsLamination *lamination = slab_at (plan, i);
      lamination->crook = g_rand_double_range (random, -2.0, 2.0);
      lamination->cup = g_rand_double_range (random, -1.0, 1.0);
      lamination->twist = g_rand_double_range (random, -2.0, 2.0);
      lamination->height = g_rand_double_range (random, 84.0, 86.0);
      lamination->taper = g_rand_double_range (random, -0.5, 0.5);
    }
  return plan;
}

/* Two laminations with offsets N(0, s) lose their difference, which is |N(0, s sqrt 2)|: half of
 * the slabs lose less than 0.67449 sqrt 2 s, 90 % less than 1.64485 sqrt 2 s, 95 % less
 * than 1.95996 sqrt 2 s. The quantile of 4000 draws has itself a standard error of some 0.03 s. */
static void
test_two_offset (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 2000.0, 40.0, 85.0);
  BsFlattenSpread spread = no_spread ();

  spread.deviation.offset = 1.0;
  spread.n_draws = 40000;
  BsFlattenOdds odds = odds_of (plan, &spread);
  g_assert_cmpfloat_with_epsilon (odds.at_50_pct, 85.0 - 0.95388, 0.03);
  g_assert_cmpfloat_with_epsilon (odds.at_90_pct, 85.0 - 2.32617, 0.04);
  g_assert_cmpfloat_with_epsilon (odds.at_95_pct, 85.0 - 2.77180, 0.05);
}

/* One lamination whose ends are N(85, s): the slab is as thick as the lower end. The least of two
 * normal deviates lies below -q when Phi(-q) = 1 - sqrt(1 - p): 0.0253 and q = 1.95450 for p =
 * 0.05. */
static void
test_one_height (void)
{
  g_autoptr (BsPlan) plan = slab_new (1, 2000.0, 40.0, 85.0);
  BsFlattenSpread spread = no_spread ();

  spread.deviation.height = 1.0;
  spread.n_draws = 40000;
  g_assert_cmpfloat_with_epsilon (odds_of (plan, &spread).at_95_pct, 85.0 - 1.9545, 0.05);
}

/* The same two laminations: as above, half of the slabs lose less than 0.95388 s, so 50 of a
 * hundred are at least 85 - 0.95388 thick, and 95 at least 85 - 2.77180. Of 40,000 draws the share
 * has a standard error of 0.25 % and 0.11 %. */
static void
test_wanted (void)
{
  g_autoptr (BsPlan) plan = slab_new (2, 2000.0, 40.0, 85.0);
  BsFlattenSpread spread = no_spread ();

  spread.deviation.offset = 1.0;
  spread.n_draws = 40000;
  plan->slab.thickness = 85.0 - 0.95388;
  g_assert_cmpfloat_with_epsilon (odds_of (plan, &spread).wanted_pct, 50.0, 1.0);
  plan->slab.thickness = 85.0 - 2.77180;
  g_assert_cmpfloat_with_epsilon (odds_of (plan, &spread).wanted_pct, 95.0, 0.5);
}

/* Every slab is in one of the steps, and as many below a quantile as it says. */
static void
test_bins (void)
{
  g_autoptr (BsPlan) plan = crooked_slab (9, BS_LAYUP_ON_EDGE);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);
  BsFlattenOdds odds = odds_of (plan, &spread);
  double step = (odds.most - odds.least) / BS_N_ODDS_BINS;
  guint n = 0, n_below = 0;

  for (guint i = 0; i < BS_N_ODDS_BINS; i++)
    {
      n += odds.bins[i];
      n_below += odds.least + (i + 1) * step <= odds.at_50_pct ? odds.bins[i] : 0;
    }
  g_assert_cmpuint (n, ==, spread.n_draws);
  g_assert_cmpuint (n_below, <=, spread.n_draws / 2);
  g_assert_cmpuint (odds.bins[0], >, 0);
  g_assert_cmpuint (odds.bins[BS_N_ODDS_BINS - 1], >, 0);
}

static void
test_without_spread (gconstpointer data)
{
  g_autoptr (BsPlan) plan = crooked_slab (9, BS_LAYUP_ON_EDGE);
  plan->slab.flatten_work = (BsFlattenWork)GPOINTER_TO_INT (data);
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenSpread spread = no_spread ();
  BsFlattenOdds odds = bs_flatten_odds (stack, &spread);
  BsFlattenResult result;

  bs_flatten (stack, &result);
  g_assert_cmpfloat_with_epsilon (odds.at_50_pct, result.thickness, 2e-3);
  g_assert_cmpfloat_with_epsilon (odds.at_95_pct, result.thickness, 2e-3);
}

/* The offsets of the fields that spread, each doubled and doubled again: never a thicker slab at 95
 * %. */
typedef struct
{
  const char *path;
  gsize field;
  BsLayup layup;
  BsFlattenWork work;
} MonotoneRow;

static const MonotoneRow monotone_rows[] = {
  { "height/on-edge", G_STRUCT_OFFSET (BsUncertainty, height), BS_LAYUP_ON_EDGE },
  { "warp/on-edge", G_STRUCT_OFFSET (BsUncertainty, warp), BS_LAYUP_ON_EDGE },
  { "offset/on-edge", G_STRUCT_OFFSET (BsUncertainty, offset), BS_LAYUP_ON_EDGE },
  { "rock/on-edge", G_STRUCT_OFFSET (BsUncertainty, rock), BS_LAYUP_ON_EDGE },
  { "height/on-flat", G_STRUCT_OFFSET (BsUncertainty, height), BS_LAYUP_ON_FLAT },
  { "warp/on-flat", G_STRUCT_OFFSET (BsUncertainty, warp), BS_LAYUP_ON_FLAT },
  { "offset/on-flat", G_STRUCT_OFFSET (BsUncertainty, offset), BS_LAYUP_ON_FLAT },
  { "height/show-face-first", G_STRUCT_OFFSET (BsUncertainty, height), BS_LAYUP_ON_EDGE,
    BS_FLATTEN_SHOW_FACE_FIRST },
  { "offset/show-face-first", G_STRUCT_OFFSET (BsUncertainty, offset), BS_LAYUP_ON_EDGE,
    BS_FLATTEN_SHOW_FACE_FIRST },
  { "offset/underside-first", G_STRUCT_OFFSET (BsUncertainty, offset), BS_LAYUP_ON_EDGE,
    BS_FLATTEN_UNDERSIDE_FIRST },
};

static void
test_monotone (gconstpointer data)
{
  static const double deviations[] = { 0.0, 0.2, 0.4, 0.8, 1.6 };
  const MonotoneRow *row = data;

  for (guint n = 2; n <= 12; n += 5)
    {
      g_autoptr (BsPlan) plan = crooked_slab (n, row->layup);
      plan->slab.flatten_work = row->work;
      BsFlattenSpread spread = bs_flatten_spread_of (plan);
      double before = INFINITY;

      for (gsize i = 0; i < G_N_ELEMENTS (deviations); i++)
        {
          G_STRUCT_MEMBER (double, &spread.deviation, row->field) = deviations[i];
          double now = odds_of (plan, &spread).at_95_pct;
          g_assert_cmpfloat (now, <=, before + 2e-3);
          before = now;
        }
    }
}

static void
test_more_sure_is_thinner (void)
{
  g_autoptr (BsPlan) plan = crooked_slab (10, BS_LAYUP_ON_EDGE);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);
  BsFlattenOdds odds = odds_of (plan, &spread);

  g_assert_cmpfloat (odds.at_50_pct, >, odds.at_90_pct);
  g_assert_cmpfloat (odds.at_90_pct, >, odds.at_95_pct);
}

/* Milled to the height that is named, the slab comes out as thick as was asked for. */
static void
test_height_needed (gconstpointer data)
{
  g_autoptr (BsPlan) plan = crooked_slab (8, (BsLayup)GPOINTER_TO_INT (data));
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);
  double height = bs_flatten_height_needed (stack, &spread, 80.0);

  for (guint i = 0; i < 8; i++)
    {
      BsLamination *lamination = slab_at (plan, i);
      if (plan->slab.layup == BS_LAYUP_ON_EDGE)
        lamination->twist *= height / lamination->height; /* the same angle */
      lamination->height = height;
      lamination->taper = 0.0;
    }
  g_assert_cmpfloat_with_epsilon (odds_of (plan, &spread).at_95_pct, 80.0, 0.01);
}

static void
test_same_bytes (void)
{
  g_autoptr (BsPlan) plan = crooked_slab (10, BS_LAYUP_ON_EDGE);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);
  BsFlattenOdds one = odds_of (plan, &spread), two = odds_of (plan, &spread);

  g_assert_cmpmem (&one, sizeof one, &two, sizeof two);
}

static void
test_empty (void)
{
  g_autoptr (BsPlan) plan = bs_plan_new ();
  g_autoptr (BsStack) stack = bs_stack_new (plan);
  BsFlattenSpread spread = bs_flatten_spread_of (plan);

  g_assert_true (isnan (bs_flatten_odds (stack, &spread).at_50_pct));
  g_assert_true (isnan (bs_flatten_height_needed (stack, &spread, 50.0)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/flatten-spread/two-offset", test_two_offset);
  g_test_add_func ("/flatten-spread/one-height", test_one_height);
  g_test_add_func ("/flatten-spread/wanted", test_wanted);
  g_test_add_func ("/flatten-spread/bins", test_bins);
  g_test_add_data_func ("/flatten-spread/without-spread/shimmed",
                        GINT_TO_POINTER (BS_FLATTEN_SHIMMED), test_without_spread);
  g_test_add_data_func ("/flatten-spread/without-spread/show-face-first",
                        GINT_TO_POINTER (BS_FLATTEN_SHOW_FACE_FIRST), test_without_spread);
  g_test_add_data_func ("/flatten-spread/without-spread/underside-first",
                        GINT_TO_POINTER (BS_FLATTEN_UNDERSIDE_FIRST), test_without_spread);
  for (gsize i = 0; i < G_N_ELEMENTS (monotone_rows); i++)
    {
      g_autofree char *path
          = g_strdup_printf ("/flatten-spread/monotone/%s", monotone_rows[i].path);
      g_test_add_data_func (path, &monotone_rows[i], test_monotone);
    }
  g_test_add_func ("/flatten-spread/more-sure-is-thinner", test_more_sure_is_thinner);
  g_test_add_data_func ("/flatten-spread/height-needed/on-edge", GINT_TO_POINTER (BS_LAYUP_ON_EDGE),
                        test_height_needed);
  g_test_add_data_func ("/flatten-spread/height-needed/on-flat", GINT_TO_POINTER (BS_LAYUP_ON_FLAT),
                        test_height_needed);
  g_test_add_func ("/flatten-spread/same-bytes", test_same_bytes);
  g_test_add_func ("/flatten-spread/empty", test_empty);
  return g_test_run ();
}
