/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/cutting.h"
#include "core/lumber.h"

G_BEGIN_DECLS

/* What a yard offers, as boards that a cutting can take: docs/cutting-model.md, Buying. Sizes in
 * mm. */

typedef struct
{
  double length;
  int supply; /* boards of this length, or BS_CUT_UNLIMITED */
} BsYardLength;

/* Boards of one wood and thickness, sold whole. */
typedef struct
{
  int wood;
  double thickness;               /* of the class: 8/4 is 50.8 */
  double usable_thickness;        /* the thickest part that a board gives; usually less */
  double width_least, width_most; /* alike for boards of one width */
  gboolean may_pick;              /* widths may be chosen from the pile */
  const BsYardLength *lengths;    /* borrowed */
  guint n_lengths;
  BsPriceUnit unit;
  gint64 price_minor; /* of one unit */
  int looks;
} BsYardOffer;

/* The stock of an order. The numbers of kinds of boards and of offers go with each other. */
typedef struct
{
  GArray *stock;  /* BsCutStock */
  GArray *offers; /* guint: the offer of each */
} BsYardStock;

/* Every length of every offer. Where widths may be picked and the supply is open, in steps of
 * width_step from the least to the most; else with the least width, which every board has, at the
 * price of the mean width, which is what a pile costs on average. Refuses offers that cannot be,
 * with an error that names the offer by its number, counted from 1. An empty yard gives no stock.
 */
BsYardStock *bs_yard_stock_new (const BsYardOffer *offers, guint n_offers, double width_step,
                                GError **error);
void bs_yard_stock_free (BsYardStock *self);

/* Price of one board in minor units, rounded to the nearest. */
gint64 bs_yard_price (const BsYardOffer *offer, double width, double length);

/* How many laminations to have for n_wanted, of which n_on_show must look well, when a share of
 * them does (0 to 1] and that is to work out with a confidence (0 to 1): the least n >= n_wanted
 * for which at least n_on_show of n do, counted by the binomial distribution. -1 when no n up to
 * ten times n_wanted will. */
int bs_yard_count_for_show (int n_wanted, int n_on_show, double share, double confidence);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsYardStock, bs_yard_stock_free)

G_END_DECLS
