/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-canvas-private.h"

#include <glib/gi18n.h>

#include "plan/edits.h"

/* Carrying a lamination: while it is held, the session shows what putting it down here would give;
 * let go, that very plan is pushed; Esc, or a broken gesture, leaves everything as it was. */

#define TARGET_RACK (-1)

/* How near the view's edge the view begins to scroll, and how far in a frame, in pixels. */
#define SCROLL_ZONE 48.0
#define SCROLL_STEP 12.0

static gboolean
is_holding (BsGlueUpCanvas *self)
{
  return self->hold.seat != NULL;
}

/* The plan with it put down at a target. */
static BsPlan *
put_down (const BsHold *hold, int target)
{
  int from = bs_plan_find_place (hold->plan, hold->seat->id);

  if (target == TARGET_RACK)
    return from >= 0 ? bs_edit_set_aside (hold->plan, from) : bs_plan_ref (hold->plan);
  if (from >= 0)
    return bs_edit_move (hold->plan, from, target);
  return bs_edit_bring_back (hold->plan, hold->seat->id, target);
}

static char *
describe_edit (const BsHold *hold, int target)
{
  const BsLamination *lamination = bs_plan_find_lamination (hold->plan, hold->seat->id);
  const char *label = lamination->label != NULL ? lamination->label : lamination->id;

  if (target == TARGET_RACK)
    /* Translators: %s is a lamination's label. */
    return g_strdup_printf (_ ("Set %s aside"), label);
  if (bs_plan_find_place (hold->plan, hold->seat->id) < 0)
    return g_strdup_printf (_ ("Bring %s back"), label);
  return g_strdup_printf (_ ("Move %s to place %d"), label, target + 1);
}

/* The others make room when the held one's leading edge passes their middle. In the rest of the
 * slab, which has no room for it, that is where its left edge lies, whichever way it comes. */
static int
find_target (BsGlueUpCanvas *self)
{
  const BsHold *hold = &self->hold;

  if (bs_glue_up_layout_is_in_rack (&self->layout, hold->pointer.y))
    return TARGET_RACK;
  return bs_scale_find_gap (&self->layout.section, hold->rest,
                            bs_glue_up_hold_place (self).origin.x);
}

static void
update_target (BsGlueUpCanvas *self)
{
  int target = find_target (self);

  if (target == self->hold.target)
    return;
  self->hold.target = target;
  g_autoptr (BsPlan) plan = put_down (&self->hold, target);
  bs_session_set_preview (self->session, plan);
}

graphene_rect_t
bs_glue_up_hold_place (BsGlueUpCanvas *self)
{
  const BsHold *hold = &self->hold;
  graphene_rect_t at = hold->seat->goal;

  at.origin.x = hold->pointer.x - hold->grip.x * at.size.width;
  if (hold->seat->is_in_rack)
    at.origin.y = hold->pointer.y - hold->grip.y * at.size.height;
  return at;
}

static void
pick_up (BsGlueUpCanvas *self, BsSeat *seat, double x, double y)
{
  BsHold *hold = &self->hold;
  int place;

  bs_history_end_merge (bs_session_get_history (self->session));
  hold->seat = seat;
  hold->plan = bs_plan_ref (bs_session_get_plan (self->session));
  hold->pointer = GRAPHENE_POINT_INIT ((float)x, (float)y);
  hold->grip = GRAPHENE_POINT_INIT (
      ((float)x - seat->now.origin.x) / seat->now.size.width,
      seat->is_in_rack ? ((float)y - seat->now.origin.y) / seat->now.size.height : 0.5f);
  place = bs_plan_find_place (hold->plan, seat->id);
  hold->target = place >= 0 ? place : TARGET_RACK;
  g_autoptr (BsPlan) rest
      = place >= 0 ? bs_edit_set_aside (hold->plan, place) : bs_plan_ref (hold->plan);
  hold->rest = bs_stack_new (rest);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "grabbing");
  bs_glue_up_seats_start_tick (self);
  bs_glue_up_canvas_invalidate (self);
}

/* Lets go; what follows slides from where it was held. */
static void
let_go (BsGlueUpCanvas *self)
{
  BsHold *hold = &self->hold;

  hold->seat->now = bs_glue_up_hold_place (self);
  hold->seat = NULL;
  g_clear_pointer (&hold->plan, bs_plan_unref);
  g_clear_pointer (&hold->rest, bs_stack_free);
  gtk_widget_set_cursor (GTK_WIDGET (self), NULL);
  bs_glue_up_canvas_invalidate (self);
}

void
bs_glue_up_hold_cancel (BsGlueUpCanvas *self)
{
  if (!is_holding (self))
    return;
  let_go (self);
  bs_session_set_preview (self->session, NULL);
}

static void
drop (BsGlueUpCanvas *self)
{
  g_autoptr (BsPlan) plan = bs_plan_ref (bs_session_get_results (self->session)->stack->plan);
  g_autofree char *label = describe_edit (&self->hold, self->hold.target);
  gboolean is_edit = plan != bs_session_get_plan (self->session);

  let_go (self);
  if (is_edit)
    bs_session_push (self->session, plan, label, NULL);
  else
    bs_session_set_preview (self->session, NULL);
}

/* How far to scroll when the pointer is at this place of the view. */
static double
find_scroll (GtkAdjustment *adjustment, double at)
{
  double view = gtk_adjustment_get_page_size (adjustment);
  double in_view = at - gtk_adjustment_get_value (adjustment);

  if (in_view < SCROLL_ZONE)
    return -SCROLL_STEP;
  return in_view > view - SCROLL_ZONE ? SCROLL_STEP : 0.0;
}

void
bs_glue_up_hold_tick (BsGlueUpCanvas *self)
{
  GtkAdjustment *adjustment = self->horizontal;

  if (adjustment == NULL)
    return;
  double before = gtk_adjustment_get_value (adjustment);
  gtk_adjustment_set_value (adjustment, before + find_scroll (adjustment, self->hold.pointer.x));
  double by = gtk_adjustment_get_value (adjustment) - before;
  if (by > 0.0 || by < 0.0)
    {
      self->hold.pointer.x += (float)by;
      update_target (self);
      gtk_widget_queue_draw (GTK_WIDGET (self));
    }
}

/* The gesture. */

static void
drag_begin_cb (GtkGestureDrag *gesture, double x, double y, BsGlueUpCanvas *self)
{
  BsSeat *seat = bs_glue_up_seats_find_at (self, x, y);

  if (seat == NULL)
    {
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  bs_session_select (self->session, seat->id);
  gtk_widget_grab_focus (GTK_WIDGET (seat->strip));
}

static void
drag_update_cb (GtkGestureDrag *gesture, double dx, double dy, BsGlueUpCanvas *self)
{
  double x, y;

  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  if (!is_holding (self))
    {
      BsSeat *seat = bs_glue_up_seats_get_selected (self);

      if (seat == NULL || !gtk_drag_check_threshold (GTK_WIDGET (self), 0, 0, (int)dx, (int)dy))
        return;
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
      pick_up (self, seat, x, y);
    }
  self->hold.pointer = GRAPHENE_POINT_INIT ((float)(x + dx), (float)(y + dy));
  update_target (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
drag_end_cb (GtkGestureDrag *gesture, double dx, double dy, BsGlueUpCanvas *self)
{
  if (is_holding (self))
    drop (self);
}

static void
cancel_cb (GtkGesture *gesture, GdkEventSequence *sequence, BsGlueUpCanvas *self)
{
  bs_glue_up_hold_cancel (self);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType modifiers,
                BsGlueUpCanvas *self)
{
  if (!is_holding (self))
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_Escape)
    {
      bs_glue_up_hold_cancel (self);
      gtk_gesture_set_state (self->hold.gesture, GTK_EVENT_SEQUENCE_DENIED);
    }
  return GDK_EVENT_STOP; /* nothing else changes the plan under the hand */
}

void
bs_glue_up_hold_init (BsGlueUpCanvas *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  GtkEventController *keys = gtk_event_controller_key_new ();

  self->hold.gesture = drag;
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (cancel_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
