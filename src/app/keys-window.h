/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A window that lists all keys, made from the table of actions. */
GtkWindow *bs_keys_window_new (GtkWindow *parent);

G_END_DECLS
