/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* Fills the workings of results whose numbers are there: how each came about. */
void bs_explain (BsResults *results);

G_END_DECLS
