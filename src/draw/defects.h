/* SPDX-FileCopyrightText: The Broadstave developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

#include "core/lamination.h"
#include "draw/palette.h"

G_BEGIN_DECLS

/* One defect in its rectangle on a face (device units; the grain runs down), each kind by a shape
 * of its own; a worse one (severity 0 to 2) stands out more. */
void bs_defect_draw (cairo_t *cr, BsDefectKind kind, double severity, double x, double y,
                     double width, double height, double hairline, const BsColor *color);

G_END_DECLS
