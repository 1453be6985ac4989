/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/plan.h"

G_BEGIN_DECLS

/* A drop-down (GtkDropDown) of all woods to choose from, with a search. */
GtkWidget *bs_wood_choice_new (void);

/* Shows the wood of an id among those of the table and of the plan; none when it is NULL or not
 * there. */
void bs_wood_choice_show (GtkDropDown *self, const BsPlan *plan, const char *id);

/* The wood that is chosen, borrowed; NULL: none. */
BsWood *bs_wood_choice_get (GtkDropDown *self);

G_END_DECLS
