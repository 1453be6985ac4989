/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* The columns in which woods (BsWoodItem) are compared: a title, and how they are sorted by it. The
 * session lives as long as the table. */
void bs_wood_columns_append (GtkColumnView *table, BsSession *session);

/* Sorts anew, after cards have changed. */
void bs_wood_columns_sort_again (GtkColumnView *table);

G_END_DECLS
