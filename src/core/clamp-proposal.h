/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/pressure.h"

G_BEGIN_DECLS

/* The fewest clamps for a plan, and what they are to be compared with. The plan's own placed clamps
 * do not count in the search. */
typedef struct
{
  BsPressure *present; /* the clamps as they are set */
  BsPressure *rule;    /* those of the hand rule */
  BsLayout found;      /* kinds are places in the shop's list */
  BsWorking why;       /* of its weakest glue-line pressure */
} BsClampProposal;

/* Pure; NULL when progress asked it to stop. */
BsClampProposal *bs_clamp_proposal_new (const BsPlan *plan, const BsProgress *progress);
void bs_clamp_proposal_free (BsClampProposal *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BsClampProposal, bs_clamp_proposal_free)

G_END_DECLS
