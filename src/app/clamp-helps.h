/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The three changes to the clamps that would help most, each with a button that makes it, and what
 * bows take of the force. */
GtkWidget *bs_clamp_helps_new (BsSession *session);

G_END_DECLS
