/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stack.h"
#include "core/working.h"

G_BEGIN_DECLS

/* What the slab costs and how much of the wood ends up in it: docs/timber-model.md, Cost. Volumes
 * in mm3, money in minor units of the plan's currency. */
typedef struct
{
  double gross; /* boards that its laminations are cut from, whole, and laminations of no board */
  double net;   /* finished slab; NAN when its thickness is */
  double waste_pct;
  double glue_kg;     /* spread on all glue lines */
  double wood_minor;  /* NAN when a price is not known */
  double glue_minor;  /* likewise */
  double total_minor; /* likewise */
  guint n_unpriced;   /* boards and laminations without a price */
  double glue_area;   /* of all glue lines, mm2 */
} BsCost;

/* A board costs what the plan says, or where it says nothing (0) its volume at its wood's price, as
 * does a lamination of no board. Boards are counted once, offcuts and all. */
void bs_cost (const BsStack *stack, double thickness, double glue_kg, BsCost *cost);

/* How the sum, the mass of the glue and the waste came about. */
void bs_cost_explain (const BsCost *cost, const BsPlan *plan, BsWorking *why);
void bs_cost_explain_glue (const BsCost *cost, const BsPlan *plan, BsWorking *why);
void bs_cost_explain_waste (const BsCost *cost, BsWorking *why);

G_END_DECLS
