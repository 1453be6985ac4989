/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* The example plans that come with the program, all invented. The first is the one to begin with.
 */
guint bs_examples_get_n (void);

/* Translated. */
const char *bs_examples_get_title (guint index);

BsPlan *bs_examples_load (guint index);

G_END_DECLS
