/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/pressure.h"

G_BEGIN_DECLS

/* Two orders of a slab in numbers, side by side. */
#define BS_TYPE_PROPOSAL_NUMBERS (bs_proposal_numbers_get_type ())
G_DECLARE_FINAL_TYPE (BsProposalNumbers, bs_proposal_numbers, BS, PROPOSAL_NUMBERS, GtkWidget)

GtkWidget *bs_proposal_numbers_new (void);

void bs_proposal_numbers_show (BsProposalNumbers *self, const BsResults *present,
                               const BsResults *proposed);

/* How the clamps press either; NULL while that is not known. */
void bs_proposal_numbers_show_pressure (BsProposalNumbers *self, const BsPressure *present,
                                        const BsPressure *proposed);

G_END_DECLS
