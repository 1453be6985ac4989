/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/glue-up-page-private.h"

#include <glib/gi18n.h>

#include "plan/edits.h"
#include "words/order.h"

/* Pins of the selected lamination, as it lies now. What pins it takes the pin off again. */

static BsPlacement *
get_placement (BsPlan *plan, int place)
{
  return &g_array_index (plan->order, BsPlacement, place);
}

static int
find_pin (const BsPlan *plan, const BsPin *pin)
{
  for (guint i = 0; i < plan->pins->len; i++)
    {
      const BsPin *present = &g_array_index (plan->pins, BsPin, i);
      gboolean is_same = g_str_equal (present->lamination, pin->lamination)
                         && g_strcmp0 (present->other, pin->other) == 0;
      gboolean is_mirrored = g_strcmp0 (present->lamination, pin->other) == 0
                             && g_strcmp0 (present->other, pin->lamination) == 0;

      if (present->kind == pin->kind && present->place == pin->place && (is_same || is_mirrored))
        return (int)i;
    }
  return -1;
}

static void
toggle_pin (BsGlueUpPage *self, const BsPin *pin)
{
  BsPlan *plan = bs_session_get_plan (self->session);
  int index = find_pin (plan, pin);
  g_autofree char *words = bs_words_pin (pin, plan);

  if (index < 0)
    /* Translators: "A1 at place 3", "A1 beside B2", "A1 with its top up". */
    bs_glue_up_page_push (self, bs_edit_add_pin (plan, pin), g_strdup_printf (_ ("Pin %s"), words));
  else
    /* Translators: "A1 at place 3", "A1 beside B2", "A1 with its top up". */
    bs_glue_up_page_push (self, bs_edit_remove_pin (plan, (guint)index),
                          g_strdup_printf (_ ("No longer pin %s"), words));
}

static void
pin_place_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  int place = -1;

  if (bs_glue_up_page_get_selected (self, &place) == NULL || place < 0)
    return;
  const BsPin pin = {
    .kind = BS_PIN_PLACE,
    .lamination = get_placement (bs_session_get_plan (self->session), place)->lamination,
    .place = place,
  };
  toggle_pin (self, &pin);
}

static void
pin_neighbour_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  BsPlan *plan = bs_session_get_plan (self->session);
  int place = -1;

  if (bs_glue_up_page_get_selected (self, &place) == NULL || place < 0
      || place + 1 >= (int)plan->order->len)
    return;
  const BsPin pin = {
    .kind = BS_PIN_NEIGHBOURS,
    .lamination = get_placement (plan, place)->lamination,
    .place = -1,
    .other = get_placement (plan, place + 1)->lamination,
  };
  toggle_pin (self, &pin);
}

static void
pin_face_action (GtkWidget *widget, const char *name, GVariant *unused)
{
  BsGlueUpPage *self = BS_GLUE_UP_PAGE (widget);
  int place = -1;

  if (bs_glue_up_page_get_selected (self, &place) == NULL || place < 0)
    return;
  const BsPlacement *placement = get_placement (bs_session_get_plan (self->session), place);
  gboolean is_top = bs_orientation_face (placement->orientation, BS_FACE_TOP) == BS_FACE_TOP;
  const BsPin pin = {
    .kind = is_top ? BS_PIN_TOP_UP : BS_PIN_UNDERSIDE_UP,
    .lamination = placement->lamination,
    .place = -1,
  };
  toggle_pin (self, &pin);
}

void
bs_glue_up_pins_class_init (GtkWidgetClass *class)
{
  gtk_widget_class_install_action (class, "lamination.pin-place", NULL, pin_place_action);
  gtk_widget_class_install_action (class, "lamination.pin-neighbour", NULL, pin_neighbour_action);
  gtk_widget_class_install_action (class, "lamination.pin-face", NULL, pin_face_action);
}

void
bs_glue_up_pins_update (BsGlueUpPage *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  int place = -1;
  gboolean is_in_slab = bs_glue_up_page_get_selected (self, &place) != NULL && place >= 0
                        && !bs_session_has_preview (self->session);
  int n = (int)bs_session_get_plan (self->session)->order->len;

  gtk_widget_action_set_enabled (widget, "lamination.pin-place", is_in_slab);
  gtk_widget_action_set_enabled (widget, "lamination.pin-neighbour", is_in_slab && place + 1 < n);
  gtk_widget_action_set_enabled (widget, "lamination.pin-face", is_in_slab);
}
