/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "core/working.h"
#include "core/plan.h"

G_BEGIN_DECLS

/* One number with its unit and its spread, and a button that says why. */
#define BS_TYPE_NUMBER_ROW (bs_number_row_get_type ())
G_DECLARE_FINAL_TYPE (BsNumberRow, bs_number_row, BS, NUMBER_ROW, GtkWidget)

GtkWidget *bs_number_row_new (void);

/* The working is copied; what it points to is static. A note stands in place of the spread. */
void bs_number_row_show (BsNumberRow *self, const BsWorking *working, BsUnitSystem units,
                         const char *note);

G_END_DECLS
