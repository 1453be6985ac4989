/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Random numbers that are the same on every machine: integers and the four basic operations only.
 *
 * Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators",
 * OOPSLA 2014 (the generator with the constants of its mix13 variant). */
typedef struct
{
  guint64 state;
} BsRandom;

static inline BsRandom
bs_random_init (guint64 seed)
{
  return (BsRandom){ seed };
}

static inline guint64
bs_random_next (BsRandom *self)
{
  guint64 z = self->state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);

  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

/* A whole number from 0 to n - 1, n > 0; uneven by less than n / 2^32. */
static inline guint
bs_random_below (BsRandom *self, guint n)
{
  return (guint)(((bs_random_next (self) >> 32) * n) >> 32);
}

/* From 0 (included) to 1 (not included), in steps of 2^-53. */
static inline double
bs_random_uniform (BsRandom *self)
{
  return (double)(bs_random_next (self) >> 11) * 0x1p-53;
}

G_END_DECLS
