/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "plan/edits.h"

G_BEGIN_DECLS

/* Takes a lamination out of the order of a plan that is not shared yet, and out of its pack. */
void bs_edit_take_out (BsPlan *plan, int place);

G_END_DECLS
