/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Words at the left of their place: on one line, or on as many as they need. The text and the class
 * of the style sheet ("strong", "faint") may be NULL. */
GtkWidget *bs_label_new (const char *text, const char *css_class);
GtkWidget *bs_label_new_wrapped (const char *text, const char *css_class);

G_END_DECLS
