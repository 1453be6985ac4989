/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/clamp-layout.h"
#include "core/results.h"

G_BEGIN_DECLS

/* The clamps of the last press as they are to be set, from left to right (BsLayoutClamp; kinds are
 * places in the shop's list): those that the person placed or, while there are none, those of the
 * hand rule. Where the rule puts them; its force is shared out equally among the strongest that
 * reach, and what a weak one cannot take among the others; strong and weak by turns. When none
 * reaches they are those owned that would have to. Free with g_array_unref. */
GArray *bs_clamps_new (const BsStack *stack, const BsClampRule *rule);

/* The torque on its handle (N mm) that presses with a force; NAN when the screw is not known. */
double bs_clamps_torque (const BsClampKind *kind, double force_n);

G_END_DECLS
