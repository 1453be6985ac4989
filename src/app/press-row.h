/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/schedule.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* One press in words and numbers, each number with its why. The schedule is only read now. number:
 * of the press, from 0. */
GtkWidget *bs_press_row_new (const BsSchedule *schedule, const BsStagesPlan *presses, guint number);

G_END_DECLS
