/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting.h"

G_BEGIN_DECLS

/* The problem in whole numbers: docs/cutting-model.md, Whole numbers.
 *
 * Sizes along x and along y each count in a unit of their own, the largest that all parts are a
 * multiple of, and include one kerf; so do the rooms that they have to fit in. Places count from
 * the inner corner of the trims. "First" is the axis that the first cuts divide, "second" the other
 * one. */

/* Parts of one size and one demand for clear faces. */
typedef struct
{
  gint32 size[2]; /* along x and y */
  int demand;     /* without what is pinned */
  int clear_faces, clear_edges;
  int wood;
  double thickness;
  double gross[2]; /* mm, without kerf */
  guint part;      /* the first one of it, in BsCutting.parts */
} BsCutType;

typedef struct
{
  gint32 from[2], to[2]; /* along x and y */
  guint faces;           /* BsCutFaces */
} BsCutSpot;

/* What pinned parts take up of the first axis: a slice holds all of it or nothing. */
typedef struct
{
  gint32 from, to; /* along the first axis; `to` includes a kerf */
  guint64 pins;    /* which of the board's spots */
} BsCutBlock;

/* One way to begin with a kind of board. */
typedef struct
{
  guint stock; /* in BsCutModel.stock */
  BsCutOrder order;
  gboolean is_row; /* no two parts fit side by side: one row of parts */
  guint group;     /* sheets whose patterns differ in their length only */
  gint32 room[2];  /* along the first and the second axis */
  guint n_blocks;
  BsCutBlock *blocks;
} BsCutSheet;

typedef struct
{
  guint index;           /* in BsCutting.stock */
  guint copy;            /* the first one */
  int supply;            /* or BS_CUT_UNLIMITED */
  gint64 price;          /* 0 for a board that has pinned parts: it is taken anyway */
  gint64 area;           /* 1/100 mm2 */
  gint64 width;          /* 1/1000 mm */
  double room[2];        /* mm, along x and y, without trims */
  gint32 room_x, room_y; /* in units, with a kerf */
  guint n_spots;         /* defects, then pins */
  guint n_defects;
  BsCutSpot *spots;
  gboolean *fits; /* for each type: wood, thickness and width; the length is not looked at */
} BsCutBoards;

/* Sheets with the same tables: the same types fit, cut in the same order. A group shares the room
 * along the second axis too. */
typedef struct
{
  BsCutOrder order;
  gboolean is_row;
  const gboolean *fits;
  gint32 max_second;
} BsCutClass;

typedef struct
{
  guint class;
  gint32 second, max_first;
} BsCutGroup;

typedef struct
{
  const BsCutting *input;
  double unit[2]; /* mm */
  gint32 kerf[2]; /* rounded up to units */
  guint n_types;
  BsCutType *types;
  guint *type_of_part; /* of BsCutting.parts; G_MAXUINT when none of it is left to place */
  guint n_stock;
  BsCutBoards *stock;
  guint n_sheets;
  BsCutSheet *sheets;
  guint n_classes;
  BsCutClass *classes;
  guint n_groups;
  BsCutGroup *groups;
  gint64 unplaced_price; /* more than all that could be bought: of one part without a place */
} BsCutModel;

/* The input has passed its check. */
BsCutModel *bs_cut_model_new (const BsCutting *input, GError **error);
void bs_cut_model_free (BsCutModel *self);

/* Which axis the first cuts divide: 0 for x, 1 for y. */
static inline guint
bs_cut_first_axis (BsCutOrder order)
{
  return order == BS_CUT_RIP_FIRST ? 1 : 0;
}

/* mm: where the room of a board begins along an axis. */
double bs_cut_near_trim (const BsCutting *input, guint stock, guint axis);

/* Sheets without defects and pins, whose slices may be in any order. */
static inline gboolean
bs_cut_model_is_clear (const BsCutModel *self, const BsCutSheet *sheet)
{
  return self->stock[sheet->stock].n_spots == 0;
}

/* Whether a type may lie on spots that touch its slice (a bit each), at a place of the second axis.
 */
gboolean bs_cut_model_allows (const BsCutModel *self, const BsCutSheet *sheet, guint type,
                              guint64 spots, gint32 second);

/* Defects that a slice from `from` to `to` (with its kerf) touches, and pins that lie in it. FALSE
 * when it would cut through a pinned part. */
gboolean bs_cut_model_find_spots (const BsCutModel *self, const BsCutSheet *sheet, gint32 from,
                                  gint32 to, guint64 *spots);

/* The first block that ends behind a place, or NULL. */
const BsCutBlock *bs_cut_model_next_block (const BsCutSheet *sheet, gint32 from);

/* Length (mm) of what is left of a clear board after slices up to `used`, 0 when not worth keeping.
 */
double bs_cut_model_offcut (const BsCutModel *self, const BsCutSheet *sheet, gint32 used);

/* The greatest that divides both: of lengths in ticks, of prices. That of 0 and b is b. */
gint64 bs_cut_common_divisor (gint64 a, gint64 b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCutModel, bs_cut_model_free)

G_END_DECLS
