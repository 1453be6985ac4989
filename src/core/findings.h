/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* What the results say about the plan: BsFinding, worst first, then from front to back. Reads all
 * of the results but the workings. The caller's to free. */
GArray *bs_findings_new (const BsResults *results);

G_END_DECLS
