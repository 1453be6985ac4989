/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/wood-page.h"

#include <glib/gi18n.h>

#include "app/wood-compare-page.h"
#include "app/wood-cost-page.h"
#include "app/wood-movement-page.h"

static const struct
{
  const char *name;
  const char *title;
  GtkWidget *(*create) (BsSession *session);
} parts[] = {
  { "compare", N_ ("Woods compared"), bs_wood_compare_page_new },
  { "movement", N_ ("Moisture and movement"), bs_wood_movement_page_new },
  { "cost", N_ ("Money and weight"), bs_wood_cost_page_new },
};

GtkWidget *
bs_wood_page_new (BsSession *session)
{
  g_return_val_if_fail (BS_IS_SESSION (session), NULL);

  GtkWidget *page = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *switcher = gtk_stack_switcher_new ();
  GtkWidget *stack = gtk_stack_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    gtk_stack_add_titled (GTK_STACK (stack), parts[i].create (session), parts[i].name,
                          _ (parts[i].title));
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (stack));
  gtk_widget_add_css_class (switcher, "parts");
  gtk_widget_set_vexpand (stack, TRUE);
  gtk_box_append (GTK_BOX (page), switcher);
  gtk_box_append (GTK_BOX (page), stack);
  return page;
}
