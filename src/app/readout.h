/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The few numbers that matter, live; in as many columns as its width allows. */
#define BS_TYPE_READOUT (bs_readout_get_type ())
G_DECLARE_FINAL_TYPE (BsReadout, bs_readout, BS, READOUT, GtkWidget)

/* Once, before it is shown. */
void bs_readout_set_session (BsReadout *self, BsSession *session);

G_END_DECLS
