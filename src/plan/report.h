/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"

G_BEGIN_DECLS

/* The results as JSON: docs/report-format.md. The caller's to free. */
char *bs_report_write (const BsResults *results);

G_END_DECLS
