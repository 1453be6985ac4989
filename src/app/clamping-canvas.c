/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/clamping-canvas.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/actions.h"
#include "app/appearance.h"
#include "app/clamp-edits.h"
#include "app/hand.h"
#include "app/live-pressure.h"
#include "core/units.h"
#include "draw/pressing.h"
#include "plan/edits.h"
#include "words/pressing.h"

/* Pixels. */
#define MOST_SLAB_HEIGHT 460.0
#define CURVE_HEIGHT 170.0
#define LEAST_WIDTH 420

#define LEAST_MOVED 1.0 /* pixels */

#define TIGHTEN_BY 0.05 /* part of a kind's greatest force, for one press of a key */

struct _BsClampingCanvas
{
  GtkWidget parent_instance;

  BsSession *session;
  BsPressingScale scale;
  BsPressingChoice choice;
  double legend_height;
  BsHand hand;
  BsPlan *held_plan; /* while a clamp is dragged: the plan that it is dragged in */
  guint held;        /* its place there */
  double grip;       /* from where it was to where it was taken hold of, pixels */
};

G_DEFINE_FINAL_TYPE (BsClampingCanvas, bs_clamping_canvas, GTK_TYPE_WIDGET)

static const BsResults *
get_results (BsClampingCanvas *self)
{
  return bs_session_get_results (self->session);
}

/* The glue line of the curve: the chosen one, or the weakest; -1: none. */
static int
find_shown_line (BsClampingCanvas *self, const BsPressure *pressure)
{
  guint n = pressure != NULL ? bs_pressure_get_n_lines (pressure) : 0;

  if (self->choice.line >= 0 && (guint)self->choice.line < n)
    return self->choice.line;
  return n > 0 ? (int)(pressure->layout.pressures.weakest - pressure->press.first_course) : -1;
}

/* Says what is chosen. */
static void
describe (BsClampingCanvas *self)
{
  const BsResults *results = get_results (self);
  g_autofree char *text
      = self->choice.clamp >= 0
            ? bs_words_clamp (results, (guint)self->choice.clamp)
            : g_strdup (_ ("Clamps along the slab; the arrow keys go from one to the next"));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

static void
choose_clamp (BsClampingCanvas *self, int clamp)
{
  self->choice.clamp = clamp;
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
choose_line (BsClampingCanvas *self, int line)
{
  self->choice.line = line;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
changed_cb (BsClampingCanvas *self)
{
  g_assert (BS_IS_CLAMPING_CANVAS (self));

  const BsResults *results = get_results (self);

  self->choice.clamp = MIN (self->choice.clamp, (int)results->set_clamps->len - 1);
  self->choice.line = MIN (self->choice.line, (int)results->stack->n - 2);
  describe (self);
  gtk_widget_set_visible (GTK_WIDGET (self),
                          results->stack->n >= 2); /* or nothing is to be pressed */
  if (self->held_plan == NULL)
    gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Layout. */

static double
measure_legend (BsClampingCanvas *self, int width, const BsPressure *pressure)
{
  if (pressure == NULL || bs_pressure_get_n_lines (pressure) == 0)
    return 0.0;

  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR, NULL);
  cairo_t *cr = cairo_create (surface);
  double height
      = bs_draw_pressing_legend (cr, pressure, &self->scale, width, bs_palette_light (), FALSE);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return height;
}

/* Returns the height of it all. Without pressures there is no legend and no curve. */
static double
lay_out (BsClampingCanvas *self, int width)
{
  const BsPressure *pressure = bs_live_pressure_get (self->session);

  bs_pressing_scale_fit (&self->scale, get_results (self), width, MOST_SLAB_HEIGHT,
                         bs_appearance_find_text_size (GTK_WIDGET (self)), 1.0);
  self->legend_height = measure_legend (self, width, pressure);
  return bs_pressing_scale_get_height (&self->scale) + self->legend_height
         + (self->legend_height > 0.0 ? CURVE_HEIGHT : 0.0);
}

static GtkSizeRequestMode
bs_clamping_canvas_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
bs_clamping_canvas_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                            int *minimum, int *natural, int *minimum_baseline,
                            int *natural_baseline)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = LEAST_WIDTH;
  else
    *minimum = *natural = (int)ceil (lay_out (self, for_size > 0 ? for_size : LEAST_WIDTH));
}

static void
bs_clamping_canvas_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  lay_out (BS_CLAMPING_CANVAS (widget), width);
}

static void
draw (BsClampingCanvas *self, cairo_t *cr, const BsPalette *palette)
{
  const BsPressure *pressure = bs_live_pressure_get (self->session);
  double bottom = bs_pressing_scale_get_height (&self->scale);
  BsPressingChoice shown = { self->choice.clamp, find_shown_line (self, pressure) };

  bs_draw_pressing (cr, get_results (self), pressure, &self->scale, palette, shown);
  if (pressure == NULL || shown.line < 0)
    return;
  cairo_save (cr);
  cairo_translate (cr, 0.0, bottom);
  bs_draw_pressing_legend (cr, pressure, &self->scale, gtk_widget_get_width (GTK_WIDGET (self)),
                           palette, TRUE);
  cairo_restore (cr);
  bs_draw_pressing_curve (cr, pressure, (guint)shown.line, &self->scale,
                          bottom + self->legend_height, CURVE_HEIGHT, palette);
}

static void
bs_clamping_canvas_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)width, (float)height));

  draw (BS_CLAMPING_CANVAS (widget), cr, bs_appearance_find_palette (widget));
  cairo_destroy (cr);
}

/* Dragging. */

/* To the millimetre or the sixteenth of an inch, and where both outer faces bear. */
static double
fit_x (BsClampingCanvas *self, double x)
{
  const BsResults *results = get_results (self);
  const BsPressure *pressure = bs_live_pressure_get (self->session);
  double step = results->stack->plan->units == BS_UNIT_SYSTEM_INCH ? BS_MM_PER_INCH / 16.0 : 1.0;
  double from = 0.0, to = results->stack->length;

  if (pressure != NULL && pressure->press.pieces != NULL)
    bs_press_plan_find_room (&pressure->press, &from, &to);
  return step * CLAMP (round (x / step), floor (from / step) + 1.0, ceil (to / step) - 1.0);
}

static gboolean
press (gpointer canvas, double x, double y)
{
  BsClampingCanvas *self = canvas;
  const BsResults *results = get_results (self);
  int clamp = bs_pressing_scale_find_clamp (&self->scale, results, x, y);
  int line = bs_pressing_scale_find_line (&self->scale, results, x, y);

  gtk_widget_grab_focus (canvas);
  if (clamp >= 0)
    choose_clamp (self, clamp);
  else if (line >= 0)
    choose_line (self, line);
  return clamp >= 0;
}

static gboolean
take (gpointer canvas, double x, double y)
{
  BsClampingCanvas *self = canvas;
  const BsResults *results = get_results (self);
  int clamp = self->choice.clamp;

  if (clamp < 0)
    return FALSE;
  self->held_plan = bs_clamp_edits_begin (bs_session_get_plan (self->session), results);
  self->held = (guint)clamp;
  self->grip
      = x - g_array_index (results->set_clamps, BsLayoutClamp, clamp).x * self->scale.per_mm_along;
  return TRUE;
}

static void
carry (gpointer canvas)
{
  BsClampingCanvas *self = canvas;
  guint moved_to;

  if (self->held >= self->held_plan->placed_clamps->len)
    return;
  double x = ((double)self->hand.pointer.x - self->grip) / self->scale.per_mm_along;
  g_autoptr (BsPlan) moved
      = bs_edit_move_clamp (self->held_plan, self->held, fit_x (self, x), &moved_to);
  self->choice.clamp = (int)moved_to;
  bs_session_set_preview (self->session, moved);
}

static void
let_go (BsClampingCanvas *self)
{
  g_clear_pointer (&self->held_plan, bs_plan_unref);
  bs_hand_let_go (&self->hand);
}

static void
put_back (gpointer canvas)
{
  BsClampingCanvas *self = canvas;

  let_go (self);
  self->choice.clamp = (int)self->held;
  bs_session_set_preview (self->session, NULL);
}

static void
drop (gpointer canvas)
{
  BsClampingCanvas *self = canvas;
  g_autoptr (BsPlan) moved = bs_plan_ref (get_results (self)->stack->plan);
  gboolean is_edit = bs_session_has_preview (self->session);

  let_go (self);
  if (is_edit)
    bs_session_push (self->session, moved, _ ("Move a clamp"), NULL);
}

static const BsHandKind hand = {
  .least = LEAST_MOVED,
  .press = press,
  .take = take,
  .carry = carry,
  .drop = drop,
  .put_back = put_back,
};

/* Keys. */

static void
choose_action (GtkWidget *widget, const char *name, GVariant *target)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (widget);
  int n = (int)get_results (self)->set_clamps->len, by = g_variant_get_int32 (target);

  if (n > 0 && self->held_plan == NULL)
    choose_clamp (self, self->choice.clamp < 0 ? (by > 0 ? 0 : n - 1)
                                               : CLAMP (self->choice.clamp + by, 0, n - 1));
}

static void
choose_line_action (GtkWidget *widget, const char *name, GVariant *target)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (widget);
  int n = (int)get_results (self)->stack->n - 1;
  int line = find_shown_line (self, bs_live_pressure_get (self->session));

  if (line >= 0)
    choose_line (self, CLAMP (line + g_variant_get_int32 (target), 0, n - 1));
}

/* The plan with its clamps placed, if one is chosen; the caller's. */
static BsPlan *
begin_edit (BsClampingCanvas *self)
{
  if (self->choice.clamp < 0 || self->held_plan != NULL)
    return NULL;
  return bs_clamp_edits_begin (bs_session_get_plan (self->session), get_results (self));
}

static const BsPlacedClamp *
get_chosen (BsClampingCanvas *self, const BsPlan *plan)
{
  return &g_array_index (plan->placed_clamps, BsPlacedClamp, self->choice.clamp);
}

static void
move_action (GtkWidget *widget, const char *name, GVariant *target)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (widget);
  g_autoptr (BsPlan) plan = begin_edit (self);
  guint moved_to;

  if (plan == NULL)
    return;
  double x = fit_x (self, get_chosen (self, plan)->x + g_variant_get_int32 (target));
  g_autoptr (BsPlan) moved = bs_edit_move_clamp (plan, (guint)self->choice.clamp, x, &moved_to);
  self->choice.clamp = (int)moved_to;
  bs_session_push (self->session, moved, _ ("Move a clamp"), "move-clamp");
}

static void
tighten_action (GtkWidget *widget, const char *name, GVariant *target)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (widget);
  g_autoptr (BsPlan) plan = begin_edit (self);

  if (plan == NULL)
    return;
  const BsPlacedClamp *clamp = get_chosen (self, plan);
  const BsClampKind *kind
      = g_ptr_array_index (plan->shop.clamps, (guint)bs_plan_find_clamp_kind (plan, clamp->kind));
  double force = clamp->force_n + g_variant_get_int32 (target) * TIGHTEN_BY * kind->max_force_n;
  g_autoptr (BsPlan) tightened = bs_edit_tighten_clamp (plan, (guint)self->choice.clamp,
                                                        CLAMP (force, 0.0, kind->max_force_n));
  bs_session_push (self->session, tightened, _ ("Tighten a clamp"), "tighten-clamp");
}

static void
turn_over_action (GtkWidget *widget, const char *name, GVariant *target)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (widget);
  g_autoptr (BsPlan) plan = begin_edit (self);

  if (plan == NULL)
    return;
  g_autoptr (BsPlan) turned
      = bs_edit_turn_clamp (plan, (guint)self->choice.clamp, !get_chosen (self, plan)->is_above);
  bs_session_push (self->session, turned, _ ("Turn a clamp over"), NULL);
}

static void
take_off_action (GtkWidget *widget, const char *name, GVariant *target)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (widget);
  g_autoptr (BsPlan) plan = begin_edit (self);

  if (plan == NULL)
    return;
  g_autoptr (BsPlan) without = bs_edit_take_off_clamp (plan, (guint)self->choice.clamp);
  bs_session_push (self->session, without, _ ("Take off a clamp"), NULL);
}

static void
add_action (GtkWidget *widget, const char *name, GVariant *target)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (widget);
  guint placed_at = 0;

  if (self->held_plan != NULL)
    return;
  g_autoptr (BsPlan) with
      = bs_clamp_edits_add (bs_session_get_plan (self->session), get_results (self), &placed_at);
  self->choice.clamp = (int)placed_at;
  bs_session_push (self->session, with, _ ("Add a clamp"), NULL);
}

static void
install_actions (GtkWidgetClass *class)
{
  gtk_widget_class_install_action (class, "clamp.choose", "i", choose_action);
  gtk_widget_class_install_action (class, "clamp.choose-line", "i", choose_line_action);
  gtk_widget_class_install_action (class, "clamp.move", "i", move_action);
  gtk_widget_class_install_action (class, "clamp.tighten", "i", tighten_action);
  gtk_widget_class_install_action (class, "clamp.turn-over", NULL, turn_over_action);
  gtk_widget_class_install_action (class, "clamp.take-off", NULL, take_off_action);
  gtk_widget_class_install_action (class, "clamp.add", NULL, add_action);
}

static void
bs_clamping_canvas_dispose (GObject *object)
{
  BsClampingCanvas *self = BS_CLAMPING_CANVAS (object);

  bs_hand_put_back (&self->hand);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_clamping_canvas_parent_class)->dispose (object);
}

static void
bs_clamping_canvas_class_init (BsClampingCanvasClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_clamping_canvas_dispose;
  widget_class->get_request_mode = bs_clamping_canvas_get_request_mode;
  widget_class->measure = bs_clamping_canvas_measure;
  widget_class->size_allocate = bs_clamping_canvas_size_allocate;
  widget_class->snapshot = bs_clamping_canvas_snapshot;
  gtk_widget_class_set_css_name (widget_class, "clamping");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  install_actions (widget_class);
}

static void
bs_clamping_canvas_init (BsClampingCanvas *self)
{
  self->choice = (BsPressingChoice){ -1, -1 };
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  bs_hand_init (&self->hand, GTK_WIDGET (self), &hand);
  bs_actions_add_shortcuts (GTK_WIDGET (self), "clamp.");
}

GtkWidget *
bs_clamping_canvas_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsClampingCanvas *self = g_object_new (BS_TYPE_CLAMPING_CANVAS, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  bs_live_pressure_connect (session, G_CALLBACK (changed_cb), self);
  changed_cb (self);
  return GTK_WIDGET (self);
}

int
bs_clamping_canvas_get_clamp (BsClampingCanvas *self)
{
  g_return_val_if_fail (BS_IS_CLAMPING_CANVAS (self), -1);

  return self->choice.clamp;
}
