/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/buying.h"
#include "core/purchase-rack.h"
#include "core/wanted.h"

G_BEGIN_DECLS

/* What to buy for a plan: docs/cutting-model.md, The purchase. Sizes in mm, money in minor units of
 * the plan's currency.
 *
 * What the rack still has to give comes first: it is paid. */

/* Why a want cannot be served in full. */
typedef enum
{
  BS_LACK_NONE,
  BS_LACK_WOOD,      /* nothing of its wood is offered or in the rack */
  BS_LACK_THICKNESS, /* nothing of its wood is thick enough; then, of what is, long enough ... */
  BS_LACK_LENGTH,
  BS_LACK_WIDTH,
  BS_LACK_SUPPLY, /* there are too few boards */
} BsLack;

typedef struct
{
  BsLack lack;
  int n_missing; /* pieces without a place */
} BsShortfall;

/* Boards of one offer and one size. */
typedef struct
{
  guint offer; /* index in the plan */
  int count;
  double length;
  double width;      /* that each has at least */
  double paid_width; /* that price and measure count on: of a pile that is not picked from, the mean
                      */
  double board_feet; /* as tallied */
  double volume;     /* mm3 */
  gint64 price_minor;
} BsPurchaseLine;

/* What is left of a board, over its full width. */
typedef struct
{
  guint board; /* index in cuts->boards */
  double length, width;
  int want; /* that it could serve too; -1: none */
} BsPurchaseOffcut;

typedef struct
{
  BsPlan *plan;
  GArray *wanted;     /* BsWant */
  GArray *shortfalls; /* BsShortfall, for each want */

  BsCutting cutting;  /* what was solved; its stock is first `rack`, then boards of the yard; its
                       * parts are first those wanted, then what was cut of the rack before */
  GArray *stock;      /* BsCutStock, of the yard in whole steps */
  GArray *as_sold;    /* likewise, with the sizes as they are */
  GArray *parts;      /* BsCutPart */
  GArray *part_wants; /* guint: the want of each part that is wanted */
  double straighten;  /* off the front edge of a board as boards come */
  BsPurchaseRack *rack;
  GArray *yard_offers; /* guint: the offer of each kind of board of the yard */
  char *problem;       /* a sentence: why nothing could be solved; NULL */

  BsCutPlan *cuts; /* NULL: there is nothing to cut; else all boards that have cuts, too */
  GArray *lines;   /* BsPurchaseLine, by offer, then size */
  GArray *offcuts; /* BsPurchaseOffcut, the longest first */
  int n_boards;    /* to buy, and boards of the rack that are used */
  int n_rack;
  guint n_pieces;       /* to be cut */
  double board_feet;    /* to buy, as tallied */
  double bought_volume; /* mm3, to buy */
  double bare_volume;   /* of all pieces but the spare ones: their milled length and width in the
                         * thickness of the boards that they are cut from */
  double sawn_volume;   /* of all boards sawn, from yard and rack */
  double used_volume;   /* of these: pieces as sawn, with those that were cut before, and offcuts */
} BsPurchase;

/* How hard to look, for the window, and where someone waits: on the paper, in the report. */
#define BS_PURCHASE_ROUNDS 400
#define BS_PURCHASE_QUICK_ROUNDS 40

/* Pure: the same plan and rounds give the same purchase, unless progress ends it. Hands better ones
 * over to progress (as BsPurchase) as long as there are. Never NULL. */
BsPurchase *bs_purchase_new (const BsPlan *plan, guint rounds, const BsProgress *progress);
void bs_purchase_free (BsPurchase *self);

/* Price of the boards to buy; NAN when there are none, or when an offer among them has no price. */
double bs_purchase_get_price (const BsPurchase *self);

/* Of the boards sawn, what ends up in neither pieces nor offcuts, %; NAN when there are none. */
double bs_purchase_get_waste_pct (const BsPurchase *self);

/* How much more is bought than the bare need, %; NAN when nothing is bought, or some of it is in
 * the rack. */
double bs_purchase_get_extra_pct (const BsPurchase *self);

/* The workings of these, and of the number of boards; and of the proven least price. */
void bs_purchase_explain_price (const BsPurchase *self, BsWorking *why);
void bs_purchase_explain_bound (const BsPurchase *self, BsWorking *why);
void bs_purchase_explain_waste (const BsPurchase *self, BsWorking *why);
void bs_purchase_explain_extra (const BsPurchase *self, BsWorking *why);
void bs_purchase_explain_measure (const BsPurchase *self, BsWorking *why);
void bs_purchase_explain_thickness (const BsPurchase *self, guint want, BsWorking *why);
void bs_purchase_explain_width (const BsPurchase *self, guint want, BsWorking *why);

/* Laminations to saw, spare ones and all, and how many of the boards must look well for that. */
void bs_purchase_explain_count (const BsPurchase *self, BsWorking *why);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPurchase, bs_purchase_free)

G_END_DECLS
