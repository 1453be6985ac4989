/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* How many standard deviations above its mean a normal value stays below with a probability (0 to
 * 1, neither included). */
double bs_normal_quantile (double probability);

G_END_DECLS
