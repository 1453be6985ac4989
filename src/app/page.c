/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/page.h"

#include "app/blocks.h"

static GtkWidget *
get_column (GtkWidget *page)
{
  GtkWidget *viewport = gtk_scrolled_window_get_child (GTK_SCROLLED_WINDOW (page));
  return gtk_viewport_get_child (GTK_VIEWPORT (viewport));
}

static GtkWidget *
new_flow (void)
{
  GtkWidget *flow = bs_blocks_new (3, 36, 24);
  gtk_widget_set_valign (flow, GTK_ALIGN_START);
  return flow;
}

GtkWidget *
bs_page_new (void)
{
  GtkWidget *page = gtk_scrolled_window_new ();
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 24);

  gtk_widget_add_css_class (column, "page");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (page), column);
  return page;
}

void
bs_page_add (GtkWidget *page, GtkWidget *block)
{
  GtkWidget *column = get_column (page);
  GtkWidget *flow = gtk_widget_get_last_child (column);

  if (flow == NULL || !BS_IS_BLOCKS (flow))
    {
      flow = new_flow ();
      gtk_box_append (GTK_BOX (column), flow);
    }
  bs_blocks_append (BS_BLOCKS (flow), block);
}

void
bs_page_add_wide (GtkWidget *page, GtkWidget *block)
{
  gtk_box_append (GTK_BOX (get_column (page)), block);
}

GtkWidget *
bs_page_text_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_can_focus (label, FALSE); /* or all of it is selected at once */
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}
