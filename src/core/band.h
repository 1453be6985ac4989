/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A symmetric positive definite matrix whose entries lie within a band about the diagonal, and its
 * Cholesky factor L (A = L L'), which takes its place.
 *
 * Fill it with bs_band_add, factor it once, then solve for as many right-hand sides as are wanted.
 * Every sum runs in one fixed order, so the result has the same bits on every machine. */
typedef struct
{
  guint size;       /* rows */
  guint half_width; /* an entry (row, column) may be non-zero when |row - column| <= half_width */
  gsize stride;     /* doubles a column in `columns`; the rest of a column stays zero */
  double *columns;  /* lower triangle: entry (row, column) at column * stride + row - column */
  double *inverse;  /* 1 / diagonal of L */
} BsBand;

/* All zero. Free with bs_band_free. */
BsBand *bs_band_new (guint size, guint half_width);
void bs_band_free (BsBand *self);

/* Back to all zero, to be filled anew. */
void bs_band_reset (BsBand *self);

/* Adds to the entry (row, column) and so to (column, row); row >= column. */
static inline void
bs_band_add (BsBand *self, guint row, guint column, double value)
{
  self->columns[column * self->stride + row - column] += value;
}

/* Replaces A by L. FALSE when A is not positive definite to rounding; it is spoilt then.
 * Cost: size * half_width^2 / 2 multiply-adds. */
gboolean bs_band_factor (BsBand *self);

/* Solves A x = b in place with the factor. Cost: 2 * size * half_width multiply-adds. */
void bs_band_solve (const BsBand *self, double *x);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsBand, bs_band_free)

G_END_DECLS
