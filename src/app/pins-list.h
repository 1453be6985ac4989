/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* What a proposed order must keep: a line for each pin with a button that takes it off, a button
 * that pins the selected lamination, and what is wrong with the pins, if anything. */
#define BS_TYPE_PINS_LIST (bs_pins_list_get_type ())
G_DECLARE_FINAL_TYPE (BsPinsList, bs_pins_list, BS, PINS_LIST, GtkWidget)

GtkWidget *bs_pins_list_new (BsSession *session);

G_END_DECLS
