/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/session.h"

G_BEGIN_DECLS

/* All findings, worst first; choosing one selects the lamination that it is about. While a
 * lamination is carried only the count above the list follows. */
#define BS_TYPE_FINDINGS_LIST (bs_findings_list_get_type ())
G_DECLARE_FINAL_TYPE (BsFindingsList, bs_findings_list, BS, FINDINGS_LIST, GtkWidget)

/* Once, before it is shown. */
void bs_findings_list_set_session (BsFindingsList *self, BsSession *session);

G_END_DECLS
