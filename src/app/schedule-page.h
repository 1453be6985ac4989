/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The presses one after another: a timeline to scale, and each press in words. Says that it is
 * working while the session's study is. */
#define BS_TYPE_SCHEDULE_PAGE (bs_schedule_page_get_type ())
G_DECLARE_FINAL_TYPE (BsSchedulePage, bs_schedule_page, BS, SCHEDULE_PAGE, GtkWidget)

GtkWidget *bs_schedule_page_new (BsSession *session);

G_END_DECLS
