/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* One window, one plan: the places at the left, the place chosen in the middle, the live numbers
 * and the findings beside it or under it.
 *
 * In five files: window.c puts it together, window-places.c lists the places and makes their pages,
 * window-actions.c says what it can do, window-file.c opens and saves, window-print.c puts the plan
 * on paper. */
#define BS_TYPE_WINDOW (bs_window_get_type ())
G_DECLARE_FINAL_TYPE (BsWindow, bs_window, BS, WINDOW, GtkApplicationWindow)

/* With the first example in it, so that there is something to take hold of. */
BsWindow *bs_window_new (GtkApplication *application);

/* Borrowed. */
BsSession *bs_window_get_session (BsWindow *self);

/* Takes the place of the plan that is open, whose changes are lost; a file that cannot be used is
 * refused with a message, and the plan stays. */
gboolean bs_window_open (BsWindow *self, GFile *file);

G_END_DECLS
