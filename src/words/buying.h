/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/purchase-put.h"

G_BEGIN_DECLS

/* What is wanted and what is bought for it, in the person's language and units. Texts are the
 * caller's. */

/* A thickness as the trade names it: "8/4" where it is one of the quarters and the person measures
 * in inches, else the size. */
char *bs_words_class (double thickness, BsUnitSystem units);

/* A length as lumber is sold by: whole feet where the person measures in inches, "8'". */
char *bs_words_board_length (double length, BsUnitSystem units);

/* What a yard offers, without its widths: "Hard maple, 8/4, Sample yard". */
char *bs_words_offer (const BsPlan *plan, const BsOffer *offer);

/* "16 laminations of 1530 × 63 × 40 mm, 2 of them spare"; "4 of Leg, 700 × 90 × 45 mm". */
char *bs_words_want (const BsWant *want, BsUnitSystem units);

/* What its boards must have: the class to ask for, and the sizes it is sawn to. */
char *bs_words_want_rough (const BsPurchase *purchase, guint want);

/* Why some of it cannot be had, and what to do; NULL when all can. */
char *bs_words_shortfall (const BsPurchase *purchase, guint want);

/* How the purchase stands: what it holds, or why there is none. */
char *bs_words_purchase (const BsPurchase *purchase);

/* How near to the least price it is proven to be; NULL when there is nothing to say. */
char *bs_words_purchase_bound (const BsPurchase *purchase);

/* One layer of a want's pieces against two, by the cheapest offers; NULL when there is nothing to
 * gain by two. */
char *bs_words_purchase_layers (const BsPurchase *purchase, guint want);

/* The width of a line's boards: "150 to 230 mm" of a pile that is not picked from, since any of
 * them will be met. Its whole size; and its measure, as tallied and in cubic metres. */
char *bs_words_purchase_width (const BsPurchase *purchase, const BsPurchaseLine *line);
char *bs_words_purchase_size (const BsPurchase *purchase, const BsPurchaseLine *line);
char *bs_words_purchase_measure (const BsPurchaseLine *line);

/* "12.50 bd ft, 0.029 m³", of a volume in mm3. */
char *bs_words_measure (double board_feet, double volume);

/* "3 × 1.2 m long, 150 mm wide, 8/4: enough for another “Leg”": a line for offcuts that are alike,
 * the longest first. NULL-terminated; free with g_strfreev (). */
char **bs_words_purchase_offcuts (const BsPurchase *purchase);

/* A board that is sawn for a purchase: "Board B of the rack: 4100 × 172, 52 mm"; of one that is to
 * be bought the sizes alone. */
char *bs_words_purchase_board (const BsPurchaseSawn *sawn, guint index);

G_END_DECLS
