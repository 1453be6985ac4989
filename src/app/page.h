/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A scrolled page of blocks that stand side by side while there is room and under one another when
 * there is not. */
GtkWidget *bs_page_new (void);
void bs_page_add (GtkWidget *page, GtkWidget *block);

/* Under all that was added so far, over the whole width. */
void bs_page_add_wide (GtkWidget *page, GtkWidget *block);

/* Text that wraps and can be copied; `text` is translated or NULL, `css_class` may be NULL. */
GtkWidget *bs_page_text_new (const char *text, const char *css_class);

G_END_DECLS
