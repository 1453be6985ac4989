/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/glue-up-canvas.h"
#include "app/glue-up-page.h"
#include "app/proposal.h"

G_BEGIN_DECLS

struct _BsGlueUpPage
{
  GtkWidget parent_instance;

  /* owned */
  BsSession *session;
  BsProposal *proposal;
  GtkWidget *pane; /* BsProposalPane, borrowed from `halves`; NULL while it is closed */
  /* template */
  BsGlueUpCanvas *canvas;
  GtkPaned *halves;
  GtkScrolledWindow *scroller;
  GtkBox *lamination_buttons;
  GtkBox *view_buttons;
};

/* What the selected lamination is called, and its place in the slab (-1: the rack); NULL when
 * nothing is selected. */
const char *bs_glue_up_page_get_selected (BsGlueUpPage *self, int *place);

/* One edit; takes the plan and the label. The focus goes to the canvas. */
void bs_glue_up_page_push (BsGlueUpPage *self, BsPlan *plan, char *label);

/* glue-up-pins.c: what a proposed order must keep. */
void bs_glue_up_pins_class_init (GtkWidgetClass *class);
void bs_glue_up_pins_update (BsGlueUpPage *self);

/* glue-up-order.c: the pane, and the search for an order. */
void bs_glue_up_order_class_init (GtkWidgetClass *class);
void bs_glue_up_order_init (BsGlueUpPage *self);
void bs_glue_up_order_update (BsGlueUpPage *self);

G_END_DECLS
