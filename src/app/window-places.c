/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/window-private.h"

#include <glib/gi18n.h>

#include "app/boards-page.h"
#include "app/buying-page.h"
#include "app/clamping-page.h"
#include "app/cutting-page.h"
#include "app/flattening-page.h"
#include "app/glue-up-page.h"
#include "app/laminations-page.h"
#include "app/schedule-page.h"
#include "app/shop-page.h"
#include "app/slab-page.h"
#include "app/wood-page.h"

/* The places of the window, in the order of the job; one can go to any of them at any time. */
static const struct
{
  const char *name;
  const char *title;
  GtkWidget *(*create) (BsSession *session);
} places[] = {
  { "slab", NC_ ("place", "Slab"), bs_slab_page_new },
  { "wood", NC_ ("place", "Wood"), bs_wood_page_new },
  { "boards", NC_ ("place", "Boards"), bs_boards_page_new },
  { "buying", NC_ ("place", "Buying"), bs_buying_page_new },
  { "cutting", NC_ ("place", "Cutting"), bs_cutting_page_new },
  { "laminations", NC_ ("place", "Laminations"), bs_laminations_page_new },
  { "glue-up", NC_ ("place", "Glue-up"), bs_glue_up_page_new },
  { "flattening", NC_ ("place", "Flattening"), bs_flattening_page_new },
  { "clamping", NC_ ("place", "Clamping"), bs_clamping_page_new },
  { "schedule", NC_ ("place", "Schedule"), bs_schedule_page_new },
  { "shop", NC_ ("place", "Shop"), bs_shop_page_new },
};

/* At both sides of a title in the list together, as the style sheet says. */
#define SIDE_PADDING 31

/* A page is made when someone goes there: forms are many widgets. */
static void
place_chosen_cb (BsWindow *self)
{
  const char *name = gtk_stack_get_visible_child_name (self->places);
  GtkWidget *frame = gtk_stack_get_visible_child (self->places);

  if (frame == NULL || gtk_widget_get_first_child (frame) != NULL)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    if (g_str_equal (places[i].name, name))
      gtk_box_append (GTK_BOX (frame), places[i].create (self->session));
  gtk_widget_set_hexpand (gtk_widget_get_first_child (frame), TRUE);
}

/* The place that is shown stands in bold: the list is as wide as that makes it anywhere, so that
 * nothing jumps when one goes from place to place. */
static void
hold_width (GtkWidget *sidebar)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (sidebar, NULL);
  PangoFontDescription *bold = pango_font_description_copy (
      pango_context_get_font_description (gtk_widget_get_pango_context (sidebar)));
  int widest = 0, width;

  pango_font_description_set_weight (bold, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description (layout, bold);
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    {
      pango_layout_set_text (layout, g_dpgettext2 (NULL, "place", places[i].title), -1);
      pango_layout_get_pixel_size (layout, &width, NULL);
      widest = MAX (widest, width);
    }
  pango_font_description_free (bold);
  gtk_widget_set_size_request (sidebar, widest + SIDE_PADDING, -1);
}

/* To the first thing in it that takes the focus, wherever that was before. A pane complains when it
 * is to forget that. */
static gboolean
enter (GtkWidget *page)
{
  for (GtkWidget *child, *in = page; (child = gtk_widget_get_focus_child (in)) != NULL; in = child)
    if (!GTK_IS_PANED (in))
      gtk_widget_set_focus_child (in, NULL);
  return gtk_widget_child_focus (page, GTK_DIR_TAB_FORWARD);
}

/* In the list itself Tab would go from place to place, which is what the arrow keys are for. Here
 * it goes on into the place, and back to what stands before the list. */
static gboolean
key_in_list_cb (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state,
                BsWindow *self)
{
  if (key == GDK_KEY_Tab && (state & gtk_accelerator_get_default_mod_mask ()) == 0)
    return enter (gtk_stack_get_visible_child (self->places));
  if (key == GDK_KEY_ISO_Left_Tab)
    return gtk_widget_grab_focus (gtk_widget_get_prev_sibling (self->sidebar));
  return GDK_EVENT_PROPAGATE;
}

/* Rows of the list are read out by what stands in them. */
static void
name_rows (GtkWidget *sidebar)
{
  GtkWidget *list = gtk_widget_get_first_child (sidebar);

  while (list != NULL && !GTK_IS_LIST_BOX (list))
    list = gtk_widget_get_first_child (list);
  g_return_if_fail (list != NULL);
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    gtk_accessible_update_property (
        GTK_ACCESSIBLE (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), (int)i)),
        GTK_ACCESSIBLE_PROPERTY_LABEL, g_dpgettext2 (NULL, "place", places[i].title), -1);
}

void
bs_window_places_init (BsWindow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (key_in_list_cb), self, 0);
  gtk_widget_add_controller (self->sidebar, keys);
  for (guint i = 0; i < G_N_ELEMENTS (places); i++)
    gtk_stack_add_titled (self->places, gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0), places[i].name,
                          g_dpgettext2 (NULL, "place", places[i].title));
  hold_width (self->sidebar);
  name_rows (self->sidebar);
  gtk_stack_set_visible_child_name (self->places, "glue-up");
  place_chosen_cb (self);
  g_signal_connect_object (self->places, "notify::visible-child", G_CALLBACK (place_chosen_cb),
                           self, G_CONNECT_SWAPPED);
}

/* To what the page itself says that it begins with, or to the first thing in it. A page of forms
 * would take the focus as a whole, to be scrolled, and nobody would see where it is. */
static void
focus_page (GtkWidget *page)
{
  if (gtk_widget_get_focusable (page) || !gtk_widget_grab_focus (page))
    enter (page);
}

/* The neighbours of the place that is shown, in the list's order. */
static void
go_action (GtkWidget *widget, const char *action, GVariant *by)
{
  BsWindow *self = BS_WINDOW (widget);
  const char *name = gtk_stack_get_visible_child_name (self->places);

  for (int i = 0; name != NULL && i < (int)G_N_ELEMENTS (places); i++)
    if (g_str_equal (places[i].name, name))
      {
        const int to = i + g_variant_get_int32 (by);
        if (to >= 0 && to < (int)G_N_ELEMENTS (places))
          bs_window_go_to (self, places[to].name);
        gtk_window_set_focus_visible (GTK_WINDOW (self), TRUE);
        return;
      }
}

void
bs_window_places_class_init (GtkWidgetClass *class)
{
  gtk_widget_class_install_action (class, "win.go", "i", go_action);
}

void
bs_window_go_to (BsWindow *self, const char *place)
{
  if (gtk_stack_get_visible_child (self->places) == NULL) /* before the first frame */
    return;
  gtk_stack_set_visible_child_name (self->places, place);
  focus_page (gtk_widget_get_first_child (gtk_stack_get_visible_child (self->places)));
}
