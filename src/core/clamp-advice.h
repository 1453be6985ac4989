/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/clamp-change.h"
#include "core/pressure.h"

G_BEGIN_DECLS

/* What would help the clamps as they are set, and what bows cost them: many solves, of the form
 * that bs_pressure_new_quick chooses. */

/* A change that the clamps owned can make. */
typedef struct
{
  BsClampChange change;
  guint kind; /* of that clamp, or of the one more: place in the shop's list */
} BsClampTrial;

typedef struct
{
  BsPressure *pressure; /* that it is about */
  double closing_force; /* N of all clamps, spent on closing bows; NAN without pressures, INFINITY
                         * when sixteen times their force would not do it */
  GArray *trials;       /* BsClampTrial that help, the most helpful first */
} BsClampAdvice;

/* The gap that a glue line may keep (mm): what the bows must be closed to. Thickness of a close
 * contact glue line in the tests of EN 302-1; from memory. */
#define BS_CLAMP_ADVICE_GAP 0.1

/* Pure; NULL when progress asked it to stop. */
BsClampAdvice *bs_clamp_advice_new (const BsPlan *plan, const BsProgress *progress);
void bs_clamp_advice_free (BsClampAdvice *self);

/* The clamps of the advice (BsLayoutClamp) with one change made. Free with g_array_unref. */
GArray *bs_clamp_advice_try (const BsClampAdvice *self, const BsClampTrial *trial);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsClampAdvice, bs_clamp_advice_free)

G_END_DECLS
