/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/application.h"
#include "app/window.h"

/* What the tests of the window share. They run on a screen of their own: tests/gui/display.sh. */

/* In place of gtk_test_init (), which would choose a locale. */
void desk_init (int *argc, char ***argv);

/* Runs the main loop until a condition holds; fails the test after ten seconds. */
typedef gboolean (*DeskCondition) (gpointer data);
void desk_wait (DeskCondition condition, gpointer data);

/* A window on the first example, shown. */
BsWindow *desk_open (void);

/* Closes what desk_open () opened, unsaved changes and all, and checks that the window is
 * finalised. */
void desk_close (BsWindow *window);

/* The first widget of that type below another, in the order of the tree; NULL when there is none.
 */
GtkWidget *desk_find (GtkWidget *below, GType type);

/* The button that activates an action. */
GtkWidget *desk_find_button (GtkWidget *below, const char *action);

/* Number i of the direct children. */
GtkWidget *desk_get_child (GtkWidget *parent, int i);

/* Labels of the slab from front to back: "A1 A2 B1 ...". The caller's. */
char *desk_get_order (BsWindow *window);
