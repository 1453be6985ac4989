/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/results.h"
#include "words/boards.h"

G_BEGIN_DECLS

/* The results as JSON: docs/report-format.md. photo_problems: BsPhotoProblem, by whoever looked at
 * the files; NULL: nobody did. The caller's to free. */
char *bs_report_write (const BsResults *results, const GArray *photo_problems);

G_END_DECLS
