/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/glue-up-canvas.h"
#include "app/proposal.h"
#include "app/session.h"

G_BEGIN_DECLS

/* Under the slab: what matters about its order, what the order must keep, and the order that was
 * found, beside the present one. The actions of its buttons ("order.look" ...) are the glue-up
 * page's. */
#define BS_TYPE_PROPOSAL_PANE (bs_proposal_pane_get_type ())
G_DECLARE_FINAL_TYPE (BsProposalPane, bs_proposal_pane, BS, PROPOSAL_PANE, GtkWidget)

/* The picture is drawn at the scale of the canvas. */
GtkWidget *bs_proposal_pane_new (BsSession *session, BsProposal *proposal, BsGlueUpCanvas *canvas);

/* Why there is no order, until the plan or the proposal changes. */
void bs_proposal_pane_show_problem (BsProposalPane *self, const char *problem);

G_END_DECLS
