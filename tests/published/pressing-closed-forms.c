/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/pressing.h"

#include <math.h>

/* Pressing against solutions that can be written down. Sources: Hetenyi, M. 1946, Beams on elastic
 * foundation (cited from memory), for the beams; the others are derived in docs/pressing-model.md.
 *
 * Two equal beams pressed together from both sides mirror each other, so either one lies on a
 * foundation twice as stiff as the spring between the two. */

#define WIDTH 85.0       /* height of the laminations, mm */
#define RIGID_SHEAR 1e12 /* a shear modulus that leaves bending alone, MPa */

static BsPressPiece
piece (guint course, double length, double thickness, double e_along, double e_across, double shear)
{
  return (BsPressPiece){ .course = course,
                         .length = length,
                         .thickness = thickness,
                         .height = WIDTH,
                         .e_along_mpa = e_along,
                         .e_across_mpa = e_across,
                         .shear_mpa = shear };
}

static BsPressResult
solve (const BsPressStack *stack, const BsPressClamp *clamps, guint n_clamps)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPressing) pressing = bs_pressing_new (stack, &error);
  BsPressResult result;

  g_assert_no_error (error);
  g_assert_true (bs_pressing_solve (pressing, clamps, n_clamps, &result, &error));
  g_assert_no_error (error);
  g_assert_cmpint (result.status, ==, BS_PRESS_STATUS_SOLVED);
  return result;
}

/* Line force (N/mm) and opening (mm) at x, between the points. */
static double
line_force_at (const BsPressLine *line, double height, double x)
{
  for (guint i = 1; i < line->n_points; i++)
    {
      const BsPressPoint *a = &line->points[i - 1], *b = &line->points[i];

      if (x <= b->x)
        return height
               * (a->pressure_mpa
                  + (b->pressure_mpa - a->pressure_mpa) * (x - a->x) / (b->x - a->x));
    }
  g_assert_not_reached ();
}

static double
opening_at (const BsPressLine *line, double x)
{
  guint i = 0;

  while (i + 1 < line->n_points && line->points[i].x < x - 1e-6)
    i++;
  return line->points[i].opening;
}

/* The spring between two equal plain beams is E h / t, so the foundation of one is 2 E h / t. */
static double
across_for_foundation (double foundation, double thickness)
{
  return foundation * thickness / (2.0 * WIDTH);
}

/* Heads that touch: the same pressure everywhere, on every line. */
static void
check_heads_that_touch (void)
{
  BsPressPiece pieces[5];
  BsPressClamp clamps[10];
  BsPressStack stack = bs_press_stack_default ();
  g_auto (BsPressResult) result = { 0 };

  for (guint i = 0; i < 5; i++)
    pieces[i] = piece (i, 1000.0, 30.0 + 3.0 * i, 12000.0, 700.0 + 100.0 * i, 800.0);
  for (guint i = 0; i < 10; i++)
    clamps[i] = (BsPressClamp){ .x = 50.0 + 100.0 * i, .force = 4000.0, .head = 100.0 };
  stack.pieces = pieces;
  stack.n_pieces = 5;
  result = solve (&stack, clamps, 10);
  for (guint i = 0; i < result.n_lines; i++)
    for (guint j = 0; j < result.lines[i].n_points; j++)
      g_assert_cmpfloat_with_epsilon (result.lines[i].points[j].pressure_mpa,
                                      10.0 * 4000.0 / (1000.0 * WIDTH), 1e-6);
}

/* An endless beam on springs of 4250 N/mm for each mm, EI 5.44e9 N mm2, 10 kN on one spot.
 * `is_glued` rows may pull. Wanted, docs/pressing-model.md, Check values:
 * (P beta/2) e^(-beta x) (cos beta x + sin beta x), beta = (k/4EI)^(1/4). */
typedef struct
{
  const char *name;
  double shear, x, wanted, tolerance;
  gboolean is_glued;
} FoundationRow;

static const FoundationRow foundation_rows[] = {
  { "bending/0", RIGID_SHEAR, 0.0, 105.112, 0.1, TRUE },
  { "bending/50", RIGID_SHEAR, 50.0, 50.137, 0.1, TRUE },
  { "bending/100", RIGID_SHEAR, 100.0, 4.563, 0.05, TRUE },
  { "bending/150", RIGID_SHEAR, 150.0, -4.542, 0.05, TRUE },
  { "with-shear/0", 800.0, 0.0, 228.55, 0.5, TRUE },
  /* Springs that cannot pull: the peak grows by 1.09033. */
  { "no-pull/0", RIGID_SHEAR, 0.0, 105.112 * 1.09033, 0.1, FALSE },
};

static BsPressStack
beam_on_springs (BsPressPiece pieces[2], double shear)
{
  BsPressStack stack = bs_press_stack_default ();
  double along = 5.44e9 * 12.0 / (WIDTH * 40.0 * 40.0 * 40.0);

  for (guint i = 0; i < 2; i++)
    pieces[i] = piece (i, 1600.0, 40.0, along, across_for_foundation (4250.0, 40.0), shear);
  stack.model = BS_PRESS_MODEL_TIMOSHENKO;
  stack.step = 2.0;
  stack.pieces = pieces;
  stack.n_pieces = 2;
  return stack;
}

static const BsPressClamp on_one_spot = { .x = 800.0, .force = 1e4, .head = 0.02 };

static void
check_foundation (gconstpointer data)
{
  const FoundationRow *row = data;
  BsPressPiece pieces[2];
  BsPressStack stack = beam_on_springs (pieces, row->shear);
  double got;

  if (row->is_glued)
    {
      g_autoptr (BsPressing) pressing = bs_pressing_new (&stack, NULL);
      g_autofree double *pressure = g_new (double, bs_pressing_n_points (pressing));

      g_assert_cmpuint (bs_pressing_n_points (pressing), ==, 801);
      g_assert_true (bs_pressing_glued_response (pressing, &on_one_spot, pressure));
      got = WIDTH * pressure[(guint)((800.0 + row->x) / 2.0)];
    }
  else
    {
      g_auto (BsPressResult) result = solve (&stack, &on_one_spot, 1);

      got = line_force_at (&result.lines[0], WIDTH, 800.0 + row->x);
    }
  g_test_message ("wanted %g, got %g", row->wanted, got);
  g_assert_cmpfloat_with_epsilon (got, row->wanted, row->tolerance);
}

/* Contact ends pi / (2 beta) = 74.72 mm from the load, between the nodes at 74 and 76. */
static void
check_contact_length (void)
{
  BsPressPiece pieces[2];
  BsPressStack stack = beam_on_springs (pieces, RIGID_SHEAR);
  g_auto (BsPressResult) result = solve (&stack, &on_one_spot, 1);

  for (gssize side = -1; side <= 1; side += 2)
    {
      const BsPressPoint *middle = &result.lines[0].points[400];

      g_assert_cmpfloat (middle[side * 37].pressure_mpa, >, 0.0);
      g_assert_cmpfloat (middle[side * 38].pressure_mpa, <=, 0.0);
      g_assert_cmpfloat (middle[side * 38].opening, >, 0.0);
    }
}

/* A lamination 90 x 20, 2000 long, E 12000, bowed by 3 mm, pressed on a rigid plane by a load
 * spread over its length. Here two of them, bowed away from each other, are each other's plane:
 * either closes half of the gap between them. Wanted: beam theory, docs/pressing-model.md, Bow. */
#define BOW 3.0
#define BOW_LENGTH 2000.0

typedef struct
{
  const char *name;
  double load;              /* N, in all */
  gboolean is_even;         /* spread over the length, or in the middle */
  double x;                 /* where the gap is taken */
  double wanted, tolerance; /* mm between one lamination and its plane */
} BowRow;

static const BowRow bow_rows[] = {
  /* Touches in the middle at 48 EI d / L^3 = 12.96 N; then 2d/27 is left at L/6. */
  { "central/before", 12.9, FALSE, 1000.0, 3.0 * 0.06 / 12.96, 2e-3 },
  { "central/touches", 12.97, FALSE, 1000.0, 0.0, 1e-3 },
  { "central/left-at-sixth", 12.96, FALSE, 2000.0 / 6.0, 2.0 * BOW / 27.0, 2e-3 },
  /* Even: touches at 384 EI d / (5 L^3) = 20.736 N; then d/20 is left at 0.1464 L. */
  { "even/before", 20.6, TRUE, 1000.0, 3.0 * 0.136 / 20.736, 2e-3 },
  { "even/touches", 20.75, TRUE, 1000.0, 0.0, 1e-3 },
  { "even/left", 20.736, TRUE, 293.0, BOW / 20.0, 1e-3 },
  /* From 128 EI d / L^3 = 34.56 N the flat part spreads: at 100 N (0.05 N/mm) the largest gap is
   * 4.5 EI d^2 / (q L^4) = 0.03645 mm, a/4 = 147 mm from the end, a = 587.9 mm. */
  { "even/largest-gap", 100.0, TRUE, 147.0, 0.03645, 5e-4 },
  { "even/flat-inside", 100.0, TRUE, 600.0, 0.0, 2e-4 },
};

static BsPressStack
bowed_pair (BsPressPiece pieces[2])
{
  BsPressStack stack = bs_press_stack_default ();

  /* A foundation of 1e5 N/mm for each mm is rigid for this. The loads bend either lamination away
   * from the other's middle, so the front one's bow points to the front. */
  for (guint i = 0; i < 2; i++)
    {
      pieces[i] = piece (i, BOW_LENGTH, 20.0, 12000.0, 1e5 * 20.0 / (2.0 * 90.0), RIGID_SHEAR);
      pieces[i].height = 90.0;
      pieces[i].bow = i == 0 ? -BOW : BOW;
    }
  stack.model = BS_PRESS_MODEL_TIMOSHENKO;
  stack.step = 4.0;
  stack.pieces = pieces;
  stack.n_pieces = 2;
  return stack;
}

static void
check_bow (gconstpointer data)
{
  const BowRow *row = data;
  BsPressPiece pieces[2];
  BsPressStack stack = bowed_pair (pieces);
  BsPressClamp clamp
      = { .x = 1000.0, .force = row->load, .head = row->is_even ? BOW_LENGTH : 0.02 };
  g_auto (BsPressResult) result = solve (&stack, &clamp, 1);
  double got = opening_at (&result.lines[0], row->x) / 2.0;

  g_test_message ("wanted %g, got %g", row->wanted, got);
  g_assert_cmpfloat_with_epsilon (got, row->wanted, row->tolerance);
}

/* The even load that holds it straight: 20.736 N. */
static void
check_straightening_force (void)
{
  BsPressPiece pieces[2];

  bowed_pair (pieces);
  g_assert_cmpfloat_with_epsilon (bs_press_piece_straightening_force (&pieces[0]), 20.736, 1e-9);
}

/* Many thin layers, all glued: a point load spreads as p / p_m = 1 + 2 sum of
 * cosh (D k^2 (H/2 - y)) / cosh (D k^2 H/2) cos k x. D 10, H 240, y 60, s 200: 2.520, 0.811, -0.142
 * at 0, s/4, s/2. Here 80 layers of 3 mm, whose D = t sqrt (E_L / 12 E_p) is 10 when E_L = 12 E_p
 * (10/3)^2. */
static void
check_many_thin_layers (void)
{
  BsPressPiece pieces[80];
  BsPressStack stack = bs_press_stack_default ();
  g_autoptr (BsPressing) pressing = NULL;
  g_autofree double *sum = NULL, *part = NULL;
  guint n, per_line, middle;

  for (guint i = 0; i < 80; i++)
    pieces[i] = piece (i, 1800.0, 3.0, 12.0 * 500.0 * 100.0 / 9.0, 500.0, RIGID_SHEAR);
  stack.model = BS_PRESS_MODEL_TIMOSHENKO;
  stack.step = 5.0;
  stack.pieces = pieces;
  stack.n_pieces = 80;
  pressing = bs_pressing_new (&stack, NULL);
  n = bs_pressing_n_points (pressing);
  per_line = n / 79;
  sum = g_new0 (double, n);
  part = g_new0 (double, n);
  for (guint clamp = 0; clamp < 9; clamp++)
    {
      BsPressClamp one = { .x = 100.0 + 200.0 * clamp, .force = 200.0 * WIDTH, .head = 1.0 };

      g_assert_true (bs_pressing_glued_response (pressing, &one, part));
      for (guint i = 0; i < n; i++)
        sum[i] += part[i];
    }
  middle = 19 * per_line + 180; /* under the fifth clamp, at y = 60 */
  g_assert_cmpfloat_with_epsilon (sum[middle], 2.520, 0.03);
  g_assert_cmpfloat_with_epsilon (sum[middle + 10], 0.811, 0.01);
  g_assert_cmpfloat_with_epsilon (sum[middle + 20], -0.142, 0.01);
}

/* Twelve equal layers under clamps every s, no ends, exact plane elasticity by stress functions
 * (see tests/reference/elastic_stack.py, which computes it anew). Least and greatest over the mean.
 */
typedef struct
{
  const char *name;
  double thickness, spacing, across;
  guint line;
  double least, greatest;
} LayeredRow;

static const LayeredRow layered_rows[] = {
  { "a-20-120/line-1", 20.0, 120.0, 1200.0, 1, 0.287, 2.041 },
  { "a-20-120/line-2", 20.0, 120.0, 1200.0, 2, 0.567, 1.509 },
  { "a-20-120/line-4", 20.0, 120.0, 1200.0, 4, 0.858, 1.145 },
  { "a-20-120/line-6", 20.0, 120.0, 1200.0, 6, 0.925, 1.075 },
  { "a-40-300/line-1", 40.0, 300.0, 1200.0, 1, 0.147, 3.141 },
  { "a-40-300/line-2", 40.0, 300.0, 1200.0, 2, 0.343, 2.011 },
  { "a-40-300/line-4", 40.0, 300.0, 1200.0, 4, 0.652, 1.381 },
  { "a-40-300/line-6", 40.0, 300.0, 1200.0, 6, 0.751, 1.255 },
  { "b-40-200/line-1", 40.0, 200.0, 700.0, 1, 0.461, 1.788 },
  { "b-40-200/line-2", 40.0, 200.0, 700.0, 2, 0.788, 1.232 },
  { "b-40-200/line-4", 40.0, 200.0, 700.0, 4, 0.973, 1.027 },
  { "b-40-200/line-6", 40.0, 200.0, 700.0, 6, 0.994, 1.006 },
};

#define N_PERIODS 13

static void
check_layered (gconstpointer data)
{
  const LayeredRow *row = data;
  double length = N_PERIODS * row->spacing, least = INFINITY, greatest = 0.0;
  BsPressPiece pieces[12];
  BsPressClamp clamps[N_PERIODS];
  BsPressStack stack = bs_press_stack_default ();
  g_auto (BsPressResult) result = { 0 };
  const BsPressLine *line;

  for (guint i = 0; i < 12; i++)
    pieces[i] = piece (i, length, row->thickness, 12000.0, row->across, 800.0);
  for (guint i = 0; i < N_PERIODS; i++)
    clamps[i] = (BsPressClamp){ .x = row->spacing * (i + 0.5), .force = 5000.0, .head = 40.0 };
  stack.step = 5.0;
  stack.pieces = pieces;
  stack.n_pieces = 12;
  result = solve (&stack, clamps, N_PERIODS);
  line = &result.lines[row->line - 1];
  for (guint i = 0; i < line->n_points; i++)
    if (fabs (line->points[i].x - length / 2.0) <= row->spacing / 2.0)
      {
        least = fmin (least, line->points[i].pressure_mpa / line->mean_mpa);
        greatest = fmax (greatest, line->points[i].pressure_mpa / line->mean_mpa);
      }
  g_test_message ("least %.3f for %.3f, greatest %.3f for %.3f", least, row->least, greatest,
                  row->greatest);
  g_assert_cmpfloat_with_epsilon (greatest, row->greatest, 0.02 * row->greatest);
  g_assert_cmpfloat_with_epsilon (least, row->least, 0.02 * row->least);
}

/* A bow of 3 mm pressed flat in the middle of a slab leaves, at each end, k0 sqrt (E I k) of line
 * force too much on the side that touches and too little on the other: 20.03 N/mm for E 12000, t
 * 40, h 85, L 2400, k 4250. The beam lies on springs on one side; here its mirror image is the
 * other. */
static void
check_bow_at_ends (void)
{
  BsPressPiece pieces[2];
  BsPressStack stack = bs_press_stack_default ();
  BsPressClamp clamp = { .x = 1200.0, .force = 1e6, .head = 2400.0 };
  g_auto (BsPressResult) result = { 0 };
  const BsPressLine *line;

  for (guint i = 0; i < 2; i++)
    {
      pieces[i]
          = piece (i, 2400.0, 40.0, 12000.0, across_for_foundation (4250.0, 40.0), RIGID_SHEAR);
      pieces[i].bow = i == 0 ? -3.0 : 3.0;
    }
  stack.model = BS_PRESS_MODEL_TIMOSHENKO;
  stack.step = 2.0;
  stack.pieces = pieces;
  stack.n_pieces = 2;
  result = solve (&stack, &clamp, 1);
  line = &result.lines[0];
  g_assert_cmpfloat_with_epsilon (WIDTH * line->points[0].pressure_mpa - 1e6 / 2400.0, 20.03, 0.3);
  g_assert_cmpfloat_with_epsilon (line_force_at (line, WIDTH, 1200.0), 1e6 / 2400.0, 0.05);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pressing/heads-that-touch", check_heads_that_touch);
  for (guint i = 0; i < G_N_ELEMENTS (foundation_rows); i++)
    {
      g_autofree char *path
          = g_strdup_printf ("/pressing/beam-on-springs/%s", foundation_rows[i].name);

      g_test_add_data_func (path, &foundation_rows[i], check_foundation);
    }
  g_test_add_func ("/pressing/beam-on-springs/contact-length", check_contact_length);
  for (guint i = 0; i < G_N_ELEMENTS (bow_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/pressing/bow/%s", bow_rows[i].name);

      g_test_add_data_func (path, &bow_rows[i], check_bow);
    }
  g_test_add_func ("/pressing/bow/straightening-force", check_straightening_force);
  g_test_add_func ("/pressing/bow/at-the-ends", check_bow_at_ends);
  g_test_add_func ("/pressing/many-thin-layers", check_many_thin_layers);
  for (guint i = 0; i < G_N_ELEMENTS (layered_rows); i++)
    {
      g_autofree char *path = g_strdup_printf ("/pressing/layered/%s", layered_rows[i].name);

      g_test_add_data_func (path, &layered_rows[i], check_layered);
    }
  return g_test_run ();
}
