/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/flatten-spread.h"
#include "core/results.h"
#include "core/working.h"

G_BEGIN_DECLS

/* How the numbers of flattening came about. */

/* N_() the orders of work in a few words; ends with NULL. */
extern const char *const bs_flatten_work_names[BS_N_FLATTEN_WORKS + 1];

/* The thickness by an order of work; result is bs_flatten_by ()'s. */
void bs_flatten_explain (const BsFlattenResult *result, BsFlattenWork work, const BsStack *stack,
                         BsWorking *why);

/* Thicknesses that 50, 90 and 95 of a hundred slabs reach. */
typedef enum
{
  BS_SURE_50_PCT,
  BS_SURE_90_PCT,
  BS_SURE_95_PCT,
} BsSure;

#define BS_N_SURE 3

double bs_flatten_odds_get (const BsFlattenOdds *odds, BsSure sure);

/* Here and below: what is NULL is being worked out. */
void bs_flatten_explain_odds (const BsFlattenOdds *odds, BsSure sure, const BsStack *stack,
                              BsWorking *why);

/* Slabs of a hundred that are as thick as wanted. */
void bs_flatten_explain_wanted (const BsFlattenOdds *odds, const BsStack *stack, BsWorking *why);

/* height is bs_flatten_height_needed ()'s, for the thickness that the plan wants. */
void bs_flatten_explain_height (const double *height, const BsStack *stack, BsWorking *why);

/* In how many packs it must go through the planer; its value is NAN when it cannot. */
void bs_flatten_explain_packs (const BsStack *stack, BsWorking *why);

G_END_DECLS
