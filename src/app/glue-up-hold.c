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
  if (bs_glue_up_layout_is_in_rack (&self->layout, self->hand.pointer.y))
    return TARGET_RACK;
  return bs_scale_find_gap (&self->layout.section, self->hold.rest,
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

  at.origin.x = self->hand.pointer.x - hold->grip.x * at.size.width;
  if (hold->seat->is_in_rack)
    at.origin.y = self->hand.pointer.y - hold->grip.y * at.size.height;
  return at;
}

/* The hand. */

static gboolean
press (gpointer canvas, double x, double y)
{
  BsGlueUpCanvas *self = canvas;
  BsSeat *seat = bs_glue_up_seats_find_at (self, x, y);

  if (seat == NULL)
    return FALSE;
  bs_session_select (self->session, seat->id);
  gtk_widget_grab_focus (GTK_WIDGET (seat->strip));
  return TRUE;
}

static gboolean
take (gpointer canvas, double x, double y)
{
  BsGlueUpCanvas *self = canvas;
  BsHold *hold = &self->hold;
  BsSeat *seat = bs_glue_up_seats_get_selected (self);
  int place;

  if (seat == NULL)
    return FALSE;
  bs_history_end_merge (bs_session_get_history (self->session));
  hold->seat = seat;
  hold->plan = bs_plan_ref (bs_session_get_plan (self->session));
  self->hand.pointer = GRAPHENE_POINT_INIT ((float)x, (float)y);
  hold->grip = GRAPHENE_POINT_INIT (
      ((float)x - seat->now.origin.x) / seat->now.size.width,
      seat->is_in_rack ? ((float)y - seat->now.origin.y) / seat->now.size.height : 0.5f);
  place = bs_plan_find_place (hold->plan, seat->id);
  hold->target = place >= 0 ? place : TARGET_RACK;
  g_autoptr (BsPlan) rest
      = place >= 0 ? bs_edit_set_aside (hold->plan, place) : bs_plan_ref (hold->plan);
  hold->rest = bs_stack_new (rest);
  bs_glue_up_seats_start_tick (self);
  bs_glue_up_canvas_invalidate (self);
  return TRUE;
}

static void
carry (gpointer canvas)
{
  update_target (canvas);
  gtk_widget_queue_draw (canvas);
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
  bs_hand_let_go (&self->hand);
  bs_glue_up_canvas_invalidate (self);
}

static void
put_back (gpointer canvas)
{
  BsGlueUpCanvas *self = canvas;

  let_go (self);
  bs_session_set_preview (self->session, NULL);
}

static void
drop (gpointer canvas)
{
  BsGlueUpCanvas *self = canvas;
  g_autoptr (BsPlan) plan = bs_plan_ref (bs_session_get_results (self->session)->stack->plan);
  g_autofree char *label = describe_edit (&self->hold, self->hold.target);
  gboolean is_edit = plan != bs_session_get_plan (self->session);

  let_go (self);
  if (is_edit)
    bs_session_push (self->session, plan, label, NULL);
  else
    bs_session_set_preview (self->session, NULL);
}

const BsHandKind bs_glue_up_hand = {
  .press = press,
  .take = take,
  .carry = carry,
  .drop = drop,
  .put_back = put_back,
};

void
bs_glue_up_hold_tick (BsGlueUpCanvas *self)
{
  GtkAdjustment *adjustment = self->horizontal;

  if (adjustment == NULL)
    return;
  double before = gtk_adjustment_get_value (adjustment);
  int way = bs_hand_find_scroll ((double)self->hand.pointer.x - before,
                                 gtk_adjustment_get_page_size (adjustment), SCROLL_ZONE);
  gtk_adjustment_set_value (adjustment, before + way * SCROLL_STEP);
  double by = gtk_adjustment_get_value (adjustment) - before;
  if (by > 0.0 || by < 0.0)
    {
      self->hand.pointer.x += (float)by;
      carry (self);
    }
}
