/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/stages-balance.h"

#include <math.h>

#define EVEN_MM 0.01 /* packs whose widths differ by so little more are as even */

/* Evenness is a wish: a hundredth of a second is spent on it. */
#define BALANCE_STEPS 40000

/* With more laminations the bands alone take longer than that. */
#define MOST_LAMINATIONS 120

/* Widths of the narrowest and the widest piece of a last stage. */
typedef struct
{
  double least, most;
} Band;

static int
compare_bands (gconstpointer a, gconstpointer b)
{
  const Band *x = a, *y = b;
  double difference = (x->most - x->least) - (y->most - y->least);
  return (difference > 0.0) - (difference < 0.0);
}

/* How wide the widest piece must be at least when none is narrower than `least`: INFINITY when the
 * slab cannot be made of such pieces. reach is for n + 1 numbers of its own. */
static double
find_most_width (const BsStagesSearch *search, int n, double least, double *reach)
{
  reach[0] = 0.0;
  for (int end = 1; end <= n; end++)
    {
      reach[end] = INFINITY;
      for (int at = end - 1; at >= 0; at--)
        {
          double width = bs_stages_search_piece_width (search, at, end);
          if (width >= least - BS_STAGES_ROUNDING)
            reach[end] = fmin (reach[end], fmax (reach[at], width));
        }
    }
  return reach[n];
}

static GArray *
find_bands (const BsStagesSearch *search, int n)
{
  GArray *bands = g_array_new (FALSE, FALSE, sizeof (Band));
  g_autoptr (GHashTable) seen = g_hash_table_new (g_int64_hash, g_int64_equal);
  g_autofree double *reach = g_new (double, n + 1);
  g_autofree gint64 *keys = g_new (gint64, (gsize)n * (gsize)n);

  for (int first = 0; first < n; first++)
    for (int end = first + 1; end <= n; end++)
      {
        Band band = { .least = bs_stages_search_piece_width (search, first, end) };
        gint64 *key = &keys[first * n + end - 1];
        if (isnan (band.least))
          continue;
        *key = (gint64)(band.least * 1e6 + 0.5);
        if (!g_hash_table_add (seen, key))
          continue;
        band.most = find_most_width (search, n, band.least, reach);
        if (isfinite (band.most))
          g_array_append_val (bands, band);
      }
  g_array_sort (bands, compare_bands);
  return bands;
}

/* The evenest way within a band and a time, or the one at hand when that is as even. Tries the
 * least that the band allows, then anything better than the way at hand, then halves what is
 * between. */
static int
balance_within (BsStagesSearch *search, const Band *band, int way, gint64 limit_us)
{
  double low = band->most - band->least;
  double high = bs_stages_search_imbalance (search, way) - EVEN_MM;

  for (int i = 0; low <= high; i++)
    {
      double attempt = i == 0 ? low : i == 1 ? high : (low + high) / 2.0;
      int found = bs_stages_search_finish (search, band->least, band->least + attempt, limit_us);
      if (found != BS_STAGES_NO_WAY)
        {
          way = found;
          high = bs_stages_search_imbalance (search, way) - EVEN_MM;
        }
      else
        {
          low = attempt + EVEN_MM;
        }
    }
  return way;
}

int
bs_stages_balance (BsStagesSearch *search, int n, int way, gint64 limit_us)
{
  if (n > MOST_LAMINATIONS)
    return way;

  g_autoptr (GArray) bands = find_bands (search, n);
  bs_stages_search_allow (search, BALANCE_STEPS);
  for (guint i = 0; i < bands->len && !bs_stages_search_gave_up (search); i++)
    way = balance_within (search, &g_array_index (bands, Band, i), way, limit_us);
  return way;
}
