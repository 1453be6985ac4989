/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/sheet.h"

G_BEGIN_DECLS

/* The pages as they will be printed, one under the other. Takes the sheet; the page setup says what
 * the paper around its printable area is. Its print button activates the parent's "win.print". */
GtkWindow *bs_paper_window_new (GtkWindow *parent, BsSheet *sheet, GtkPageSetup *setup);

G_END_DECLS
