/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* One column of a table as it is laid out at the moment, in pixels. */
typedef struct
{
  int x, width;
} BsRackSpan;

/* The titles of a table, or one of its rows: a widget for each column, side by side as the table
 * says. */
#define BS_TYPE_RACK_LINE (bs_rack_line_get_type ())
G_DECLARE_FINAL_TYPE (BsRackLine, bs_rack_line, BS, RACK_LINE, GtkWidget)

/* `spans` is the table's, one for each widget that is appended, and outlives the line. */
GtkWidget *bs_rack_line_new (const BsRackSpan *spans, const char *css_class);
void bs_rack_line_append (BsRackLine *self, GtkWidget *widget);
GtkWidget *bs_rack_line_get (BsRackLine *self, int column);

G_END_DECLS
