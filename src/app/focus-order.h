/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The `focus` of a widget through whose children Tab goes in their order. GTK's own goes by the
 * height of their middles, and so comes to what is tall and stands at the left last. */
gboolean bs_focus_in_order (GtkWidget *widget, GtkDirectionType direction);

/* Lets Shift and Tab go back through the cells of a table (GtkColumnView in a scrolled window) and
 * from the first to the table as a whole: GTK 4.8 goes on to the next cell instead. */
void bs_focus_back_through_cells (GtkWidget *table);

/* Before it is hidden or can no longer be used: if the focus is in it, the focus goes on to what
 * comes next in the page around it. */
void bs_focus_leave (GtkWidget *widget, GtkWidget *page);

G_END_DECLS
