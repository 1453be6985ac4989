/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/purchase.h"

G_BEGIN_DECLS

/* One piece of a want, as a single layer or as two glued face to face, each from the cheapest offer
 * of the thinnest class that will do: docs/cutting-model.md, The purchase. */
typedef struct
{
  BsLumberSeries classes; /* of the offers of its wood, from thin to thick; */
  GArray *rows;           /* BsLumberThickness of these */
  GStringChunk *names;
  BsLayerWay one, two;
  double one_minor, two_minor; /* wood and glue of one piece; NAN: a price is not known */
  gboolean is_glue_counted;    /* FALSE: the price of the glue is not known */
} BsPurchaseLayers;

/* Of a place in purchase->wanted. NULL when nothing of its wood is offered. */
BsPurchaseLayers *bs_purchase_layers_new (const BsPurchase *purchase, guint want);
void bs_purchase_layers_free (BsPurchaseLayers *self);

/* Whether two layers can be had, and one cannot or costs a good deal more. */
gboolean bs_purchase_layers_gain (const BsPurchaseLayers *self);

/* "8/4" for a quarter of an inch of the trade, else millimetres as a plain number; the caller's. */
char *bs_lumber_name_class (double thickness);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsPurchaseLayers, bs_purchase_layers_free)

G_END_DECLS
