/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/drop-down.h"

#include <glib/gi18n.h>

static const char NAME[] = "name";

static void
selected_cb (GtkDropDown *self)
{
  GtkStringObject *item = gtk_drop_down_get_selected_item (self);
  const char *name = g_object_get_data (G_OBJECT (self), NAME);
  /* Translators: the name of a list to choose from, and what is chosen: "Wood: Beech". */
  g_autofree char *label = g_strdup_printf (
      _ ("%s: %s"), name, item != NULL ? gtk_string_object_get_string (item) : "–");

  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (self))),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

void
bs_drop_down_set_name (GtkDropDown *self, const char *name)
{
  g_return_if_fail (GTK_IS_DROP_DOWN (self));
  g_return_if_fail (name != NULL);

  g_object_set_data_full (G_OBJECT (self), NAME, g_strdup (name), g_free);
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (self, "notify::selected-item", G_CALLBACK (selected_cb), NULL);
  selected_cb (self);
}
