/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/progress.h"

G_BEGIN_DECLS

/* Which boards to take and what to cut where: docs/cutting-model.md.
 *
 * All lengths in mm. A board lies with x along its length and y across its width, from one corner.
 * The grain runs along x; parts are never turned across it. Stock, parts and pins are referred to
 * by their index in the arrays of BsCutting. */

/* What the saw does first; the pieces of the first cuts are called slices, the second cuts divide a
 * slice in one row of parts, and a part smaller than its slice is trimmed to size last. */
typedef enum
{
  BS_CUT_CROSSCUT_FIRST = 1 << 0, /* slices are sections, ripped afterwards */
  BS_CUT_RIP_FIRST = 1 << 1,      /* slices are strips, crosscut afterwards */
  BS_CUT_EITHER = 3,              /* each board its own choice */
} BsCutOrder;

/* The wide faces of a board on which a defect is to be seen. */
typedef enum
{
  BS_CUT_UPPER_FACE = 1 << 0,
  BS_CUT_LOWER_FACE = 1 << 1,
  BS_CUT_BOTH_FACES = 3,
  BS_CUT_UNSOUND = 7, /* of a defect: wood is missing or split, and no part may have it */
} BsCutFaces;

typedef struct
{
  double x_from, x_to, y_from, y_to;
  BsCutFaces faces;
} BsCutDefect;

#define BS_CUT_MAX_DEFECTS 64 /* of one board */
#define BS_CUT_UNLIMITED (-1)

/* Boards that are alike, or one board of the rack. */
typedef struct
{
  double length, width, thickness;
  gint64 price_minor; /* of one board; 0: already paid */
  int supply;         /* how many there are, or BS_CUT_UNLIMITED */
  int wood;           /* serves parts of the same number */
  int looks;          /* the better looking, the greater */
  guint n_defects;
  const BsCutDefect *defects; /* borrowed */
  double straighten;          /* off the front edge, at y = 0, before the trims: crook */
} BsCutStock;

/* Parts that are alike. Sizes are wanted sizes; BsCutting adds its allowances to length and width,
 * the thickness is the least that the board must have. */
typedef struct
{
  double length, width, thickness;
  int quantity;
  int wood;
  int clear_faces;     /* of its wide faces, how many must be free of defects: 0 to 2 */
  int clear_edges;     /* likewise of its long edges: 0 to 2 */
  gboolean is_on_show; /* gets a place on the best looking of the boards taken */
} BsCutPart;

/* A part that is already placed or cut. Its corner is where its piece lies in the board, allowances
 * included. */
typedef struct
{
  guint stock;
  guint copy; /* of boards that are alike, from 0 */
  guint part;
  double x, y;
} BsCutPin;

typedef struct
{
  double kerf;
  double trim_end, trim_edge;       /* taken off each end, off each edge */
  double allow_length, allow_width; /* added to every part */
  double min_offcut;                /* shortest rest of a board worth keeping */
  BsCutOrder order;
  const BsCutStock *stock; /* borrowed, like the other two */
  guint n_stock;
  const BsCutPart *parts;
  guint n_parts;
  const BsCutPin *pins;
  guint n_pins;
  const gboolean *suits; /* borrowed: n_parts for each stock, whether it may be cut of it, besides
                          * wood and size; NULL: it always may */
} BsCutting;

static inline gboolean
bs_cutting_suits (const BsCutting *self, guint stock, guint part)
{
  return self->suits == NULL || self->suits[stock * self->n_parts + part];
}

/* What a board has across between its trims. */
static inline double
bs_cutting_room_across (const BsCutting *self, const BsCutStock *stock)
{
  return stock->width - stock->straighten - 2.0 * self->trim_edge;
}

/* No stock, no parts; a 3 mm kerf, either order of cuts, offcuts from 300 mm. */
BsCutting bs_cutting_default (void);

#define BS_CUTTING_ERROR (bs_cutting_error_quark ())
GQuark bs_cutting_error_quark (void);

typedef enum
{
  BS_CUTTING_ERROR_INPUT, /* a size, a price or a number that cannot be */
  BS_CUTTING_ERROR_PART,  /* a part that no board can hold */
  BS_CUTTING_ERROR_PIN,   /* pinned parts that no saw can cut like that */
} BsCuttingError;

/* Checks all of the input. FALSE with an error that names the part, board or pin by its number,
 * counted from 1. */
gboolean bs_cutting_check (const BsCutting *self, GError **error);

/* One piece, as it leaves the saw: a part with its allowances. */
typedef struct
{
  guint board; /* index in BsCutPlan.boards */
  guint slice; /* index in BsCutPlan.slices */
  guint part;
  double x, y, length, width;
  BsCutFaces clear_faces; /* faces of the board that are free of defects here; 0: neither */
  gboolean is_pinned;
} BsCutPiece;

typedef struct
{
  guint board;
  double from, to; /* along x when the board is crosscut first, else along y */
} BsCutSlice;

typedef struct
{
  guint stock, copy;
  BsCutOrder order;              /* crosscut first or rip first */
  double offcut_from, offcut_to; /* along x, full width; equal when there is none worth keeping */
} BsCutBoard;

/* Areas in mm2. Bought = parts (wanted sizes) + offcuts + waste (kerfs, trims and allowances too).
 */
typedef struct
{
  GArray *boards; /* BsCutBoard */
  GArray *slices; /* BsCutSlice, by board, then by place */
  GArray *pieces; /* BsCutPiece, by slice, then by place */
  int *missing;   /* for each part how many found no place, for want of stock */
  guint n_missing;
  gint64 price_minor;
  gint64 bound_minor;      /* proven: it cannot be done for less */
  gboolean is_price_least; /* proven */
  gboolean is_waste_least; /* proven: no plan of this price has less waste */
  gboolean is_best;        /* proven: none of this waste has better offcuts */
  double bought_area, part_area, offcut_area, waste_area;
} BsCutPlan;

void bs_cut_plan_free (BsCutPlan *self);

/* How much of the price may be too much: 1 - bound / price, 0 when nothing is to be paid. */
double bs_cut_plan_gap (const BsCutPlan *self);

typedef struct
{
  guint64 seed;
  guint rounds; /* of the search for better plans; 0: only the first ones */
  BsProgress progress;
  /* Called from the thread that does the work whenever a better plan is known; borrowed. */
  void (*better) (const BsCutPlan *plan, gpointer data);
  gpointer data;
} BsCutEffort;

BsCutEffort bs_cut_effort_default (void);

/* The best plan found: all parts placed, then least price, then least waste, then the longest
 * offcuts (greatest sum of squared lengths). The same input, seed and rounds give the same plan.
 * NULL with an error when the input does not pass bs_cutting_check. */
BsCutPlan *bs_cutting_solve (const BsCutting *self, const BsCutEffort *effort, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsCutPlan, bs_cut_plan_free)

G_END_DECLS
