/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting-oracle.h"

G_BEGIN_DECLS

/* What the files of the oracle share: cutting-tables.c fills the tables of clear boards,
 * cutting-spots.c those of boards with defects and pins, cutting-oracle.c reads patterns from both.
 */

/* Slices of one class, from short to long: the table over the second axis takes in one type after
 * the other, and a level is where all types up to some size are in it. */
typedef struct
{
  gboolean is_ready;
  guint n_order;
  guint *order; /* types, by size along the first axis */
  guint n_levels;
  gint32 *first;   /* of each level: size of its slices along the first axis */
  guint *rows_end; /* of each level: how many rows of the table belong to it */
  guint n_rows;
  guint *row_type;
  guint16 *taken; /* row after row */
  gint64 *best;   /* of the second axis */
} BsCutClassTable;

/* Boards of one width: the best value of a slice of each level, and of all slices by the room that
 * they have along the first axis. */
typedef struct
{
  gboolean is_ready;
  gint64 *slice;  /* of each level */
  gint64 *best;   /* of each room */
  gint16 *choice; /* level that the room ends with, -1: none */
  int *row_count; /* of rows that were searched */
  gint64 *last;   /* of rows that were not: best value with one of the table's types last */
} BsCutGroupTable;

struct _BsCutOracle
{
  const BsCutModel *model;
  gint64 *values;
  int *limits;
  gboolean is_quick;
  gint64 *floors;  /* of each group */
  const int *caps; /* how many of each a pattern may hold in all; NULL: any */
  BsCutClassTable *classes;
  BsCutGroupTable *groups;

  /* The sheet with defects that was looked at last. */
  guint spotted;     /* its index, or G_MAXUINT */
  gint64 *rest;      /* best value from each place on */
  gint16 *step;      /* what to do at each place: a level, or one of the below */
  GHashTable *bands; /* BsCutBand -> gint64 */
};

#define BS_CUT_STEP_ON (-1)
#define BS_CUT_STEP_BLOCK (-2)

/* A slice that touches defects or pins. */
typedef struct
{
  guint64 spots;
  gint32 first; /* longest part that it takes */
} BsCutBand;

static inline const BsCutClass *
bs_cut_oracle_class (const BsCutOracle *self, const BsCutSheet *sheet)
{
  return &self->model->classes[self->model->groups[sheet->group].class];
}

static inline gint32
bs_cut_first_size (const BsCutOracle *self, const BsCutClass *class, guint type)
{
  return self->model->types[type].size[bs_cut_first_axis (class->order)];
}

static inline gint32
bs_cut_second_size (const BsCutOracle *self, const BsCutClass *class, guint type)
{
  return self->model->types[type].size[1 - bs_cut_first_axis (class->order)];
}

/* Rows so long that a search may be quicker than the table. */
gboolean bs_cut_is_long_row (const BsCutClass *class);

void bs_cut_tables_init_class (BsCutOracle *self, guint class);

/* The table over the second axis. */
void bs_cut_tables_fill_class (BsCutOracle *self, guint class);

/* The table of a sheet's group, filled. */
BsCutGroupTable *bs_cut_tables_ready (BsCutOracle *self, const BsCutSheet *sheet);

guint bs_cut_band_hash (gconstpointer key);
gboolean bs_cut_band_equal (gconstpointer a, gconstpointer b);

/* The best values along the second axis, from each place on, of a slice that touches defects or
 * pins and takes parts up to some size. steps: the type to lay at each place or -1. */
void bs_cut_spots_fill_band (BsCutOracle *self, const BsCutSheet *sheet, const BsCutBand *band,
                             gint64 *best, int *steps);

/* Looks at a sheet with defects or pins: `rest` and `step`. */
void bs_cut_spots_fill (BsCutOracle *self, guint sheet);

G_END_DECLS
