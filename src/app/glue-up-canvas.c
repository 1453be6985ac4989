/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-canvas-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/photos.h"

enum
{
  RESCALED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (BsGlueUpCanvas, bs_glue_up_canvas, GTK_TYPE_WIDGET)

void
bs_glue_up_canvas_draw_soon (BsGlueUpCanvas *self)
{
  self->is_drawn = FALSE;
  bs_glue_up_seats_start_tick (self);
}

const BsStack *
bs_glue_up_canvas_get_slab (BsGlueUpCanvas *self)
{
  return bs_session_get_results (self->session)->stack;
}

/* While one is held the layout stays as it is, or everything would swell and shrink under the hand.
 */
void
bs_glue_up_canvas_invalidate (BsGlueUpCanvas *self)
{
  if (self->hold.seat == NULL)
    {
      self->is_stale = TRUE;
      gtk_widget_queue_allocate (GTK_WIDGET (self));
      return;
    }
  bs_glue_up_seats_place (self, FALSE);
  bs_glue_up_seats_show (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
changed_cb (BsGlueUpCanvas *self)
{
  g_assert (BS_IS_GLUE_UP_CANVAS (self));

  g_clear_pointer (&self->rack, bs_stack_free);
  self->rack = bs_glue_up_rack_new (bs_glue_up_canvas_get_slab (self)->plan);
  bs_glue_up_seats_match (self);
  bs_glue_up_scenery_update (self);
  bs_glue_up_canvas_invalidate (self);
}

static void
selected_cb (BsGlueUpCanvas *self)
{
  BsSeat *seat = bs_glue_up_seats_get_selected (self);

  if (self->layout_width == 0) /* not shown yet */
    return;
  bs_glue_up_seats_show (self);
  if (seat != NULL && gtk_widget_get_focus_child (GTK_WIDGET (self)) != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (seat->strip));
}

/* Layout. */

static double
view_size (GtkAdjustment *adjustment, int allocated, double zoom)
{
  double page = adjustment != NULL ? gtk_adjustment_get_page_size (adjustment) : 0.0;

  return zoom > 1.0 && page > 0.0 ? page : allocated;
}

static void
update_layout (BsGlueUpCanvas *self, int width, int height)
{
  double per_mm = bs_glue_up_canvas_get_per_mm (self);

  bs_glue_up_layout_init (&self->layout, bs_glue_up_canvas_get_slab (self), self->rack,
                          view_size (self->horizontal, width, self->zoom),
                          view_size (self->vertical, height, self->zoom), self->zoom,
                          self->text_size);
  if (fabs (bs_glue_up_canvas_get_per_mm (self) - per_mm) > 1e-9)
    g_signal_emit (self, signals[RESCALED], 0);
  if (self->horizontal != NULL)
    bs_glue_up_layout_show_rack (&self->layout, gtk_adjustment_get_value (self->horizontal));
  bs_glue_up_scenery_forget (self);
}

static void
update_places (BsGlueUpCanvas *self, int width, int height)
{
  gboolean is_resized = width != self->layout_width || height != self->layout_height;

  if (!is_resized && !self->is_stale)
    return;
  if (is_resized || self->hold.seat == NULL)
    update_layout (self, width, height);
  bs_glue_up_seats_place (self, is_resized);
  self->layout_width = width;
  self->layout_height = height;
  self->is_stale = FALSE;
  bs_glue_up_seats_show (self);
}

static void
allocate_seat (BsSeat *seat)
{
  const graphene_rect_t *at = &seat->goal;

  seat->allocated = GRAPHENE_POINT_INIT (floorf (at->origin.x), floorf (at->origin.y));
  gtk_widget_allocate (GTK_WIDGET (seat->strip), MAX (1, (int)ceilf (at->size.width)),
                       MAX (1, (int)ceilf (at->size.height)), -1,
                       gsk_transform_translate (NULL, &seat->allocated));
}

static void
bs_glue_up_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BsGlueUpCanvas *self = BS_GLUE_UP_CANVAS (widget);

  update_places (self, width, height);
  for (guint i = 0; i < self->seats->len; i++)
    allocate_seat (g_ptr_array_index (self->seats, i));
  if (self->menu != NULL)
    gtk_popover_present (GTK_POPOVER (self->menu));
}

static void
bs_glue_up_canvas_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                           int *minimum, int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsGlueUpCanvas *self = BS_GLUE_UP_CANVAS (widget);
  int width, height;

  bs_glue_up_layout_least (&width, &height);
  if (self->zoom > 1.0 && self->session != NULL)
    {
      BsGlueUpLayout layout;

      bs_glue_up_layout_init (&layout, bs_glue_up_canvas_get_slab (self), self->rack,
                              view_size (self->horizontal, width, self->zoom),
                              view_size (self->vertical, height, self->zoom), self->zoom,
                              self->text_size);
      width = (int)layout.width;
      height = (int)layout.height;
    }
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? width : height;
}

/* However the slab is scrolled, the rack stays in view. */
static void
scrolled_cb (BsGlueUpCanvas *self)
{
  double left = gtk_adjustment_get_value (self->horizontal);

  if (self->layout_width == 0)
    return;
  bs_glue_up_layout_show_rack (&self->layout, left);
  bs_glue_up_seats_place (self, TRUE);
  bs_glue_up_scenery_forget (self);
  if (self->hold.seat == NULL)
    gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
view_changed_cb (BsGlueUpCanvas *self)
{
  if (self->zoom > 1.0)
    gtk_widget_queue_resize (GTK_WIDGET (self));
}

/* Drawing. */

/* Where it is on its way, and not where it is allocated: to allocate at each frame would make GDK
 * ask the X server for the screen's sizes each time, which took 5 ms. */
static void
snapshot_seat (BsGlueUpCanvas *self, BsSeat *seat, GtkSnapshot *snapshot)
{
  graphene_rect_t at = seat == self->hold.seat ? bs_glue_up_hold_place (self) : seat->now;

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot,
                          &GRAPHENE_POINT_INIT (floorf (at.origin.x) - seat->allocated.x,
                                                floorf (at.origin.y) - seat->allocated.y));
  gtk_widget_snapshot_child (GTK_WIDGET (self), GTK_WIDGET (seat->strip), snapshot);
  gtk_snapshot_restore (snapshot);
}

static void
bs_glue_up_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsGlueUpCanvas *self = BS_GLUE_UP_CANVAS (widget);

  if (self->under != NULL)
    gtk_snapshot_append_node (snapshot, self->under);
  for (guint i = 0; i < self->seats->len; i++)
    {
      BsSeat *seat = g_ptr_array_index (self->seats, i);

      if (seat != self->hold.seat)
        snapshot_seat (self, seat, snapshot);
    }
  if (self->over != NULL)
    gtk_snapshot_append_node (snapshot, self->over);
  if (self->hold.seat != NULL)
    snapshot_seat (self, self->hold.seat, snapshot);
}

static void
bs_glue_up_canvas_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  BsGlueUpCanvas *self = BS_GLUE_UP_CANVAS (widget);
  const BsPalette *palette = bs_appearance_find_palette (widget);
  double text = bs_appearance_find_text_size (widget);

  GTK_WIDGET_CLASS (bs_glue_up_canvas_parent_class)->css_changed (widget, change);
  if (palette == self->palette && fabs (text - self->text_size) < 0.01)
    return;
  self->palette = palette;
  self->text_size = text;
  bs_glue_up_scenery_forget (self);
  bs_glue_up_canvas_invalidate (self);
}

/* Focus. */

/* Left, right, up and down go among the laminations; Tab enters at the selected one and leaves. */
static gboolean
bs_glue_up_canvas_focus (GtkWidget *widget, GtkDirectionType direction)
{
  BsGlueUpCanvas *self = BS_GLUE_UP_CANVAS (widget);
  gboolean is_tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;
  BsSeat *from = bs_glue_up_seats_get_focused (self);
  BsSeat *to;

  if (self->seats->len == 0 || (from != NULL && is_tab))
    return FALSE;
  if (from != NULL)
    to = bs_glue_up_seats_find_next (self, from, direction);
  else
    {
      to = bs_glue_up_seats_get_selected (self);
      if (to == NULL)
        to = g_ptr_array_index (self->seats, 0);
    }
  return gtk_widget_grab_focus (GTK_WIDGET (to->strip));
}

static gboolean
bs_glue_up_canvas_grab_focus (GtkWidget *widget)
{
  return bs_glue_up_canvas_focus (widget, GTK_DIR_TAB_FORWARD);
}

static void
popup_at (BsGlueUpCanvas *self, double x, double y)
{
  if (self->menu == NULL)
    {
      self->menu = gtk_popover_menu_new_from_model (self->menu_model);
      gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
      gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
    }
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle){ (int)x, (int)y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
right_pressed_cb (GtkGestureClick *click, int n, double x, double y, BsGlueUpCanvas *self)
{
  BsSeat *seat = bs_glue_up_seats_find_at (self, x, y);

  if (seat == NULL || self->hold.seat != NULL)
    return;
  gtk_widget_grab_focus (GTK_WIDGET (seat->strip));
  popup_at (self, x, y);
}

static void
bs_glue_up_canvas_dispose (GObject *object)
{
  BsGlueUpCanvas *self = BS_GLUE_UP_CANVAS (object);

  bs_hand_put_back (&self->hand);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_ptr_array_set_size (self->seats, 0);
  g_clear_pointer (&self->under, gsk_render_node_unref);
  g_clear_pointer (&self->over, gsk_render_node_unref);
  g_clear_pointer (&self->tape, g_bytes_unref);
  g_clear_object (&self->horizontal);
  g_clear_object (&self->menu_model);
  g_clear_object (&self->vertical);
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_glue_up_canvas_parent_class)->dispose (object);
}

static void
bs_glue_up_canvas_finalize (GObject *object)
{
  BsGlueUpCanvas *self = BS_GLUE_UP_CANVAS (object);

  g_ptr_array_unref (self->seats);
  g_clear_pointer (&self->rack, bs_stack_free);
  G_OBJECT_CLASS (bs_glue_up_canvas_parent_class)->finalize (object);
}

static void
bs_glue_up_canvas_class_init (BsGlueUpCanvasClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = bs_glue_up_canvas_dispose;
  object_class->finalize = bs_glue_up_canvas_finalize;
  widget_class->measure = bs_glue_up_canvas_measure;
  widget_class->size_allocate = bs_glue_up_canvas_size_allocate;
  widget_class->snapshot = bs_glue_up_canvas_snapshot;
  widget_class->css_changed = bs_glue_up_canvas_css_changed;
  widget_class->focus = bs_glue_up_canvas_focus;
  widget_class->grab_focus = bs_glue_up_canvas_grab_focus;

  signals[RESCALED] = g_signal_new ("rescaled", BS_TYPE_GLUE_UP_CANVAS, G_SIGNAL_RUN_LAST, 0, NULL,
                                    NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_css_name (widget_class, "glueup");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST);
}

static void
bs_glue_up_canvas_init (BsGlueUpCanvas *self)
{
  GtkGesture *right = gtk_gesture_click_new ();

  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (bs_glue_up_scenery_forget), NULL);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (right), GDK_BUTTON_SECONDARY);
  g_signal_connect (right, "pressed", G_CALLBACK (right_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (right));

  self->seats = g_ptr_array_new_with_free_func (bs_glue_up_seat_free);
  self->zoom = 1.0;
  self->text_size = bs_appearance_find_text_size (GTK_WIDGET (self));
  self->palette = bs_palette_light ();
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Laminations from front to back, then the rack"), -1);
  bs_hand_init (&self->hand, GTK_WIDGET (self), &bs_glue_up_hand);
}

void
bs_glue_up_canvas_set_session (BsGlueUpCanvas *self, BsSession *session)
{
  g_return_if_fail (BS_IS_GLUE_UP_CANVAS (self));
  g_return_if_fail (BS_IS_SESSION (session));
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (bs_photos_get_shared (session), "changed",
                           G_CALLBACK (bs_glue_up_seats_show), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::selected", G_CALLBACK (selected_cb), self,
                           G_CONNECT_SWAPPED);
  changed_cb (self);
}

void
bs_glue_up_canvas_set_adjustments (BsGlueUpCanvas *self, GtkAdjustment *horizontal,
                                   GtkAdjustment *vertical)
{
  g_return_if_fail (BS_IS_GLUE_UP_CANVAS (self));

  g_set_object (&self->horizontal, horizontal);
  g_set_object (&self->vertical, vertical);
  g_signal_connect_object (horizontal, "value-changed", G_CALLBACK (scrolled_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (horizontal, "notify::page-size", G_CALLBACK (view_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (vertical, "notify::page-size", G_CALLBACK (view_changed_cb), self,
                           G_CONNECT_SWAPPED);
}

void
bs_glue_up_canvas_set_zoom (BsGlueUpCanvas *self, double zoom, double at)
{
  g_return_if_fail (BS_IS_GLUE_UP_CANVAS (self));

  zoom = CLAMP (zoom, 1.0, BS_GLUE_UP_ZOOM_MOST);
  double change = zoom / self->zoom;
  if (fabs (change - 1.0) < 1e-6 || self->hold.seat != NULL)
    return;
  self->zoom = zoom;
  if (self->horizontal != NULL)
    {
      double value = gtk_adjustment_get_value (self->horizontal);

      /* ahead of the layout, so that the first frame is already right */
      gtk_adjustment_set_upper (self->horizontal,
                                gtk_adjustment_get_page_size (self->horizontal) * zoom);
      gtk_adjustment_set_value (self->horizontal, (value + at) * change - at);
    }
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

double
bs_glue_up_canvas_get_zoom (BsGlueUpCanvas *self)
{
  g_return_val_if_fail (BS_IS_GLUE_UP_CANVAS (self), 1.0);

  return self->zoom;
}

double
bs_glue_up_canvas_get_per_mm (BsGlueUpCanvas *self)
{
  g_return_val_if_fail (BS_IS_GLUE_UP_CANVAS (self), 0.0);

  return self->layout.section.per_mm_across / self->zoom;
}

double
bs_glue_up_canvas_find_middle (BsGlueUpCanvas *self)
{
  g_return_val_if_fail (BS_IS_GLUE_UP_CANVAS (self), 0.0);

  BsSeat *seat = bs_glue_up_seats_get_selected (self);
  double left = self->horizontal != NULL ? gtk_adjustment_get_value (self->horizontal) : 0.0;
  double width = view_size (self->horizontal, self->layout_width, self->zoom);
  double at = seat != NULL ? seat->goal.origin.x + 0.5 * seat->goal.size.width - left : -1.0;
  return at >= 0.0 && at <= width ? at : 0.5 * width;
}

void
bs_glue_up_canvas_set_menu (BsGlueUpCanvas *self, GMenuModel *model)
{
  g_return_if_fail (BS_IS_GLUE_UP_CANVAS (self));

  g_set_object (&self->menu_model, model);
}

void
bs_glue_up_canvas_popup (BsGlueUpCanvas *self)
{
  g_return_if_fail (BS_IS_GLUE_UP_CANVAS (self));

  BsSeat *seat = bs_glue_up_seats_get_selected (self);
  if (seat != NULL)
    popup_at (self, seat->now.origin.x + 0.5f * seat->now.size.width, seat->now.origin.y + 48.0f);
}
