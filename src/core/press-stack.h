/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/pressing.h"

G_BEGIN_DECLS

/* Checks what is about to be pressed, once, where it enters. */

gboolean bs_press_stack_check (const BsPressStack *self, GError **error);
gboolean bs_press_clamp_check (const BsPressClamp *self, GError **error);

G_END_DECLS
