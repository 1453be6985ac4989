/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/order-cost.h"
#include "core/order-rules.h"
#include "core/progress.h"
#include "core/working.h"

G_BEGIN_DECLS

/* Which lamination where, which way round: a good order at once, then better ones, then the proof
 * that none is better. docs/order-model.md tells how.
 *
 *   g_autoptr (BsOrderProblem) problem = bs_order_problem_new_for_plan (...);
 *   BsOrderEffort effort = bs_order_effort_default (problem);
 *   BsOrderResult *result = bs_order_solve (problem, &effort, show, window, &progress, &error);
 *
 * Pure and thread-safe: it reads the problem, and nothing else. The same problem, effort and seed
 * give the same result on every machine, unless it is stopped before its end. */

typedef struct
{
  guint64 seed;
  guint64 n_moves; /* of each of two searches for a good order */
  guint n_steps;   /* of the bound */
  guint most_rows; /* of the proof, 40 bytes each */
} BsOrderEffort;

/* Up to 16 candidates are proved in any case, 30 in most; 60 end with a gap of some 2 %. */
BsOrderEffort bs_order_effort_default (const BsOrderProblem *problem);

/* The least harmful change that takes one lamination away from where it is. */
typedef enum
{
  BS_ORDER_CHANGE_NONE,     /* pins hold it as it is */
  BS_ORDER_CHANGE_MOVE,     /* to another place, the others closing up */
  BS_ORDER_CHANGE_TURN,     /* to another orientation, in its place */
  BS_ORDER_CHANGE_EXCHANGE, /* for another candidate */
} BsOrderChangeKind;

typedef struct
{
  BsOrderChangeKind kind;
  guint place;               /* where it would go */
  BsOrientation orientation; /* how it would be turned */
  guint candidate;           /* that would come instead */
  gint32 extra;              /* what that would cost more, the others turned as suits best */
} BsOrderChange;

typedef struct
{
  guint n_places;
  BsOrderPlace *places; /* [n_places] from front to back */
  BsOrderCost cost;
  gint32 bound;           /* no order that keeps the pins costs less */
  gboolean is_proved;     /* the bound is the cost */
  BsOrderChange *changes; /* [n_places]; NULL before the end */
} BsOrderResult;

BsOrderResult *bs_order_result_ref (BsOrderResult *self);
void bs_order_result_unref (BsOrderResult *self);

/* How much dearer than the best possible it may be, as a part of the cost: 0 when proved. */
double bs_order_result_gap (const BsOrderResult *self);

/* Called from the thread that solves, whenever the order or the bound has become better. The result
 * is borrowed. */
typedef void (*BsOrderImproved) (BsOrderResult *result, gpointer data);

/* NULL with a BS_ORDER_ERROR when the pins contradict one another or there are too few candidates.
 * Asked to stop, it returns the best order so far. improved and progress may be NULL. */
BsOrderResult *bs_order_solve (const BsOrderProblem *problem, const BsOrderEffort *effort,
                               BsOrderImproved improved, gpointer data, const BsProgress *progress,
                               GError **error);

/* The cost in points as the sum of its terms. */
void bs_order_cost_explain (const BsOrderCost *cost, BsWorking *why);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsOrderResult, bs_order_result_unref)

G_END_DECLS
