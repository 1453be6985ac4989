/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/board-canvas.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/board-fields.h"
#include "app/board-hold.h"
#include "app/hand.h"
#include "core/limits.h"
#include "plan/edits.h"
#include "words/words.h"

#define LEAST_HEIGHT 200
#define USUAL_HEIGHT 240
#define LEAST_DRAWN 3.0 /* device units: less was a click */
#define STEP 10.0       /* mm, by an arrow */
#define FINE_STEP 1.0

struct _BsBoardCanvas
{
  GtkWidget parent_instance;

  GtkWidget *menu; /* GtkPopover: what a defect is */

  /* owned */
  BsSession *session;
  BsPhotos *photos;
  char *id;

  BsBoardScale scale;
  int selected; /* defect, or -1 */
  BsHand hand;
  BsHold hold;         /* what is pressed or held */
  gboolean is_waiting; /* a new one, for its kind */
  BsDefect shown;      /* the held or waiting defect as it would be */
};

G_DEFINE_FINAL_TYPE (BsBoardCanvas, bs_board_canvas, GTK_TYPE_WIDGET)

static const BsBoard *
get_board (BsBoardCanvas *self)
{
  return self->id != NULL ? bs_plan_find_board (bs_session_get_plan (self->session), self->id)
                          : NULL;
}

static const BsDefect *
get_selected (BsBoardCanvas *self, const BsBoard *board)
{
  return self->selected >= 0 && self->selected < (int)board->defects->len
             ? &g_array_index (board->defects, BsDefect, self->selected)
             : NULL;
}

/* Edits. */

/* Takes the copy over. */
static void
push_board (BsBoardCanvas *self, BsBoard *copy, const char *label)
{
  g_autoptr (BsBoard) board = copy;
  g_autoptr (BsPlan) edited = bs_edit_put_board (bs_session_get_plan (self->session), board);

  bs_session_push (self->session, edited, label, NULL);
}

/* Writes what and where a defect is, of which there may be more to know. */
static void
push_defect (BsBoardCanvas *self, int index, const BsDefect *as, const char *label)
{
  const BsBoard *board = get_board (self);
  BsDefect defect = *as;

  if (board == NULL || (index < 0 && board->defects->len >= BS_MAX_DEFECTS))
    return;
  BsBoard *copy = bs_board_copy (board);
  defect.unknown = NULL;
  if (index < 0)
    g_array_append_val (copy->defects, defect);
  else
    {
      BsDefect *own = &g_array_index (copy->defects, BsDefect, index);
      defect.unknown = own->unknown;
      *own = defect;
    }
  self->selected = index < 0 ? (int)copy->defects->len - 1 : index;
  push_board (self, copy, label);
}

static void
strike_out (BsBoardCanvas *self)
{
  const BsBoard *board = get_board (self);

  if (board == NULL || get_selected (self, board) == NULL)
    return;
  BsBoard *copy = bs_board_copy (board);
  g_array_remove_index (copy->defects, (guint)self->selected);
  self->selected = -1;
  push_board (self, copy, _ ("Strike out a defect"));
}

/* What a defect is: chosen from a menu beside it. */

static void
kind_clicked_cb (GtkButton *button, BsBoardCanvas *self)
{
  const BsBoard *board = get_board (self);
  const BsDefect *selected = board != NULL ? get_selected (self, board) : NULL;
  gboolean is_new = self->is_waiting;
  BsDefect defect = self->shown;

  if (!is_new && selected != NULL)
    defect = *selected;
  defect.kind = (BsDefectKind)GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "kind"));
  gtk_popover_popdown (GTK_POPOVER (self->menu));
  if (is_new)
    push_defect (self, -1, &defect, _ ("Draw a defect"));
  else if (selected != NULL)
    push_defect (self, self->selected, &defect, _ ("Change a defect"));
}

static void
strike_out_clicked_cb (GtkButton *button, BsBoardCanvas *self)
{
  gtk_popover_popdown (GTK_POPOVER (self->menu));
  strike_out (self);
}

static void
menu_closed_cb (BsBoardCanvas *self, GtkPopover *menu)
{
  self->is_waiting = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static GtkWidget *
menu_item_new (const char *label)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_label_set_xalign (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), 0.0f);
  return button;
}

static GtkWidget *
menu_contents_new (BsBoardCanvas *self, gboolean with_strike_out)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  for (int kind = 0; kind < BS_N_DEFECT_KINDS; kind++)
    {
      GtkWidget *button = menu_item_new (bs_words_defect ((BsDefectKind)kind));
      g_object_set_data (G_OBJECT (button), "kind", GINT_TO_POINTER (kind));
      g_signal_connect (button, "clicked", G_CALLBACK (kind_clicked_cb), self);
      gtk_box_append (GTK_BOX (box), button);
    }
  if (with_strike_out)
    {
      GtkWidget *button = menu_item_new (_ ("Strike out"));
      g_signal_connect (button, "clicked", G_CALLBACK (strike_out_clicked_cb), self);
      gtk_box_append (GTK_BOX (box), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
      gtk_box_append (GTK_BOX (box), button);
    }
  return box;
}

static void
show_menu (BsBoardCanvas *self, const BsDefect *defect, gboolean is_new)
{
  const BsBoard *board = get_board (self);
  cairo_rectangle_t at;

  bs_board_scale_place (&self->scale, board, defect->face, defect->x_from, defect->x_to,
                        defect->across_from, defect->across_to, &at);
  gtk_popover_set_pointing_to (
      GTK_POPOVER (self->menu),
      &(GdkRectangle){ (int)at.x, (int)at.y, MAX ((int)at.width, 1), MAX ((int)at.height, 1) });
  gtk_popover_set_child (GTK_POPOVER (self->menu), menu_contents_new (self, !is_new));
  self->is_waiting = is_new;
  self->shown = *defect;
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

/* The pointer. */

static gboolean
press (gpointer canvas, double x, double y)
{
  BsBoardCanvas *self = canvas;
  const BsBoard *board = get_board (self);

  gtk_widget_grab_focus (canvas);
  if (board == NULL || !bs_hold_begin (&self->hold, &self->scale, board, self->selected, x, y))
    return FALSE;
  self->selected = self->hold.defect;
  gtk_widget_queue_draw (canvas);
  return TRUE;
}

static gboolean
take (gpointer canvas, double x, double y)
{
  return get_board (canvas) != NULL;
}

static void
carry (gpointer canvas)
{
  BsBoardCanvas *self = canvas;

  self->shown = bs_hold_drag (&self->hold, &self->scale, get_board (self),
                              (double)self->hand.pointer.x, (double)self->hand.pointer.y);
  gtk_widget_queue_draw (canvas);
}

static void
put_back (gpointer canvas)
{
  bs_hand_let_go (&BS_BOARD_CANVAS (canvas)->hand);
  gtk_widget_queue_draw (canvas);
}

static void
drop (gpointer canvas)
{
  BsBoardCanvas *self = canvas;

  put_back (self);
  if (self->hold.kind == BS_HOLD_NEW)
    show_menu (self, &self->shown, TRUE);
  else
    push_defect (self, self->hold.defect, &self->shown,
                 self->hold.kind == BS_HOLD_BODY ? _ ("Move a defect") : _ ("Resize a defect"));
}

static const BsHandKind hand = {
  .least = LEAST_DRAWN,
  .press = press,
  .take = take,
  .carry = carry,
  .drop = drop,
  .put_back = put_back,
};

static void
menu_pressed_cb (BsBoardCanvas *self, int n_press, double x, double y, GtkGestureClick *click)
{
  const BsBoard *board = get_board (self);

  if (board == NULL)
    return;
  self->selected = bs_hold_find_defect (&self->scale, board, x, y);
  const BsDefect *defect = get_selected (self, board);
  if (defect != NULL)
    show_menu (self, defect, FALSE);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Keys. */

static void
add_by_key (BsBoardCanvas *self, const BsBoard *board)
{
  BsDefect defect;

  bs_board_begin_defect (board, &defect);
  show_menu (self, &defect, TRUE);
}

/* Up on the screen is across the face on some faces and back on others. */
static gboolean
nudge (BsBoardCanvas *self, const BsBoard *board, guint key, GdkModifierType modifiers)
{
  const BsDefect *defect = get_selected (self, board);
  double step = modifiers & GDK_CONTROL_MASK ? FINE_STEP : STEP;
  double dx = key == GDK_KEY_Right ? step : key == GDK_KEY_Left ? -step : 0.0;
  double up = key == GDK_KEY_Up ? step : key == GDK_KEY_Down ? -step : 0.0;

  if (defect == NULL || (fabs (dx) + fabs (up) <= 0.0))
    return GDK_EVENT_PROPAGATE;
  gboolean runs_up = defect->face == BS_FACE_TOP || defect->face == BS_FACE_LEFT;
  double dacross = runs_up ? up : -up;
  BsDefect changed = modifiers & GDK_SHIFT_MASK ? bs_hold_resize (defect, board, dx, dacross)
                                                : bs_hold_move (defect, board, dx, dacross);
  push_defect (self, self->selected, &changed,
               modifiers & GDK_SHIFT_MASK ? _ ("Resize a defect") : _ ("Move a defect"));
  return GDK_EVENT_STOP;
}

static gboolean
key_pressed_cb (BsBoardCanvas *self, guint key, guint code, GdkModifierType modifiers)
{
  const BsBoard *board = get_board (self);

  if (board == NULL)
    return GDK_EVENT_PROPAGATE;
  const BsDefect *defect = get_selected (self, board);
  if (key == GDK_KEY_Insert || key == GDK_KEY_KP_Insert)
    add_by_key (self, board);
  else if (key == GDK_KEY_space && board->defects->len > 0)
    self->selected = (self->selected + 1) % (int)board->defects->len;
  else if (key == GDK_KEY_Delete && defect != NULL)
    strike_out (self);
  else if ((key == GDK_KEY_Return || key == GDK_KEY_Menu) && defect != NULL)
    show_menu (self, defect, FALSE);
  else
    return nudge (self, board, key, modifiers);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return GDK_EVENT_STOP;
}

/* The picture. */

static void
draw_frame (BsBoardCanvas *self, cairo_t *cr, const BsBoard *board, const BsDefect *defect,
            gboolean with_corners, const BsPalette *palette)
{
  cairo_rectangle_t at;

  bs_board_scale_place (&self->scale, board, defect->face, defect->x_from, defect->x_to,
                        defect->across_from, defect->across_to, &at);
  bs_color_set (&palette->accent, cr);
  cairo_set_line_width (cr, 2.0);
  cairo_rectangle (cr, at.x, at.y, at.width, at.height);
  cairo_stroke (cr);
  for (int corner = 0; with_corners && corner < 4; corner++)
    cairo_rectangle (cr, at.x + (corner & 1 ? at.width : 0.0) - 3.0,
                     at.y + (corner & 2 ? at.height : 0.0) - 3.0, 6.0, 6.0);
  cairo_fill (cr);
}

/* As it would be with what is held where it is held. */
static void
draw_held (BsBoardCanvas *self, cairo_t *cr, BsBoardLook *look, const BsPalette *palette)
{
  const BsBoard *board = look->board;
  g_autoptr (BsBoard) held = bs_board_copy (board);
  BsDefect defect = self->shown;

  if (self->hold.kind != BS_HOLD_NEW)
    {
      BsDefect *own = &g_array_index (held->defects, BsDefect, self->hold.defect);
      defect.unknown = own->unknown;
      *own = defect;
    }
  look->board = held;
  bs_draw_board (cr, look, &self->scale, palette);
  look->board = board;
  draw_frame (self, cr, board, &defect, FALSE, palette);
}

static void
bs_board_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsBoardCanvas *self = BS_BOARD_CANVAS (widget);
  const BsPlan *plan = bs_session_get_plan (self->session);
  const BsPalette *palette = bs_appearance_find_palette (widget);
  const BsBoard *board = get_board (self);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (board == NULL || width <= 0 || height <= 0)
    return;
  bs_board_scale_fit (&self->scale, board, width, height, bs_appearance_find_text_size (widget),
                      1.0);
  BsBoardLook look = {
    .board = board,
    .wood = board->wood != NULL ? bs_plan_find_wood (plan, board->wood) : NULL,
    .top = bs_photos_get (self->photos, board->photo_top),
    .under = bs_photos_get (self->photos, board->photo_underside),
  };
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)width, (float)height));
  if (self->hand.is_full)
    draw_held (self, cr, &look, palette);
  else
    bs_draw_board (cr, &look, &self->scale, palette);
  if (self->is_waiting)
    draw_frame (self, cr, board, &self->shown, FALSE, palette);
  else if (!self->hand.is_full && get_selected (self, board) != NULL)
    draw_frame (self, cr, board, get_selected (self, board), TRUE, palette);
  cairo_destroy (cr);
}

static void
bs_board_canvas_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_VERTICAL ? LEAST_HEIGHT : 300;
  *natural = orientation == GTK_ORIENTATION_VERTICAL ? USUAL_HEIGHT : 600;
}

static void
bs_board_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  gtk_popover_present (GTK_POPOVER (BS_BOARD_CANVAS (widget)->menu));
}

/* What is held was another plan's. */
static void
changed_cb (BsBoardCanvas *self)
{
  bs_hand_put_back (&self->hand);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
bs_board_canvas_dispose (GObject *object)
{
  BsBoardCanvas *self = BS_BOARD_CANVAS (object);

  g_clear_pointer (&self->menu, gtk_widget_unparent);
  g_clear_object (&self->photos);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_board_canvas_parent_class)->dispose (object);
}

static void
bs_board_canvas_finalize (GObject *object)
{
  g_free (BS_BOARD_CANVAS (object)->id);
  G_OBJECT_CLASS (bs_board_canvas_parent_class)->finalize (object);
}

static void
bs_board_canvas_class_init (BsBoardCanvasClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = bs_board_canvas_dispose;
  object_class->finalize = bs_board_canvas_finalize;
  widget_class->measure = bs_board_canvas_measure;
  widget_class->size_allocate = bs_board_canvas_size_allocate;
  widget_class->snapshot = bs_board_canvas_snapshot;

  gtk_widget_class_set_css_name (widget_class, "boardcanvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
bs_board_canvas_init (BsBoardCanvas *self)
{
  GtkGesture *menu = gtk_gesture_click_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->selected = -1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  self->menu = gtk_popover_new ();
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
  g_signal_connect_swapped (self->menu, "closed", G_CALLBACK (menu_closed_cb), self);

  bs_hand_init (&self->hand, GTK_WIDGET (self), &hand);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (menu, "pressed", G_CALLBACK (menu_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (menu));

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

GtkWidget *
bs_board_canvas_new (BsSession *session, BsPhotos *photos)
{
  g_return_val_if_fail (BS_IS_SESSION (session) && BS_IS_PHOTOS (photos), NULL);

  BsBoardCanvas *self = g_object_new (BS_TYPE_BOARD_CANVAS, NULL);
  self->session = g_object_ref (session);
  self->photos = g_object_ref (photos);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (photos, "changed", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

void
bs_board_canvas_set_board (BsBoardCanvas *self, const char *id)
{
  g_return_if_fail (BS_IS_BOARD_CANVAS (self));

  if (g_strcmp0 (self->id, id) == 0)
    return;
  g_free (self->id);
  self->id = g_strdup (id);
  self->selected = -1;
  bs_hand_put_back (&self->hand);
  const BsBoard *board = get_board (self);
  g_autofree char *name
      /* Translators: %s is the label of a board */
      = g_strdup_printf (_ ("The faces of board %s"),
                         board != NULL && board->label != NULL ? board->label : "\u2013");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
