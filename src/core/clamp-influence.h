/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/pressing.h"
#include "core/progress.h"

G_BEGIN_DECLS

/* The pressure that one newton at any place brings to every spot of every glue line, as long as
 * nothing opens. With it the pressures of any layout are a sum, thousands of times faster than a
 * solve. */
typedef struct
{
  double from, to; /* where the middle of a head may stand, mm */
  guint n_places;
  double step;      /* between places, mm */
  guint n_spots;    /* of glue lines, within the span and 10 mm off the ends of joints */
  double *of_place; /* MPa/N, n_spots for each place from left to right */
  double *of_bows;  /* MPa, n_spots */
  double area;      /* mm2, of the largest glue line */
} BsClampInfluence;

/* For heads of one width. NULL with an error when the stack cannot be pressed, or when progress
 * asks to stop (no error then). Free with bs_clamp_influence_free. */
BsClampInfluence *bs_clamp_influence_new (const BsPressStack *stack, double head,
                                          const BsProgress *progress, GError **error);
void bs_clamp_influence_free (BsClampInfluence *self);

/* Adds force (N, may be negative to take away) at x to the pressures of all spots. Between two
 * places the influence runs straight. */
void bs_clamp_influence_add (const BsClampInfluence *self, double x, double force,
                             double *pressure_mpa);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsClampInfluence, bs_clamp_influence_free)

G_END_DECLS
