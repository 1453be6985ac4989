/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/chart.h"

#include <math.h>

#include "image.h"

typedef struct
{
  const char *path;
  double least, step;
} StepRow;

static const StepRow step_rows[] = {
  { "one", 1.0, 1.0 },        { "above-one", 1.2, 2.0 },   { "two", 2.0, 2.0 },
  { "above-two", 2.1, 5.0 },  { "above-five", 6.0, 10.0 }, { "small", 0.03, 0.05 },
  { "large", 730.0, 1000.0 },
};

static void
test_step (gconstpointer data)
{
  const StepRow *row = data;

  g_assert_cmpfloat_with_epsilon (bs_chart_step (row->least), row->step, 1e-9 * row->step);
}

#define MOST 5

typedef struct
{
  const char *path;
  guint n;
  double gap, first, last;
  double positions[MOST], wanted[MOST];
} SpreadRow;

/* By hand: least squares keeps the middle of what stands close together. */
static const SpreadRow spread_rows[] = {
  { "apart", 3, 1.0, 0.0, 10.0, { 1.0, 4.0, 7.0 }, { 1.0, 4.0, 7.0 } },
  { "pair", 2, 2.0, 0.0, 10.0, { 5.0, 5.0 }, { 4.0, 6.0 } },
  { "three-alike", 3, 2.0, 0.0, 10.0, { 5.0, 5.0, 5.0 }, { 3.0, 5.0, 7.0 } },
  { "pair-meets-third", 3, 2.0, 0.0, 10.0, { 4.0, 4.0, 5.5 }, { 2.5, 4.5, 6.5 } },
  { "at-the-first", 2, 2.0, 0.0, 10.0, { 0.0, 0.0 }, { 0.0, 2.0 } },
  { "at-the-last", 2, 2.0, 0.0, 10.0, { 10.0, 10.0 }, { 8.0, 10.0 } },
  { "none", 0, 2.0, 0.0, 10.0, { 0.0 }, { 0.0 } },
};

static void
test_spread (gconstpointer data)
{
  const SpreadRow *row = data;
  double positions[MOST];

  for (guint i = 0; i < row->n; i++)
    positions[i] = row->positions[i];
  bs_chart_spread (positions, row->n, row->gap, row->first, row->last);
  for (guint i = 0; i < row->n; i++)
    g_assert_cmpfloat_with_epsilon (positions[i], row->wanted[i], 1e-9);
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double first = *(const double *)a, second = *(const double *)b;

  return (first > second) - (first < second);
}

static double
measure (const double *a, const double *b, guint n)
{
  double sum = 0.0;

  for (guint i = 0; i < n; i++)
    sum += (a[i] - b[i]) * (a[i] - b[i]);
  return sum;
}

/* Never nearer than the gap, never outside, and no small change of one position that keeps both
 * comes nearer to where they were. */
static void
test_spread_is_least (void)
{
  for (guint round = 0; round < 200; round++)
    {
      double wanted[12], found[12];

      for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
        wanted[i] = g_test_rand_double_range (0.0, 100.0);
      qsort (wanted, G_N_ELEMENTS (wanted), sizeof *wanted, compare_doubles);
      for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
        found[i] = wanted[i];
      bs_chart_spread (found, G_N_ELEMENTS (found), 6.0, 0.0, 100.0);

      const double distance = measure (found, wanted, G_N_ELEMENTS (found));
      for (guint i = 0; i < G_N_ELEMENTS (found); i++)
        {
          const double was = found[i];
          const double least = i > 0 ? found[i - 1] + 6.0 : 0.0;
          const double most = i + 1 < G_N_ELEMENTS (found) ? found[i + 1] - 6.0 : 100.0;

          g_assert_cmpfloat (was, >=, least - 1e-9);
          g_assert_cmpfloat (was, <=, most + 1e-9);
          for (int way = -1; way <= 1; way += 2)
            {
              found[i] = CLAMP (was + 0.1 * way, least, MAX (least, most));
              g_assert_cmpfloat (measure (found, wanted, G_N_ELEMENTS (found)), >=,
                                 distance - 1e-9);
            }
          found[i] = was;
        }
    }
}

/* Lines and texts leave the context's path empty and draw in the colour that is given. */
static void
test_draws (void)
{
  const BsChart chart
      = { .width = 100.0, .text_size = 12.0, .hairline = 1.0, .palette = bs_palette_paper () };
  cairo_t *cr = image_new (100, 60);
  cairo_rectangle_int_t box;

  bs_chart_line (&chart, cr, 10.0, 5.5, 90.0, 5.5, &chart.palette->ink, 1.0);
  g_assert_cmpint (image_count_ink (cr, &box), ==, 80);
  bs_chart_text (&chart, cr, "8.5", 1.0, &chart.palette->ink, 50.0, 30.0, 0.5, 0.5);
  g_assert_cmpint (image_count_ink (cr, &box), >, 80);
  g_assert_true (image_is_grey (cr));
  g_assert_false (cairo_has_current_point (cr));
  cairo_destroy (cr);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (step_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/chart/step/", step_rows[i].path, NULL);
      g_test_add_data_func (path, &step_rows[i], test_step);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (spread_rows); i++)
    {
      g_autofree char *path = g_strconcat ("/chart/spread/", spread_rows[i].path, NULL);
      g_test_add_data_func (path, &spread_rows[i], test_spread);
    }
  g_test_add_func ("/chart/spread/least", test_spread_is_least);
  g_test_add_func ("/chart/draws", test_draws);
  return g_test_run ();
}
