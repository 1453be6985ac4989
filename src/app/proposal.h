/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "core/order-plan.h"

G_BEGIN_DECLS

/* A search for a better order, and what it has found so far: a thread looks, and the plan stays as
 * it is until someone uses the order. The proposal is for the plan that it was asked for, and fits
 * every plan that makes the same problem.
 *
 * Signals: "changed" when it begins, finds something better, knows more, ends or is discarded;
 * "notify::progress", 0 to 1, now and then while it looks. */
#define BS_TYPE_PROPOSAL (bs_proposal_get_type ())
G_DECLARE_FINAL_TYPE (BsProposal, bs_proposal, BS, PROPOSAL, GObject)

BsProposal *bs_proposal_new (void);

/* Begins to look, and forgets what it had. FALSE with a BS_ORDER_ERROR when the pins cannot be kept
 * or the slab has no laminations; it then has nothing. */
gboolean bs_proposal_look (BsProposal *self, BsPlan *plan, GError **error);

/* Soon: it keeps the best that it has found. */
void bs_proposal_stop (BsProposal *self);

/* At once, and keeps nothing. */
void bs_proposal_discard (BsProposal *self);

gboolean bs_proposal_is_looking (BsProposal *self);
double bs_proposal_get_progress (BsProposal *self);

/* The best so far, borrowed until "changed"; NULL before the first, after a moment, and when it was
 * discarded. Its changes are told at the end only. */
const BsOrderResult *bs_proposal_get_result (BsProposal *self);

/* What was asked: borrowed, NULL when nothing was. */
const BsOrderProblem *bs_proposal_get_problem (BsProposal *self);

/* Whether there is an order, and for that plan. */
gboolean bs_proposal_fits (BsProposal *self, const BsPlan *plan);

/* The plan in the order found, which must fit it; a new one, or the same when it lies so. */
BsPlan *bs_proposal_apply (BsProposal *self, BsPlan *plan);

G_END_DECLS
