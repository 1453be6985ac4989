/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* Finds the fewest clamps when asked to, shows them beside those that are set and those of the hand
 * rule, and takes them over in one step. */
#define BS_TYPE_CLAMP_FINDER (bs_clamp_finder_get_type ())
G_DECLARE_FINAL_TYPE (BsClampFinder, bs_clamp_finder, BS, CLAMP_FINDER, GtkWidget)

GtkWidget *bs_clamp_finder_new (BsSession *session);

/* There is something to take over. */
gboolean bs_clamp_finder_has_found (BsClampFinder *self);

G_END_DECLS
