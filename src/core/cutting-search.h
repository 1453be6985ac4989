/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-solution.h"

G_BEGIN_DECLS

typedef struct
{
  BsCutSolution *best;
  gint64 bound;     /* of the price */
  gboolean is_best; /* proven, price, waste and offcuts */
} BsCutOutcome;

/* The whole search, from first plans by way of the bound to proof or end of the rounds. better:
 * called with each better outcome. */
void bs_cut_search (const BsCutModel *model, const BsCutEffort *effort, BsCutOutcome *outcome,
                    void (*better) (const BsCutOutcome *outcome, gpointer data), gpointer data);

G_END_DECLS
