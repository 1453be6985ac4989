/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-pattern.h"

G_BEGIN_DECLS

/* Finds the most valuable patterns when each part is worth something: docs/cutting-model.md, The
 * most valuable pattern. */

typedef struct _BsCutOracle BsCutOracle;

BsCutOracle *bs_cut_oracle_new (const BsCutModel *model);
void bs_cut_oracle_free (BsCutOracle *self);

/* Values of one part of each type, >= 0, and how many of each are wanted; both are copied. */
void bs_cut_oracle_set (BsCutOracle *self, const gint64 *values, const int *limits);

/* Quick: long rows may be worth less than the best one. */
void bs_cut_oracle_set_quick (BsCutOracle *self, gboolean is_quick);

/* For each group of sheets a value below which nothing is of interest: long rows may be said to be
 * worth as much when they are worth less. Copied; NULL: all is of interest, as after
 * bs_cut_oracle_set. */
void bs_cut_oracle_set_floors (BsCutOracle *self, const gint64 *floors);

/* Whether there are rows so long that quick makes a difference. */
gboolean bs_cut_oracle_has_long_rows (const BsCutOracle *self);

/* The most that one board cut as a sheet can be worth, or somewhat more: a slice never holds more
 * of a type than is wanted, the whole board may (rows never do). */
gint64 bs_cut_oracle_value (BsCutOracle *self, guint sheet);

/* No less than that, and quickly told: as if the sheet had no defects and no pins. */
gint64 bs_cut_oracle_most (BsCutOracle *self, guint sheet);

/* The same for what is left of a clear sheet behind some room of its first axis, or of a sheet with
 * defects from a place on. Not for rows. */
gint64 bs_cut_oracle_rest_value (BsCutOracle *self, guint sheet, gint32 used);

/* At least what a row can be worth in a room of that length. */
gint64 bs_cut_oracle_row_value (BsCutOracle *self, guint sheet, gint32 room);

/* A pattern of that value. */
BsCutPattern *bs_cut_oracle_pattern (BsCutOracle *self, guint sheet);

/* Patterns of a row that are worth more than its floor, the best one with each of its types last,
 * as far as they came up in finding its value: up to `most` of them, the best first. */
GPtrArray *bs_cut_oracle_row_patterns (BsCutOracle *self, guint sheet, guint most);

/* A good pattern that holds no more than is wanted. Changes the limits. */
BsCutPattern *bs_cut_oracle_fill (BsCutOracle *self, guint sheet, const gint64 *values,
                                  const int *limits);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCutOracle, bs_cut_oracle_free)

G_END_DECLS
