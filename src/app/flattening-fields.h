/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* What the person says about flattening: how the laminations are lined up and the slab is worked,
 * and how far what was measured may be off. */
GtkWidget *bs_flattening_work_form_new (BsSession *session);
GtkWidget *bs_flattening_uncertainty_form_new (BsSession *session);

G_END_DECLS
