/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The running program: its windows, what they share, and the work that needs no window. */
#define BS_TYPE_APPLICATION (bs_application_get_type ())
G_DECLARE_FINAL_TYPE (BsApplication, bs_application, BS, APPLICATION, GtkApplication)

BsApplication *bs_application_new (void);

G_END_DECLS
