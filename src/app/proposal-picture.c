/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/proposal-picture.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/picture-node.h"
#include "draw/proposal.h"
#include "words/order.h"

/* Across, in pixels. */
#define LEAST_WIDTH 300

struct _BsProposalPicture
{
  GtkWidget parent_instance;

  BsSession *session;
  BsResults *proposed;
  double per_mm;
  GskRenderNode *section; /* drawn once, for: */
  BsScale section_scale;
  const BsPalette *section_palette;
};

G_DEFINE_FINAL_TYPE (BsProposalPicture, bs_proposal_picture, GTK_TYPE_WIDGET)

static const BsStack *
get_present (BsProposalPicture *self)
{
  return bs_session_get_results (self->session)->stack;
}

static BsScale
fit (BsProposalPicture *self, double width)
{
  BsScale scale;

  bs_proposal_fit (&scale, get_present (self), self->proposed->stack, self->per_mm, width,
                   bs_appearance_find_text_size (GTK_WIDGET (self)));
  return scale;
}

static GtkSizeRequestMode
bs_proposal_picture_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bs_proposal_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                             int *minimum, int *natural, int *minimum_baseline,
                             int *natural_baseline)
{
  BsProposalPicture *self = BS_PROPOSAL_PICTURE (widget);
  int size = 0;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    size = LEAST_WIDTH;
  else if (self->proposed != NULL)
    {
      BsScale scale = fit (self, for_size >= 0 ? for_size : LEAST_WIDTH);
      size = (int)ceil (bs_proposal_get_height (self->proposed->stack, &scale));
    }
  *minimum = *natural = size;
}

static void
forget_section (BsProposalPicture *self)
{
  g_clear_pointer (&self->section, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
draw_section (cairo_t *cr, gpointer data)
{
  BsProposalPicture *self = data;

  bs_draw_proposal_section (cr, self->proposed, &self->section_scale, self->section_palette,
                            bs_session_get_selected (self->session));
}

static void
update_section (BsProposalPicture *self, const BsScale *scale, const BsPalette *palette)
{
  const BsScale *former = &self->section_scale;
  GtkWidget *widget = GTK_WIDGET (self);
  gboolean is_moved = fabs (scale->left - former->left) > 0.01
                      || fabs (scale->per_mm_across - former->per_mm_across) > 1e-9;

  if (self->section != NULL && !is_moved && palette == self->section_palette)
    return;
  g_clear_pointer (&self->section, gsk_render_node_unref);
  self->section_scale = *scale;
  self->section_palette = palette;
  self->section
      = bs_picture_node_new (&GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)gtk_widget_get_width (widget),
                                                  (float)gtk_widget_get_height (widget)),
                             gtk_widget_get_scale_factor (widget), draw_section, self);
}

/* A node that is as large as the widget was. */
static void
bs_proposal_picture_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  forget_section (BS_PROPOSAL_PICTURE (widget));
}

static void
bs_proposal_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsProposalPicture *self = BS_PROPOSAL_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->proposed == NULL)
    return;
  const BsPalette *palette = bs_appearance_find_palette (widget);
  BsScale scale = fit (self, width);
  update_section (self, &scale, palette);
  gtk_snapshot_append_node (snapshot, self->section);
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)width, (float)height));
  bs_draw_proposal_changes (cr, get_present (self), self->proposed, &scale, palette,
                            bs_session_get_selected (self->session));
  cairo_destroy (cr);
}

static void
pressed_cb (GtkGestureClick *click, int n, double x, double y, gpointer user_data)
{
  BsProposalPicture *self = BS_PROPOSAL_PICTURE (user_data);

  if (self->proposed == NULL)
    return;
  BsScale scale = fit (self, gtk_widget_get_width (GTK_WIDGET (self)));
  int place = bs_scale_find_place (&scale, self->proposed->stack, x);
  if (place >= 0)
    bs_session_select (self->session, self->proposed->stack->placed[place].lamination->id);
}

static void
bs_proposal_picture_dispose (GObject *object)
{
  BsProposalPicture *self = BS_PROPOSAL_PICTURE (object);

  g_clear_pointer (&self->section, gsk_render_node_unref);
  g_clear_pointer (&self->proposed, bs_results_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_proposal_picture_parent_class)->dispose (object);
}

static void
bs_proposal_picture_class_init (BsProposalPictureClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_proposal_picture_dispose;
  widget_class->get_request_mode = bs_proposal_picture_get_request_mode;
  widget_class->measure = bs_proposal_picture_measure;
  widget_class->size_allocate = bs_proposal_picture_size_allocate;
  widget_class->snapshot = bs_proposal_picture_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
bs_proposal_picture_init (BsProposalPicture *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
bs_proposal_picture_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsProposalPicture *self = g_object_new (BS_TYPE_PROPOSAL_PICTURE, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::selected", G_CALLBACK (forget_section), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

void
bs_proposal_picture_show (BsProposalPicture *self, BsResults *proposed)
{
  g_return_if_fail (BS_IS_PROPOSAL_PICTURE (self));

  if (proposed == self->proposed)
    return;
  g_clear_pointer (&self->proposed, bs_results_unref);
  if (proposed != NULL)
    {
      g_autofree char *words = bs_words_order_listing (proposed->stack->plan);

      self->proposed = bs_results_ref (proposed);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      _ ("The proposed order from front to back"),
                                      GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
    }
  forget_section (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
bs_proposal_picture_set_per_mm (BsProposalPicture *self, double per_mm)
{
  g_return_if_fail (BS_IS_PROPOSAL_PICTURE (self));

  self->per_mm = per_mm;
  forget_section (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
