/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A modal window with a heading, a sentence or two, and some answers as buttons.
 *
 * The last answer is the one that Return gives; the first is what Esc and closing the window mean.
 * With one answer it is a message. The finish function returns the index of the answer. */
void bs_question_ask_async (GtkWindow *parent, const char *heading, const char *body,
                            const char *const *answers, GAsyncReadyCallback callback,
                            gpointer user_data);

/* The same with something to look at in place of the sentences; its reference is sunk. */
void bs_question_ask_with_async (GtkWindow *parent, const char *heading, GtkWidget *body,
                                 const char *const *answers, GAsyncReadyCallback callback,
                                 gpointer user_data);
int bs_question_ask_finish (GAsyncResult *result);

/* Tells something that needs no answer. */
void bs_question_tell (GtkWindow *parent, const char *heading, const char *body);

G_END_DECLS
