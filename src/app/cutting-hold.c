/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-canvas-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/background.h"
#include "core/sawing-move.h"
#include "words/sawing.h"

/* Carrying a piece: while it is held, the session shows what putting it down here would give. Where
 * the others can stay, that is found at once; where they cannot, a thread plans them anew. Let go,
 * that very plan is pushed; Esc, a broken gesture or a place where it cannot lie leaves everything
 * as it was. */

/* How near a stop catches a piece, in pixels. */
#define CATCH 9.0

/* How near the view's edge the view begins to scroll, and how far at each motion, in pixels. */
#define SCROLL_ZONE 36.0
#define SCROLL_STEP 18.0

static const BsCut *
get_held (const BsCuttingHold *hold)
{
  return &g_array_index (hold->plan->cuts, BsCut, hold->cut);
}

static void
clear_target (BsCuttingTarget *target)
{
  g_clear_pointer (&target->board, g_free);
}

static void
stop_planning (BsCuttingHold *hold)
{
  if (hold->planning != NULL)
    g_cancellable_cancel (hold->planning);
  g_clear_object (&hold->planning);
}

/* Lets go; the session is the caller's to leave or to change. */
static void
let_go (BsCuttingCanvas *self)
{
  BsCuttingHold *hold = &self->hold;

  stop_planning (hold);
  clear_target (&hold->target);
  hold->cut = -1;
  hold->is_dropped = FALSE;
  hold->is_possible = FALSE;
  g_clear_pointer (&hold->plan, bs_plan_unref);
  bs_hand_let_go (&self->hand);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
put_back (gpointer canvas)
{
  BsCuttingCanvas *self = canvas;

  let_go (self);
  bs_session_set_preview (self->session, NULL);
  bs_cutting_canvas_tell (self, NULL);
}

static void
push (BsCuttingCanvas *self)
{
  g_autoptr (BsPlan) plan = bs_plan_ref (self->plan);
  /* Translators: a piece's label, a board's. */
  g_autofree char *label
      = g_strdup_printf (_ ("Cut %s from board %s"),
                         bs_saw_piece_label (self->hold.plan, get_held (&self->hold)->piece),
                         bs_saw_board_label (bs_plan_find_board (plan, self->hold.target.board)));

  let_go (self);
  bs_session_push (self->session, plan, label, NULL);
  int selected = bs_cutting_canvas_get_selected (self);
  if (selected >= 0)
    gtk_widget_grab_focus (self->pieces->pdata[selected]);
}

/* The held piece is the selected one in every plan that is shown. */
static void
select_held (BsCuttingCanvas *self)
{
  const BsCuttingTarget *target = &self->hold.target;
  const char *piece = get_held (&self->hold)->piece;

  for (guint i = 0; i < self->plan->cuts->len; i++)
    {
      const BsCut *cut = &g_array_index (self->plan->cuts, BsCut, i);

      if (g_str_equal (cut->piece, piece) && g_str_equal (cut->board, target->board)
          && fabs (cut->x - target->x) < 1e-6 && fabs (cut->y - target->y) < 1e-6)
        bs_cutting_canvas_select (self, (int)i);
    }
}

/* Shows a plan with the piece put down, and what that costs. */
static void
show_moved (BsCuttingCanvas *self, BsPlan *moved)
{
  BsCuttingHold *hold = &self->hold;

  bs_session_set_preview (self->session, moved);
  select_held (self);
  g_autofree char *words
      = bs_words_cut_move (hold->plan, moved, bs_cutting_canvas_get_selected (self));
  bs_cutting_canvas_tell (self, words);
  hold->is_possible = TRUE;
  if (hold->is_dropped)
    push (self);
}

/* It cannot lie there: everything is shown as it was. */
static void
show_refused (BsCuttingCanvas *self, const char *reason)
{
  BsCuttingHold *hold = &self->hold;
  gboolean is_dropped = hold->is_dropped;

  hold->is_possible = FALSE;
  bs_session_set_preview (self->session, hold->plan);
  bs_cutting_canvas_select (self, hold->cut);
  if (is_dropped)
    put_back (self);
  bs_cutting_canvas_tell (self, reason);
}

/* The thread. */

typedef struct
{
  BsPlan *plan;
  guint cut;
  char *board;
  double x, y;
} Order;

static void
free_order (gpointer data)
{
  Order *order = data;

  bs_plan_unref (order->plan);
  g_free (order->board);
  g_free (order);
}

static void
plan_anew (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Order *order = data;
  GError *error = NULL;

  bs_background_enter ();
  BsPlan *moved
      = bs_saw_move_and_plan (order->plan, order->cut, order->board, order->x, order->y, &error);

  if (moved == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, moved, (GDestroyNotify)bs_plan_unref);
}

/* A result that was cancelled is that of another place. */
static void
planned_cb (GObject *object, GAsyncResult *result, gpointer user_data)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (object);
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) moved = g_task_propagate_pointer (G_TASK (result), &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->hold.planning)
    return;
  g_clear_object (&self->hold.planning);
  if (moved != NULL)
    show_moved (self, moved);
  else
    show_refused (self, error->message);
}

static void
start_planning (BsCuttingCanvas *self)
{
  BsCuttingHold *hold = &self->hold;
  Order *order = g_new (Order, 1);

  *order = (Order){ .plan = bs_plan_ref (hold->plan),
                    .cut = (guint)hold->cut,
                    .board = g_strdup (hold->target.board),
                    .x = hold->target.x,
                    .y = hold->target.y };
  hold->planning = g_cancellable_new ();
  hold->is_possible = FALSE;
  bs_cutting_canvas_tell (self, _ ("The others have to make room: working…"));
  g_autoptr (GTask) task = g_task_new (self, hold->planning, planned_cb, NULL);
  g_task_set_source_tag (task, start_planning);
  g_task_set_task_data (task, order, free_order);
  g_task_run_in_thread (task, plan_anew);
}

/* Where it would be put down now. */

static void
try_target (BsCuttingCanvas *self)
{
  const BsCuttingHold *hold = &self->hold;
  const BsCuttingTarget *target = &hold->target;
  g_autoptr (GError) error = NULL;
  g_autoptr (BsPlan) moved
      = bs_saw_move (hold->plan, (guint)hold->cut, target->board, target->x, target->y, &error);

  stop_planning (&self->hold);
  if (moved != NULL)
    show_moved (self, moved);
  else if (g_error_matches (error, BS_SAW_MOVE_ERROR, BS_SAW_MOVE_ERROR_PLACE))
    start_planning (self);
  else
    show_refused (self, error->message);
}

static void
set_target (BsCuttingCanvas *self, const char *board, double x, double y)
{
  BsCuttingTarget *target = &self->hold.target;

  if (g_strcmp0 (board, target->board) == 0 && fabs (x - target->x) < 1e-6
      && fabs (y - target->y) < 1e-6)
    return;
  if (g_strcmp0 (board, target->board) != 0)
    {
      g_free (target->board);
      target->board = g_strdup (board);
    }
  target->x = x;
  target->y = y;
  try_target (self);
}

static graphene_rect_t
find_held_rect (BsCuttingCanvas *self)
{
  const BsCuttingHold *hold = &self->hold;
  const BsCut *cut = get_held (hold);

  return GRAPHENE_RECT_INIT (
      self->hand.pointer.x - hold->grip.x, self->hand.pointer.y - hold->grip.y,
      (float)(cut->length * self->per_mm), (float)(cut->width * self->per_mm));
}

static void
follow_pointer (BsCuttingCanvas *self)
{
  graphene_rect_t at = find_held_rect (self);
  const BsCut *cut = get_held (&self->hold);
  const BsCuttingRow *row = bs_cutting_canvas_find_row (self, at.origin.y + 0.5f * at.size.height);
  double x, y;

  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (row == NULL)
    return;
  x = (at.origin.x - bs_cutting_canvas_get_left (self)) / self->per_mm;
  y = row->sawn->board->width - (at.origin.y - row->top) / self->per_mm - cut->width;
  bs_saw_snap (self->hold.plan, (guint)self->hold.cut, row->sawn->board->id, CATCH / self->per_mm,
               &x, &y);
  set_target (self, row->sawn->board->id, x, y);
}

static void
begin (BsCuttingCanvas *self, int cut)
{
  BsCuttingHold *hold = &self->hold;
  const BsCut *held;

  bs_history_end_merge (bs_session_get_history (self->session));
  hold->plan = bs_plan_ref (bs_session_get_plan (self->session));
  hold->cut = cut;
  held = get_held (hold);
  hold->target = (BsCuttingTarget){ g_strdup (held->board), held->x, held->y };
}

void
bs_cutting_hold_put (BsCuttingCanvas *self, int cut, const char *board, double x, double y)
{
  const BsCut *held = &g_array_index (self->plan->cuts, BsCut, cut);

  if (self->hand.is_full || bs_session_has_preview (self->session)
      || (g_str_equal (held->board, board) && fabs (held->x - x) < 1e-6
          && fabs (held->y - y) < 1e-6))
    return;
  begin (self, cut);
  bs_hand_hold (&self->hand);
  self->hold.is_dropped = TRUE;
  set_target (self, board, x, y);
}

void
bs_cutting_hold_snapshot (BsCuttingCanvas *self, GtkSnapshot *snapshot)
{
  const BsCuttingHold *hold = &self->hold;

  if (!self->hand.is_full || hold->is_dropped)
    return;
  graphene_rect_t at = find_held_rect (self), around;
  const BsCutStyle style = bs_cutting_canvas_get_style (self);
  graphene_rect_inset_r (&at, -3.0f, -3.0f, &around);
  gtk_snapshot_push_opacity (snapshot, 0.75);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &around);
  cairo_translate (cr, (double)at.origin.x, (double)at.origin.y);
  bs_draw_cut_piece (cr, hold->plan, get_held (hold), &style, BS_MARK_HELD);
  cairo_destroy (cr);
  gtk_snapshot_pop (snapshot);
}

/* The hand. */

static int
find_piece_at (BsCuttingCanvas *self, double x, double y)
{
  const graphene_point_t point = GRAPHENE_POINT_INIT ((float)x, (float)y);

  for (guint i = 0; i < self->plan->cuts->len; i++)
    {
      graphene_rect_t at
          = bs_cutting_canvas_get_rect (self, &g_array_index (self->plan->cuts, BsCut, i));

      if (graphene_rect_contains_point (&at, &point))
        return (int)i;
    }
  return -1;
}

/* Follows the pointer over the edge of the view. */
static void
scroll (BsCuttingCanvas *self)
{
  double from, page;

  if (self->vertical == NULL)
    return;
  bs_cutting_canvas_get_view (self, &from, &page);
  int way = bs_hand_find_scroll ((double)self->hand.pointer.y - from, page, SCROLL_ZONE);
  gtk_adjustment_set_value (self->vertical,
                            gtk_adjustment_get_value (self->vertical) + way * SCROLL_STEP);
}

static gboolean
press (gpointer canvas, double x, double y)
{
  BsCuttingCanvas *self = canvas;
  int cut = find_piece_at (self, x, y);

  if (cut < 0)
    return FALSE;
  bs_cutting_canvas_tell (self, NULL);
  bs_cutting_canvas_select (self, cut);
  gtk_widget_grab_focus (self->pieces->pdata[cut]);
  return TRUE;
}

static gboolean
take (gpointer canvas, double x, double y)
{
  BsCuttingCanvas *self = canvas;
  int cut = bs_cutting_canvas_get_selected (self);

  if (cut < 0 || bs_session_has_preview (self->session))
    return FALSE;
  graphene_rect_t at
      = bs_cutting_canvas_get_rect (self, &g_array_index (self->plan->cuts, BsCut, cut));
  self->hold.grip = GRAPHENE_POINT_INIT ((float)x - at.origin.x, (float)y - at.origin.y);
  begin (self, cut);
  return TRUE;
}

static void
carry (gpointer canvas)
{
  scroll (canvas);
  follow_pointer (canvas);
}

static void
drop (gpointer canvas)
{
  BsCuttingCanvas *self = canvas;

  self->hold.is_dropped = TRUE;
  if (self->hold.planning != NULL)
    return; /* pushed when it is done */
  if (self->hold.is_possible)
    push (self);
  else
    {
      g_autofree char *reason = g_strdup (self->message);

      put_back (self);
      bs_cutting_canvas_tell (self, reason);
    }
}

const BsHandKind bs_cutting_hand = {
  .press = press,
  .take = take,
  .carry = carry,
  .drop = drop,
  .put_back = put_back,
};
