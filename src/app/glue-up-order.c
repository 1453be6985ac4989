/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-page-private.h"

#include <glib/gi18n.h>

#include "app/proposal-pane.h"

/* The search for an order: begun, stopped and used from here, shown by the pane. */

static gboolean
is_free (BsGlueUpPage *self)
{
  return !bs_session_has_preview (self->session);
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);

  if (self->pane == NULL)
    {
      self->pane = bs_proposal_pane_new (self->session, self->proposal, self->canvas);
      gtk_paned_set_end_child (self->halves, self->pane);
      gtk_paned_set_position (self->halves, gtk_widget_get_height (GTK_WIDGET (self->halves)) / 2);
      bs_glue_up_order_update (self);
    }
  gtk_widget_grab_focus (self->pane);
}

static void
close_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);

  if (self->pane == NULL)
    return;
  bs_proposal_discard (self->proposal);
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
  gtk_paned_set_end_child (self->halves, NULL);
  self->pane = NULL;
  bs_glue_up_order_update (self);
}

static void
look_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  g_autoptr (GError) error = NULL;

  bs_proposal_look (self->proposal, bs_session_get_plan (self->session), &error);
  bs_proposal_pane_show_problem (BS_PROPOSAL_PANE (self->pane),
                                 error != NULL ? error->message : NULL);
}

static void
stop_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  bs_proposal_stop (BS_GLUE_UP_PAGE (widget)->proposal);
}

static void
use_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  BsPlan *plan = bs_session_get_plan (self->session);

  if (bs_proposal_fits (self->proposal, plan) && is_free (self))
    bs_glue_up_page_push (self, bs_proposal_apply (self->proposal, plan),
                          g_strdup (_ ("Use the proposed order")));
}

static void
discard_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  bs_proposal_discard (BS_GLUE_UP_PAGE (widget)->proposal);
}

/* Whether the order found is another one than the slab lies in. */
static gboolean
can_use (BsGlueUpPage *self)
{
  BsPlan *plan = bs_session_get_plan (self->session);

  if (!is_free (self) || !bs_proposal_fits (self->proposal, plan))
    return FALSE;
  g_autoptr (BsPlan) applied = bs_proposal_apply (self->proposal, plan);
  return applied != plan;
}

/* The button that was pressed may be one that cannot be pressed again now. */
static void
keep_focus (BsGlueUpPage *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (root != NULL && gtk_widget_get_mapped (GTK_WIDGET (self))
      && gtk_root_get_focus (root) == NULL)
    gtk_widget_child_focus (self->pane, GTK_DIR_TAB_FORWARD);
}

void
bs_glue_up_order_update (BsGlueUpPage *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  gboolean is_open = self->pane != NULL;
  gboolean is_looking = bs_proposal_is_looking (self->proposal);
  gboolean has_result = bs_proposal_get_result (self->proposal) != NULL;

  gtk_widget_action_set_enabled (widget, "order.look", is_open && !is_looking && is_free (self));
  gtk_widget_action_set_enabled (widget, "order.stop", is_open && is_looking);
  gtk_widget_action_set_enabled (widget, "order.use", is_open && can_use (self));
  gtk_widget_action_set_enabled (widget, "order.discard", is_open && (is_looking || has_result));
  gtk_widget_action_set_enabled (widget, "order.close", is_open);
  if (is_open)
    keep_focus (self);
}

void
bs_glue_up_order_class_init (GtkWidgetClass *class)
{
  g_type_ensure (BS_TYPE_PROPOSAL_PANE);
  gtk_widget_class_install_action (class, "order.open", NULL, open_action);
  gtk_widget_class_install_action (class, "order.close", NULL, close_action);
  gtk_widget_class_install_action (class, "order.look", NULL, look_action);
  gtk_widget_class_install_action (class, "order.stop", NULL, stop_action);
  gtk_widget_class_install_action (class, "order.use", NULL, use_action);
  gtk_widget_class_install_action (class, "order.discard", NULL, discard_action);
}

void
bs_glue_up_order_init (BsGlueUpPage *self)
{
  self->proposal = bs_proposal_new ();
  g_signal_connect_object (self->proposal, "changed", G_CALLBACK (bs_glue_up_order_update), self,
                           G_CONNECT_SWAPPED);
}
