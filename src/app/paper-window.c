/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "app/paper-window.h"

#include <glib/gi18n.h>

#include "app/actions.h"

#define PAGE_SCALE 1.25 /* pixels for a point */

typedef struct
{
  BsSheet *sheet; /* borrowed: the window has it */
  guint page;
  double left, top; /* of the printable area, in points */
} Page;

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  const Page *page = data;

  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  cairo_scale (cr, PAGE_SCALE, PAGE_SCALE);
  cairo_translate (cr, page->left, page->top);
  bs_sheet_draw_page (page->sheet, page->page, cr);
}

static GtkWidget *
page_new (BsSheet *sheet, guint number, GtkPageSetup *setup)
{
  GtkWidget *area = gtk_drawing_area_new ();
  Page *page = g_new (Page, 1);
  g_autofree char *label
      = g_strdup_printf (_ ("Page %u of %u"), number + 1, bs_sheet_get_n_pages (sheet));

  *page = (Page){
    .sheet = sheet,
    .page = number,
    .left = gtk_page_setup_get_left_margin (setup, GTK_UNIT_POINTS),
    .top = gtk_page_setup_get_top_margin (setup, GTK_UNIT_POINTS),
  };
  gtk_drawing_area_set_content_width (
      GTK_DRAWING_AREA (area),
      (int)(gtk_page_setup_get_paper_width (setup, GTK_UNIT_POINTS) * PAGE_SCALE));
  gtk_drawing_area_set_content_height (
      GTK_DRAWING_AREA (area),
      (int)(gtk_page_setup_get_paper_height (setup, GTK_UNIT_POINTS) * PAGE_SCALE));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_cb, page, g_free);
  gtk_widget_set_halign (area, GTK_ALIGN_CENTER);
  gtk_widget_set_tooltip_text (area, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  return area;
}

static void
print_cb (GtkWidget *window)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (window));

  g_object_ref (parent);
  gtk_window_destroy (GTK_WINDOW (window));
  gtk_widget_activate_action (GTK_WIDGET (parent), "win.print", NULL);
  g_object_unref (parent);
}

static GtkWidget *
commands_new (GtkWidget *window)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *print = gtk_button_new_with_label (_ (bs_actions_find ("win.print")->title));

  gtk_widget_add_css_class (box, "commands");
  gtk_widget_add_css_class (print, "flat");
  g_signal_connect_object (print, "clicked", G_CALLBACK (print_cb), window, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), print);
  return box;
}

GtkWindow *
bs_paper_window_new (GtkWindow *parent, BsSheet *sheet, GtkPageSetup *setup)
{
  g_return_val_if_fail (sheet != NULL, NULL);

  GtkWidget *window = gtk_window_new ();
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  g_object_set_data_full (G_OBJECT (window), "bs-sheet", sheet, (GDestroyNotify)bs_sheet_free);
  for (guint i = 0; i < bs_sheet_get_n_pages (sheet); i++)
    gtk_box_append (GTK_BOX (box), page_new (sheet, i, setup));
  gtk_widget_add_css_class (box, "desk");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (all), commands_new (window));
  gtk_box_append (GTK_BOX (all), scroller);
  gtk_window_set_child (GTK_WINDOW (window), all);
  gtk_window_set_title (GTK_WINDOW (window), _ ("Pages"));
  gtk_window_set_default_size (GTK_WINDOW (window), 860, 760);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (window), TRUE);
  bs_actions_add_escape (GTK_WINDOW (window));
  return GTK_WINDOW (window);
}
