/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"
#include "core/flatten-map.h"

G_BEGIN_DECLS

/* The maps of both faces with their legend. A press on a lamination selects it. */
#define BS_TYPE_REMOVAL_VIEW (bs_removal_view_get_type ())
G_DECLARE_FINAL_TYPE (BsRemovalView, bs_removal_view, BS, REMOVAL_VIEW, GtkWidget)

GtkWidget *bs_removal_view_new (BsSession *session);

/* The map is the caller's; it belongs to the session's results and stays until the next one is set.
 */
void bs_removal_view_set_map (BsRemovalView *self, const BsFlattenMap *map);

G_END_DECLS
