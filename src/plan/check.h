/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/plan.h"

G_BEGIN_DECLS

/* How far a face of a lamination reaches across, mm: what its defects may not exceed. */
double bs_check_breadth (const BsLamination *lamination, BsFace face);

/* Whether the parts of a plan that was read agree with one another: ids are given once, what is
 * referred to is there, defects lie on their faces, packs in the order, pins say all that they
 * must. The error (BS_DOCUMENT_ERROR_VALUE) names the path. */
gboolean bs_check_plan (const BsPlan *plan, GError **error);

G_END_DECLS
