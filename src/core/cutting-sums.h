/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-model.h"

G_BEGIN_DECLS

/* What can be paid at all: sums of board prices. */
typedef struct
{
  gint64 unit; /* all prices are multiples of it; 0: nothing is known, every sum is said to be
                  possible */
  gint64 most;
  gint32 *next; /* for each multiple of the unit up to `most` the least sum, in units, not below it;
                 * -1: none up to `most` */
} BsCutSums;

void bs_cut_sums_init (BsCutSums *self, const BsCutModel *model, gint64 most);
void bs_cut_sums_clear (BsCutSums *self);

/* The least sum that is not below an amount, or G_MAXINT64 when it would be above `most`. */
gint64 bs_cut_sums_next (const BsCutSums *self, gint64 amount);

G_END_DECLS
