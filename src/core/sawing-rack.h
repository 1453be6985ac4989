/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"
#include "core/sawing-job.h"
#include "core/sawing.h"
#include "core/working.h"

G_BEGIN_DECLS

/* How every board of a plan is sawn, by the plan's cuts. Sizes in mm, areas in mm2. */

typedef struct
{
  const BsBoard *board; /* borrowed from the plan */
  GArray *cuts;         /* guint: its cuts in the plan, the pieces of `sawing` in that order */
  BsSawing *sawing;
} BsSawnBoard;

/* One board; borrows from the plan: keep it as long. */
BsSawnBoard *bs_sawn_board_new (const BsPlan *plan, const BsBoard *board);
void bs_sawn_board_free (BsSawnBoard *self);

/* Borrows from the plan, too. */
typedef struct
{
  GPtrArray *boards; /* BsSawnBoard: all of the plan's, in its order */
  guint n_taken;     /* of them have cuts */
  guint n_faults;    /* of them no saw can cut like that */
  guint n_pieces;
  guint n_missing; /* pieces that are wanted and have no cut */
  /* Of the boards taken: area = pieces as sawn + kerfs + offcuts + waste. */
  double area, piece_area, kerf_area, offcut_area, waste_area;
  gint64 price_minor;
  guint n_unpriced; /* of the boards taken */
} BsSawRack;

BsSawRack *bs_saw_rack_new (const BsPlan *plan);
void bs_saw_rack_free (BsSawRack *self);

/* NULL when the plan has no such board. */
const BsSawnBoard *bs_saw_rack_find (const BsSawRack *self, const char *board);

/* The saw's fault with a board as a sentence that names the pieces; NULL when there is none. */
char *bs_sawn_board_tell_fault (const BsSawnBoard *self, const BsPlan *plan);

/* What is written on a piece: a lamination's label, a part's name; borrowed. Likewise a board's. */
const char *bs_saw_piece_label (const BsPlan *plan, const char *id);
const char *bs_saw_board_label (const BsBoard *board);

/* How many of a wish no cut is for. */
int bs_saw_count_missing (const BsPlan *plan, const BsSawWish *wish);

/* A part of the wood in per cent of the boards taken, and what these cost. */
void bs_saw_explain_waste (const BsSawRack *self, BsWorking *why);
void bs_saw_explain_kerf (const BsSawRack *self, const BsPlan *plan, BsWorking *why);
void bs_saw_explain_price (const BsSawRack *self, const BsPlan *plan, BsWorking *why);

/* The least that the boards can cost, as a search proved it; `found` NULL: none did for this plan.
 */
void bs_saw_explain_bound (const BsSawPlan *found, const BsPlan *plan, BsWorking *why);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsSawnBoard, bs_sawn_board_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsSawRack, bs_saw_rack_free)

G_END_DECLS
