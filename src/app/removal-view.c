/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/removal-view.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "draw/removal.h"

#define MOST_HEIGHT 560.0 /* of both maps, so that they are seen at once */
#define LEGEND_WIDTH 28.0 /* in text sizes */
#define LEGEND_GAP 0.8

struct _BsRemovalView
{
  GtkWidget parent_instance;

  BsSession *session;
  const BsFlattenMap *map;
  BsRemovalScale show_face, underside; /* as last drawn */
};

G_DEFINE_FINAL_TYPE (BsRemovalView, bs_removal_view, GTK_TYPE_WIDGET)

static const BsStack *
get_stack (BsRemovalView *self)
{
  return bs_session_get_results (self->session)->stack;
}

/* The height of both maps in a width; sets where they lie. */
static double
fit (BsRemovalView *self, double width)
{
  return bs_removal_fit (&self->show_face, &self->underside, get_stack (self), width, MOST_HEIGHT,
                         bs_appearance_find_text_size (GTK_WIDGET (self)), 1.0);
}

static GtkSizeRequestMode
bs_removal_view_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bs_removal_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsRemovalView *self = BS_REMOVAL_VIEW (widget);
  double text = bs_appearance_find_text_size (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = (int)(LEGEND_WIDTH * text);
      *natural = 2 * *minimum;
    }
  else
    {
      double maps = fit (self, for_size > 0 ? for_size : 2.0 * LEGEND_WIDTH * text);

      *minimum = *natural = (int)ceil (maps + (BS_HEAT_LEGEND_HEIGHT + LEGEND_GAP) * text);
    }
}

static void
bs_removal_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsRemovalView *self = BS_REMOVAL_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const BsPalette *palette = bs_appearance_find_palette (widget);
  const char *selected = bs_session_get_selected (self->session);
  double text = bs_appearance_find_text_size (widget), maps = fit (self, width);

  if (self->map == NULL || self->map->n_x == 0 || !(maps > 0.0))
    return;
  cairo_t *cr
      = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, width, height));
  bs_draw_removal (cr, self->map, get_stack (self), TRUE, &self->show_face, selected, palette);
  bs_draw_removal (cr, self->map, get_stack (self), FALSE, &self->underside, selected, palette);
  cairo_translate (cr, self->show_face.left, maps + LEGEND_GAP * text);
  bs_draw_removal_legend (cr, self->map, get_stack (self)->plan->units, LEGEND_WIDTH * text, text,
                          1.0, palette);
  cairo_destroy (cr);
}

static void
pressed_cb (BsRemovalView *self, int n_press, double x, double y)
{
  const BsStack *stack = get_stack (self);
  int place = bs_removal_find_place (&self->show_face, stack, x, y);

  if (place < 0)
    place = bs_removal_find_place (&self->underside, stack, x, y);
  if (place >= 0)
    bs_session_select (self->session, stack->placed[place].lamination->id);
}

static void
bs_removal_view_dispose (GObject *object)
{
  BsRemovalView *self = BS_REMOVAL_VIEW (object);

  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_removal_view_parent_class)->dispose (object);
}

static void
bs_removal_view_class_init (BsRemovalViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_removal_view_dispose;
  widget_class->get_request_mode = bs_removal_view_get_request_mode;
  widget_class->measure = bs_removal_view_measure;
  widget_class->snapshot = bs_removal_view_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
bs_removal_view_init (BsRemovalView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect_object (click, "pressed", G_CALLBACK (pressed_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What comes off each face, as maps; the deepest spots are "
                                     "told in words below"),
                                  -1);
}

GtkWidget *
bs_removal_view_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsRemovalView *self = g_object_new (BS_TYPE_REMOVAL_VIEW, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "notify::selected", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

void
bs_removal_view_set_map (BsRemovalView *self, const BsFlattenMap *map)
{
  g_return_if_fail (BS_IS_REMOVAL_VIEW (self));

  self->map = map;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
