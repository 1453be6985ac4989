/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/finding-item.h"

G_BEGIN_DECLS

/* A finding in the list: how grave, by shape and word; what and where; its reason, and, when it is
 * selected, its remedy. */
#define BS_TYPE_FINDING_ROW (bs_finding_row_get_type ())
G_DECLARE_FINAL_TYPE (BsFindingRow, bs_finding_row, BS, FINDING_ROW, GtkWidget)

GtkWidget *bs_finding_row_new (void);

void bs_finding_row_show (BsFindingRow *self, BsFindingItem *item);
void bs_finding_row_set_open (BsFindingRow *self, gboolean is_open);

G_END_DECLS
