/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/band.h"

#include <math.h>
#include <string.h>

/* Columns taken together. Their part below the block updates the rest of the matrix in one pass,
 * which then is read and written an eighth as often. Each column is kept BLOCK - 1 zeros longer
 * than the band, so that all columns of a block can be taken to end at the same row. */
#define BLOCK 8

/* Also compiled for processors that take four or eight numbers at once; which is used is decided as
 * the program starts. Every sum runs in the same order, so the bits are the same. The sanitizers
 * cannot yet watch a program that early. */
#if defined __x86_64__ && defined __GLIBC__ && defined __OPTIMIZE__ && !defined __clang__          \
    && !defined __SANITIZE_ADDRESS__ && !defined __SANITIZE_THREAD__
#define ALSO_WIDER __attribute__ ((target_clones ("avx512f", "avx2", "default")))
#else
#define ALSO_WIDER
#endif

BsBand *
bs_band_new (guint size, guint half_width)
{
  BsBand *self = g_new0 (BsBand, 1);

  self->size = size;
  self->half_width = half_width;
  self->stride = (gsize)half_width + BLOCK;
  self->columns = g_new0 (double, self->stride *size);
  self->inverse = g_new0 (double, size);
  return self;
}

void
bs_band_free (BsBand *self)
{
  g_free (self->columns);
  g_free (self->inverse);
  g_free (self);
}

void
bs_band_reset (BsBand *self)
{
  memset (self->columns, 0, sizeof (double) * self->stride * self->size);
}

/* target -= factor * source, elementwise. */
static void
subtract_multiple (double *restrict target, const double *restrict source, double factor, gsize n)
{
  for (gsize i = 0; i < n; i++)
    target[i] -= factor * source[i];
}

/* Factors the block of columns from `first`: the small triangle at its head and what hangs below.
 */
static gboolean
factor_block (BsBand *self, guint first, guint n_columns)
{
  for (guint k = 0; k < n_columns; k++)
    {
      double *column = self->columns + (first + k) * self->stride;
      gsize n_rows = MIN ((gsize)self->half_width + 1, self->size - first - k);

      if (!(column[0] > 0.0))
        return FALSE;
      self->inverse[first + k] = 1.0 / sqrt (column[0]);
      for (gsize i = 0; i < n_rows; i++)
        column[i] *= self->inverse[first + k];
      for (guint j = k + 1; j < n_columns && j - k < n_rows; j++)
        subtract_multiple (column + self->stride * (j - k), column + (j - k), column[j - k],
                           n_rows - (j - k));
    }
  return TRUE;
}

/* Two neighbouring columns of the rest less their share of a full block; `source[k]` points into
 * column k of the block at the row of the first column's diagonal. */
ALSO_WIDER static void
update_pair (double *restrict left, double *restrict right, const double *const source[BLOCK],
             gsize n_rows)
{
  const double *restrict s0 = source[0], *restrict s1 = source[1], *restrict s2 = source[2];
  const double *restrict s3 = source[3], *restrict s4 = source[4], *restrict s5 = source[5];
  const double *restrict s6 = source[6], *restrict s7 = source[7];
  double a0 = s0[0], a1 = s1[0], a2 = s2[0], a3 = s3[0];
  double a4 = s4[0], a5 = s5[0], a6 = s6[0], a7 = s7[0];
  double b0 = s0[1], b1 = s1[1], b2 = s2[1], b3 = s3[1];
  double b4 = s4[1], b5 = s5[1], b6 = s6[1], b7 = s7[1];

  left[0] -= ((s0[0] * a0 + s1[0] * a1) + (s2[0] * a2 + s3[0] * a3))
             + ((s4[0] * a4 + s5[0] * a5) + (s6[0] * a6 + s7[0] * a7));
  for (gsize i = 1; i < n_rows; i++)
    {
      left[i] -= ((s0[i] * a0 + s1[i] * a1) + (s2[i] * a2 + s3[i] * a3))
                 + ((s4[i] * a4 + s5[i] * a5) + (s6[i] * a6 + s7[i] * a7));
      right[i - 1] -= ((s0[i] * b0 + s1[i] * b1) + (s2[i] * b2 + s3[i] * b3))
                      + ((s4[i] * b4 + s5[i] * b5) + (s6[i] * b6 + s7[i] * b7));
    }
}

/* What lies right of a full block, less the block's share. */
static void
update_rest (BsBand *self, guint first)
{
  guint end = MIN (first + BLOCK + self->half_width, self->size);
  guint column = first + BLOCK;

  for (; column + 1 < end; column += 2)
    {
      const double *source[BLOCK];
      double *left = self->columns + column * self->stride;

      for (guint k = 0; k < BLOCK; k++)
        source[k] = self->columns + (first + k) * self->stride + (column - first - k);
      update_pair (left, left + self->stride, source, end - column);
    }
  for (guint k = 0; column < end && k < BLOCK; k++)
    {
      const double *source = self->columns + (first + k) * self->stride + (column - first - k);

      subtract_multiple (self->columns + column * self->stride, source, source[0], end - column);
    }
}

gboolean
bs_band_factor (BsBand *self)
{
  for (guint first = 0; first < self->size; first += BLOCK)
    {
      guint n_columns = MIN (BLOCK, self->size - first);

      if (!factor_block (self, first, n_columns))
        return FALSE;
      if (n_columns == BLOCK)
        update_rest (self, first);
    }
  return TRUE;
}

/* L y = b, downwards. */
static void
solve_lower (const BsBand *self, double *x)
{
  for (guint k = 0; k < self->size; k++)
    {
      const double *column = self->columns + k * self->stride;
      gsize n_rows = MIN ((gsize)self->half_width + 1, self->size - k);

      x[k] *= self->inverse[k];
      subtract_multiple (x + k + 1, column + 1, x[k], n_rows - 1);
    }
}

/* Sums below the block of a full block's columns with x: BLOCK chains side by side, since one chain
 * alone would wait for each addition. */
static void
sum_below (const BsBand *self, guint first, const double *x, double sum[BLOCK])
{
  gsize n_rows = MIN ((gsize)self->half_width, self->size - first - BLOCK);
  const double *columns[BLOCK];

  for (guint k = 0; k < BLOCK; k++)
    {
      columns[k] = self->columns + (first + k) * self->stride + BLOCK - k;
      sum[k] = 0.0;
    }
  x += first + BLOCK;
  for (gsize i = 0; i < n_rows; i++)
    for (guint k = 0; k < BLOCK; k++)
      sum[k] += columns[k][i] * x[i];
}

/* L' x = y, upwards. */
static void
solve_upper (const BsBand *self, double *x)
{
  guint n_full = self->size / BLOCK * BLOCK;

  for (guint first = (self->size - 1) / BLOCK * BLOCK;; first -= BLOCK)
    {
      guint n_columns = MIN (BLOCK, self->size - first);
      double sum[BLOCK] = { 0.0 };

      if (first < n_full)
        sum_below (self, first, x, sum);
      for (guint k = n_columns; k-- > 0;)
        {
          const double *column = self->columns + (first + k) * self->stride;

          for (guint i = k + 1; i < n_columns && i - k <= self->half_width; i++)
            sum[k] += column[i - k] * x[first + i];
          x[first + k] = (x[first + k] - sum[k]) * self->inverse[first + k];
        }
      if (first == 0)
        return;
    }
}

void
bs_band_solve (const BsBand *self, double *x)
{
  solve_lower (self, x);
  solve_upper (self, x);
}
