/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/label.h"

GtkWidget *
bs_label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

GtkWidget *
bs_label_new_wrapped (const char *text, const char *css_class)
{
  GtkWidget *label = bs_label_new (text, css_class);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  return label;
}
