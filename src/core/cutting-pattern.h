/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-model.h"

G_BEGIN_DECLS

/* A pattern: one way to cut one board. docs/cutting-model.md, Patterns. */

typedef struct
{
  guint type;
  gint32 second; /* its place along the second axis */
} BsCutStrip;

typedef struct
{
  gint32 from, to; /* along the first axis, kerf included */
  guint n_strips;  /* how many of the pattern's strips, one slice after the other */
} BsCutPatternSlice;

typedef struct
{
  int n_refs;
  guint sheet;
  int *count; /* of each type */
  GArray *slices, *strips;
  double offcut;   /* length of what is left at the far end of the board, mm; 0: none */
  gint64 net_area; /* of the board without its offcut, 1/100 mm2 */
  gint64 score;    /* squared length of the offcut, 1/100 mm2; for a board with pinned parts
                    * both are what the pattern changes */
} BsCutPattern;

BsCutPattern *bs_cut_pattern_new (const BsCutModel *model, guint sheet);
BsCutPattern *bs_cut_pattern_ref (BsCutPattern *self);
void bs_cut_pattern_unref (BsCutPattern *self);

/* Adding slices in order, each followed by its strips. */
void bs_cut_pattern_add_slice (BsCutPattern *self, gint32 from, gint32 to);
void bs_cut_pattern_add_strip (BsCutPattern *self, guint type, gint32 second);

/* What is left behind `used` (along x): the length of the offcut, and net area and score. */
double bs_cut_pattern_measure (const BsCutModel *model, guint sheet, gint32 used, gint64 *net_area,
                               gint64 *score);

/* After the last slice: measures it. */
void bs_cut_pattern_close (BsCutPattern *self, const BsCutModel *model);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCutPattern, bs_cut_pattern_unref)

G_END_DECLS
