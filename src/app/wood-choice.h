/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* A list of all woods to choose a lamination's from; the figures of the one chosen come into the
 * plan. */
GtkWidget *bs_wood_choice_new (BsSession *session, const char *lamination);

G_END_DECLS
