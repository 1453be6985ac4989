/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* How a list to choose from is read out: by its name, and the button in it, which takes the focus,
 * by that and what is chosen. The items are strings. */
void bs_drop_down_set_name (GtkDropDown *self, const char *name);

G_END_DECLS
