/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/pins-list.h"

#include <glib/gi18n.h>

#include "app/actions.h"
#include "app/form.h"
#include "core/order-plan.h"
#include "plan/edits.h"
#include "words/order.h"

struct _BsPinsList
{
  GtkWidget parent_instance;

  BsSession *session;
  BsPlan *shown; /* whose pins the rows are */
  /* children */
  GtkWidget *heading;
  GtkWidget *rows; /* GtkBox */
  GtkWidget *none;
  GtkWidget *problem;
  GtkWidget *add;
};

G_DEFINE_FINAL_TYPE (BsPinsList, bs_pins_list, GTK_TYPE_WIDGET)

static void
take_off_cb (GtkButton *button, BsPinsList *self)
{
  guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "index"));
  BsPlan *plan = bs_session_get_plan (self->session);
  g_autofree char *words = bs_words_pin (&g_array_index (plan->pins, BsPin, index), plan);
  /* Translators: "A1 at place 3", "A1 beside B2", "A1 with its top up". */
  g_autofree char *label = g_strdup_printf (_ ("No longer pin %s"), words);
  g_autoptr (BsPlan) edited = bs_edit_remove_pin (plan, index);

  bs_session_push (self->session, edited, label, NULL);
}

static void
append_row (BsPinsList *self, const BsPlan *plan, guint index)
{
  g_autofree char *words = bs_words_pin (&g_array_index (plan->pins, BsPin, index), plan);
  /* Translators: a button, read out: "A1 at place 3", "A1 beside B2". */
  g_autofree char *name = g_strdup_printf (_ ("Take off: %s"), words);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *text = gtk_label_new (words);
  GtkWidget *button = gtk_button_new_from_icon_name ("list-remove-symbolic");

  gtk_label_set_xalign (GTK_LABEL (text), 0.0f);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, _ ("Take off"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (index));
  g_signal_connect (button, "clicked", G_CALLBACK (take_off_cb), self);
  gtk_box_append (GTK_BOX (row), text);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (self->rows), row);
}

/* Pins that contradict one another are told as soon as there are any. */
static void
show_problem (BsPinsList *self, const BsPlan *plan)
{
  g_autoptr (GError) error = NULL;
  BsOrderProblem *kept = plan->pins->len > 0 ? bs_order_problem_new_for_plan (plan, &error) : NULL;

  g_clear_pointer (&kept, bs_order_problem_free);
  gtk_widget_set_visible (self->problem, error != NULL);
  gtk_label_set_text (GTK_LABEL (self->problem), error != NULL ? error->message : "");
}

static void
changed_cb (BsPinsList *self)
{
  BsPlan *plan = bs_session_get_plan (self->session);
  GtkWidget *row;

  if (plan == self->shown)
    return;
  g_clear_pointer (&self->shown, bs_plan_unref);
  self->shown = bs_plan_ref (plan);
  while ((row = gtk_widget_get_first_child (self->rows)) != NULL)
    gtk_box_remove (GTK_BOX (self->rows), row);
  for (guint i = 0; i < plan->pins->len; i++)
    append_row (self, plan, i);
  gtk_widget_set_visible (self->rows, plan->pins->len > 0);
  gtk_widget_set_visible (self->none, plan->pins->len == 0);
  show_problem (self, plan);
}

static GtkWidget *
new_add_button (void)
{
  static const char *const actions[]
      = { "lamination.pin-place", "lamination.pin-neighbour", "lamination.pin-face" };
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new ();

  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    bs_actions_append (menu, actions[i]);
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Pin the selected lamination"));
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  return button;
}

static void
bs_pins_list_dispose (GObject *object)
{
  BsPinsList *self = BS_PINS_LIST (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->shown, bs_plan_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (bs_pins_list_parent_class)->dispose (object);
}

static void
bs_pins_list_class_init (BsPinsListClass *class)
{
  G_OBJECT_CLASS (class)->dispose = bs_pins_list_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BOX_LAYOUT);
}

static void
bs_pins_list_init (BsPinsList *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  self->heading = gtk_label_new (_ ("Pinned"));
  gtk_label_set_xalign (GTK_LABEL (self->heading), 0.0f);
  gtk_widget_add_css_class (self->heading, "strong");
  self->rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->none = bs_form_note_new (_ ("Nothing: any lamination may go anywhere."));
  self->problem = bs_form_note_new ("");
  gtk_widget_remove_css_class (self->problem, "faint");
  gtk_widget_add_css_class (self->problem, "strong");
  self->add = new_add_button ();
  gtk_widget_set_parent (self->heading, GTK_WIDGET (self));
  gtk_widget_set_parent (self->rows, GTK_WIDGET (self));
  gtk_widget_set_parent (self->none, GTK_WIDGET (self));
  gtk_widget_set_parent (self->problem, GTK_WIDGET (self));
  gtk_widget_set_parent (self->add, GTK_WIDGET (self));
}

GtkWidget *
bs_pins_list_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  BsPinsList *self = g_object_new (BS_TYPE_PINS_LIST, NULL);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
