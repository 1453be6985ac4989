/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/plan.h"

G_BEGIN_DECLS

/* A drop-down (GtkDropDown) of all woods of the table, with a search. */
GtkWidget *bs_wood_choice_new (void);

/* Shows the wood of an id; none when it is NULL or not in the table. */
void bs_wood_choice_show (GtkDropDown *self, const char *id);

/* The wood that is chosen, borrowed; NULL: none. */
BsWood *bs_wood_choice_get (GtkDropDown *self);

G_END_DECLS
