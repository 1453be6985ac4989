/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/cutting-canvas-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/appearance.h"
#include "app/cutting-piece.h"
#include "words/sawing.h"

enum
{
  PROP_0,
  PROP_SELECTED,
  PROP_MESSAGE,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (BsCuttingCanvas, bs_cutting_canvas, GTK_TYPE_WIDGET)

double
bs_cutting_canvas_get_left (BsCuttingCanvas *self)
{
  return ceil (bs_cut_picture_margin (self->text_size) + 0.5 * self->text_size);
}

BsCutStyle
bs_cutting_canvas_get_style (BsCuttingCanvas *self)
{
  return (BsCutStyle){
    .per_mm = self->per_mm,
    .hairline = 1.0,
    .text_size = self->text_size,
    .palette = self->palette,
    .selected = self->selected,
    .selected_copy = self->selected_copy,
    .mark = self->hold.cut >= 0 ? BS_MARK_HELD : BS_MARK_SELECTED,
  };
}

void
bs_cutting_canvas_tell (BsCuttingCanvas *self, const char *message)
{
  if (g_strcmp0 (self->message, message) == 0)
    return;
  g_free (self->message);
  self->message = g_strdup (message);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_MESSAGE]);
}

/* Layout. */

static GtkSizeRequestMode
bs_cutting_canvas_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

#define LEAST_WIDTH 320

static void
bs_cutting_canvas_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                           int *minimum, int *natural, int *minimum_baseline, int *natural_baseline)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (widget);

  *minimum = *natural = LEAST_WIDTH;
  if (orientation == GTK_ORIENTATION_HORIZONTAL || self->plan == NULL)
    return;
  *minimum = *natural
      = (int)ceil (bs_cutting_rows_measure (self, for_size > 0 ? for_size : LEAST_WIDTH));
}

static void
allocate_pieces (BsCuttingCanvas *self)
{
  for (guint i = 0; i < self->pieces->len; i++)
    {
      const BsCut *cut = &g_array_index (self->plan->cuts, BsCut, i);
      graphene_rect_t at = bs_cutting_canvas_get_rect (self, cut);

      gtk_widget_allocate (self->pieces->pdata[i], MAX (1, (int)ceilf (at.size.width)),
                           MAX (1, (int)ceilf (at.size.height)), -1,
                           gsk_transform_translate (NULL, &at.origin));
    }
}

static void
bs_cutting_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (widget);

  self->width = width;
  bs_cutting_rows_place (self);
  allocate_pieces (self);
}

/* Drawing. */

static void
bs_cutting_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (widget);

  bs_cutting_rows_snapshot (self, snapshot);
  for (guint i = 0; i < self->pieces->len; i++)
    gtk_widget_snapshot_child (widget, self->pieces->pdata[i], snapshot);
  bs_cutting_hold_snapshot (self, snapshot);
}

/* Follows the session. */

static guint
find_copy (const BsPlan *plan, guint cut)
{
  const char *piece = g_array_index (plan->cuts, BsCut, cut).piece;
  guint copy = 0;

  for (guint i = 0; i < cut; i++)
    copy += g_str_equal (g_array_index (plan->cuts, BsCut, i).piece, piece);
  return copy;
}

static int
find_focused (BsCuttingCanvas *self)
{
  GtkWidget *focused = gtk_widget_get_focus_child (GTK_WIDGET (self));

  for (guint i = 0; i < self->pieces->len; i++)
    if (self->pieces->pdata[i] == focused && focused != NULL)
      return (int)i;
  return -1;
}

static void
focus_cb (BsCuttingCanvas *self, GParamSpec *pspec, GtkWidget *piece)
{
  g_assert (BS_IS_CUTTING_CANVAS (self));

  int focused = find_focused (self);
  if (gtk_widget_has_focus (piece) && focused >= 0)
    bs_cutting_canvas_select (self, focused);
}

/* The widget that showed the same piece before keeps showing it, with its focus. */
static GtkWidget *
take_piece (BsCuttingCanvas *self, GPtrArray *before, const char *piece)
{
  for (guint i = 0; i < before->len; i++)
    {
      GtkWidget *widget = before->pdata[i];

      if (widget == NULL
          || !g_str_equal (bs_cutting_piece_get_id (BS_CUTTING_PIECE (widget)), piece))
        continue;
      before->pdata[i] = NULL;
      return widget;
    }
  GtkWidget *widget = bs_cutting_piece_new (piece);
  gtk_widget_set_parent (widget, GTK_WIDGET (self));
  g_signal_connect_object (widget, "notify::has-focus", G_CALLBACK (focus_cb), self,
                           G_CONNECT_SWAPPED);
  return widget;
}

static void
describe_pieces (BsCuttingCanvas *self)
{
  for (guint i = 0; i < self->pieces->len; i++)
    {
      const BsCut *cut = &g_array_index (self->plan->cuts, BsCut, i);
      g_autofree char *text = bs_words_cut (self->plan, cut);

      bs_cutting_piece_describe (self->pieces->pdata[i], text,
                                 (int)i == bs_cutting_canvas_get_selected (self));
    }
}

static void
match_pieces (BsCuttingCanvas *self)
{
  g_autoptr (GPtrArray) before = g_steal_pointer (&self->pieces);

  self->pieces = g_ptr_array_new ();
  for (guint i = 0; i < self->plan->cuts->len; i++)
    g_ptr_array_add (self->pieces,
                     take_piece (self, before, g_array_index (self->plan->cuts, BsCut, i).piece));
  for (guint i = 0; i < before->len; i++)
    g_clear_pointer ((GtkWidget **)&before->pdata[i], gtk_widget_unparent);
  describe_pieces (self);
}

static void
changed_cb (BsCuttingCanvas *self)
{
  g_assert (BS_IS_CUTTING_CANVAS (self));

  BsPlan *plan = bs_session_get_results (self->session)->stack->plan;
  guint n_boards = self->plan != NULL ? self->plan->boards->len : 0;
  if (plan == self->plan)
    return;
  int selected = self->plan != NULL ? bs_cutting_canvas_get_selected (self) : -1;
  BsPlan *before = self->plan;
  BsSawRack *rack = self->rack;
  self->plan = bs_plan_ref (plan);
  self->rack = bs_saw_rack_new (plan);
  bs_cutting_rows_match (self);
  g_clear_pointer (&rack, bs_saw_rack_free);
  match_pieces (self);
  if (self->hold.cut < 0 || n_boards != plan->boards->len)
    gtk_widget_queue_resize (GTK_WIDGET (self));
  else
    gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_clear_pointer (&before, bs_plan_unref);
  if (self->hold.cut < 0) /* what was told was about another plan */
    bs_cutting_canvas_tell (self, NULL);
  if (selected != bs_cutting_canvas_get_selected (self))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SELECTED]);
}

static void
bs_cutting_canvas_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (widget);

  GTK_WIDGET_CLASS (bs_cutting_canvas_parent_class)->css_changed (widget, change);
  self->palette = bs_appearance_find_palette (widget);
  self->text_size = 0.9 * bs_appearance_find_text_size (widget);
  gtk_widget_queue_resize (widget);
}

/* Focus. */

/* How far another piece is in a direction; what lies aside counts threefold. INFINITY: not there.
 */
static double
measure_way (const graphene_rect_t *from, const graphene_rect_t *to, GtkDirectionType direction)
{
  graphene_point_t a, b;

  graphene_rect_get_center (from, &a);
  graphene_rect_get_center (to, &b);
  double dx = b.x - a.x, dy = b.y - a.y;
  gboolean is_level = direction == GTK_DIR_LEFT || direction == GTK_DIR_RIGHT;
  double ahead = is_level ? dx : dy, aside = fabs (is_level ? dy : dx);

  if (direction == GTK_DIR_LEFT || direction == GTK_DIR_UP)
    ahead = -ahead;
  return ahead > 1.0 ? ahead + 3.0 * aside : INFINITY;
}

static int
find_next (BsCuttingCanvas *self, int from, GtkDirectionType direction)
{
  const BsCut *cuts = (const BsCut *)self->plan->cuts->data;
  graphene_rect_t here = bs_cutting_canvas_get_rect (self, &cuts[from]);
  double best = INFINITY;
  int found = from;

  for (guint i = 0; i < self->pieces->len; i++)
    {
      graphene_rect_t there = bs_cutting_canvas_get_rect (self, &cuts[i]);
      double way = measure_way (&here, &there, direction);

      if (way >= best)
        continue;
      best = way;
      found = (int)i;
    }
  return found;
}

/* The arrows go among the pieces; Tab enters at the selected one and leaves. */
static gboolean
bs_cutting_canvas_focus (GtkWidget *widget, GtkDirectionType direction)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (widget);
  gboolean is_tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;
  int from = find_focused (self);

  if (self->pieces->len == 0 || (from >= 0 && is_tab))
    return FALSE;
  int to = from >= 0 ? find_next (self, from, direction)
                     : MAX (bs_cutting_canvas_get_selected (self), 0);
  return gtk_widget_grab_focus (self->pieces->pdata[to]);
}

static gboolean
bs_cutting_canvas_grab_focus (GtkWidget *widget)
{
  return bs_cutting_canvas_focus (widget, GTK_DIR_TAB_FORWARD);
}

static void
bs_cutting_canvas_dispose (GObject *object)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (object);

  bs_hand_put_back (&self->hand);
  for (guint i = 0; i < self->pieces->len; i++)
    gtk_widget_unparent (self->pieces->pdata[i]);
  g_ptr_array_set_size (self->pieces, 0);
  g_ptr_array_set_size (self->rows, 0);
  g_clear_pointer (&self->rack, bs_saw_rack_free);
  g_clear_pointer (&self->plan, bs_plan_unref);
  g_clear_object (&self->vertical);
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_cutting_canvas_parent_class)->dispose (object);
}

static void
bs_cutting_canvas_finalize (GObject *object)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (object);

  g_ptr_array_unref (self->pieces);
  g_ptr_array_unref (self->rows);
  g_free (self->message);
  g_free (self->selected);
  G_OBJECT_CLASS (bs_cutting_canvas_parent_class)->finalize (object);
}

static void
bs_cutting_canvas_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  BsCuttingCanvas *self = BS_CUTTING_CANVAS (object);

  switch (id)
    {
    case PROP_SELECTED:
      g_value_set_int (value, bs_cutting_canvas_get_selected (self));
      break;
    case PROP_MESSAGE:
      g_value_set_string (value, self->message);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
bs_cutting_canvas_class_init (BsCuttingCanvasClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  object_class->dispose = bs_cutting_canvas_dispose;
  object_class->finalize = bs_cutting_canvas_finalize;
  object_class->get_property = bs_cutting_canvas_get_property;
  widget_class->get_request_mode = bs_cutting_canvas_get_request_mode;
  widget_class->measure = bs_cutting_canvas_measure;
  widget_class->size_allocate = bs_cutting_canvas_size_allocate;
  widget_class->snapshot = bs_cutting_canvas_snapshot;
  widget_class->css_changed = bs_cutting_canvas_css_changed;
  widget_class->focus = bs_cutting_canvas_focus;
  widget_class->grab_focus = bs_cutting_canvas_grab_focus;

  props[PROP_SELECTED] = g_param_spec_int ("selected", NULL, NULL, -1, G_MAXINT, -1,
                                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_MESSAGE] = g_param_spec_string ("message", NULL, NULL, NULL,
                                             G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_css_name (widget_class, "cutting");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST);
}

static void
bs_cutting_canvas_init (BsCuttingCanvas *self)
{
  self->rows = g_ptr_array_new_with_free_func (bs_cutting_row_free);
  self->pieces = g_ptr_array_new ();
  self->palette = bs_palette_light ();
  self->text_size = 12.0;
  self->hold.cut = -1;
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Pieces to cut, board by board"), -1);
  bs_hand_init (&self->hand, GTK_WIDGET (self), &bs_cutting_hand);
}

GtkWidget *
bs_cutting_canvas_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsCuttingCanvas *self = g_object_new (BS_TYPE_CUTTING_CANVAS, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}

void
bs_cutting_canvas_set_adjustment (BsCuttingCanvas *self, GtkAdjustment *vertical)
{
  g_return_if_fail (BS_IS_CUTTING_CANVAS (self));

  g_set_object (&self->vertical, vertical);
  g_signal_connect_object (vertical, "value-changed", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
}

int
bs_cutting_canvas_get_selected (BsCuttingCanvas *self)
{
  g_return_val_if_fail (BS_IS_CUTTING_CANVAS (self), -1);

  guint copy = 0;
  for (guint i = 0; self->selected != NULL && i < self->plan->cuts->len; i++)
    if (g_str_equal (g_array_index (self->plan->cuts, BsCut, i).piece, self->selected)
        && copy++ == self->selected_copy)
      return (int)i;
  return -1;
}

void
bs_cutting_canvas_select (BsCuttingCanvas *self, int cut)
{
  g_return_if_fail (BS_IS_CUTTING_CANVAS (self));
  g_return_if_fail (cut < (int)self->plan->cuts->len);

  if (cut == bs_cutting_canvas_get_selected (self))
    return;
  g_clear_pointer (&self->selected, g_free);
  if (cut >= 0)
    {
      self->selected = g_strdup (g_array_index (self->plan->cuts, BsCut, cut).piece);
      self->selected_copy = find_copy (self->plan, (guint)cut);
    }
  describe_pieces (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SELECTED]);
  if (self->selected != NULL && bs_plan_find_lamination (self->plan, self->selected) != NULL)
    bs_session_select (self->session, self->selected);
}

const char *
bs_cutting_canvas_get_message (BsCuttingCanvas *self)
{
  g_return_val_if_fail (BS_IS_CUTTING_CANVAS (self), NULL);

  return self->message;
}

gboolean
bs_cutting_canvas_is_holding (BsCuttingCanvas *self)
{
  g_return_val_if_fail (BS_IS_CUTTING_CANVAS (self), FALSE);

  return self->hold.cut >= 0;
}
