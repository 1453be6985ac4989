/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-page-private.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "app/focus-order.h"
#include "app/resources.h"
#include "plan/edits.h"

#define ZOOM_STEP 1.25

G_DEFINE_FINAL_TYPE (BsGlueUpPage, bs_glue_up_page, GTK_TYPE_WIDGET)

const char *
bs_glue_up_page_get_selected (BsGlueUpPage *self, int *place)
{
  const char *id = bs_session_get_selected (self->session);

  if (id == NULL)
    return NULL;
  BsPlan *plan = bs_session_get_plan (self->session);
  const BsLamination *lamination = bs_plan_find_lamination (plan, id);
  *place = bs_plan_find_place (plan, id);
  return lamination->label != NULL ? lamination->label : id;
}

void
bs_glue_up_page_push (BsGlueUpPage *self, BsPlan *plan, char *label)
{
  g_autoptr (BsPlan) owned_plan = plan;
  g_autofree char *owned_label = label;

  bs_session_push (self->session, owned_plan, owned_label, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

static void
move_to (BsGlueUpPage *self, int to)
{
  int from = -1;
  const char *label = bs_glue_up_page_get_selected (self, &from);
  BsPlan *plan = bs_session_get_plan (self->session);

  if (label == NULL || from < 0 || to < 0 || to >= (int)plan->order->len || to == from)
    return;
  /* Translators: a lamination's label. */
  bs_glue_up_page_push (self, bs_edit_move (plan, from, to),
                        g_strdup_printf (_ ("Move %s to place %d"), label, to + 1));
}

static void
move_action (GtkWidget *widget, const char *name, GVariant *by)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  int from = -1;

  if (bs_glue_up_page_get_selected (self, &from) != NULL && from >= 0)
    move_to (self, from + g_variant_get_int32 (by));
}

static void
move_to_end_action (GtkWidget *widget, const char *name, GVariant *end)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  BsPlan *plan = bs_session_get_plan (self->session);

  move_to (self, g_variant_get_int32 (end) < 0 ? 0 : (int)plan->order->len - 1);
}

static void
turn_over_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  int place = -1;
  const char *label = bs_glue_up_page_get_selected (self, &place);

  if (label != NULL && place >= 0)
    bs_glue_up_page_push (
        self, bs_edit_turn (bs_session_get_plan (self->session), place, BS_ORIENTATION_OVER),
        g_strdup_printf (_ ("Turn %s over"), label));
}

static void
end_for_end_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  int place = -1;
  const char *label = bs_glue_up_page_get_selected (self, &place);

  if (label != NULL && place >= 0)
    bs_glue_up_page_push (
        self, bs_edit_turn (bs_session_get_plan (self->session), place, BS_ORIENTATION_END_FOR_END),
        g_strdup_printf (_ ("Turn %s end for end"), label));
}

static void
set_aside_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  int place = -1;
  const char *label = bs_glue_up_page_get_selected (self, &place);

  if (label != NULL && place >= 0)
    bs_glue_up_page_push (self, bs_edit_set_aside (bs_session_get_plan (self->session), place),
                          g_strdup_printf (_ ("Set %s aside"), label));
}

/* To the back, from where it can be moved. */
static void
bring_back_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  BsPlan *plan = bs_session_get_plan (self->session);
  int place = 0;
  const char *label = bs_glue_up_page_get_selected (self, &place);

  if (label != NULL && place < 0)
    bs_glue_up_page_push (
        self,
        bs_edit_bring_back (plan, bs_session_get_selected (self->session), (int)plan->order->len),
        g_strdup_printf (_ ("Bring %s back"), label));
}

static void
menu_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  bs_glue_up_canvas_popup (BS_GLUE_UP_PAGE (widget)->canvas);
}

static void
update_actions (BsGlueUpPage *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  gboolean is_free = !bs_session_has_preview (self->session);
  int place = -1;
  gboolean is_selected = bs_glue_up_page_get_selected (self, &place) != NULL && is_free;
  gboolean is_in_slab = is_selected && place >= 0;
  double zoom = bs_glue_up_canvas_get_zoom (self->canvas);

  gtk_widget_action_set_enabled (widget, "lamination.move", is_in_slab);
  gtk_widget_action_set_enabled (widget, "lamination.move-to-end", is_in_slab);
  gtk_widget_action_set_enabled (widget, "lamination.turn-over", is_in_slab);
  gtk_widget_action_set_enabled (widget, "lamination.end-for-end", is_in_slab);
  gtk_widget_action_set_enabled (widget, "lamination.set-aside", is_in_slab);
  gtk_widget_action_set_enabled (widget, "lamination.bring-back", is_selected && !is_in_slab);
  gtk_widget_action_set_enabled (widget, "lamination.menu", is_selected);
  gtk_widget_action_set_enabled (widget, "view.fit", zoom > 1.0);
  gtk_widget_action_set_enabled (widget, "view.farther", zoom > 1.0);
  gtk_widget_action_set_enabled (widget, "view.closer", zoom < BS_GLUE_UP_ZOOM_MOST);
  bs_glue_up_pins_update (self);
  bs_glue_up_order_update (self);
}

/* The view. */

static void
set_zoom (BsGlueUpPage *self, double zoom, double at)
{
  bs_glue_up_canvas_set_zoom (self->canvas, zoom, at);
  update_actions (self);
}

static void
zoom_by (BsGlueUpPage *self, double factor, double at)
{
  set_zoom (self, bs_glue_up_canvas_get_zoom (self->canvas) * factor, at);
}

/* What is looked at stays in view. */
static void
zoom_at_selected (BsGlueUpPage *self, double factor)
{
  zoom_by (self, factor, bs_glue_up_canvas_find_middle (self->canvas));
}

/* Where the pointer is, from the left edge of the view. */
static double
find_pointer (BsGlueUpPage *self, GtkEventController *controller)
{
  GdkEvent *event = gtk_event_controller_get_current_event (controller);
  GtkNative *native = gtk_widget_get_native (GTK_WIDGET (self));
  double x = 0.0, y = 0.0, left = 0.0, top = 0.0;

  gdk_event_get_position (event, &x, &y);
  gtk_native_get_surface_transform (native, &left, &top);
  gtk_widget_translate_coordinates (GTK_WIDGET (native), GTK_WIDGET (self->scroller), x - left,
                                    y - top, &x, &y);
  return x;
}

static void
fit_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  set_zoom (BS_GLUE_UP_PAGE (widget), 1.0, 0.0);
}

static void
closer_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  zoom_at_selected (BS_GLUE_UP_PAGE (widget), ZOOM_STEP);
}

static void
farther_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  zoom_at_selected (BS_GLUE_UP_PAGE (widget), 1.0 / ZOOM_STEP);
}

static gboolean
scroll_cb (BsGlueUpPage *self, double dx, double dy, GtkEventControllerScroll *scroll)
{
  GtkEventController *controller = GTK_EVENT_CONTROLLER (scroll);
  GdkModifierType state = gtk_event_controller_get_current_event_state (controller);

  if ((state & GDK_CONTROL_MASK) == 0)
    return GDK_EVENT_PROPAGATE;
  zoom_by (self, dy < 0.0 ? ZOOM_STEP : 1.0 / ZOOM_STEP, find_pointer (self, controller));
  return GDK_EVENT_STOP;
}

static GMenuModel *
lamination_menu_new (void)
{
  GMenu *menu = g_menu_new ();
  guint n;
  const BsAction *actions = bs_actions_get_all (&n);

  for (guint i = 0; i < n; i++)
    if (actions[i].group == BS_ACTION_GROUP_LAMINATION
        && !g_str_equal (actions[i].name, "lamination.menu"))
      bs_actions_append (menu, actions[i].name);
  return G_MENU_MODEL (menu);
}

/* The table's words are too long for a full row of buttons. */
static GtkWidget *
propose_button_new (void)
{
  GtkWidget *button = bs_actions_button_new ("win.propose");

  /* Translators: a button that opens the proposal of an order; a short word. */
  gtk_button_set_label (GTK_BUTTON (button), C_ ("button", "Order"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (bs_actions_find ("win.propose")->title), -1);
  return button;
}

static void
add_buttons (BsGlueUpPage *self)
{
  static const char *const of_lamination[] = { "lamination.turn-over", "lamination.end-for-end",
                                               "lamination.set-aside", "lamination.bring-back" };
  static const char *const of_view[] = { "view.farther", "view.closer", "view.fit" };

  for (guint i = 0; i < G_N_ELEMENTS (of_lamination); i++)
    gtk_box_append (self->lamination_buttons, bs_actions_button_new (of_lamination[i]));
  gtk_box_append (self->view_buttons, propose_button_new ());
  for (guint i = 0; i < G_N_ELEMENTS (of_view); i++)
    gtk_box_append (self->view_buttons, bs_actions_button_new (of_view[i]));
}

static gboolean
bs_glue_up_page_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (BS_GLUE_UP_PAGE (widget)->canvas));
}

static void
bs_glue_up_page_dispose (GObject *object)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (object);

  if (self->proposal != NULL)
    bs_proposal_discard (self->proposal);
  self->pane = NULL;
  for (GtkWidget *child; (child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL;)
    gtk_widget_unparent (child);
  g_clear_object (&self->proposal);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_glue_up_page_parent_class)->dispose (object);
}

static void
bs_glue_up_page_class_init (BsGlueUpPageClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = bs_glue_up_page_dispose;
  widget_class->focus = bs_focus_in_order;
  widget_class->grab_focus = bs_glue_up_page_grab_focus;

  g_type_ensure (BS_TYPE_GLUE_UP_CANVAS);
  gtk_widget_class_set_template_from_resource (widget_class, BS_RESOURCES "/glue-up-page.ui");
  gtk_widget_class_bind_template_child (widget_class, BsGlueUpPage, canvas);
  gtk_widget_class_bind_template_child (widget_class, BsGlueUpPage, halves);
  gtk_widget_class_bind_template_child (widget_class, BsGlueUpPage, lamination_buttons);
  gtk_widget_class_bind_template_child (widget_class, BsGlueUpPage, scroller);
  gtk_widget_class_bind_template_child (widget_class, BsGlueUpPage, view_buttons);
  gtk_widget_class_bind_template_callback (widget_class, scroll_cb);

  gtk_widget_class_install_action (widget_class, "lamination.move", "i", move_action);
  gtk_widget_class_install_action (widget_class, "lamination.move-to-end", "i", move_to_end_action);
  gtk_widget_class_install_action (widget_class, "lamination.turn-over", NULL, turn_over_action);
  gtk_widget_class_install_action (widget_class, "lamination.end-for-end", NULL,
                                   end_for_end_action);
  gtk_widget_class_install_action (widget_class, "lamination.set-aside", NULL, set_aside_action);
  gtk_widget_class_install_action (widget_class, "lamination.bring-back", NULL, bring_back_action);
  gtk_widget_class_install_action (widget_class, "lamination.menu", NULL, menu_action);
  bs_glue_up_pins_class_init (widget_class);
  bs_glue_up_order_class_init (widget_class);
  gtk_widget_class_install_action (widget_class, "view.fit", NULL, fit_action);
  gtk_widget_class_install_action (widget_class, "view.closer", NULL, closer_action);
  gtk_widget_class_install_action (widget_class, "view.farther", NULL, farther_action);

  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "glueuppage");
}

static void
bs_glue_up_page_init (BsGlueUpPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_buttons (self);
  g_autoptr (GMenuModel) menu = lamination_menu_new ();
  bs_glue_up_canvas_set_menu (self->canvas, menu);
  bs_glue_up_canvas_set_adjustments (self->canvas,
                                     gtk_scrolled_window_get_hadjustment (self->scroller),
                                     gtk_scrolled_window_get_vadjustment (self->scroller));
  bs_actions_add_shortcuts (GTK_WIDGET (self), "lamination.");
  bs_actions_add_shortcuts (GTK_WIDGET (self), "view.");
  bs_actions_add_shortcuts (GTK_WIDGET (self), "order.");
}

GtkWidget *
bs_glue_up_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsGlueUpPage *self = g_object_new (BS_TYPE_GLUE_UP_PAGE, NULL);
  self->session = g_object_ref (session);
  bs_glue_up_canvas_set_session (self->canvas, session);
  bs_glue_up_order_init (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (update_actions), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::selected", G_CALLBACK (update_actions), self,
                           G_CONNECT_SWAPPED);
  update_actions (self);
  return GTK_WIDGET (self);
}
