/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* A proposed order under the slab as it is shown, at the scale of the canvas. A lamination that is
 * clicked is selected. */
#define BS_TYPE_PROPOSAL_PICTURE (bs_proposal_picture_get_type ())
G_DECLARE_FINAL_TYPE (BsProposalPicture, bs_proposal_picture, BS, PROPOSAL_PICTURE, GtkWidget)

GtkWidget *bs_proposal_picture_new (BsSession *session);

/* NULL: nothing is proposed, and the picture takes no room. */
void bs_proposal_picture_show (BsProposalPicture *self, BsResults *proposed);

/* Pixels for each mm, at most. */
void bs_proposal_picture_set_per_mm (BsProposalPicture *self, double per_mm);

G_END_DECLS
