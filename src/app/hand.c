/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/hand.h"

#include <math.h>

static gboolean
is_beyond_click (const BsHand *self, double dx, double dy)
{
  if (self->kind->least > 0.0)
    return MAX (fabs (dx), fabs (dy)) >= self->kind->least;
  return gtk_drag_check_threshold (self->canvas, 0, 0, (int)dx, (int)dy);
}

void
bs_hand_hold (BsHand *self)
{
  self->is_full = TRUE;
}

void
bs_hand_let_go (BsHand *self)
{
  self->is_full = FALSE;
  gtk_widget_set_cursor (self->canvas, NULL);
}

static void
put_back (BsHand *self)
{
  if (self->is_full)
    self->kind->put_back (self->canvas);
}

void
bs_hand_put_back (BsHand *self)
{
  if (!self->is_full)
    return;
  put_back (self);
  gtk_gesture_set_state (self->drag, GTK_EVENT_SEQUENCE_DENIED); /* or it is taken up again */
}

int
bs_hand_find_scroll (double in_view, double page, double zone)
{
  if (in_view < zone)
    return -1;
  return in_view > page - zone ? 1 : 0;
}

static void
drag_begin_cb (BsHand *self, double x, double y, GtkGesture *drag)
{
  if (self->is_full || !self->kind->press (self->canvas, x, y))
    gtk_gesture_set_state (drag, GTK_EVENT_SEQUENCE_DENIED);
}

static void
drag_update_cb (BsHand *self, double dx, double dy, GtkGesture *drag)
{
  double x, y;

  gtk_gesture_drag_get_start_point (GTK_GESTURE_DRAG (drag), &x, &y);
  if (!self->is_full)
    {
      if (!is_beyond_click (self, dx, dy) || !self->kind->take (self->canvas, x, y))
        return;
      bs_hand_hold (self);
      gtk_gesture_set_state (drag, GTK_EVENT_SEQUENCE_CLAIMED);
      gtk_widget_set_cursor_from_name (self->canvas, "grabbing");
    }
  self->pointer = GRAPHENE_POINT_INIT ((float)(x + dx), (float)(y + dy));
  self->kind->carry (self->canvas);
}

static void
drag_end_cb (BsHand *self, double dx, double dy, GtkGesture *drag)
{
  if (self->is_full && is_beyond_click (self, dx, dy))
    self->kind->drop (self->canvas);
  else
    put_back (self);
}

static void
cancel_cb (BsHand *self, GdkEventSequence *sequence, GtkGesture *drag)
{
  put_back (self);
}

static gboolean
key_pressed_cb (BsHand *self, guint key, guint code, GdkModifierType modifiers)
{
  if (!self->is_full)
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_Escape)
    bs_hand_put_back (self);
  return GDK_EVENT_STOP;
}

void
bs_hand_init (BsHand *self, GtkWidget *canvas, const BsHandKind *kind)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  *self = (BsHand){ .canvas = canvas, .kind = kind, .drag = gtk_gesture_drag_new () };
  g_signal_connect_swapped (self->drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (self->drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (self->drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect_swapped (self->drag, "cancel", G_CALLBACK (cancel_cb), self);
  gtk_widget_add_controller (canvas, GTK_EVENT_CONTROLLER (self->drag));

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (canvas, keys);
}
