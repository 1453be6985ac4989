/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* The median time of one call of `work`, in ms, over an odd number of calls. */
double bench_median_ms (void (*work) (gpointer data), gpointer data, guint runs);
