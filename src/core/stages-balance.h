/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/stages-search.h"

G_BEGIN_DECLS

/* Of all ways to glue n laminations that take no longer than limit_us, the one whose last stage
 * joins the evenest pieces; starts from a way that is known and returns that when it finds none
 * better. */
int bs_stages_balance (BsStagesSearch *search, int n, int way, gint64 limit_us);

G_END_DECLS
