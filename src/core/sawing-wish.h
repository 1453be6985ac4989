/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/milling.h"
#include "core/plan.h"

G_BEGIN_DECLS

/* What is to be sawn out of the rack's boards: docs/cutting-model.md, From the rack to the slab.
 * Sizes in mm. */

/* How laminations lie in their boards. On edge, the board stands up on its front edge with its
 * upper face to the front: the lamination's thickness lies across the board's wide faces, its
 * height across the board. On flat, it lies as the board does. */

/* A lamination, or a part as often as it is wanted. */
typedef struct
{
  const char *id, *label, *wood; /* borrowed from the plan; wood NULL: any */
  gboolean is_lamination;
  int count;                        /* 0: a lamination that is milled already */
  double length;                    /* finished, along the grain, */
  double width;                     /* across the board, */
  double thickness;                 /* between the board's wide faces */
  double rough_length, rough_width; /* as it leaves the saw; steps of bs_saw_round_up () */
  int clear_faces, clear_edges;     /* of the board's wide faces and of its own long edges */
  gboolean is_on_show;
} BsSawWish;

/* How many cuts the plan has for a piece: a part may have as many as there are of it. */
int bs_saw_count_cuts (const BsPlan *plan, const char *piece);

/* All laminations, then all parts. A lamination that names its board and has no cut was milled
 * before and needs none; what is laid out here has both. */
GArray *bs_saw_wishes_new (const BsPlan *plan);

/* NULL when nothing of that id is wanted. */
const BsSawWish *bs_saw_wishes_find (const GArray *wishes, const char *id);

/* Up to the step in which the plan's saw cuts are laid out: 0.5 mm or 1/64 in. Sizes that share a
 * step fit exactly, and the search for cuts counts in whole steps. */
double bs_saw_round_up (BsUnitSystem units, double size);

/* The width that is left for a pass of the saw, in steps of 0.1 mm or 1/64 in. */
double bs_saw_kerf (const BsPlan *plan);

/* A board as it is milled; warp that was not measured is none. */
BsRough bs_saw_rough (const BsBoard *board);

/* What a piece of rough size, sawn out of a board, can be planed to between its wide faces; 0 when
 * the piece is larger than the board. */
double bs_saw_reach (const BsPlan *plan, const BsBoard *board, double length, double width);

/* What it takes to make a board's front edge straight, when it is first crosscut to `length`. */
double bs_saw_straighten (const BsPlan *plan, const BsBoard *board, double length);

/* Why a wish has no place. */
typedef enum
{
  BS_SAW_LACK_NONE,      /* some board could take it, but all are taken up */
  BS_SAW_LACK_USED,      /* of one board: it was milled before */
  BS_SAW_LACK_WOOD,      /* no board of its wood */
  BS_SAW_LACK_LENGTH,    /* `most` is what the best of them has, without trims, */
  BS_SAW_LACK_WIDTH,     /* without trims and what straightens its edge, */
  BS_SAW_LACK_THICKNESS, /* planed */
} BsSawLackKind;

typedef struct
{
  BsSawLackKind kind;
  double needed, most;
} BsSawLack;

/* Laminations that were milled before name the board and it has no cuts: how they lay in it is not
 * known, so nothing else can come from it. */
gboolean bs_saw_is_used_up (const BsPlan *plan, const BsBoard *board);

/* What this board lacks for a wish. */
BsSawLack bs_saw_board_lack (const BsPlan *plan, const BsBoard *board, const BsSawWish *wish);

/* What all boards lack; of several things what the best board lacks. */
BsSawLack bs_saw_lack (const BsPlan *plan, const BsSawWish *wish);

G_END_DECLS
