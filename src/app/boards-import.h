/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"
#include "plan/board-columns.h"

G_BEGIN_DECLS

/* Boards from a table of text, read in a thread. Where rows are broken the person sees each of them
 * and says whether the good ones are to be kept; what is kept is one step to undo. `widget` is
 * where it was asked for: what has to be said is said over its window. */

/* Boards that came in behind the others, the first of them in row `first`. */
typedef void (*BsBoardsCame) (GtkWidget *widget, guint first);

void bs_boards_import_file (GtkWidget *widget, BsSession *session, GFile *file, BsBoardsCame came);

/* See bs_boards_paste (). */
void bs_boards_import_text (GtkWidget *widget, BsSession *session, const char *text, guint first,
                            BsBoardColumn column, BsBoardsCame came);

G_END_DECLS
